import { basename } from 'node:path';
import { joined, recordOf } from '../../steward/files/record-join.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { command, switchOption } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { fileNotes, readWeather, type WeatherRows } from '../files/weather-source.ts';
import { counted } from '../text/counted.ts';
import { writeLines } from '../text/output.ts';

export const weatherImport = command({
  name: 'import',
  about: 'Brings days into the weather record that the climate is worked out from.',
  argument: {
    flags: '<file>',
    about: 'CSV with the columns date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm, or NOAA GHCN-Daily; also as .gz',
  },
  options: {
    keepGood: switchOption('--keep-good', 'bring the good rows in where some cannot be used'),
    replace: switchOption('--replace', 'put the file in place of the whole record'),
    ...ofOneGarden,
  },
  run: async (call) => {
    const { at, options, argument: name = '' } = call;
    const rows = await readWeather(at.cwd, name, options.keepGood ?? false);
    await withHousehold(call, {}, async ({ steward, store }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const held = await store.weatherRecord(gardenId);
      const fresh = recordOf(basename(name), rows.days);
      const { record, replaced } =
        held === undefined
          ? { record: fresh, replaced: 0 }
          : options.replace
            ? { record: { ...fresh, leftOut: held.leftOut }, replaced: 0 }
            : joined(held, fresh);
      await steward.importWeather(gardenId, record);
      const { garden } = await steward.view(gardenId);
      const used = garden.climate.kind === 'daily-record';
      writeLines(at.stdout, [...report(name, rows, record, replaced), ...(used ? [] : [NOT_USED])]);
    });
  },
});

const NOT_USED = 'It is kept, but the garden file takes its climate from elsewhere: write dailyRecord there to use it.';

function report(name: string, rows: WeatherRows, record: WeatherRecord, replaced: number): string[] {
  return [
    `${counted(rows.days.length, 'day')} brought in from ${name}.`,
    ...fileNotes(name, rows),
    ...(replaced === 0 ? [] : [`${counted(replaced, 'day')} of the record replaced.`]),
    `The record now holds ${counted(record.days.length, 'day')}, ${record.days[0]?.day} to ${record.days.at(-1)?.day}.`,
  ];
}
