/**
 * What speaks for a choice and against it, as data.
 */
import type { Day } from '../../../measures/days.ts';
import { tenth } from '../../../measures/tenth.ts';
import { REGROWTH_DAYS, SHEET_DAYS } from '../../after-cut.ts';
import type { CoverPart } from '../../covers.ts';
import type { Reason, ReasonSource } from '../../draft.ts';
import type { Origin } from '../../stand-nitrogen.ts';
import type { FitBloom, FitNeeds } from './fit.ts';
import { chanceToEstablish, idleDays, LEAST_GROWN, POOR_CHANCE, staysOn, type Weighed, winterAsMeant } from './rank.ts';

/** Chance from which a figure speaks for a choice. House default, as for a verdict of good. */
const SPEAKS_FOR = 0.8;
/** Nitrogen for the next crop from which it is worth naming, g/m². House default. */
const NAMED_G_PER_M2 = 1;
/** Days that a bed lies open before its cover from which that is named. House default, as for mulching in season. */
const NAMED_OPEN_DAYS = 28;
/** Share of seasons with dry soil at sowing from which watering is named. House default. */
const NAMED_DRY = 0.25;

/** A choice with what its reasons name. */
export interface Told extends Weighed {
  parts: readonly CoverPart[];
  sowOn: Day;
  bloom: FitBloom | undefined;
  needs: FitNeeds;
  nextName: string | undefined;
  watered: boolean;
  doubts: readonly Reason[];
}

/** The reasons for and against. */
export function reasonsOf(told: Told): { pros: Reason[]; cons: Reason[] } {
  const weighed = [...growing(told), ...wintering(told), ...following(told), ...feeding(told), ...ending(told)];
  const cons = [
    ...told.clashes.map(({ reason }) => reason),
    ...weighed.filter(({ speaksFor }) => !speaksFor).map(({ reason }) => reason),
    ...told.doubts,
    ...asking(told),
  ];
  const decides = decidersOf(told);
  return {
    pros: weighed.filter(({ speaksFor }) => speaksFor).map(({ reason }) => reason),
    cons: [...cons.filter(({ rule }) => decides.has(rule)), ...cons.filter(({ rule }) => !decides.has(rule))],
  };
}

/** The rules by which a choice is poor or unusable: they are told first. */
function decidersOf(told: Told): ReadonlySet<string> {
  const chance = chanceToEstablish(told);
  return new Set([
    ...told.clashes.filter(({ forbids }) => forbids).map(({ reason }) => reason.rule),
    ...(chance !== undefined && chance < POOR_CHANCE ? ['cover-fit.establish', 'cover-fit.heat-left'] : []),
    ...(told.next?.met === 'no' ? ['cover-fit.next-not-met'] : []),
    ...(told.next?.met === 'short' ? ['cover-fit.next-short', 'cover-fit.wait-given-up'] : []),
    ...(told.grown < LEAST_GROWN ? ['cover-fit.grows-little'] : []),
    ...told.doubts.map(({ rule }) => rule),
  ]);
}

interface Spoken {
  reason: Reason;
  speaksFor: boolean;
}

const say = (speaksFor: boolean, reason: Reason): Spoken => ({ speaksFor, reason });

/** Where a figure's reason points. */
export function sourceOf({ provenance, sources }: Origin): ReasonSource {
  if (provenance === 'from memory' || provenance === 'house default' || provenance === 'common practice')
    return provenance;
  return sources[0] ?? 'house default';
}

function growing(told: Told): Spoken[] {
  const { establish, inSpring, sowOn, openDays, grown } = told;
  const small: Reason = {
    rule: 'cover-fit.grows-little',
    saw: { percent: Math.round(100 * grown) },
    limit: 100 * LEAST_GROWN,
    source: 'house default',
  };
  const open: Reason = {
    rule: 'cover-fit.open-until',
    saw: { days: openDays, sowOn },
    source: "the garden's own plan",
  };
  const spring: Reason = { rule: 'cover-fit.after-winter', saw: { sowOn }, source: 'common practice' };
  const late = [
    ...(told.wintersBare > 0 ? [say(false, spring)] : []),
    ...(openDays < NAMED_OPEN_DAYS ? [] : [say(false, open)]),
    ...(grown < LEAST_GROWN ? [say(false, small)] : []),
  ];
  if (inSpring) return late;
  if (establish?.heatNeeded === undefined) {
    return [...late, say(false, { rule: 'cover-fit.no-heat-figure', saw: {}, source: 'house default' })];
  }
  const { share, heatNeeded, heatLeftUnits = 0 } = establish;
  const speaksFor = (chanceToEstablish(told) ?? 0) >= SPEAKS_FOR;
  const saw = { sowOn, heatUnits: heatNeeded.units, baseC: heatNeeded.baseC, left: heatLeftUnits };
  const reason: Reason = {
    rule: share.among > 0 ? 'cover-fit.establish' : 'cover-fit.heat-left',
    saw: share.among > 0 ? { ...saw, of: share.of, among: share.among } : saw,
    source: sourceOf(heatNeeded.origin),
  };
  return [...late, say(speaksFor, reason)];
}

function wintering(told: Told): Spoken[] {
  const { winter, meantToDie } = told;
  if (winter === undefined) return [];
  const speaksFor = winterAsMeant(told) >= SPEAKS_FOR;
  const meant = meantToDie ? 'die' : 'live';
  const source = sourceOf(winter.parts[0]?.origin ?? { provenance: 'house default', sources: [] });
  const { lives, unsure, dies, fate } = winter;
  if (dies.among === 0) {
    const saw = { fate, meant, cold: winter.coldKnown ? 'known' : 'not known' };
    return [say(speaksFor, { rule: 'cover-fit.winter-zone', saw, source })];
  }
  const saw = { lives: lives.of, unsure: unsure.of, dies: dies.of, among: dies.among, meant };
  return [say(speaksFor, { rule: 'cover-fit.winter', saw, source })];
}

function following({ next, cut, nextName, bindsNext }: Told): Spoken[] {
  const spoken: Spoken[] = [];
  if (next?.wantedOn !== undefined) {
    const saw = { next: nextName ?? 'what follows', freeOn: next.freeOn, wantedOn: next.wantedOn, how: next.how };
    spoken.push(say(next.met === 'yes', { rule: `cover-fit.next-${NEXT_RULE[next.met]}`, saw, source: 'cover:S14' }));
  }
  const idle = idleDays(next);
  if (idle >= NAMED_OPEN_DAYS)
    spoken.push(say(false, { rule: 'cover-fit.ends-early', saw: { days: idle }, source: 'cover:S2a' }));
  if (bindsNext) spoken.push(say(false, { rule: 'cover-fit.binds-next', saw: {}, source: 'cover:S4e' }));
  const gives = cut?.givesWay;
  if (gives?.what === 'the wait')
    spoken.push(say(false, { rule: 'cover-fit.wait-given-up', saw: { days: gives.days }, source: 'cover:S14' }));
  if (gives?.what === 'growth') {
    const lost = gives.nitrogenGPerM2;
    const saw = { days: gives.days, ...(lost === undefined ? {} : { gPerM2: tenth(lost) }) };
    spoken.push(say(false, { rule: 'cover-fit.growth-given-up', saw, source: 'house default' }));
  }
  return spoken;
}

const NEXT_RULE = { yes: 'met', short: 'short', no: 'not-met' } as const;

function feeding({ nitrogen }: Told): Spoken[] {
  if (nitrogen === undefined) return [];
  const { low, high } = nitrogen.availableGPerM2;
  const saw = { low: tenth(low), high: tenth(high), known: nitrogen.origin.provenance };
  if (low < 0) return [say(false, { rule: 'cover-fit.ties-up', saw: { gPerM2: tenth(-low) }, source: 'cover:S7' })];
  return high < NAMED_G_PER_M2 ? [] : [say(true, { rule: 'cover-fit.nitrogen', saw, source: 'cover:S7' })];
}

function ending({ cut, growsAgain, coverIds, bloom, winter, parts }: Told): Spoken[] {
  const spoken: Spoken[] = [];
  if (cut === undefined && winter?.fate === 'dies')
    spoken.push(say(true, { rule: 'cover-fit.ends-itself', saw: {}, source: 'cover:S2a' }));
  if (cut !== undefined && growsAgain) {
    const saw = { regrowthDays: REGROWTH_DAYS.low, sheetDays: SHEET_DAYS.low };
    spoken.push(say(false, { rule: 'cover-fit.grows-again', saw, source: 'cover:S39' }));
  }
  const stays = parts.find(({ cover }) => coverIds.includes(cover.id) && staysOn(cover.id));
  if (stays !== undefined) {
    const saw = { cover: stays.cover.name.toLowerCase() };
    spoken.push(say(false, { rule: 'cover-fit.stays-on', saw, source: 'common practice' }));
  }
  if (bloom !== undefined && 'none' in bloom) {
    const without = bloom.parts?.find((part) => 'none' in part.bloom)?.cover;
    const saw = { lookFrom: bloom.lookFrom, ...(without === undefined ? {} : { cover: without }) };
    spoken.push(say(false, { rule: 'cover-fit.no-bloom-figure', saw, source: 'house default' }));
  }
  return spoken;
}

function asking({ needs, watered }: Told): Reason[] {
  const dry = needs.dryAtSowing;
  return [
    ...needs.inoculants.map(
      (group): Reason => ({ rule: 'cover-fit.inoculant', saw: { group }, source: 'common practice' }),
    ),
    ...(dry !== undefined && !watered && dry.of >= NAMED_DRY * dry.among
      ? [{ rule: 'cover-fit.dry', saw: { of: dry.of, among: dry.among }, source: 'agro:S1' } as const]
      : []),
  ];
}
