/**
 * What a cover that is chosen for a day would be there.
 */
import type { Day } from '../../../measures/days.ts';
import { coverParts } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import { type BedGaps, gapOn } from './bed-gaps.ts';
import type { GapFit } from './fit.ts';
import { type Sowing, sowingsIn } from './sowings.ts';
import { sownFit } from './sown-fit.ts';

/** A cover on the day it is chosen for. */
export type ChosenFit =
  | { fit: GapFit }
  /** The day lies outside the days in which it can be sown in the gap, which are these; none where it has no such days. */
  | { outside: readonly Sowing['sow']['window'][] };

/**
 * Tells what a cover sown in a bed on a day would be. Stands that are only planned for the same gap are left out of account.
 *
 * @returns nothing where the day lies in no gap
 */
export function chosenFit(given: PracticeInput, gaps: BedGaps, coverId: string, sowOn: Day): ChosenFit | undefined {
  const gap = gapOn(gaps, sowOn);
  const known = gap?.fits.find(({ choice }) => choice.choice === 'cover' && choice.coverId === coverId);
  if (gap === undefined || known === undefined) return undefined;
  if (known.sowOn === sowOn) return { fit: known };
  const { bed } = gaps;
  const { span } = gap;
  const input = withoutPlans(given, span);
  const parts = coverParts(coverId);
  const sowings = sowingsIn(input, span, parts, input.today);
  if (typeof sowings === 'string') return { outside: [] };
  const sowing = sowings.find(({ sow: { window } }) => window.earliest <= sowOn && sowOn <= window.latest);
  if (sowing === undefined) return { outside: sowings.map(({ sow: { window } }) => window) };
  return { fit: sownFit({ input, bed, span, coverId, parts }, sowing, sowOn) };
}

function withoutPlans({ garden, ...input }: PracticeInput, { bedId }: OpenSpan): PracticeInput {
  const stands = garden.stands.filter((stand) => stand.bedId !== bedId || stand.sow.happened);
  return { ...input, garden: { ...garden, stands } };
}
