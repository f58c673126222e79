/**
 * What could lie in each bed's gaps, and what is meant for them already: nothing is kept.
 */
import { seasonOf } from '../../../climate/season.ts';
import type { Fact } from '../../../garden/facts.ts';
import type { Bed, Garden, MulchPlan } from '../../../garden/garden.ts';
import { type Day, latestOf } from '../../../measures/days.ts';
import { soonest } from '../../bed-timeline.ts';
import type { PracticeInput } from '../../practice.ts';
import { mulchChosen } from '../mulch-chosen.ts';
import type { OpenSpan } from '../open-spans.ts';
import type { GapFit } from './fit.ts';
import { gapFits } from './gap-fits.ts';
import { gapsAhead } from './gaps-ahead.ts';
import { inTheWay } from './in-the-way.ts';
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
      planned: stands.filter(({ stand }) => !stand.sow.happened && isInSpan(span, stand.sow.day)),
      ...(mulch === undefined ? {} : { mulch }),
    };
  });
  return { bed, gaps, stands };
}

/** The gaps of every bed, in the order of the garden. */
export function gardenGaps(input: PracticeInput): BedGaps[] {
  return input.garden.beds.map((bed) => bedGaps(input, bed));
}

/** The gap of a bed that is next to be decided: the first that a cover can serve in, else the first. */
export function nextGap({ gaps }: BedGaps): GapOfBed | undefined {
  return gaps.find(({ fits }) => fits.some(canServe)) ?? gaps[0];
}

function canServe({ verdict, choice }: GapFit): boolean {
  return verdict !== 'unusable' && choice.choice === 'cover';
}

/** The first gap of a bed that a day lies in. */
export function gapOn({ gaps }: BedGaps, day: Day): GapOfBed | undefined {
  return gaps.find(({ span }) => isInSpan(span, day));
}

/** Whether a day lies in a gap. */
export function isInSpan({ from, to }: OpenSpan, day: Day): boolean {
  return (from === undefined || day >= from) && (to === undefined || day < to);
}

/** What the gardener chooses for a gap, as the ledger keeps it. */
export type GapChosen = Extract<Fact, { kind: 'stand-planned' | 'mulch-planned' }>;

/**
 * The fact that choosing a fit writes. The cover or the mulch takes the place of what is only planned for the gap where
 * the two would be in each other's way; what is planned for a later time stays.
 *
 * @param on the day to sow it or to lay the mulch, where the gardener names one
 * @returns nothing for a cover that has no sowing day
 */
export function choiceOf(input: PracticeInput, gap: GapOfBed, fit: GapFit, on?: Day): GapChosen | undefined {
  if (fit.choice.choice === 'mulch') return mulchOf(input, gap, fit.choice.mulch, on);
  if (fit.sowOn === undefined || fit.half === undefined) return undefined;
  const { garden, climate } = input;
  const { span, planned } = gap;
  const { bedId } = span;
  const { coverId } = fit.choice;
  const sowOn = on ?? fit.sowOn;
  const meant = { id: '', bedId, coverId, sow: { day: sowOn, happened: false }, regrowthCheckedOn: [] };
  const leaving = planned.map(({ stand }) => stand).filter((stand) => inTheWay(input, stand, meant));
  const ids = leaving.map(({ id }) => id);
  const season = seasonOf(climate.seasonTurn, sowOn);
  const same = leaving.find((stand) => stand.coverId === coverId)?.id;
  const standId = same ?? freeId(garden, gapStandId(span, { season, half: fit.half, coverId }), ids);
  return { kind: 'stand-planned', standId, bedId, coverId, sowOn, ...insteadOf(ids) };
}

/** A mulch lies until the next crop, or until a cover that is planned for another season is sown. */
function mulchOf(
  { climate, today }: PracticeInput,
  { span, planned }: GapOfBed,
  mulch: MulchPlan['mulch'],
  on: Day | undefined,
): GapChosen {
  const from = on ?? latestOf(today, span.from ?? today);
  const season = seasonOf(climate.seasonTurn, from);
  const staying = planned.filter(
    ({ stand, ends }) =>
      (seasonOf(climate.seasonTurn, stand.sow.day) > season && stand.sow.day > from) ||
      (ends !== undefined && ends < from),
  );
  const leaving = planned.filter((each) => !staying.includes(each));
  const nextSown = staying
    .map(({ stand }) => stand.sow.day)
    .filter((day) => day > from)
    .sort()[0];
  const to = soonest(span.to, nextSown);
  const ids = leaving.map(({ stand }) => stand.id);
  return {
    kind: 'mulch-planned',
    bedId: span.bedId,
    from,
    ...(to === undefined ? {} : { to }),
    mulch,
    ...insteadOf(ids),
  };
}

function insteadOf(ids: readonly string[]): { instead?: string[] } {
  return ids.length === 0 ? {} : { instead: [...ids] };
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
