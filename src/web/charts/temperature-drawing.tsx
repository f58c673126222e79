/**
 * The lowest or the highest temperature of each day: this season's against those of the record.
 */
import type { TemperatureDay } from '../../climate/season-course.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type DrawnUnit, figure, plain, temperatureUnit } from './amounts-drawn.ts';
import { CourseFrame, labelBelow, lineLabel, type Places, placesOf } from './course-frame.tsx';
import { bandPath, type Label, linePath } from './lines.ts';
import { roundTicks } from './scales.ts';
import { meanOfKnown, WeeklyTable } from './weekly-table.tsx';

const FREEZING_C = 0;
/** Amounts marked at the side, about so many. */
const TICKS = 4;

interface TemperatureDrawingProps {
  which: 'tminC' | 'tmaxC';
  days: readonly TemperatureDay[];
  today: Day;
  units: UnitSystem;
}

/** The drawing with its weekly figures. */
export const TemperatureDrawing = ({ which, days, today, units }: TemperatureDrawingProps) => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const unit = temperatureUnit(units);
  const span = { from: first.day, to: last.day };
  const extent = extentOf(days, unit);
  const places = placesOf(span, extent);
  const y = (tempC: number) => places.y(unit.of(tempC));
  const line = (tempOf: (row: TemperatureDay) => number | undefined) =>
    linePath(days.map((row) => pointOf(places, row.day, tempOf(row), unit)));
  return (
    <figure class="drawing">
      <h3>{which === 'tminC' ? 'Lowest of the day' : 'Highest of the day'}</h3>
      <CourseFrame
        days={span}
        today={today}
        places={places}
        ticks={roundTicks(extent, TICKS).map((at) => ({ at, text: `${plain(at, 0)}°` }))}
        labels={labelsOf(days, places, unit)}
        words={inWords(which, days, units)}
      >
        <path
          class="band"
          d={bandPath(
            days.map(({ day, usual }) => usual && { x: places.x(day), lowY: y(usual.low), highY: y(usual.high) }),
          )}
        />
        {which === 'tminC' && unit.of(FREEZING_C) > extent.from && unit.of(FREEZING_C) < extent.to && (
          <path class="limit-line" d={`M${places.x(span.from)} ${y(FREEZING_C)}H${places.x(span.to)}`} />
        )}
        <path class="usual-line" d={line(usualC)} />
        <path class="now-line" d={line(({ seenC }) => seenC)} />
        <path class="ahead-line" d={line(({ expectedC }) => expectedC)} />
      </CourseFrame>
      <WeeklyTable days={days} columns={columnsOf(days, unit)} units={units} />
    </figure>
  );
};

/** What is usual on a day: the median of the record's seasons, or the mean of the years where there is no record. */
function usualC({ usual, normalC }: TemperatureDay): number {
  return usual?.median ?? normalC;
}

function extentOf(days: readonly TemperatureDay[], { of }: DrawnUnit) {
  const all = days.flatMap(({ usual, normalC, seenC, expectedC }) =>
    [usual?.low, usual?.high, normalC, seenC, expectedC].filter((tempC) => tempC !== undefined).map(of),
  );
  return { from: Math.floor(Math.min(...all)) - 1, to: Math.ceil(Math.max(...all)) + 1 };
}

function pointOf({ x, y }: Places, day: Day, tempC: number | undefined, { of }: DrawnUnit) {
  return tempC === undefined ? undefined : { x: x(day), y: y(of(tempC)) };
}

function labelsOf(days: readonly TemperatureDay[], places: Places, { of }: DrawnUnit): Label[] {
  const last = days.at(-1);
  const seen = days.find(({ seenC }) => seenC !== undefined);
  const expected = days.findLast(({ expectedC }) => expectedC !== undefined);
  const ends =
    last?.usual === undefined
      ? [{ text: 'mean of the years', tempC: last?.normalC }]
      : [
          { text: 'one day of ten is warmer', tempC: last.usual.high },
          { text: 'median', tempC: last.usual.median },
        ];
  return [
    ...ends.flatMap(({ text, tempC }) =>
      last === undefined || tempC === undefined ? [] : [lineLabel(places, last.day, of(tempC), text, 'end')],
    ),
    ...(last?.usual === undefined
      ? []
      : [labelBelow(places, last.day, of(last.usual.low), 'one day of ten is colder', 'end')]),
    ...(seen?.seenC === undefined ? [] : [lineLabel(places, seen.day, of(seen.seenC), 'this season', 'start')]),
    ...(expected?.expectedC === undefined
      ? []
      : [lineLabel(places, expected.day, of(expected.expectedC), 'expected', 'start')]),
  ];
}

function columnsOf(days: readonly TemperatureDay[], unit: DrawnUnit) {
  const mean = (week: readonly TemperatureDay[], tempOf: (row: TemperatureDay) => number | undefined) =>
    figure(meanOfKnown(week.map(tempOf)), unit);
  const recorded = days.some(({ usual }) => usual !== undefined);
  const season = {
    head: `This season, ${unit.name}`,
    cell: (week: readonly TemperatureDay[]) => mean(week, ({ seenC, expectedC }) => seenC ?? expectedC),
  };
  const usual = {
    head: recorded ? 'Median' : 'Mean of the years',
    cell: (week: readonly TemperatureDay[]) => mean(week, usualC),
  };
  const band = {
    head: '1 to 9 of 10 days',
    cell: (week: readonly TemperatureDay[]) =>
      `${mean(week, (row) => row.usual?.low)} to ${mean(week, (row) => row.usual?.high)}`,
  };
  return recorded ? [season, usual, band] : [season, usual];
}

function inWords(which: 'tminC' | 'tmaxC', days: readonly TemperatureDay[], units: UnitSystem): string {
  const unit = temperatureUnit(units);
  const seen = days.filter(({ seenC }) => seenC !== undefined);
  const [from, to] = [days[0]?.day ?? '', days.at(-1)?.day ?? ''];
  const what = which === 'tminC' ? 'Lowest' : 'Highest';
  const head = `${what} temperature of each day from ${formatDay(from, units)} to ${formatDay(to, units)}.`;
  if (seen.length === 0) return `${head} None was logged.`;
  const meanC = figure(meanOfKnown(seen.map(({ seenC }) => seenC)), unit);
  const usual = figure(meanOfKnown(seen.map(usualC)), unit);
  return `${head} The ${seen.length} days logged lie at ${meanC} ${unit.name} on average; usual is ${usual} ${unit.name}.`;
}
