/**
 * The usual year: the highest and the lowest of a day, and the warmth of the soil, month by month.
 */
import type { MonthTold } from '../../digest/climate-told.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { figure, plain, temperatureUnit } from './amounts-drawn.ts';
import { CourseFrame, labelBelow, lineLabel, placesOf } from './course-frame.tsx';
import { bandPath, linePath } from './lines.ts';
import { roundTicks } from './scales.ts';

/** Middle of a month, days from its first. */
const MIDDLE = 14;
const TICKS = 4;

interface UsualYearProps {
  months: readonly MonthTold[];
  span: { from: Day; to: Day };
  today: Day;
  units: UnitSystem;
}

/** The drawing; the table of months has the same in figures. */
export const UsualYearDrawing = ({ months, span, today, units }: UsualYearProps) => {
  const unit = temperatureUnit(units);
  const all = months.flatMap(({ highC, lowC, soilC }) => [highC, lowC, soilC].map(unit.of));
  const extent = { from: Math.floor(Math.min(...all)) - 1, to: Math.ceil(Math.max(...all)) + 2 };
  const places = placesOf(span, extent);
  const middle = ({ first }: MonthTold) => addDays(first, MIDDLE);
  const point = (month: MonthTold, tempC: number) => ({ x: places.x(middle(month)), y: places.y(unit.of(tempC)) });
  const warmest = months.reduce((a, b) => (b.highC > a.highC ? b : a));
  return (
    <figure class="drawing">
      <CourseFrame
        days={span}
        today={today}
        places={places}
        ticks={roundTicks(extent, TICKS).map((at) => ({ at, text: `${plain(at, 0)}°` }))}
        labels={[
          lineLabel(places, middle(warmest), unit.of(warmest.highC), 'highs', 'middle'),
          lineLabel(places, middle(warmest), unit.of(warmest.soilC), 'soil', 'middle'),
          labelBelow(places, middle(warmest), unit.of(warmest.lowC), 'lows', 'middle'),
        ]}
        words={inWords(months, units)}
      >
        <path
          class="band"
          d={bandPath(
            months.map((month) => ({
              x: places.x(middle(month)),
              lowY: places.y(unit.of(month.lowC)),
              highY: places.y(unit.of(month.highC)),
            })),
          )}
        />
        {extent.from < unit.of(0) && unit.of(0) < extent.to && (
          <path class="limit-line" d={`M${places.x(span.from)} ${places.y(unit.of(0))}H${places.x(span.to)}`} />
        )}
        <path class="now-line" d={linePath(months.map((month) => point(month, month.soilC)))} />
      </CourseFrame>
    </figure>
  );
};

function inWords(months: readonly MonthTold[], units: UnitSystem): string {
  const unit = temperatureUnit(units);
  const [coldest, warmest] = [...months]
    .sort((a, b) => a.lowC - b.lowC)
    .flatMap((month, at, { length }) => (at === 0 || at === length - 1 ? [month] : []));
  return `The usual year: lows of ${figure(coldest?.lowC, unit)} ${unit.name} in the coldest month, highs of ${figure(warmest?.highC, unit)} ${unit.name} in the warmest. The table beneath has every month.`;
}
