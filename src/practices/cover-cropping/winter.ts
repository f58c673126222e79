/**
 * What winter is expected to do to a cover, and so how its growth is reckoned.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { zoneMiddleF } from '../../climate/zones.ts';
import type { CoverCrop, CoverSituation } from '../../handbook/shapes/cover.ts';
import type { Day } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import type { PracticeInput } from '../practice.ts';
import { isAfterMidsummer, midwinterAfter } from '../seasons.ts';
import { countedWinters, type WinterEnd, wintersThat } from './winter-odds.ts';

/** What winter does to a stand sown before it. `unsure`: it may or may not live, so plan for both and look. */
type WinterFate = WinterEnd;

/**
 * Degrees by which the mean of the coldest nights must pass a killing temperature before the kill is counted on: with
 * coldest nights scattering by 3–4 °C it then comes in nine winters of ten. House default.
 */
const KILL_MARGIN_C = 5;

/** The coldest zone a kind stands from which it is taken to live where no zone is known. House default: rye's. */
const LIVES_UNZONED = 3;

/** The whole hardiness zone to go by: the gardener's own word, else what the record says. */
export function zoneIn({ garden, climate }: PracticeInput): number | undefined {
  const zone = Number.parseInt(garden.place.hardinessZone ?? climate.zone?.zone ?? '', 10);
  return Number.isNaN(zone) ? undefined : zone;
}

/** The mean of the coldest nights, °C: of the stated zone, else of the record. */
export function yearlyMinimumC({ garden, climate }: PracticeInput): number | undefined {
  const stated = garden.place.hardinessZone;
  return stated === undefined ? climate.zone?.meanYearlyMinimumC : celsius(zoneMiddleF(stated));
}

/** Share of winters in which a stand must end the same way for that to be counted on: nine in ten. House default. */
const SURE_SHARE = 0.9;

/**
 * What winter is expected to do to a cover sown in late summer or autumn: counted over the winters of the record where
 * that can be done, else by the zone and the mean of the coldest nights.
 */
export function winterFate(cover: CoverCrop, input: PracticeInput): WinterFate {
  if (cover.frostTender || cover.autumnSow === undefined) return 'dies';
  const counted = countedWinters(cover, input);
  if (counted !== undefined) return fateOf(counted.ends);
  return cover.autumnSow.fate === 'overwinters' ? hardyFate(cover, input) : tenderFate(cover, input);
}

/** What winters say of a stand. */
export function fateOf(ends: readonly WinterEnd[]): WinterFate {
  if (wintersThat('dies', ends) >= SURE_SHARE * ends.length) return 'dies';
  return wintersThat('lives', ends) >= SURE_SHARE * ends.length ? 'lives' : 'unsure';
}

/** Kinds meant to live: by zone, a zone at the edge being open, and by cold without snow where that is known. */
function hardyFate(cover: CoverCrop, input: PracticeInput): WinterFate {
  const zone = zoneIn(input);
  const coldC = yearlyMinimumC(input);
  if (cover.hardinessZoneMin === undefined) return 'lives';
  if (zone === undefined) return cover.hardinessZoneMin <= LIVES_UNZONED ? 'lives' : 'unsure';
  if (zone < cover.hardinessZoneMin - 1) return 'dies';
  const bareKill = coldC !== undefined && cover.winterKillC !== undefined && coldC < cover.winterKillC;
  return bareKill || zone <= cover.hardinessZoneMin ? 'unsure' : 'lives';
}

/**
 * Kinds meant to die: by the temperature that kills them, whatever the zone. Where the cold of the place or the kind's
 * limit is not known nobody can say: a stand taken for dead would grow on unseen.
 */
function tenderFate(cover: CoverCrop, input: PracticeInput): WinterFate {
  const coldC = yearlyMinimumC(input);
  if (coldC === undefined || cover.winterKillC === undefined) return 'unsure';
  return coldC <= cover.winterKillC - KILL_MARGIN_C ? 'dies' : 'unsure';
}

/** Whether a kind is still alive on a later day, so that somebody has to cut it first. */
export function standsAt(cover: CoverCrop, sown: Day, day: Day, input: PracticeInput): boolean {
  return situationOf(cover, sown, input) !== 'summer-sown' || day <= killedOn(cover, sown, input);
}

/** The day frost or winter has ended a kind that is expected to die: the median first freeze, or midwinter. */
export function killedOn(cover: CoverCrop, sown: Day, { climate }: PracticeInput): Day {
  const midwinter = midwinterAfter(climate, sown);
  if (!cover.frostTender) return midwinter;
  const season = seasonOf(climate.seasonTurn, sown);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF: 32, season, chancePercent: 50 });
  return freeze === undefined || freeze <= sown ? midwinter : freeze;
}

/** How the flowering of a cover sown on a day is counted. */
export function situationOf(cover: CoverCrop, sown: Day, input: PracticeInput): CoverSituation {
  if (cover.frostTender) return 'summer-sown';
  if (!isAfterMidsummer(input.climate, sown)) return 'spring-sown';
  return winterFate(cover, input) === 'dies' ? 'summer-sown' : 'overwintered';
}
