/**
 * A garden's climate from stations with published freeze dates: one that is named, or the nearest ones together.
 */
import { InputRefused } from '../garden/problem.ts';
import type { Station, StationFlag } from '../handbook/stations.ts';
import { quantity } from '../measures/quantity.ts';
import type { Climate, FreezeEvent, MonthlyNormals } from './climate.ts';
import { PER_100_M_UP } from './fitted.ts';
import { normalQuantile } from './quantiles.ts';
import { seasonTurnOf } from './season.ts';
import { offsetNotes, type Site, warmed } from './site.ts';
import { DERIVED_NOTE, type KnownFreeze, NO_FREEZES, statedFreezes } from './stated-freezes.ts';
import {
  type NearStation,
  type StationFreezes,
  seenFrom,
  stationFreezes,
  weightedFreezes,
  weightedMean,
  weightOf,
} from './stations.ts';

/** A station farther off than this says little of a garden, km. House default: half of gardens have one within 13 km. */
const FAR_KM = 100;

/** Height difference from which a station's spring date is off by more than two weeks on average, m (docs/climate.md). */
const STEEP_M = 300;

/** Share of the weight that stations without dates may hold before the mean of the others is refused. House default. */
const UNDATED_WEIGHT_ALLOWED = 0.5;

const NORMALS = 'NOAA normals of 1981–2010';

const MIRROR_NOTE =
  'The cautious dates (one year in ten) are mirrored from the published 50 and 90 % dates, good to about five days.';

const FLAG_NOTES: Readonly<Record<StationFlag, string | undefined>> = {
  C: undefined,
  S: undefined,
  R: 'Its record is incomplete and was scaled to stand for the thirty years.',
  P: 'Its record is incomplete, ten years or more.',
};

/**
 * The climate of one named station. Its published dates are kept as they are; a height difference is only told.
 *
 * @throws InputRefused when the station lies in the other half of the world
 */
export function climateFromStation(station: Station, place: Site): Climate {
  if (seasonTurnOf(station.latitude) !== seasonTurnOf(place.latitude)) throw otherHalf(station, place);
  const near = seenFrom(place, station);
  const dates = stationFreezes(station);
  return {
    basis: 'station',
    origin: `${NORMALS} at ${nameOf(station)}, ${distanceOf(near)} away.`,
    confidence: 'modelled',
    ...placeOf(place),
    freezes: dates ? freezesOf(dates, station.normals.tminC, place) : NO_FREEZES,
    seasons: [],
    logged: [],
    frostOffsetDays: 0,
    normals: warmed(station.normals, place.tempOffsetC),
    notes: [
      ...(dates ? [MIRROR_NOTE, DERIVED_NOTE] : [undatedNote(station)]),
      ...textOf(FLAG_NOTES[station.flag]),
      ...heightNotes(near),
      ...(near.distanceKm > FAR_KM ? [`It is ${distanceOf(near)} away: its dates may not be the garden's.`] : []),
      ...offsetNotes(place),
    ],
  };
}

/**
 * The climate of several stations together: nearer ones weigh more, and each is first brought to the garden's height.
 * Where most of the weight lies with stations that have no dates, none are given.
 *
 * @param near the stations to use, nearest first
 * @throws InputRefused without a station within 100 km
 */
export function climateFromStations(near: readonly NearStation[], place: Site): Climate {
  const nearest = near[0];
  if (!nearest || nearest.distanceKm > FAR_KM) throw tooFar(nearest);
  const undated = near.filter(({ station }) => stationFreezes(station) === undefined);
  const undatedShare = sumOf(undated.map(weightOf)) / sumOf(near.map(weightOf));
  const dates = undatedShare >= UNDATED_WEIGHT_ALLOWED ? undefined : weightedFreezes(near);
  const normals = meanNormals(near);
  return {
    basis: 'weighted-stations',
    origin: `${NORMALS}, weighted mean of ${near.map((each) => `${nameOf(each.station)} (${distanceOf(each)})`).join(', ')}.`,
    confidence: 'derived',
    ...placeOf(place),
    freezes: dates ? freezesOf(dates, normals.tminC, place) : NO_FREEZES,
    seasons: [],
    logged: [],
    frostOffsetDays: 0,
    normals: warmed(normals, place.tempOffsetC),
    notes: [
      ...(dates
        ? [
            'Give or take a week: half of places are within four days of such a mean, one in ten is twelve days off.',
            MIRROR_NOTE,
            DERIVED_NOTE,
          ]
        : []),
      ...undated.map(({ station }) => `${nameOf(station)} is left out of the dates. ${undatedNote(station)}`),
      ...heightNotes(nearest),
      ...offsetNotes(place),
    ],
  };
}

function freezesOf(dates: StationFreezes, tminC: readonly number[], place: Site): Climate['freezes'] {
  const known: Readonly<Record<FreezeEvent, KnownFreeze>> = {
    'last-spring': mirrored(dates.springP50, dates.springP50 - dates.springP90),
    'first-autumn': mirrored(dates.autumnP50, dates.autumnP90 - dates.autumnP50),
  };
  return statedFreezes(known, { tminC, turn: seasonTurnOf(place.latitude) }, place);
}

/** A date whose unpublished side is taken to be as wide as the published one. */
function mirrored(median: number, daysToP90: number): KnownFreeze {
  const spread = daysToP90 / normalQuantile(0.9);
  return { median, spreadBeforeDays: spread, spreadAfterDays: spread };
}

function placeOf({ latitude, longitude }: Site): Pick<Climate, 'latitude' | 'longitude' | 'seasonTurn'> {
  return { latitude, longitude, seasonTurn: seasonTurnOf(latitude) };
}

/** Weighted means of the stations' months, each brought to the garden's height; rain from those that measure it. */
function meanNormals(near: readonly NearStation[]): MonthlyNormals {
  const months = Array.from({ length: 12 }, (_, month) => month);
  const temperature = (which: 'tmaxC' | 'tminC', perHundredM: number): number[] =>
    months.map((month) =>
      weightedMean(
        near,
        ({ station, heightDifferenceM = 0 }) =>
          (station.normals[which][month] ?? Number.NaN) - (perHundredM * heightDifferenceM) / 100,
      ),
    );
  const rainy = near.filter(({ station }) => station.normals.rainMm !== undefined);
  const rainMm = months.map((month) =>
    weightedMean(rainy, ({ station }) => station.normals.rainMm?.[month] ?? Number.NaN),
  );
  return {
    tmaxC: temperature('tmaxC', PER_100_M_UP.maximumC),
    tminC: temperature('tminC', PER_100_M_UP.minimumC),
    ...(rainy.length > 0 ? { rainMm } : {}),
  };
}

function undatedNote(station: Station): string {
  return station.yearRoundFreeze
    ? `A freeze can come there in any month, so there is no date; half of years have ${station.seasonDaysP50} days without one.`
    : 'Its freeze dates run over the turn of the year, too mild a place to plan from.';
}

function heightNotes({ station, heightDifferenceM }: NearStation): string[] {
  if (heightDifferenceM === undefined) return ["The garden's height is not known, so no date is corrected for it."];
  if (Math.abs(heightDifferenceM) <= STEEP_M) return [];
  const apart = quantity(Math.round(Math.abs(heightDifferenceM)), 'm');
  return [
    `${nameOf(station)} lies ${apart} ${heightDifferenceM > 0 ? 'above' : 'below'} the garden: its spring date can be more than two weeks off.`,
  ];
}

function otherHalf(station: Station, { latitude }: Site): InputRefused {
  return new InputRefused('The station does not fit the garden.', [
    {
      where: 'climate.station',
      what: `${nameOf(station)} lies at latitude ${station.latitude} and the garden at ${latitude}, across the equator.`,
      mend: 'Check the sign of the latitude (south is negative), or give "frostDates" or "monthlyNormals" instead.',
    },
  ]);
}

function tooFar(nearest: NearStation | undefined): InputRefused {
  return new InputRefused('No station is near enough to take a climate from.', [
    {
      where: 'climate.nearest',
      what: nearest
        ? `The nearest station is ${Math.round(nearest.distanceKm)} km away; ${FAR_KM} km is the most.`
        : 'The station table is empty.',
      mend: 'Check the sign of the longitude (west is negative), or give "frostDates" or "monthlyNormals" instead.',
    },
  ]);
}

function nameOf({ name, state }: Station): string {
  return `${name}, ${state}`;
}

/** How far a station is, marked for its reader. */
function distanceOf({ distanceKm }: NearStation): string {
  return quantity(Math.round(distanceKm), 'km');
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}

function textOf(note: string | undefined): string[] {
  return note === undefined ? [] : [note];
}
