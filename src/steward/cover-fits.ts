/**
 * What could lie in each bed's gaps, and what is meant for them already: read off a view, nothing is kept.
 */
import { seasonOf } from '../climate/season.ts';
import type { Bed, Garden, MulchPlan } from '../garden/garden.ts';
import { latestOf } from '../measures/days.ts';
import type { GapFit } from '../practices/cover-cropping/fit/fit.ts';
import { gapFits } from '../practices/cover-cropping/fit/gap-fits.ts';
import { gapsAhead } from '../practices/cover-cropping/fit/gaps-ahead.ts';
import { gapStandId } from '../practices/cover-cropping/fit/stand-id.ts';
import { type StandSpan, standSpans } from '../practices/cover-cropping/fit/stand-spans.ts';
import { mulchChosen } from '../practices/cover-cropping/mulch-chosen.ts';
import type { OpenSpan } from '../practices/cover-cropping/open-spans.ts';
import { planningInput } from './planner.ts';
import type { CoverChoice, GardenView } from './steward.ts';

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
export function bedGaps(view: GardenView, bed: Bed): BedGaps {
  const input = planningInput(view);
  const stands = standSpans(input, bed.id);
  const gaps = gapsAhead(input, bed).map((span): GapOfBed => {
    const mulch = mulchChosen(view.garden, span);
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
export function gardenGaps(view: GardenView): BedGaps[] {
  return view.garden.beds.map((bed) => bedGaps(view, bed));
}

function isIn({ from, to }: OpenSpan, day: string): boolean {
  return (from === undefined || day >= from) && (to === undefined || day < to);
}

/**
 * The fact that choosing a fit writes: the cover or the mulch takes the place of what was only planned for the gap.
 *
 * @returns nothing for a cover that has no sowing day
 */
export function choiceOf(
  { garden, climate, plan: { today } }: GardenView,
  { span, planned }: GapOfBed,
  fit: GapFit,
): CoverChoice | undefined {
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
  const standId = freeId(garden, gapStandId(span, { season, half: fit.half, coverId }), ids);
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
