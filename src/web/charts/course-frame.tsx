/**
 * The paper a season is drawn on: days along the foot, amounts up the side, today as a dotted line, labels on the lines.
 */
import type { Child } from 'hono/jsx';
import type { Day } from '../../measures/days.ts';
import { apart, type Label, rounded } from './lines.ts';
import { MonthAxis } from './month-axis.tsx';
import { dayScale, type Extent, linearScale } from './scales.ts';

const WIDTH = 360;
const LEFT = 30;
const TOP = 12;
const FOOT = 152;
const HEIGHT = 182;

/** Where days and amounts lie on the paper. */
export interface Places {
  x: (day: Day) => number;
  y: (amount: number) => number;
}

/**
 * Places of a season's days and amounts.
 *
 * @param amounts what lies at the foot and what at the top; the foot may hold the larger
 */
export function placesOf(days: { from: Day; to: Day }, amounts: Extent): Places {
  const x = dayScale(days, { from: LEFT, to: WIDTH });
  const y = linearScale(amounts, { from: FOOT, to: TOP });
  return { x: (day) => rounded(x(day)), y: (amount) => rounded(y(amount)) };
}

/** Text stands this far above its line, or its foot this far below. */
const ABOVE = 4;
const BELOW = 12;

/** A label of a line near a day and an amount: above the place, to one side of it. */
export function lineLabel({ x, y }: Places, day: Day, amount: number, text: string, anchor: Label['anchor']): Label {
  return { x: x(day), y: Math.max(TOP + 6, y(amount) - ABOVE), text, anchor };
}

/** The same below the place. */
export function labelBelow({ x, y }: Places, day: Day, amount: number, text: string, anchor: Label['anchor']): Label {
  return { x: x(day), y: y(amount) + BELOW, text, anchor };
}

interface CourseFrameProps {
  days: { from: Day; to: Day };
  today: Day;
  places: Places;
  /** Amounts marked at the side, with their text. */
  ticks: readonly { at: number; text: string }[];
  labels: readonly Label[];
  /** The drawing told to whoever does not see it. */
  words: string;
  children?: Child;
}

/** The frame with its lines inside. */
export const CourseFrame = ({ days, today, places, ticks, labels, words, children }: CourseFrameProps) => (
  <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
    <g class="axis">
      {ticks.map(({ at, text }) => (
        <>
          <path class="grid-line" d={`M${LEFT} ${places.y(at)}H${WIDTH}`} />
          <text x={LEFT - 5} y={places.y(at) + 4} text-anchor="end">
            {text}
          </text>
        </>
      ))}
    </g>
    {children}
    <path class="today-line" d={`M${places.x(today)} ${TOP}V${FOOT}`} />
    <MonthAxis from={days.from} to={days.to} x={places.x} y={FOOT} left={LEFT} width={WIDTH} />
    <text class="line-words" x={places.x(today)} y={FOOT + 27} text-anchor="middle">
      today
    </text>
    {apart(labels, FOOT - 4).map(({ x, y, text, anchor }) => (
      <text x={x} y={rounded(y)} text-anchor={anchor}>
        {text}
      </text>
    ))}
  </svg>
);
