/**
 * Snow lying, day by day.
 */
import type { ModelledDay } from '../../climate/season-course.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { figure, plain, snowUnit } from './amounts-drawn.ts';
import { CourseFrame, lineLabel, placesOf } from './course-frame.tsx';
import type { Label } from './lines.ts';
import { amountsOf, ModelledLines, modelledColumns } from './modelled-lines.tsx';
import { roundTicks } from './scales.ts';
import { WeeklyTable } from './weekly-table.tsx';

/** Snow below this is not worth a drawing, cm. House default. */
const TRACE_CM = 0.5;
const TICKS = 4;

interface SnowDrawingProps {
  days: readonly ModelledDay[];
  today: Day;
  units: UnitSystem;
}

/** The drawing with its weekly figures, or a sentence where no snow lies. */
export const SnowDrawing = ({ days, today, units }: SnowDrawingProps) => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const span = { from: first.day, to: last.day };
  const dates = `from ${formatDay(span.from, units)} to ${formatDay(span.to, units)}`;
  const most = days.reduce((cm, { now, usual }) => Math.max(cm, now?.median ?? 0, usual?.high ?? 0), 0);
  const unit = snowUnit(units);
  const extent = { from: 0, to: Math.max(...amountsOf(days, unit)) * 1.1 };
  const places = placesOf(span, extent);
  return (
    <figure class="drawing">
      <h3>Snow lying, {unit.name}</h3>
      {most < TRACE_CM ? (
        <p class="small">None {dates}, neither this season nor in nine past years of ten.</p>
      ) : (
        <>
          <CourseFrame
            days={span}
            today={today}
            places={places}
            ticks={roundTicks(extent, TICKS).map((at) => ({ at, text: plain(at, 1) }))}
            labels={labelsOf(days, unit.of, places)}
            words={`Depth of the snow lying ${dates}. Today, in the middle case: ${todayText(days, today, units)}.`}
          >
            <ModelledLines days={days} today={today} places={places} unit={unit} />
          </CourseFrame>
          <WeeklyTable days={days} columns={modelledColumns(days, unit.name, (cm) => figure(cm, unit))} units={units} />
        </>
      )}
    </figure>
  );
};

function todayText(days: readonly ModelledDay[], today: Day, units: UnitSystem): string {
  const row = days.find(({ day }) => day === today);
  const unit = snowUnit(units);
  return `${figure((row?.now ?? row?.usual)?.median, unit)} ${unit.name}`;
}

/** Each line is named where it stands highest. */
function labelsOf(
  days: readonly ModelledDay[],
  of: (cm: number) => number,
  places: Parameters<typeof lineLabel>[0],
): Label[] {
  const lines = [
    { text: 'one past year of ten has more', cmOf: ({ usual }: ModelledDay) => usual?.high },
    { text: 'median of past years', cmOf: ({ usual }: ModelledDay) => usual?.median },
    { text: 'this season', cmOf: ({ now }: ModelledDay) => now?.median },
  ];
  return lines.flatMap(({ text, cmOf }) => {
    const highest = days.reduce(
      (most, row) => ((cmOf(row) ?? 0) > (cmOf(most) ?? 0) ? row : most),
      days[0] ?? { day: '' },
    );
    const cm = cmOf(highest) ?? 0;
    if (cm < TRACE_CM) return [];
    const right = days.indexOf(highest) > days.length / 2;
    return [lineLabel(places, highest.day, of(cm), text, right ? 'end' : 'start')];
  });
}
