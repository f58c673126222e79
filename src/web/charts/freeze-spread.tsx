/**
 * When the last freeze of spring and the first of autumn come at several places, drawn over a season.
 */
import type { Odds } from '../../climate/odds.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { rounded } from './lines.ts';
import { MonthAxis } from './month-axis.tsx';
import { dayScale } from './scales.ts';

/** One place, or one way of reckoning. */
export interface SpreadRow {
  words: string;
  spring: Odds;
  autumn: Odds;
}

const WIDTH = 360;
const EDGE = 4;
const ROW_HEIGHT = 36;
const AXIS_HEIGHT = 24;
/** Days left free on either side. House default. */
const MARGIN_DAYS = 10;

/** The drawing. Its figures stand in a table beside it. */
export const FreezeSpread = ({ rows, units }: { rows: readonly SpreadRow[]; units: UnitSystem }) => {
  const days = rows.flatMap(({ spring, autumn }) => [...daysOf(spring), ...daysOf(autumn)]).sort();
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return null;
  const domain = { from: addDays(first, -MARGIN_DAYS), to: addDays(last, MARGIN_DAYS) };
  const place = dayScale(domain, { from: EDGE, to: WIDTH - EDGE });
  const x = (day: Day) => rounded(place(day));
  const axisY = rows.length * ROW_HEIGHT + 6;
  return (
    <figure class="drawing">
      <svg viewBox={`0 0 ${WIDTH} ${axisY + AXIS_HEIGHT}`} role="img" aria-label={inWords(rows, units)}>
        {rows.map(({ words, spring, autumn }, at) => {
          const y = at * ROW_HEIGHT + 26;
          return (
            <g>
              <text class="line-words" x="0" y={y - 11}>
                {words}
              </text>
              <FreeSeason spring={spring} autumn={autumn} x={x} y={y} />
              <Spread odds={spring} x={x} y={y} />
              <Spread odds={autumn} x={x} y={y} />
            </g>
          );
        })}
        <MonthAxis from={domain.from} to={domain.to} x={x} y={axisY} width={WIDTH} />
      </svg>
      <figcaption class="small">
        Thick: where the last freeze of spring and the first of autumn fall in eight years of ten, with a long stroke at
        the day of even odds. Dotted: the days between those two.
      </figcaption>
    </figure>
  );
};

interface DrawnProps {
  x: (day: Day) => number;
  y: number;
}

const FreeSeason = ({ spring, autumn, x, y }: DrawnProps & Pick<SpreadRow, 'spring' | 'autumn'>) =>
  spring.median === undefined || autumn.median === undefined ? null : (
    <path class="open-end" d={`M${x(spring.median)} ${y}H${x(autumn.median)}`} />
  );

const Spread = ({ odds: { early, median, late }, x, y }: DrawnProps & { odds: Odds }) => (
  <>
    {early !== undefined && late !== undefined && <path class="span-line" d={`M${x(early)} ${y}H${x(late)}`} />}
    {early !== undefined && <path class="span-end" d={`M${x(early)} ${y - 4}V${y + 4}`} />}
    {median !== undefined && <path class="span-mark" d={`M${x(median)} ${y - 7}V${y + 7}`} />}
    {late !== undefined && <path class="span-end" d={`M${x(late)} ${y - 4}V${y + 4}`} />}
  </>
);

function daysOf({ early, median, late }: Odds): Day[] {
  return [early, median, late].filter((day) => day !== undefined);
}

function inWords(rows: readonly SpreadRow[], units: UnitSystem): string {
  const told = (odds: Odds) =>
    daysOf(odds)
      .map((day) => formatDay(day, units))
      .join(', ') || 'no date';
  return rows
    .map(({ words, spring, autumn }) => `${words}: last freeze ${told(spring)}; first freeze ${told(autumn)}.`)
    .join(' ');
}
