/**
 * The days over and under the rows of the year: years and months, and the Mondays close up.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import { type Day, dayOf, dayParts } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import { rounded } from './lines.ts';
import { monthStarts } from './scales.ts';
import { isCloseUp, mondays, ROW_WIDTH, textWidth, yearPlace } from './year-frame.ts';
import { YearRules } from './year-rules.tsx';

/** Where the lines of text stand. */
const YEARS_Y = 10;
const MONTHS_Y = 23;
const WEEKS_Y = 35;

/** The axis; over the rows it names today. */
export const YearAxis = ({ span, today }: { span: DaySpan; today?: Day }) => {
  const x = yearPlace(span);
  const closeUp = isCloseUp(span);
  const height = closeUp ? WEEKS_Y + 5 : MONTHS_Y + 5;
  return (
    <svg class="year-row year-axis" width={ROW_WIDTH} height={height} aria-hidden="true">
      <YearRules span={span} height={height} />
      {yearStarts(span).map((day) => (
        <AxisText text={String(dayParts(day).year)} x={x(day)} y={YEARS_Y} strong />
      ))}
      {monthStarts(span.from, span.to).map((day) => (
        <AxisText text={closeUp ? monthWord(day) : monthWord(day).slice(0, 3)} x={x(day)} y={MONTHS_Y} />
      ))}
      {closeUp &&
        mondays(span).map((day) => <AxisText text={String(dayParts(day).dayOfMonth)} x={x(day)} y={WEEKS_Y} />)}
      {today !== undefined && <Today x={x(today)} height={height} />}
    </svg>
  );
};

const Today = ({ x, height }: { x: number; height: number }) =>
  x < 0 || x > ROW_WIDTH ? null : (
    <>
      <path class="today-line" d={`M${x} 0V${height}`} />
      <text
        class="today-word"
        x={x < ROW_WIDTH / 2 ? rounded(x + 3) : rounded(x - 3)}
        y={YEARS_Y}
        text-anchor={x < ROW_WIDTH / 2 ? 'start' : 'end'}
      >
        today
      </text>
    </>
  );

/** A name behind its line, where the paper does not end before it. */
const AxisText = ({ text, x, y, strong = false }: { text: string; x: number; y: number; strong?: boolean }) =>
  x + 3 + textWidth(text) > ROW_WIDTH ? null : (
    <text class={strong ? 'year-word' : undefined} x={rounded(x + 3)} y={y}>
      {text}
    </text>
  );

/** The first day shown of each year. */
function yearStarts({ from, to }: DaySpan): Day[] {
  const first = dayParts(from).year;
  const count = dayParts(to).year - first;
  return [from, ...Array.from({ length: count }, (_, i) => dayOf(first + i + 1, 1, 1))];
}

/** "April". */
function monthWord(day: Day): string {
  return formatDay(day, 'us').split(' ')[0] ?? '';
}
