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
import { freezesKnown } from '../sow-window.ts';
import { establishment } from './establish.ts';
import type { GapFit, Verdict } from './fit.ts';
import { chanceToEstablish, GOOD_CHANCE } from './rank.ts';
import { LEAST_STAND_DAYS, type NoSowing, type Sowing, sowingsIn } from './sowings.ts';
import { fitGap, named, sownFit, type Trial } from './sown-fit.ts';

/** Every cover and mix of the handbook. */
const COVER_IDS: readonly string[] = [...coverCrops, ...coverMixes].map(({ id }) => id);

const VERDICTS: readonly Verdict[] = ['good', 'possible', 'poor', 'unusable'];

/**
 * Every choice for a bed's gap, best first, counted for the best sowing day that is still to come. Stands that are only
 * planned for the gap are left out of account.
 */
export function gapFits(given: PracticeInput, bed: Bed, span: OpenSpan): GapFit[] {
  const input = span.nextCover === undefined ? withoutPlans(given, span) : given;
  const from = latestOf(span.from ?? input.today, input.today);
  const covers = COVER_IDS.map((coverId) =>
    coverFit({ input, bed, span, coverId, parts: coverParts(coverId) }, from, (preferred) => latestOf(preferred, from)),
  );
  return [...covers, ...mulchFits(bed, span)].sort(bestFirst);
}

/**
 * The best cover to sow in a gap while its time is still open on a day, or nothing where mulch serves better. It is weighed
 * by the climate as it usually is and for the best day of its window, so that it stays the same until that closes.
 */
export function bestCover(given: PracticeInput, bed: Bed, span: OpenSpan, from: Day): GapFit | undefined {
  const input = { ...given, climate: usualOf(given.climate) };
  const fits = COVER_IDS.map((coverId) =>
    coverFit({ input, bed, span, coverId, parts: coverParts(coverId) }, from, (preferred) => preferred),
  );
  const [best] = fits.sort(bestFirst);
  return best?.verdict === 'good' || best?.verdict === 'possible' ? best : undefined;
}

/** By verdict, then by points; choices that are alike in the order of the handbook. */
export function bestFirst(a: GapFit, b: GapFit): number {
  return VERDICTS.indexOf(a.verdict) - VERDICTS.indexOf(b.verdict) || b.points - a.points;
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
  const [best] = sowings
    .flatMap((sowing) => [sowing, ...sooner(trial, sowing)])
    .map((sowing) => sownFit(trial, sowing, dayOf(sowing.sow.window.preferred)))
    .sort(bestFirst);
  return best ?? ruledOut(trial, whyNoSowing(trial, 'never then'));
}

/** The same sowing on the first day of its window, where the preferred one leaves less than a good chance. */
function sooner({ input, parts }: Trial, { sow, season }: Sowing): Sowing[] {
  const { earliest, preferred, latest } = sow.window;
  const establish = establishment(input, parts, sow.half, preferred);
  const chance = chanceToEstablish({ inSpring: sow.half === 'spring', establish });
  if (earliest === preferred || chance === undefined || chance >= GOOD_CHANCE) return [];
  return [{ season, sow: { ...sow, window: { earliest, preferred: earliest, latest } } }];
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
function mulchFits(bed: Bed, span: OpenSpan): GapFit[] {
  return (['leaves', 'straw'] as const).map((mulch) => ({
    bedId: span.bedId,
    gap: fitGap(span),
    choice: { choice: 'mulch', mulch },
    name: mulch === 'leaves' ? 'a mulch of leaves' : 'a mulch of straw',
    verdict: 'possible',
    points: 0,
    seed: [],
    needs: { inoculants: [], depths: [] },
    mulch: { litres: mulchLitres(bed, BARE_DEPTH_MM), depthMm: BARE_DEPTH_MM },
    pros: [{ rule: 'cover-fit.mulch-always', saw: {}, source: 'common practice' }],
    cons: [{ rule: 'cover-fit.mulch-feeds-less', saw: {}, source: 'common practice' }],
  }));
}
