/**
 * One cover sown in a gap at one of its times: all that is known of it, with its verdict.
 */

import type { Bed } from '../../../garden/garden.ts';
import { type Day, daysBetween, latestOf } from '../../../measures/days.ts';
import { growsAgain } from '../../after-cut.ts';
import { areaOf } from '../../bed-timeline.ts';
import { type CoverPart, coverName } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { doubtsOf } from '../cut-window.ts';
import type { OpenSpan } from '../open-spans.ts';
import { seedAmounts } from '../seed.ts';
import { bloomOdds } from './bloom-odds.ts';
import { clashesOf } from './clashes.ts';
import { dryOn } from './dry-soil.ts';
import { establishment } from './establish.ts';
import type { FitGap, FitNeeds, GapFit } from './fit.ts';
import { reasonsOf, type Told } from './fit-reasons.ts';
import { followingOf } from './following.ts';
import { holdsAtEnd, standEnd, withGrowthGivenUp } from './holding.ts';
import { grownShare } from './nitrogen.ts';
import { pointsOf, verdictOf } from './rank.ts';
import { holdsWinter, type Sowing } from './sowings.ts';
import { winterOdds } from './winter-share.ts';

/** A bed with a gap in it, and the cover tried there. */
export interface Trial {
  input: PracticeInput;
  bed: Bed;
  span: OpenSpan;
  coverId: string;
  parts: readonly CoverPart[];
}

/** What a cover sown on a day is in a gap. */
export function sownFit(trial: Trial, sowing: Sowing, sowOn: Day): GapFit {
  const { sow } = sowing;
  const { input, bed, span, coverId, parts } = trial;
  const inSpring = sow.half === 'spring';
  const { window, cut: cutAt, next } = followingOf(input, span, parts, sowOn);
  const bloom = bloomOdds(input, parts, sowOn, cutAt?.window.latest);
  const standing = { input, parts, sown: sowOn, window, bloom };
  const nitrogen = holdsAtEnd(standing);
  const cut = cutAt && withGrowthGivenUp(cutAt, standing, nitrogen);
  const end = standEnd(standing);
  const dry = dryOn(input, bed, sowOn);
  const told: Told = {
    coverIds: parts.map(({ cover }) => cover.id),
    parts,
    sowOn,
    inSpring,
    clashes: clashesOf(input, span, { coverId, parts, half: sow.half, latest: sow.window.latest }),
    establish: establishment(input, parts, sow.half, sowOn),
    winter: winterOdds(input, parts, sowOn),
    meantToDie: parts.every(({ cover }) => cover.autumnSow?.fate !== 'overwinters'),
    bloom,
    cut,
    next,
    nextName: fitGap(span).next,
    nitrogen,
    hungryNext: span.next?.crop.nitrogen === 'high',
    fixes: parts.some(({ cover }) => cover.form === 'legume'),
    winterHeld: holdsWinter(input, span, parts, sowing),
    growsAgain: cut !== undefined && growsAgain(parts),
    littleGrowth: doubtsOf(window).length > 0,
    doubts: doubtsOf(window),
    grown: end === undefined ? 1 : grownShare(input, sowOn, end),
    openDays: openDays(trial, sow.window.preferred),
    needs: { ...needsOf(parts), ...(dry === undefined ? {} : { dryAtSowing: dry }) },
    watered: bed.watered,
  };
  return {
    ...named(trial),
    verdict: verdictOf(told),
    points: pointsOf(told),
    sow: sow.window,
    half: sow.half,
    sowOn,
    ...present({ establish: told.establish, winter: told.winter, bloom, cut, next, nitrogen }),
    seed: seedAmounts(parts, areaOf(bed), sowOn, input.climate),
    needs: told.needs,
    ...reasonsOf(told),
  };
}

/** Days the bed lies open before its cover can go in. */
function openDays({ input, span }: Trial, sown: Day): number {
  const since = latestOf(span.from ?? input.garden.startedOn, input.garden.startedOn);
  return Math.max(0, daysBetween(since, sown));
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
