/**
 * Days fit to work: how many of a hundred ways the season may go let the soil be worked on a day.
 */
import type { FitDay } from '../../climate/season-course.ts';
import type { Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { CourseFrame, lineLabel, type Places, placesOf } from './course-frame.tsx';
import { type Label, linePath } from './lines.ts';
import { WeeklyTable } from './weekly-table.tsx';

const PERCENT_TICKS = [0, 25, 50, 75, 100];

interface FitDrawingProps {
  days: readonly FitDay[];
  today: Day;
  units: UnitSystem;
}

/** The drawing, what it comes to in days, and its weekly figures. */
export const FitDrawing = ({ days, today, units }: FitDrawingProps) => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const span = { from: first.day, to: last.day };
  const places = placesOf(span, { from: 0, to: 100 });
  const words = fitInWords(days, today);
  const line = (rows: readonly FitDay[], which: 'now' | 'usual') =>
    linePath(
      rows.map((row) =>
        row[which] === undefined ? undefined : { x: places.x(row.day), y: places.y(100 * row[which]) },
      ),
    );
  return (
    <figure class="drawing">
      <h3>Fit to work, % of the ways the season may go</h3>
      <CourseFrame
        days={span}
        today={today}
        places={places}
        ticks={PERCENT_TICKS.map((at) => ({ at, text: String(at) }))}
        labels={labelsOf(days, today, places)}
        words={words}
      >
        <path class="usual-line" d={line(days, 'usual')} />
        <path
          class="now-line"
          d={line(
            days.filter(({ day }) => day <= today),
            'now',
          )}
        />
        <path
          class="ahead-line"
          d={line(
            days.filter(({ day }) => day >= today),
            'now',
          )}
        />
      </CourseFrame>
      <p class="small">{words}</p>
      <WeeklyTable days={days} columns={columnsOf(days)} units={units} />
    </figure>
  );
};

/** Past years are named on the day up to today on which this season stands furthest from them. */
function labelsOf(days: readonly FitDay[], today: Day, places: Places): Label[] {
  const apartOn = ({ now, usual }: FitDay) => (now === undefined || usual === undefined ? 0 : Math.abs(now - usual));
  const usual = days
    .filter(({ day }) => day <= today)
    .reduce<FitDay | undefined>((most, row) => (most && apartOn(most) >= apartOn(row) ? most : row), undefined);
  const now = days.find((row) => row.now !== undefined);
  return [
    ...(usual?.usual === undefined ? [] : [lineLabel(places, usual.day, 100 * usual.usual, 'past years', 'start')]),
    ...(now?.now === undefined ? [] : [lineLabel(places, now.day, 100 * now.now, 'this season', 'start')]),
  ];
}

/** Fit days so far and to come, with what past years had. */
function fitInWords(days: readonly FitDay[], today: Day): string {
  const [past, ahead] = [days.filter(({ day }) => day <= today), days.filter(({ day }) => day > today)];
  const told = (rows: readonly FitDay[]) => {
    const usual = `about ${Math.round(daysFit(rows, 'usual'))} in past years`;
    const known = rows.some(({ now }) => now !== undefined);
    return known ? `about ${Math.round(daysFit(rows, 'now'))} (${usual})` : usual;
  };
  return `Of the ${past.length} days up to today ${told(past)} were fit; of the ${ahead.length} to come ${told(ahead)}.`;
}

function daysFit(rows: readonly FitDay[], which: 'now' | 'usual'): number {
  return rows.reduce((sum, row) => sum + (row[which] ?? 0), 0);
}

function columnsOf(days: readonly FitDay[]) {
  const fitDays = (week: readonly FitDay[], which: 'now' | 'usual') =>
    week.some((row) => row[which] !== undefined) ? daysFit(week, which).toFixed(1) : '–';
  const usual = { head: 'Days fit, past years', cell: (week: readonly FitDay[]) => fitDays(week, 'usual') };
  const now = { head: 'Days fit, this season', cell: (week: readonly FitDay[]) => fitDays(week, 'now') };
  return days.some((row) => row.now !== undefined) ? [now, usual] : [usual];
}
