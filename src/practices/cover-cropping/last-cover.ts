/**
 * The last day on which any cover can be sown for winter.
 */
import type { Day } from '../../measures/days.ts';
import { coverParts } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import { sowWindow } from './sow-window.ts';

/** The latest-sown cover of the handbook (cover:S4b): a bed that is free after its last day gets none that autumn. */
const LAST_COVER = coverParts('cereal_rye');

/** The last day for rye in a season; nothing where no freeze date is known. */
export function lastCoverDay(input: PracticeInput, season: number): Day | undefined {
  return sowWindow(LAST_COVER, 'autumn', season, input)?.window.latest;
}
