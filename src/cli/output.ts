/**
 * How commands write what they found.
 */
import { readableIn } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import type { Outlet } from './surroundings.ts';

/** Writes data as JSON. Every text in it is written in the reader's units; figures stay SI. */
export function writeJson(outlet: Outlet, data: unknown, units: UnitSystem): void {
  const readable = (_: string, value: unknown): unknown =>
    typeof value === 'string' ? readableIn(units, value) : value;
  outlet.write(`${JSON.stringify(data, readable, 2)}\n`);
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
