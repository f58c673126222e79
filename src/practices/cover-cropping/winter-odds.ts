/**
 * What winters would do to a cover, counted over the winters of the record: the coldest crown against the temperatures
 * between which its kind dies, with the time it had to harden and what thaws take from it.
 */

import type { Climate } from '../../climate/climate.ts';
import { type CrownDay, WINTER_FROM, type Winter, wintersInto } from '../../climate/crown.ts';
import { usualOf } from '../../climate/logged.ts';
import { holderOf } from '../../climate/members.ts';
import { memory } from '../../climate/remembered.ts';
import { seasonIndex, seasonOf } from '../../climate/season.ts';
import { lethalRange } from '../../handbook/cover-cold.ts';
import type { CoverCrop } from '../../handbook/shapes/cover.ts';
import type { Provenance, SourceId, Span } from '../../handbook/shapes/row.ts';
import type { Day } from '../../measures/days.ts';
import type { PracticeInput } from '../practice.ts';

/** Winters a record needs before they are counted. House default, as for a zone. */
const WINTERS_NEEDED = 10;

/**
 * Kinds whose limits say less than their zone does: those of wheat are of plants dug before they were hardened, or of
 * bred lines; of the lasting clovers only seedlings were tried.
 */
const BY_ZONE: ReadonlySet<string> = new Set(['winter_wheat', 'triticale', 'red_clover', 'white_clover']);

/** Cold that a plant not yet hardened stands, °C (phenology:P41). */
const UNHARDENED_C = -3;
/** Soil below this hardens, °C; days of it that do so at the soonest and at the latest (phenology:P41). */
const HARDENS = { belowC: 10, days: { soonest: 28, latest: 56 } } as const;
/** Days after sowing from which a plant can harden: it has to be up first. House default. */
const UP_AFTER_DAYS = 14;
/** What two turns of thaw and freeze take from a plant, °C (phenology:P44, for crowns of wheat and rye). */
const THAWS = { turns: 2, lossC: 5 } as const;
/** A thaw: so many days in a row with a mean above freezing; it counts once a night freezes so hard at the crown. House default. */
const THAW = { days: 3, freezeC: -5 } as const;

/** What one winter does. Between the two ends of a range nobody can say. */
export type WinterEnd = 'lives' | 'unsure' | 'dies';

/** Winters by what they would have done, oldest first. */
export interface CountedWinters {
  ends: readonly WinterEnd[];
  range: Span;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** How many winters end so. */
export function wintersThat(end: WinterEnd, ends: readonly WinterEnd[]): number {
  return ends.filter((each) => each === end).length;
}

const counts = memory<Climate, string, CountedWinters | undefined>();

/**
 * The winters of the record by what they would have done to a cover.
 *
 * @param sown the day it is sown; in good time where left out
 * @returns nothing where the gardener states a zone of their own, the record holds fewer than ten winters, or the kind
 *   goes by its zone or has no known limit
 */
export function countedWinters(
  cover: CoverCrop,
  { garden, climate }: PracticeInput,
  sown?: Day,
): CountedWinters | undefined {
  const known = BY_ZONE.has(cover.id) ? undefined : lethalRange(cover);
  if (known === undefined || garden.place.hardinessZone !== undefined || climate.seasons.length === 0) return undefined;
  const raised = garden.beds.some((bed) => bed.raised);
  const season = sown === undefined ? undefined : seasonOf(climate.seasonTurn, sown) + 1;
  const { holder, season: name } = season === undefined ? usually(climate) : holderOf(climate, season);
  const from = sown === undefined ? 0 : dayOfWinter(climate, sown);
  return counts(holder, `${cover.id} ${raised} ${name} ${from}`, () => {
    const winters = wintersInto(holder, season ?? 0, raised);
    if (winters.length < WINTERS_NEEDED) return undefined;
    const endOf = cover.autumnSow?.fate === 'overwinters' ? hardyEnd : tenderEnd;
    const ends = winters.map((winter) => endOf(winter, known.tempC, from));
    return { ends, range: known.tempC, provenance: known.provenance, sources: known.sources };
  });
}

/** The climate as it usually is, whatever this year's weather. */
function usually(climate: Climate): { holder: Climate; season: 'any' } {
  return { holder: usualOf(climate), season: 'any' };
}

/** Days from the start of a winter to a sowing in the season before it; 0 for one that was sown sooner. */
function dayOfWinter({ seasonTurn }: Climate, sown: Day): number {
  return Math.max(0, seasonIndex(seasonTurn, sown) - WINTER_FROM);
}

/** Kinds meant to die stand above the snow, unhardened: the air's coldest night decides. */
function tenderEnd(winter: Winter, range: Span, from: number): WinterEnd {
  const coldest = Math.min(...winter.slice(from).map((day) => day?.airC ?? Number.POSITIVE_INFINITY));
  return ended(coldest, range);
}

/** What a temperature does to a kind that dies somewhere in a range. */
export function ended(tempC: number, { low, high }: Span): WinterEnd {
  if (tempC > high) return 'lives';
  return tempC < low || low === high ? 'dies' : 'unsure';
}

/**
 * Kinds meant to live: the crown night by night, against what the plant stands by then. While the ground is not frozen its
 * warmth stands in for the hardening that is still to come. House default.
 */
function hardyEnd(winter: Winter, range: Span, from: number): WinterEnd {
  let [cold, thawed, turns] = [0, 0, 0];
  let worst: WinterEnd = 'lives';
  for (let at = from; at < winter.length; at += 1) {
    const day = winter[at];
    if (day === undefined) continue;
    if (at - from >= UP_AFTER_DAYS && hardens(day)) cold += 1;
    if (day.crownC <= THAW.freezeC && thawed >= THAW.days) turns += 1;
    thawed = day.meanC > 0 ? thawed + 1 : 0;
    const end = ended(day.crownC, standsOn(range, day.frozen ? cold : HARDENS.days.latest, turns));
    if (end === 'dies') return end;
    if (end === 'unsure') worst = end;
  }
  return worst;
}

/** Soil below 10 °C hardens; where it is not known the air stands in. */
function hardens({ soilC, meanC }: CrownDay): boolean {
  return (soilC ?? meanC) < HARDENS.belowC;
}

/**
 * The range a plant dies in after so many days of hardening. The cold end goes with the soonest hardening and loses
 * nothing to thaws, the warm end with the latest, so that what is sure is surely so.
 */
function standsOn({ low, high }: Span, cold: number, turns: number): Span {
  const { soonest, latest } = HARDENS.days;
  const lossC = turns >= THAWS.turns ? THAWS.lossC : 0;
  const coldEnd = hardened(low, cold / soonest);
  return { low: coldEnd, high: Math.max(coldEnd, hardened(high, cold / latest) + lossC) };
}

function hardened(fullC: number, share: number): number {
  return UNHARDENED_C + (fullC - UNHARDENED_C) * Math.min(1, share);
}
