/**
 * Every cover, mix and mulch held against a gap.
 */
import { seasonOf } from '../../../climate/season.ts';
import type { Bed } from '../../../garden/garden.ts';
import { coverCrops } from '../../../handbook/cover-crops.ts';
import { coverMixes } from '../../../handbook/cover-mixes.ts';
import type { Day } from '../../../measures/days.ts';
import { latestOf } from '../../../measures/days.ts';
import { areaOf } from '../../bed-timeline.ts';
import { type CoverPart, coverName, coverParts } from '../../covers.ts';
import type { Reason } from '../../draft.ts';
import { BARE_DEPTH_MM, mulchLitres } from '../../mulch-layer.ts';
import type { PracticeInput } from '../../practice.ts';
import type { OpenSpan } from '../open-spans.ts';
import { seedAmounts } from '../seed.ts';
import { freezesKnown } from '../sow-window.ts';
import { bloomOdds } from './bloom-odds.ts';
import { clashesOf } from './clashes.ts';
import { establishment } from './establish.ts';
import type { FitGap, FitNeeds, GapFit, Verdict } from './fit.ts';
import { followingOf } from './following.ts';
import { LEAST_STAND_DAYS, type NoSowing, type Sowing, sowingsIn } from './sowings.ts';
import { winterOdds } from './winter-share.ts';

/** Every cover and mix of the handbook. */
const COVER_IDS: readonly string[] = [...coverCrops, ...coverMixes].map(({ id }) => id);

const VERDICTS: readonly Verdict[] = ['good', 'possible', 'poor', 'unusable'];

/** A bed with a gap in it, and the cover tried there. */
interface Trial {
  input: PracticeInput;
  bed: Bed;
  span: OpenSpan;
  coverId: string;
  parts: readonly CoverPart[];
}

/** Every choice for a bed's gap, best first. Stands that are only planned for it are left out of account. */
export function gapFits(given: PracticeInput, bed: Bed, span: OpenSpan): GapFit[] {
  const input = span.nextCover === undefined ? withoutPlans(given, span) : given;
  const from = latestOf(span.from ?? input.today, input.today);
  const covers = COVER_IDS.map((coverId) => coverFit({ input, bed, span, coverId, parts: coverParts(coverId) }, from));
  const all = [...covers, ...mulchFits(bed, span)];
  return all
    .map((fit, i) => ({ fit, i }))
    .sort((a, b) => VERDICTS.indexOf(a.fit.verdict) - VERDICTS.indexOf(b.fit.verdict) || a.i - b.i)
    .map(({ fit }) => fit);
}

function withoutPlans({ garden, ...input }: PracticeInput, { bedId, from, to }: OpenSpan): PracticeInput {
  const inGap = (day: Day) => (from === undefined || day >= from) && (to === undefined || day <= to);
  const stands = garden.stands.filter((stand) => stand.bedId !== bedId || stand.sow.happened || !inGap(stand.sow.day));
  return { ...input, garden: { ...garden, stands } };
}

function coverFit(trial: Trial, from: Day): GapFit {
  const { input, span, parts } = trial;
  if (!freezesKnown(input.climate, seasonOf(input.climate.seasonTurn, from))) {
    return ruledOut(trial, [{ rule: 'cover-fit.no-dates', saw: {}, source: "the garden's climate" }]);
  }
  const sowings = sowingsIn(input, span, parts, from);
  if (typeof sowings === 'string') return ruledOut(trial, [whyNoSowing(trial, sowings)]);
  const [first] = sowings;
  return first === undefined ? ruledOut(trial, [whyNoSowing(trial, 'never then')]) : sownFit(trial, first, from);
}

function sownFit(trial: Trial, { sow }: Sowing, from: Day): GapFit {
  const { input, bed, span, coverId, parts } = trial;
  const sowOn = latestOf(sow.window.preferred, from);
  const clashes = clashesOf(input, span, { coverId, parts, half: sow.half, latest: sow.window.latest });
  const establish = establishment(input, parts, sow.half, sowOn);
  const winter = winterOdds(input, parts, sowOn);
  const { cut, next } = followingOf(input, span, parts, sowOn);
  const bloom = bloomOdds(input, parts, sowOn, cut?.window.latest);
  const forbidden = clashes.some(({ forbids }) => forbids) || next?.met === 'no';
  return {
    ...bare(trial),
    verdict: forbidden ? 'unusable' : next?.met === 'short' ? 'poor' : 'possible',
    sow: sow.window,
    half: sow.half,
    sowOn,
    ...(establish ? { establish } : {}),
    ...(winter ? { winter } : {}),
    ...(bloom ? { bloom } : {}),
    ...(cut ? { cut } : {}),
    ...(next ? { next } : {}),
    seed: seedAmounts(parts, areaOf(bed), sowOn, input.climate),
    pros: [],
    cons: clashes.map(({ reason }) => reason),
  };
}

function whyNoSowing({ coverId, parts, span }: Trial, why: NoSowing): Reason {
  const saw = {
    cover: coverName(coverId),
    ...(span.from ? { from: span.from } : {}),
    ...(span.to ? { to: span.to } : {}),
  };
  return why === 'never then'
    ? { rule: 'cover-fit.never-then', saw: { ...saw, kinds: parts.length }, source: 'house default' }
    : { rule: 'cover-fit.no-room', saw, limit: LEAST_STAND_DAYS, source: 'house default' };
}

function ruledOut(trial: Trial, cons: readonly Reason[]): GapFit {
  return { ...bare(trial), verdict: 'unusable', seed: [], pros: [], cons };
}

function bare({ span, coverId, parts }: Trial) {
  return {
    bedId: span.bedId,
    gap: fitGap(span),
    choice: { choice: 'cover', coverId } as const,
    name: coverName(coverId),
    needs: needsOf(parts),
  };
}

function needsOf(parts: readonly CoverPart[]): FitNeeds {
  return {
    inoculants: [...new Set(parts.flatMap(({ cover }) => cover.inoculant ?? []))],
    depths: parts.map(({ cover }) => ({ cover: cover.name.toLowerCase(), cm: cover.depthCm })),
  };
}

function fitGap({ from, to, before, next, nextCover }: OpenSpan): FitGap {
  const following = next?.crop.name.toLowerCase() ?? (nextCover && coverName(nextCover));
  return {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(before === undefined ? {} : { before: before.crop.name.toLowerCase() }),
    ...(following === undefined ? {} : { next: following }),
  };
}

/** Mulch serves in any gap: nothing grows there that it could harm. */
function mulchFits(bed: Bed, span: OpenSpan): GapFit[] {
  return (['leaves', 'straw'] as const).map((mulch) => ({
    bedId: span.bedId,
    gap: fitGap(span),
    choice: { choice: 'mulch', mulch },
    name: mulch === 'leaves' ? 'a mulch of leaves' : 'a mulch of straw',
    verdict: 'possible',
    seed: [],
    needs: { inoculants: [], depths: [] },
    mulch: { litres: mulchLitres(bed, BARE_DEPTH_MM), depthMm: BARE_DEPTH_MM },
    pros: [{ rule: 'cover-fit.mulch-always', saw: {}, source: 'common practice' }],
    cons: [],
  }));
}
