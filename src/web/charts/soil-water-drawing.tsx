/**
 * Water in the top of a bed: how much is gone of what the soil can hold, against what must be gone before it is fit to
 * work.
 */
import type { ModelledDay } from '../../climate/season-course.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { figure, plain, waterUnit } from './amounts-drawn.ts';
import { CourseFrame, labelBelow, lineLabel, placesOf } from './course-frame.tsx';
import { amountsOf, ModelledLines, modelledColumns } from './modelled-lines.tsx';
import { roundTicks } from './scales.ts';
import { WeeklyTable } from './weekly-table.tsx';

const TICKS = 4;

interface SoilWaterDrawingProps {
  days: readonly ModelledDay[];
  /** Water that must be gone before the soil is fit to work, mm. */
  fitMm: number;
  /** The soil, in words: "silt loam, raised beds". */
  soil: string;
  today: Day;
  units: UnitSystem;
}

/** The drawing with its weekly figures. Wet is at the top, dry at the foot. */
export const SoilWaterDrawing = ({ days, fitMm, soil, today, units }: SoilWaterDrawingProps) => {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const unit = waterUnit(units);
  const span = { from: first.day, to: last.day };
  const amounts = [...amountsOf(days, unit), 0, unit.of(fitMm)];
  const [wettest, driest] = [Math.min(...amounts), Math.max(...amounts)];
  const spare = (driest - wettest) / 12;
  const places = placesOf(span, { from: driest + spare, to: wettest - spare });
  const seen = days.find(({ now }) => now !== undefined);
  return (
    <figure class="drawing">
      <h3>
        Water gone from the top soil, {unit.name} ({soil})
      </h3>
      <CourseFrame
        days={span}
        today={today}
        places={places}
        ticks={roundTicks({ from: wettest, to: driest }, TICKS).map((at) => ({ at, text: plain(at, 2) }))}
        labels={[
          lineLabel(places, last.day, unit.of(fitMm), 'below this dry enough to work', 'end'),
          ...(last.usual === undefined
            ? []
            : [
                lineLabel(places, last.day, unit.of(last.usual.median), 'median of past years', 'end'),
                labelBelow(places, last.day, unit.of(last.usual.high), 'one past year of ten is drier', 'end'),
              ]),
          ...(seen?.now === undefined
            ? []
            : [lineLabel(places, seen.day, unit.of(seen.now.median), 'this season', 'start')]),
        ]}
        words={inWords({ days, fitMm, soil, today, units })}
      >
        <path class="limit-line" d={`M${places.x(span.from)} ${places.y(unit.of(fitMm))}H${places.x(span.to)}`} />
        <ModelledLines days={days} today={today} places={places} unit={unit} />
      </CourseFrame>
      <WeeklyTable days={days} columns={modelledColumns(days, unit.name, (mm) => figure(mm, unit))} units={units} />
    </figure>
  );
};

function inWords({ days, fitMm, soil, today, units }: SoilWaterDrawingProps): string {
  const unit = waterUnit(units);
  const row = days.find(({ day }) => day === today);
  const [from, to] = [days[0]?.day ?? '', days.at(-1)?.day ?? ''];
  const gone = figure((row?.now ?? row?.usual)?.median, unit);
  return (
    `Water gone from the top of the soil (${soil}) from ${formatDay(from, units)} to ${formatDay(to, units)}. ` +
    `Today, in the middle case: ${gone} ${unit.name}; ${figure(fitMm, unit)} ${unit.name} must be gone before it is fit to work.`
  );
}
