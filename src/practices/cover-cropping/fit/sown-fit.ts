/**
 * One cover sown in a gap at one of its times: all that is known of it, with its verdict.
 */

import type { Bed } from '../../../garden/garden.ts';
import type { Day } from '../../../measures/days.ts';
import { growsAgain } from '../../after-cut.ts';
import { areaOf } from '../../bed-timeline.ts';
import { type CoverPart, coverName } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { grownShare, type StandNitrogen } from '../../stand-nitrogen.ts';
import { doubtsOf } from '../cut-window.ts';
import type { OpenSpan } from '../open-spans.ts';
import { seedAmounts } from '../seed.ts';
import { isFrostSeeded } from '../sow-window.ts';
import { bloomOdds } from './bloom-odds.ts';
import { clashesOf } from './clashes.ts';
import { dryOn } from './dry-soil.ts';
import { afterEarlyCut, springShort } from './early-cut.ts';
import { establishment } from './establish.ts';
import type { FitGap, FitNeeds, GapFit } from './fit.ts';
import { reasonsOf, type Told } from './fit-reasons.ts';
import { followingOf } from './following.ts';
import { holdsAtEnd, standEnd, withGrowthGivenUp } from './holding.ts';
import { openDays } from './open-days.ts';
import { pointsOf, verdictOf, type Weighed } from './rank.ts';
import { holdsWinter, type Sowing, wintersBefore } from './sowings.ts';
import { winterOdds } from './winter-share.ts';

/** A bed with a gap in it, and the cover tried there. */
export interface Trial {
  input: PracticeInput;
  bed: Bed;
  span: OpenSpan;
  coverId: string;
  parts: readonly CoverPart[];
}

/** What can be told of a sowing without working out its end. */
function beginning(trial: Trial, sowing: Sowing, sowOn: Day) {
  const { input, span, coverId, parts } = trial;
  const { sow } = sowing;
  return {
    coverIds: parts.map(({ cover }) => cover.id),
    inSpring: sow.half === 'spring',
    onFrozenSoil: isFrostSeeded(parts, sow),
    clashes: clashesOf(input, span, { coverId, parts, half: sow.half, latest: sow.window.latest }),
    establish: establishment(input, parts, sow.half, sowOn),
    meantToDie: parts.every(({ cover }) => cover.autumnSow?.fate !== 'overwinters'),
    hungryNext: span.next?.crop.nitrogen === 'high',
    fixes: parts.some(({ cover }) => cover.form === 'legume'),
    dense: parts.some(({ cover }) => cover.form !== 'legume'),
    bindsNext: span.next === undefined && parts.some(({ cover }) => cover.rotationGroup === 'cabbage'),
    winterHeld: holdsWinter(input, span, parts, sowing),
    wintersBare: wintersBefore(input, span, sow.window.earliest),
    openDays: openDays(input, span, sow),
  };
}

/** Nitrogen that counts in full whatever becomes of it. */
const ALL_NITROGEN: StandNitrogen = {
  dryKgPerM2: { low: 0, high: 0 },
  percentN: { low: 0, high: 0 },
  carbonToNitrogen: { low: 0, high: 0 },
  availableGPerM2: { low: 100, high: 100 },
  origin: { provenance: 'house default', sources: [] },
};

/**
 * The best a sowing could come to, whatever its end is: what is worked out in full later is never better. Its winter is left
 * out, since one that is cut early meets none.
 */
export function promiseOf(
  trial: Trial,
  sowing: Sowing,
  sowOn: Day,
): Pick<GapFit, 'verdict' | 'points' | 'wintersBare'> {
  const hoped: Weighed = {
    ...beginning(trial, sowing, sowOn),
    winter: undefined,
    cut: undefined,
    next: undefined,
    nitrogen: ALL_NITROGEN,
    growsAgain: false,
    littleGrowth: false,
    grown: 1,
  };
  return { verdict: verdictOf(hoped), points: pointsOf(hoped), wintersBare: hoped.wintersBare };
}

/** What a cover sown on a day is in a gap. */
export function sownFit(trial: Trial, sowing: Sowing, sowOn: Day): GapFit {
  const { sow } = sowing;
  const { input, bed, span, parts } = trial;
  const { window, cut: cutAt, next } = followingOf(input, span, parts, sowOn);
  const bloom = bloomOdds(input, parts, sowOn, cutAt?.window.latest);
  const standing = { input, parts, sown: sowOn, window, bloom };
  const nitrogen = holdsAtEnd(standing);
  const cut = cutAt && withGrowthGivenUp(cutAt, standing, nitrogen);
  const end = standEnd(standing);
  const dry = dryOn(input, bed, sowOn);
  const begun = beginning(trial, sowing, sowOn);
  const doubts = [...doubtsOf(window), ...springShort(input, parts, sow, { sowOn, cut })];
  const told: Told = {
    ...begun,
    winter: winterOdds(input, parts, sowOn),
    ...afterEarlyCut(input, span, parts, { cut, winterHeld: begun.winterHeld }),
    parts,
    sowOn,
    bloom,
    cut,
    next,
    nextName: fitGap(span).next,
    nitrogen,
    growsAgain: cut !== undefined && growsAgain(parts),
    littleGrowth: doubts.length > 0,
    doubts,
    grown: end === undefined ? 1 : grownShare(input, sowOn, end),
    needs: { ...needsOf(parts), ...(dry === undefined ? {} : { dryAtSowing: dry }) },
    watered: bed.watered,
  };
  return {
    ...named(trial),
    verdict: verdictOf(told),
    points: pointsOf(told),
    wintersBare: told.wintersBare,
    sow: sow.window,
    half: sow.half,
    sowOn,
    ...present({ establish: told.establish, winter: told.winter, bloom, cut, next, nitrogen }),
    seed: seedAmounts(parts, areaOf(bed), sowOn, input.climate),
    needs: told.needs,
    ...reasonsOf(told),
  };
}

/** The fields that are known. */
function present<Fields extends object>(fields: Fields): { [Key in keyof Fields]?: Exclude<Fields[Key], undefined> } {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as {
    [Key in keyof Fields]?: Exclude<Fields[Key], undefined>;
  };
}

/** What every fit of a cover begins from. */
export function named({ span, coverId, parts }: Trial) {
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

/** A gap in words. */
export function fitGap({ from, to, before, next, nextCover }: OpenSpan): FitGap {
  const following = next?.crop.name.toLowerCase() ?? (nextCover && coverName(nextCover));
  return {
    ...(from === undefined ? {} : { from }),
    ...(to === undefined ? {} : { to }),
    ...(before === undefined ? {} : { before: before.crop.name.toLowerCase() }),
    ...(following === undefined ? {} : { next: following }),
  };
}
