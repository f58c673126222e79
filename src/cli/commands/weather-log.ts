import { changePreview } from '../../digest/change-preview.ts';
import type { Problem } from '../../garden/problem.ts';
import type { DailyWeather, LoggedDay } from '../../garden/weather.ts';
import type { Day } from '../../measures/days.ts';
import { logSpan } from '../../steward/reports.ts';
import { command, switchOption } from '../command.ts';
import { counted } from '../counted.ts';
import { BY, chosenGarden, withHousehold } from '../household.ts';
import { ofOneGarden } from '../options.ts';
import { writeLines } from '../output.ts';
import { previewLines } from '../preview-text.ts';
import { fileNotes, readWeather, refused, type WeatherRows } from '../weather-source.ts';

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

/** The rows that say something of days that may be logged; the others are a problem each way. */
function usable(read: WeatherRows, kind: LoggedDay['kind'], today: Day): Found {
  const { from, to } = logSpan(kind, today);
  const measured = read.days.filter((row) => Object.keys(row).length > 1);
  const [early, late] = [measured.filter(({ day }) => day < from), measured.filter(({ day }) => day > to)];
  const days = measured.filter(({ day }) => day >= from && day <= to).map((row) => ({ ...row, kind }));
  const empty: Problem[] =
    measured.length > 0
      ? []
      : [{ where: 'the file', what: 'measures nothing.', mend: 'Give a figure a day at least.' }];
  return {
    ...read,
    days,
    problems: [
      ...read.problems,
      ...outside(early, `before ${from}`, `Give days from ${from} on; older ones go into the record: weather import.`),
      ...outside(
        late,
        `after ${to}`,
        kind === 'observed' ? 'A forecast is brought in with --expected.' : `Give days up to ${to}.`,
      ),
      ...empty,
    ],
  };
}

function outside(rows: readonly DailyWeather[], where: string, mend: string): Problem[] {
  if (rows.length === 0) return [];
  const span = rows.length === 1 ? rows[0]?.day : `${rows[0]?.day} to ${rows.at(-1)?.day}`;
  return [{ where: span ?? '', what: `${counted(rows.length, 'day')} ${where} cannot be logged.`, mend }];
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
