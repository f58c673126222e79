/**
 * The lines that run down through all rows of the year: months, and weeks close up.
 */
import type { DaySpan } from '../../climate/season-course.ts';
import { rulesOf, yearPlace } from './year-frame.ts';

/** The lines of one row. */
export const YearRules = ({ span, height }: { span: DaySpan; height: number }) => {
  const x = yearPlace(span);
  const { months, weeks } = rulesOf(span);
  const down = (day: string) => `M${x(day)} 0V${height}`;
  return (
    <>
      {weeks.length > 0 && <path class="week-rule" d={weeks.map(down).join('')} />}
      <path class="month-rule" d={months.map(down).join('')} />
    </>
  );
};
