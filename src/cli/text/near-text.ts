/**
 * The stations around a place: each with its distance, height and published dates, and what they say together.
 */
import type { FreezeEvent } from '../../climate/climate.ts';
import type { NearStation, weightedFreezeDates } from '../../climate/stations.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Station } from '../../handbook/stations.ts';
import type { MonthDay } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { columns } from './output.ts';

/** Stations listed; the mean is made of one more. */
const LISTED = 5;

/** The dates several stations make together; nothing where none has dates. */
type Together = ReturnType<typeof weightedFreezeDates>;

/** What was found around a place. */
export interface Found {
  place: { latitude: number; longitude: number; elevationM?: number };
  /** Nearest first. */
  stations: readonly NearStation[];
  /** Their height-corrected weighted mean; absent where most have no dates. */
  together: Together;
  notes: readonly string[];
}

/** What was found, as data. `p10` is the cautious date, mirrored from the published two. */
export function nearJson({ place, stations, together, notes }: Found): object {
  return {
    place,
    stations: stations.slice(0, LISTED).map(({ station, distanceKm, heightDifferenceM }) => ({
      id: station.id,
      name: station.name,
      state: station.state,
      distanceKm: tenth(distanceKm),
      ...(heightDifferenceM === undefined ? {} : { heightDifferenceM: Math.round(heightDifferenceM) }),
      elevationM: station.elevationM,
      yearRoundFreeze: station.yearRoundFreeze,
      wrapsYear: station.wrapsYear,
      ...datesOf(station),
      seasonDays: { p50: station.seasonDaysP50, p90: station.seasonDaysP90 },
    })),
    together:
      together === undefined
        ? null
        : {
            stationsUsed: together.stationsUsed,
            lastSpring: together['last-spring'],
            firstAutumn: together['first-autumn'],
            giveOrTakeDays: GIVE_OR_TAKE_DAYS,
          },
    notes,
  };
}

function datesOf({ lastSpringP50, lastSpringP90, firstFallP50, firstFallP90 }: Station): object {
  return lastSpringP50 === undefined
    ? {}
    : {
        lastSpring: { p50: lastSpringP50, p90: lastSpringP90 },
        firstAutumn: { p50: firstFallP50, p90: firstFallP90 },
      };
}

/** How far off a date worked out from neighbours usually is; every second place is within about five days. */
const GIVE_OR_TAKE_DAYS = 7;

/** What was found, as lines of text. */
export function nearLines({ place, stations, together, notes }: Found): string[] {
  const height = place.elevationM === undefined ? '' : `, ${place.elevationM} m above the sea`;
  return [
    `Stations near ${place.latitude}, ${place.longitude}${height}`,
    '',
    ...columns([HEADINGS, ...stations.slice(0, LISTED).map(stationRow)]),
    '',
    ...wrapped('Freezes at 0 °C (32 °F), NOAA normals of 1981–2010: the day with even odds.'),
    '',
    ...togetherLines(together, stations.length),
    ...notes.flatMap((note) => wrapped(readableIn('metric', note), '  ', '    ')),
    '',
    ...wrapped('In the garden file: "station: ID" takes one of them as it is, "nearest: true" all six together.'),
  ];
}

const HEADINGS = ['station', 'name', 'away', 'height', 'last of spring', 'first of autumn', 'days between'];

function stationRow({ station, distanceKm, heightDifferenceM }: NearStation): string[] {
  const about = [
    station.id,
    `${station.name}, ${station.state}`,
    `${tenth(distanceKm)} km`,
    heightDifferenceM === undefined ? `at ${Math.round(station.elevationM)} m` : signedMetres(heightDifferenceM),
  ];
  const { lastSpringP50, firstFallP50, seasonDaysP50 } = station;
  if (station.yearRoundFreeze) return [...about, 'any month', 'any month', String(seasonDaysP50)];
  return [...about, dayText(lastSpringP50), dayText(firstFallP50), String(seasonDaysP50)];
}

function signedMetres(metres: number): string {
  const whole = Math.round(metres);
  return `${whole > 0 ? '+' : ''}${whole} m`;
}

function dayText(monthDay: MonthDay | undefined): string {
  return monthDay === undefined ? 'no date' : formatDay(`2001-${monthDay}`, 'metric');
}

function togetherLines(together: Together, count: number): string[] {
  if (together === undefined) return ['Together they give no dates.'];
  const row = (event: FreezeEvent, name: string): string[] => {
    const { p10, p50, p90 } = together[event];
    return [name, ...[p10, p50, p90].map(dayText)];
  };
  const which =
    together.stationsUsed === count ? `the ${count} nearest` : `${together.stationsUsed} of the ${count} nearest`;
  return [
    ...wrapped(`Weighted mean of ${which}, brought to the height of the place where that is known:`),
    ...columns(
      [
        ['', 'one year in ten', 'even odds', 'nine in ten'],
        row('last-spring', 'last freeze, that day or later'),
        row('first-autumn', 'first freeze, that day or earlier'),
      ],
      '  ',
    ),
  ];
}
