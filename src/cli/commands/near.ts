import { climateFromStations } from '../../climate/from-station.ts';
import { DERIVED_NOTE } from '../../climate/stated-freezes.ts';
import { nearestStations, STATIONS_WEIGHTED, weightedFreezeDates } from '../../climate/stations.ts';
import { readStationTable } from '../../store/station-file.ts';
import { command } from '../command-line/command.ts';
import { everywhere, formatOption } from '../command-line/options.ts';
import { numberValue } from '../command-line/values.ts';
import { nearJson, nearLines } from '../text/near-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

export const near = command({
  name: 'near',
  about: 'Lists the nearest weather stations with published freeze dates, and what they say together.',
  options: {
    lat: {
      flags: '--lat <degrees>',
      about: 'degrees north (south is negative)',
      value: numberValue('degrees north', 43.1, -90, 90),
    },
    lon: {
      flags: '--lon <degrees>',
      about: 'degrees east (west is negative)',
      value: numberValue('degrees east', -89.4, -180, 180),
    },
    elevation: {
      flags: '--elevation <metres>',
      about: 'metres above the sea',
      value: numberValue('metres above the sea', 260, -430, 6000).optional(),
    },
    ...everywhere,
    format: formatOption('text', 'json'),
  },
  run: async ({ at, options }) => {
    const { lat: latitude, lon: longitude, elevation } = options;
    const place = { latitude, longitude, ...(elevation === undefined ? {} : { elevationM: elevation }) };
    const stations = nearestStations(await readStationTable(), place, STATIONS_WEIGHTED);
    const climate = climateFromStations(stations, { ...place, frostOffsetDays: 0, tempOffsetC: 0 });
    const dated = climate.freezes[32]['last-spring'].kind !== 'none';
    const together = dated ? weightedFreezeDates(stations) : undefined;
    // Only the freeze at 32 °F is listed.
    const notes = climate.notes.filter((note) => note !== DERIVED_NOTE);
    const found = { place, stations, together, notes };
    if (options.format === 'json') writeJson(at.stdout, nearJson(found), 'metric');
    else writeLines(at.stdout, nearLines(found));
  },
});
