/**
 * What a garden file says that is hardly meant, as lines of text.
 */
import type { Problem } from '../../garden/problem.ts';
import type { Day } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { section } from './moves-text.ts';

/** A heading and a line a doubt; nothing where there are none. */
export function doubtLines(doubts: readonly Problem[], units: UnitSystem, today: Day): string[] {
  return section(
    'Look at these again; they are taken as they stand:',
    doubts.map(({ where, what, mend }) => readableIn(units, `${where}: ${what} ${mend}`, today)),
  );
}
