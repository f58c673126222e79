import { changePreview } from '../../digest/change-preview.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { Day } from '../../measures/days.ts';
import { loggable } from '../../steward/facts/log-file.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { fileNotes, readWeather, refused, type WeatherRows } from '../files/weather-source.ts';
import { counted } from '../text/counted.ts';
import { writeLines } from '../text/output.ts';
import { previewLines } from '../text/preview-text.ts';

export const weatherLog = command({
  name: 'log',
  about: "Brings the days of a file into the garden's own weather log, which moves the dates of its season.",
  argument: {
    flags: '<file>',
    about:
      'CSV with date and any of tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm,watering_mm, or NOAA GHCN-Daily; also as .gz',
  },
  options: {
    keepGood: switchOption('--keep-good', 'bring the good rows in where some cannot be used'),
    expected: switchOption('--expected', 'a forecast, for days from today up to ten days ahead'),
    ...ofOneGarden,
  },
  run: async (call) => {
    const { at, options, argument: name = '' } = call;
    const keepGood = options.keepGood ?? false;
    const kind = options.expected ? 'expected' : 'observed';
    const read = await readWeather(at.cwd, name, keepGood, 'log');
    await withHousehold(call, {}, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const { garden } = await steward.view(gardenId);
      const found = usable(read, kind, await steward.today(gardenId));
      if (found.days.length === 0 || (found.problems.length > read.problems.length && !keepGood))
        throw refused(name, found.problems);
      const report = { kind: 'weather-logged' as const, days: [...found.days] };
      const { before, after } = await steward.previewReport(gardenId, report);
      await steward.report(gardenId, report, BY);
      writeLines(at.stdout, [
        ...logged(name, found, garden.weather),
        ...previewLines(changePreview(before, after), garden.place.units),
      ]);
    });
  },
});

type Found = Omit<WeatherRows, 'days'> & { days: readonly LoggedDay[] };

const OTHER_WAYS = {
  older: 'older ones go into the record: weather import.',
  forecast: 'A forecast is brought in with --expected.',
};

function usable(read: WeatherRows, kind: LoggedDay['kind'], today: Day): Found {
  const { days, problems } = loggable(read.days, { kind, today, ways: OTHER_WAYS });
  return { ...read, days, problems: [...read.problems, ...problems] };
}

function logged(name: string, found: Found, log: readonly LoggedDay[]): string[] {
  const { days } = found;
  const known = new Set(log.map(({ day, kind }) => `${day} ${kind}`));
  const replaced = days.filter(({ day, kind }) => known.has(`${day} ${kind}`)).length;
  return [
    `${counted(days.length, 'day')} logged from ${name}, ${days[0]?.day} to ${days.at(-1)?.day}.`,
    ...(replaced === 0 ? [] : [replacedLine(replaced)]),
    ...fileNotes(name, found),
  ];
}

function replacedLine(count: number): string {
  return `${counted(count, 'day')} had been logged before: what the file says of ${count === 1 ? 'it' : 'them'} replaces that.`;
}
