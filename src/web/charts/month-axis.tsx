/**
 * The line at the foot of a drawing: its days, with the months that begin in them.
 */
import { type Day, dayParts } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import { rounded } from './lines.ts';
import { monthStarts } from './scales.ts';

/** Paper a month's name needs, in the drawing's own units. */
const NAME_WIDTH = 26;

interface MonthAxisProps {
  from: Day;
  to: Day;
  x: (day: Day) => number;
  y: number;
  /** Where the line begins and ends. */
  left?: number;
  width: number;
}

/** A tick and a short name for each month that begins; where none does, the first and the last day are named. */
export const MonthAxis = ({ from, to, x, y, left = 0, width }: MonthAxisProps) => {
  const starts = monthStarts(from, to);
  return (
    <g class="axis">
      <path d={`M${left} ${y}H${width}`} />
      {starts.map((day) => (
        <>
          <path d={`M${x(day)} ${y}v5`} />
          {x(day) + NAME_WIDTH <= width && (
            <text x={rounded(x(day) + 3)} y={y + 14}>
              {monthName(day)}
            </text>
          )}
        </>
      ))}
      {starts.length === 0 && (
        <>
          <text x={left} y={y + 14}>
            {`${monthName(from)} ${dayParts(from).dayOfMonth}`}
          </text>
          <text x={width} y={y + 14} text-anchor="end">
            {`${monthName(to)} ${dayParts(to).dayOfMonth}`}
          </text>
        </>
      )}
    </g>
  );
};

/** "Apr". */
function monthName(day: Day): string {
  return formatDay(day, 'us').slice(0, 3);
}
