/**
 * The climate a garden asked for, from the record it brought or the built-in station table.
 */
import type { Climate } from '../../climate/climate.ts';
import { climateFromFrostDates } from '../../climate/from-frost-dates.ts';
import { climateFromNormals } from '../../climate/from-normals.ts';
import { climateFromRecord } from '../../climate/from-record.ts';
import { climateFromStation, climateFromStations } from '../../climate/from-station.ts';
import { seasonOf, seasonTurnOf } from '../../climate/season.ts';
import { nearestStations, STATIONS_WEIGHTED } from '../../climate/stations.ts';
import type { Garden, Place } from '../../garden/garden.ts';
import { unknownStation } from '../../garden/known-names.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { Station } from '../../handbook/stations.ts';
import type { Day } from '../../measures/days.ts';
import type { WeatherRecord } from '../../store/weather.ts';

/** What climates are made from besides the garden. */
export interface ClimateSources {
  record: WeatherRecord | undefined;
  stations: () => Promise<readonly Station[]>;
}

/**
 * Works out a garden's climate as it stands on a day.
 *
 * @throws {InputRefused} when the garden names a record that was never brought in, or a station that is not in the table
 */
export async function climateOf(
  garden: Pick<Garden, 'climate' | 'place'>,
  today: Day,
  sources: ClimateSources,
): Promise<Climate> {
  const { climate: choice, place } = garden;
  const site = siteOf(place);
  switch (choice.kind) {
    case 'daily-record':
      return fromRecord(place, today, choice.file, sources.record);
    case 'station':
      return climateFromStation(await stationNamed(choice.station, sources), site);
    case 'nearest':
      return climateFromStations(nearestStations(await sources.stations(), place, STATIONS_WEIGHTED), site);
    case 'monthly-normals': {
      const { highC, lowC, precipMm } = choice;
      return climateFromNormals({ ...site, highC, lowC, precipMm });
    }
    case 'frost-dates': {
      const { lastSpring, firstAutumn } = choice;
      const zone = place.hardinessZone === undefined ? {} : { hardinessZone: place.hardinessZone };
      return climateFromFrostDates({ ...site, lastSpring, firstAutumn, ...zone });
    }
    default:
      return choice satisfies never;
  }
}

function siteOf(place: Place) {
  const { latitude, longitude, frostOffsetDays, tempOffsetC, elevationM } = place;
  return { latitude, longitude, frostOffsetDays, tempOffsetC, ...(elevationM === undefined ? {} : { elevationM }) };
}

function fromRecord(place: Place, today: Day, file: string, record: WeatherRecord | undefined): Climate {
  if (record === undefined) {
    throw new InputRefused('The climate cannot be worked out.', [
      {
        where: 'climate.dailyRecord',
        what: `"${file}" has not been brought in.`,
        mend: `Bring it in with: loamtide weather import ${file}`,
      },
    ]);
  }
  return climateFromRecord({
    ...siteOf(place),
    rows: record.days,
    origin: record.origin,
    before: seasonOf(seasonTurnOf(place.latitude), today),
    leaveOut: record.leftOut,
  });
}

async function stationNamed(id: string, sources: ClimateSources): Promise<Station> {
  const station = (await sources.stations()).find((row) => row.id === id);
  if (station !== undefined) return station;
  throw new InputRefused('The climate cannot be worked out.', [unknownStation(id)]);
}
