/**
 * How commands write what they found.
 */
import type { Day } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Outlet } from '../command-line/surroundings.ts';

/**
 * Writes data as JSON. Every text in it is written in the reader's units; figures stay SI. Days in a text are written
 * beside the day of the task it is about, so that one of another year carries its year.
 */
export function writeJson(outlet: Outlet, data: unknown, units: UnitSystem): void {
  outlet.write(`${JSON.stringify(readable(data, units, undefined), null, 2)}\n`);
}

function readable(value: unknown, units: UnitSystem, beside: Day | undefined): unknown {
  if (typeof value === 'string') return readableIn(units, value, beside);
  if (Array.isArray(value)) return value.map((item) => readable(item, units, beside));
  if (typeof value !== 'object' || value === null) return value;
  const day = 'day' in value && typeof value.day === 'string' ? value.day : beside;
  return Object.fromEntries(Object.entries(value).map(([name, held]) => [name, readable(held, units, day)]));
}

/** Writes lines of text. */
export function writeLines(outlet: Outlet, lines: readonly string[]): void {
  if (lines.length > 0) outlet.write(`${lines.join('\n')}\n`);
}

/** Rows as columns that stand under each other, two spaces apart. */
export function columns(rows: readonly (readonly string[])[], indent = ''): string[] {
  const widths = rows.reduce<number[]>(
    (widest, row) => row.map((cell, index) => Math.max(cell.length, widest[index] ?? 0)),
    [],
  );
  return rows.map((row) =>
    `${indent}${row.map((cell, index) => cell.padEnd(widths[index] ?? 0)).join('  ')}`.trimEnd(),
  );
}
