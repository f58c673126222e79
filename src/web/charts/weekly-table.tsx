/**
 * The figures of a drawing week by week.
 */
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';

const DAYS_IN_WEEK = 7;

/** One column: its head, and what it says of a week. */
export interface Column<Row> {
  head: string;
  cell: (week: readonly Row[]) => string;
}

/** The mean of what is known, or nothing. */
export function meanOfKnown(values: readonly (number | undefined)[]): number | undefined {
  const known = values.filter((value) => value !== undefined);
  return known.length === 0 ? undefined : known.reduce((sum, value) => sum + value, 0) / known.length;
}

/** Days cut into weeks from the first on; the last may be shorter. */
export function weeksOf<Row>(days: readonly Row[]): Row[][] {
  const count = Math.ceil(days.length / DAYS_IN_WEEK);
  return Array.from({ length: count }, (_, week) => days.slice(week * DAYS_IN_WEEK, (week + 1) * DAYS_IN_WEEK));
}

interface WeeklyTableProps<Row> {
  days: readonly Row[];
  columns: readonly Column<Row>[];
  units: UnitSystem;
}

/** A table that opens beneath its drawing, a line for each week. */
export const WeeklyTable = <Row extends { day: Day }>({ days, columns, units }: WeeklyTableProps<Row>) => (
  <details>
    <summary>The same in figures, by week</summary>
    <table class="figures">
      <thead>
        <tr>
          <th scope="col">Week from</th>
          {columns.map(({ head }) => (
            <th scope="col">{head}</th>
          ))}
        </tr>
      </thead>
      <tbody>
        {weeksOf(days).map((week) => (
          <tr>
            <th scope="row">{formatDay(week[0]?.day ?? '', units)}</th>
            {columns.map(({ cell }) => (
              <td>{cell(week)}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  </details>
);
