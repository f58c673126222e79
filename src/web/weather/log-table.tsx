/**
 * Days of the weather log, one a row.
 */
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import { loggedDayPath, weatherPath } from '../addresses/addresses.ts';
import { cellOf, LOGGED_FIELDS, unitOf } from '../fields/logged-fields.ts';

interface LogTableProps {
  caption: string;
  rows: readonly (readonly [Day, LoggedDay | undefined])[];
  garden: Garden;
  /** Whether each day is named with its year. */
  dated?: boolean;
}

/** A table of days; each that is logged leads to its own page. */
export const LogTable = ({ caption, rows, garden, dated = false }: LogTableProps) => {
  const { units } = garden.place;
  return (
    <>
      <h2>{caption}</h2>
      <table class="figures weather-log">
        <thead>
          <tr>
            <th scope="col">Day</th>
            {LOGGED_FIELDS.map(({ measured, label }) => (
              <th scope="col">
                {label} <span class="unit">{unitOf(measured, units).name}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([day, row]) => (
            <tr class={row === undefined ? 'not-logged' : ''}>
              <th scope="row">
                <a href={row === undefined ? weatherPath(garden.id, day) : loggedDayPath(garden.id, row)}>
                  {dated ? fullDay(day, units) : formatDay(day, units)}
                </a>
              </th>
              {row === undefined ? (
                <td colspan={LOGGED_FIELDS.length}>not logged</td>
              ) : (
                LOGGED_FIELDS.map(({ measured }) => <td>{cellOf(row, measured, units)}</td>)
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
};
