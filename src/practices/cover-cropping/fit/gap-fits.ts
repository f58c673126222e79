/**
 * Every cover, mix and mulch held against a gap, best first.
 */
import { usualOf } from '../../../climate/logged.ts';
import { seasonOf } from '../../../climate/season.ts';
import type { Bed } from '../../../garden/garden.ts';
import { coverCrops } from '../../../handbook/cover-crops.ts';
import { coverMixes } from '../../../handbook/cover-mixes.ts';
import { type Day, latestOf } from '../../../measures/days.ts';
import { coverName, coverParts } from '../../covers.ts';
import type { Reason } from '../../draft.ts';
import { BARE_DEPTH_MM, mulchLitres } from '../../mulch-layer.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import { freezesKnown, isFrostSeeded, type SowWindow } from '../sow-window.ts';
import { establishment } from './establish.ts';
import type { GapFit, Verdict } from './fit.ts';
import { lastDayAhead } from './last-day-ahead.ts';
import { chanceToEstablish, GOOD_CHANCE } from './rank.ts';
import { LEAST_STAND_DAYS, type NoSowing, type Sowing, sowingsIn, wintersBefore } from './sowings.ts';
import { fitGap, named, promiseOf, sownFit, type Trial } from './sown-fit.ts';

/** Every cover and mix of the handbook. */
const COVERS = [...coverCrops, ...coverMixes].map(({ id }) => ({ coverId: id, parts: coverParts(id) }));

const VERDICTS: readonly Verdict[] = ['good', 'possible', 'poor', 'unusable'];
/** Verdicts of covers that do better than a mulch. */
const SERVES: ReadonlySet<Verdict> = new Set(['good', 'possible']);

/**
 * Every choice for a bed's gap, best first, counted for the best sowing day that is still to come. Stands that are only
 * planned for the gap are left out of account.
 */
export function gapFits(given: PracticeInput, bed: Bed, span: OpenSpan): GapFit[] {
  const input = span.nextCover === undefined ? withoutPlans(given, span) : given;
  const from = latestOf(span.from ?? input.today, input.today);
  const covers = COVERS.map((cover) =>
    coverFit({ input, bed, span, ...cover }, from, (preferred) => latestOf(preferred, from)),
  );
  return [...covers, ...mulchFits(bed, span, wintersBefore(input, span, from))].sort(bestFirst);
}

/** A cover to be sown in a gap, with the days it may be sown on. */
export interface BestCover {
  fit: GapFit;
  coverId: string;
  sow: SowWindow;
}

/**
 * The best cover to sow in a gap while its time is still open on a day, or nothing where mulch serves better. It is weighed
 * by the climate as it usually is and for the best day of its window on or after the garden was brought in, so that it stays the
 * same until that closes.
 *
 * @param isTaken whether a sowing was made into a stand before
 */
export function bestCover(
  given: PracticeInput,
  bed: Bed,
  span: OpenSpan,
  { from, isTaken }: { from: Day; isTaken: (coverId: string, sow: SowWindow) => boolean },
): BestCover | undefined {
  const input = { ...given, climate: usualOf(given.climate) };
  if (!freezesKnown(input.climate, seasonOf(input.climate.seasonTurn, from))) return undefined;
  const { startedOn } = input.garden;
  const hoped = COVERS.flatMap((cover) => {
    const trial: Trial = { input, bed, span, ...cover };
    const sowings = sowingsIn(input, span, cover.parts, from);
    return timesOf(trial, typeof sowings === 'string' ? [] : sowings)
      .filter(({ sow }) => !isTaken(cover.coverId, sow))
      .map((sowing) => ({ ...sowing, sow: notBefore(sowing.sow, startedOn) }))
      .map((sowing) => ({ trial, sowing, ...promiseOf(trial, sowing, sowing.sow.window.preferred) }));
  });
  let best: { fit: GapFit; trial: Trial; sowing: Sowing } | undefined;
  for (const promise of hoped.filter(({ verdict }) => SERVES.has(verdict)).sort(bestFirst)) {
    if (best !== undefined && bestFirst(best.fit, promise) <= 0) break;
    const { trial, sowing } = promise;
    const fit = sownFit(trial, sowing, sowing.sow.window.preferred);
    if (SERVES.has(fit.verdict) && (best === undefined || bestFirst(fit, best.fit) < 0)) best = { fit, trial, sowing };
  }
  if (best === undefined) return undefined;
  const { fit, trial, sowing } = best;
  return { fit, coverId: trial.coverId, sow: notBefore(asItIs(given, trial, sowing), startedOn) };
}

/** A sowing whose best day is no earlier than the garden was brought in: nobody could have sown it before. */
function notBefore(sow: SowWindow, startedOn: Day): SowWindow {
  const { earliest, preferred, latest } = sow.window;
  if (preferred >= startedOn || latest < startedOn) return sow;
  return { ...sow, window: { earliest, preferred: startedOn, latest } };
}

/** The same sowing held to the weather that was logged and is expected, where that leaves it a day. */
function asItIs(given: PracticeInput, { span, parts }: Trial, { sow, season }: Sowing): SowWindow {
  const now = sowingsIn(given, span, parts, sow.window.earliest);
  if (typeof now === 'string') return sow;
  return now.find((sowing) => sowing.season === season && sowing.sow.half === sow.half)?.sow ?? sow;
}

type Standing = Pick<GapFit, 'verdict' | 'points' | 'wintersBare'>;

/**
 * What serves before what does not; of that what leaves the fewer winters bare, then by verdict, then by points. Choices that
 * are alike stay in the order of the handbook.
 */
export function bestFirst(a: Standing, b: Standing): number {
  const serving = SERVES.has(a.verdict) && SERVES.has(b.verdict);
  const winters = serving ? (a.wintersBare ?? 0) - (b.wintersBare ?? 0) : 0;
  return winters || VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) || b.points - a.points;
}

function withoutPlans({ garden, ...input }: PracticeInput, { bedId, from, to }: OpenSpan): PracticeInput {
  const inGap = (day: Day) => (from === undefined || day >= from) && (to === undefined || day <= to);
  const stands = garden.stands.filter((stand) => stand.bedId !== bedId || stand.sow.happened || !inGap(stand.sow.day));
  return { ...input, garden: { ...garden, stands } };
}

/** A cover at the best of its times in the gap. */
function coverFit(trial: Trial, from: Day, dayOf: (preferred: Day) => Day): GapFit {
  const { input, span, parts } = trial;
  if (!freezesKnown(input.climate, seasonOf(input.climate.seasonTurn, from))) {
    return ruledOut(trial, { rule: 'cover-fit.no-dates', saw: {}, source: "the garden's climate" });
  }
  const sowings = sowingsIn(input, span, parts, from);
  if (typeof sowings === 'string') return ruledOut(trial, whyNoSowing(trial, sowings));
  const times = timesOf(trial, sowings).filter(({ sow }) => sow.window.preferred <= lastDayAhead(input.today));
  const [best] = times.map((sowing) => sownFit(trial, sowing, dayOf(sowing.sow.window.preferred))).sort(bestFirst);
  return best ?? ruledOut(trial, tooFar(trial, sowings));
}

/** The times at which a cover is tried in a gap, of its sowings there. */
function timesOf(trial: Trial, sowings: readonly Sowing[]): Sowing[] {
  return sowings.flatMap((sowing) => [sowing, ...sooner(trial, sowing)]);
}

/** The same sowing on the first day of its window, where the preferred one leaves less than a good chance. */
function sooner({ input, parts }: Trial, { sow, season }: Sowing): Sowing[] {
  const { earliest, preferred, latest } = sow.window;
  const establish = establishment(input, parts, sow.half, preferred);
  const chance = chanceToEstablish({
    inSpring: sow.half === 'spring',
    onFrozenSoil: isFrostSeeded(parts, sow),
    establish,
  });
  if (earliest === preferred || chance === undefined || chance >= GOOD_CHANCE) return [];
  return [{ season, sow: { ...sow, window: { earliest, preferred: earliest, latest } } }];
}

function tooFar({ coverId }: Trial, [first]: readonly Sowing[]): Reason {
  const saw = { cover: coverName(coverId), ...(first ? { sowOn: first.sow.window.preferred } : {}) };
  return { rule: 'cover-fit.too-far', saw, source: 'house default' };
}

function whyNoSowing({ coverId, span }: Trial, why: NoSowing): Reason {
  const saw = {
    cover: coverName(coverId),
    ...(span.from ? { from: span.from } : {}),
    ...(span.to ? { to: span.to } : {}),
  };
  return why === 'never then'
    ? { rule: 'cover-fit.never-then', saw, source: 'house default' }
    : { rule: 'cover-fit.no-room', saw, limit: LEAST_STAND_DAYS, source: 'house default' };
}

function ruledOut(trial: Trial, why: Reason): GapFit {
  return { ...named(trial), verdict: 'unusable', points: 0, seed: [], pros: [], cons: [why] };
}

/** Mulch serves in any gap: nothing grows there that it could harm. It is named after the covers that serve. */
function mulchFits(bed: Bed, span: OpenSpan, wintersBare: number): GapFit[] {
  return (['leaves', 'straw'] as const).map((mulch) => ({
    bedId: span.bedId,
    gap: fitGap(span),
    choice: { choice: 'mulch', mulch },
    name: mulch === 'leaves' ? 'a mulch of leaves' : 'a mulch of straw',
    verdict: 'possible',
    points: 0,
    wintersBare,

    seed: [],
    needs: { inoculants: [], depths: [] },
    mulch: { litres: mulchLitres(bed, BARE_DEPTH_MM), depthMm: BARE_DEPTH_MM },
    pros: [{ rule: 'cover-fit.mulch-always', saw: {}, source: 'common practice' }],
    cons: [{ rule: 'cover-fit.mulch-feeds-less', saw: {}, source: 'common practice' }],
  }));
}
