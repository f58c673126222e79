/**
 * Compost added up over the year: what has become ready by each day, against what the beds have wanted by then.
 */
import { dayOfNeed, type YardMonth, type YardSheet } from '../../digest/yard-sheet.ts';
import { monthName } from '../../digest/yard-words.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type DrawnUnit, figure, plain, volumeUnit } from './amounts-drawn.ts';
import { CourseFrame, type Places, placesOf } from './course-frame.tsx';
import { stepPath } from './lines.ts';
import { roundTicks } from './scales.ts';

const TICKS = 4;
/** Days of the last month that are drawn. */
const LAST_MONTH_DAYS = 27;

interface SupplyDrawingProps {
  sheet: YardSheet;
  units: UnitSystem;
}

/** Something that happens on a day, litres. */
interface Step {
  day: Day;
  litres: number;
}

/** The drawing with its monthly figures. */
export const SupplyDrawing = ({ sheet, units }: SupplyDrawingProps) => {
  const { today, months } = sheet;
  const unit = volumeUnit(units);
  const days = { from: today, to: addDays(months.at(-1)?.from ?? today, LAST_MONTH_DAYS) };
  const ready = addedUp(
    sheet.heaps.map((heap) => ({ day: latestOf(heap.ready, today), litres: heap.litres })),
    days,
  );
  const wanted = addedUp(
    sheet.beds.map((bed) => ({ day: dayOfNeed(bed, today), litres: bed.litres })),
    days,
  );
  const top = Math.max(ready.at(-1)?.litres ?? 0, wanted.at(-1)?.litres ?? 0, 1);
  const places = placesOf(days, { from: 0, to: unit.of(top) * 1.08 });
  return (
    <figure class="drawing">
      <h3>Compost ready and wanted, added up, {unit.name}</h3>
      <CourseFrame
        days={days}
        today={today}
        places={places}
        ticks={roundTicks({ from: 0, to: unit.of(top) }, TICKS).map((at) => ({ at, text: plain(at, unit.digits) }))}
        labels={[]}
        words={inWords(sheet, unit)}
      >
        <path class="now-line" d={pathOf(ready, places, unit, days.to)} />
        <path class="ahead-line" d={pathOf(wanted, places, unit, days.to)} />
      </CourseFrame>
      <p class="small">
        Whole line: ready by then. Broken line: wanted by then. Where the broken one lies higher, compost is short.
      </p>
      <MonthTable months={months} unit={unit} />
    </figure>
  );
};

/** Amounts added up from the first day on. */
function addedUp(steps: readonly Step[], { from, to }: { from: Day; to: Day }): Step[] {
  let litres = 0;
  const inside = steps.filter(({ day }) => day <= to).sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return [
    { day: from, litres: 0 },
    ...inside.map((step) => {
      litres += step.litres;
      return { day: step.day, litres };
    }),
  ];
}

function pathOf(steps: readonly Step[], { x, y }: Places, { of }: DrawnUnit, to: Day): string {
  return stepPath(
    steps.map(({ day, litres }) => ({ x: x(day), y: y(of(litres)) })),
    x(to),
  );
}

function inWords({ months }: YardSheet, unit: DrawnUnit): string {
  const total = (of: 'ready' | 'wanted' | 'short'): string =>
    `${figure(
      months.reduce((sum, month) => sum + month[of], 0),
      unit,
    )} ${unit.name}`;
  return (
    `Compost from ${monthName(months[0]?.from ?? '')} to ${monthName(months.at(-1)?.from ?? '')}: ${total('ready')} become ready, ` +
    `${total('wanted')} are wanted, ${total('short')} are short.`
  );
}

const MonthTable = ({ months, unit }: { months: readonly YardMonth[]; unit: DrawnUnit }) => (
  <details>
    <summary>The same in figures, by month</summary>
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">Month</th>
          {['ready', 'wanted', 'short', 'left'].map((head) => (
            <th scope="col">
              {head}, {unit.name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {months.map(({ from, ready, wanted, short, left }) => (
          <tr>
            <th scope="row">{monthName(from)}</th>
            {[ready, wanted, short, left].map((litres) => (
              <td>{litres === 0 ? '–' : figure(litres, unit)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);
