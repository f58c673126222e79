/**
 * What could lie in each bed's gaps, and what is meant for them already: nothing is kept.
 */
import { seasonOf } from '../../../climate/season.ts';
import type { Fact } from '../../../garden/facts.ts';
import type { Bed, Garden, MulchPlan } from '../../../garden/garden.ts';
import { latestOf } from '../../../measures/days.ts';
import type { PracticeInput } from '../../practice.ts';
import { mulchChosen } from '../mulch-chosen.ts';
import type { OpenSpan } from '../open-spans.ts';
import type { GapFit } from './fit.ts';
import { gapFits } from './gap-fits.ts';
import { gapsAhead } from './gaps-ahead.ts';
import { gapStandId } from './stand-id.ts';
import { type StandSpan, standSpans } from './stand-spans.ts';

/** One gap of a bed, with what may lie in it from the best to what a rule forbids. */
export interface GapOfBed {
  span: OpenSpan;
  fits: readonly GapFit[];
  /** Stands meant for it and not sown yet. */
  planned: readonly StandSpan[];
  mulch?: MulchPlan;
}

/** A bed with its gaps for two years ahead, oldest first, and every stand that is in it or meant for it. */
export interface BedGaps {
  bed: Bed;
  gaps: readonly GapOfBed[];
  stands: readonly StandSpan[];
}

/** The gaps of a bed with everything that may lie in them. */
export function bedGaps(input: PracticeInput, bed: Bed): BedGaps {
  const stands = standSpans(input, bed.id);
  const gaps = gapsAhead(input, bed).map((span): GapOfBed => {
    const mulch = mulchChosen(input.garden, span);
    return {
      span,
      fits: gapFits(input, bed, span),
      planned: stands.filter(({ stand }) => !stand.sow.happened && isIn(span, stand.sow.day)),
      ...(mulch === undefined ? {} : { mulch }),
    };
  });
  return { bed, gaps, stands };
}

/** The gaps of every bed, in the order of the garden. */
export function gardenGaps(input: PracticeInput): BedGaps[] {
  return input.garden.beds.map((bed) => bedGaps(input, bed));
}

function isIn({ from, to }: OpenSpan, day: string): boolean {
  return (from === undefined || day >= from) && (to === undefined || day < to);
}

/** What the gardener chooses for a gap, as the ledger keeps it. */
export type GapChosen = Extract<Fact, { kind: 'stand-planned' | 'mulch-planned' }>;

/**
 * The fact that choosing a fit writes: the cover or the mulch takes the place of what was only planned for the gap.
 *
 * @returns nothing for a cover that has no sowing day
 */
export function choiceOf(
  { garden, climate, today }: PracticeInput,
  { span, planned }: GapOfBed,
  fit: GapFit,
): GapChosen | undefined {
  const ids = planned.map(({ stand }) => stand.id);
  const instead = ids.length === 0 ? {} : { instead: ids };
  const { bedId } = span;
  if (fit.choice.choice === 'mulch') {
    const from = latestOf(today, span.from ?? today);
    const to = span.to === undefined ? {} : { to: span.to };
    return { kind: 'mulch-planned', bedId, from, ...to, mulch: fit.choice.mulch, ...instead };
  }
  if (fit.sowOn === undefined || fit.half === undefined) return undefined;
  const { coverId } = fit.choice;
  const season = seasonOf(climate.seasonTurn, fit.sowOn);
  const same = planned.find(({ stand }) => stand.coverId === coverId)?.stand.id;
  const standId = same ?? freeId(garden, gapStandId(span, { season, half: fit.half, coverId }), ids);
  return { kind: 'stand-planned', standId, bedId, coverId, sowOn: fit.sowOn, ...instead };
}

/** An id no other stand has; one that is taken out of the plan in the same breath leaves its own free. */
function freeId({ stands }: Garden, wanted: string, leaving: readonly string[]): string {
  const taken = new Set(stands.map(({ id }) => id).filter((id) => !leaving.includes(id)));
  let [id, count] = [wanted, 1];
  while (taken.has(id)) {
    count += 1;
    id = `${wanted}-${count}`;
  }
  return id;
}
