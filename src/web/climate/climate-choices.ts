/**
 * What a garden's climate can be taken from, each with the freeze dates it gives.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeOdds } from '../../climate/freeze.ts';
import { climateFromStation, climateFromStations } from '../../climate/from-station.ts';
import type { Odds } from '../../climate/odds.ts';
import { seasonOf, seasonTurnOf } from '../../climate/season.ts';
import type { Site } from '../../climate/site.ts';
import { type NearStation, nearestStations, STATIONS_WEIGHTED } from '../../climate/stations.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { DraftClimate, DraftPlace } from '../../garden/set-up-draft.ts';
import type { Station } from '../../handbook/stations.ts';
import type { Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';

/** Stations offered one by one. */
const OFFERED = 3;

/** Farther than this a station tells less than the gardener's own dates, km. House default. */
export const FAR_KM = 150;

/** The units usual at a place: those of the United States near one of its stations, which are all there are. */
export function unitsAt(stations: readonly Station[], { latitude, longitude }: DraftPlace): UnitSystem {
  const [near] = nearestStations(stations, { latitude, longitude }, 1);
  return near !== undefined && near.distanceKm <= FAR_KM ? 'us' : 'metric';
}

/** Freeze dates of a season. */
export interface FreezeDatesShown {
  spring: Odds;
  autumn: Odds;
}

/** One thing the climate can be taken from. */
export interface ClimateOption {
  /** As the form sends it. */
  value: string;
  climate: DraftClimate;
  /** Absent where none can be worked out. */
  dates?: FreezeDatesShown;
  /** The station, where it is one. */
  near?: NearStation;
}

/** What can be chosen around a place besides own dates, and how far the nearest station is. */
export interface ClimateChoices {
  options: readonly ClimateOption[];
  nearestKm?: number;
}

/** The stations around a place one by one, and their mean; none where the table says nothing of it. */
export function climateChoices(stations: readonly Station[], place: DraftPlace, today: Day): ClimateChoices {
  const { latitude, longitude, elevationM } = place;
  const at = { latitude, longitude, ...(elevationM === undefined ? {} : { elevationM }) };
  const site: Site = { ...at, frostOffsetDays: 0, tempOffsetC: 0 };
  const near = nearestStations(stations, at, STATIONS_WEIGHTED);
  const alone = near.slice(0, OFFERED).flatMap((each): ClimateOption[] => {
    const climate = known(() => climateFromStation(each.station, site));
    const { id } = each.station;
    if (climate === undefined) return [];
    return [{ value: `station:${id}`, climate: { station: id }, near: each, dates: datesIn(climate, today) }];
  });
  const mean = known(() => climateFromStations(near, site));
  const together: ClimateOption[] =
    mean === undefined || alone.length === 0
      ? []
      : [{ value: 'nearest', climate: { nearest: true }, dates: datesIn(mean, today) }];
  const [nearest] = near;
  return { options: [...alone, ...together], ...(nearest === undefined ? {} : { nearestKm: nearest.distanceKm }) };
}

/** The freeze dates of a climate, in the season of a day. */
export function datesIn(climate: Climate, today: Day): FreezeDatesShown {
  const season = seasonOf(seasonTurnOf(climate.latitude), today);
  return {
    spring: freezeOdds(climate, { event: 'last-spring', limitF: 32, season }),
    autumn: freezeOdds(climate, { event: 'first-autumn', limitF: 32, season }),
  };
}

function known(work: () => Climate): Climate | undefined {
  try {
    return work();
  } catch (error) {
    if (error instanceof InputRefused) return undefined;
    throw error;
  }
}
