/**
 * Which covers of a bed cannot both stand there.
 */
import { seasonOf } from '../../../climate/season.ts';
import type { Stand } from '../../../garden/garden.ts';
import { latestOf } from '../../../measures/days.ts';
import type { PracticeInput } from '../../practice.ts';
import { springGrowthFrom } from '../cut-window.ts';
import { type StandSpan, standSpans } from './stand-spans.ts';

/**
 * Whether two covers of one bed are in each other's way: the one still stands when the other is to be sown. Of two in one
 * season each is reckoned as if the other were not meant; a cover that holds the bed into another season is cut in time
 * for one planned then, and is in its way only where even that cut comes too late, or so early that it has hardly grown.
 */
export function inTheWay(input: PracticeInput, one: Stand, other: Stand): boolean {
  if (one.bedId !== other.bedId || one.id === other.id) return false;
  const { seasonTurn } = input.climate;
  const sameSeason = seasonOf(seasonTurn, one.sow.day) === seasonOf(seasonTurn, other.sow.day);
  const alone = [spansOf(input, [one]), spansOf(input, [other])].flat();
  if (sameSeason) return overlap(alone, true);
  if (!overlap(alone, false)) return false;
  const both = spansOf(input, [one, other]);
  return overlap(both, false) || isSpoilt(input, alone, both);
}

/**
 * Whether the earlier of two, not sown yet, would be cut for the other before it has spring growth, and stand longer by
 * itself. One that is in the ground is the gardener's to give up.
 */
function isSpoilt({ climate }: PracticeInput, alone: readonly StandSpan[], both: readonly StandSpan[]): boolean {
  const [first] = inOrder(both);
  const byItself = alone.find(({ stand }) => stand.id === first?.stand.id)?.ends;
  if (first?.ends === undefined || first.stand.sow.happened || byItself === undefined || byItself <= first.ends)
    return false;
  const grown = springGrowthFrom(climate, seasonOf(climate.seasonTurn, first.stand.sow.day) + 1);
  return grown !== undefined && first.ends <= grown && grown < byItself;
}

function spansOf({ garden, ...input }: PracticeInput, stands: readonly Stand[]): StandSpan[] {
  return standSpans({ ...input, garden: { ...garden, stands } }, stands[0]?.bedId ?? '');
}

/** Whether the earlier of two ends after the later is to be sown; one without an end as is given. */
function overlap(spans: readonly StandSpan[], whereOpen: boolean): boolean {
  const [first, second] = inOrder(spans);
  if (first === undefined || second === undefined) return false;
  return first.ends === undefined ? whereOpen : sownOn(second) <= first.ends;
}

function inOrder(spans: readonly StandSpan[]): StandSpan[] {
  return [...spans].sort((a, b) => (sownOn(a) < sownOn(b) ? -1 : 1));
}

function sownOn({ stand, from }: StandSpan): string {
  return latestOf(from, stand.sow.day);
}
