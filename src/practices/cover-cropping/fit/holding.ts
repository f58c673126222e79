/**
 * What a stand holds at its end, and what it would still have gathered had the bed not been wanted.
 */
import { addDays, type Day, daysBetween, latestOf } from '../../../measures/days.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { midwinterAfter } from '../../seasons.ts';
import { type StandNitrogen, standNitrogen } from '../../stand-nitrogen.ts';
import type { CutWindow } from '../cut-window.ts';
import { killedOn, standsAt } from '../winter.ts';
import type { FitBloom, FitCut } from './fit.ts';

/** Days between a cut and a stand's own time from which the growth given up is told. House default. */
const TOLD_FROM_DAYS = 7;
/** Grams per kilogram in a percent. */
const G_PER_KG_A_PERCENT = 10;

/** A stand with its end as far as it is known. */
interface Standing {
  input: PracticeInput;
  parts: readonly CoverPart[];
  sown: Day;
  window: CutWindow | undefined;
  bloom: FitBloom | undefined;
}

/** The day a stand stops growing: its cut, the cold that kills it, or its flowers; nothing while none is known. */
export function standEnd({ input, parts, sown, window, bloom }: Standing): Day | undefined {
  if (window !== undefined) return window.window.preferred;
  const winter = midwinterAfter(input.climate, sown);
  if (!parts.some(({ cover }) => standsAt(cover, sown, addDays(winter, 1), input))) {
    return latestOf(sown, ...parts.map(({ cover }) => killedOn(cover, sown, input)));
  }
  return bloom && ownTime(bloom);
}

/** The day a stand would be cut for its own sake. */
function ownTime(bloom: FitBloom): Day {
  return 'none' in bloom ? bloom.lookFrom : bloom.close;
}

/** What it holds at its end; nothing where no end or no weight is known. */
export function holdsAtEnd(standing: Standing): StandNitrogen | undefined {
  const end = standEnd(standing);
  const { input, parts, sown } = standing;
  return end === undefined ? undefined : standNitrogen(input, parts, { sown, end, stage: stageOf(standing, end) });
}

/** Cut at its own time a cereal stands between leaf and flower; cut weeks before that it is green. */
function stageOf({ window, bloom }: Standing, end: Day): 'green' | 'in flower' | 'between' {
  if (window?.inFlower === true) return 'in flower';
  const near = bloom !== undefined && daysBetween(end, ownTime(bloom)) < 3 * TOLD_FROM_DAYS;
  return window !== undefined && near ? 'between' : 'green';
}

/** A cut that comes for what follows and before the stand's own time gives growth up: how many days, how much nitrogen. */
export function withGrowthGivenUp(cut: FitCut, standing: Standing, holds: StandNitrogen | undefined): FitCut {
  const { bloom } = standing;
  if (cut.decidedBy !== 'next' || cut.givesWay !== undefined || bloom === undefined) return cut;
  const days = daysBetween(cut.window.latest, ownTime(bloom));
  if (days < TOLD_FROM_DAYS) return cut;
  const { input, parts, sown } = standing;
  const later = standNitrogen(input, parts, { sown, end: ownTime(bloom), stage: 'between' });
  const lost = holds && later ? Math.max(0, wholeNitrogen(later) - wholeNitrogen(holds)) : undefined;
  return { ...cut, givesWay: { what: 'growth', days, ...(lost === undefined ? {} : { nitrogenGPerM2: lost }) } };
}

/** The middle of a stand's whole nitrogen, g/m². */
export function wholeNitrogen({ dryKgPerM2: dry, percentN }: StandNitrogen): number {
  return ((dry.low + dry.high) / 2) * ((percentN.low + percentN.high) / 2) * G_PER_KG_A_PERCENT;
}
