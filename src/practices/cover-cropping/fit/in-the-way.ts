/**
 * Which covers of a bed cannot both stand there.
 */
import { seasonOf } from '../../../climate/season.ts';
import type { Stand } from '../../../garden/garden.ts';
import { latestOf } from '../../../measures/days.ts';
import type { PracticeInput } from '../../practice.ts';
import { type StandSpan, standSpans } from './stand-spans.ts';

/**
 * Whether two covers of one bed are in each other's way: the one still stands when the other is to be sown. Of two in one
 * season each is reckoned as if the other were not meant; a cover that holds the bed into another season is cut in time
 * for one planned then, and is in its way only where even that cut comes too late.
 */
export function inTheWay(input: PracticeInput, one: Stand, other: Stand): boolean {
  if (one.bedId !== other.bedId || one.id === other.id) return false;
  const { seasonTurn } = input.climate;
  const sameSeason = seasonOf(seasonTurn, one.sow.day) === seasonOf(seasonTurn, other.sow.day);
  const alone = [spansOf(input, [one]), spansOf(input, [other])].flat();
  if (sameSeason) return overlap(alone, true);
  return overlap(alone, false) && overlap(spansOf(input, [one, other]), false);
}

function spansOf({ garden, ...input }: PracticeInput, stands: readonly Stand[]): StandSpan[] {
  return standSpans({ ...input, garden: { ...garden, stands } }, stands[0]?.bedId ?? '');
}

/** Whether the earlier of two ends after the later is to be sown; one without an end as is given. */
function overlap(spans: readonly StandSpan[], whereOpen: boolean): boolean {
  const [first, second] = [...spans].sort((a, b) => (sownOn(a) < sownOn(b) ? -1 : 1));
  if (first === undefined || second === undefined) return false;
  return first.ends === undefined ? whereOpen : sownOn(second) <= first.ends;
}

function sownOn({ stand, from }: StandSpan): string {
  return latestOf(from, stand.sow.day);
}
