/**
 * A depth of rain or snow as somebody types it.
 */
import { MM_PER_INCH } from './units.ts';

/** Units a depth may be typed in. */
export type DepthUnit = 'mm' | 'cm' | 'm' | 'in';

const MM_PER: Readonly<Record<DepthUnit, number>> = { mm: 1, cm: 10, m: 1000, in: MM_PER_INCH };

/**
 * Millimetres of a typed depth: "15cm", "6 in", '6"', "0,5 mm". Nothing where it is no depth.
 *
 * @param unit what a number without a unit is in; where absent, the unit must be written
 */
export function readDepthMm(text: string, unit?: DepthUnit): number | undefined {
  const match = /^\+?(\d{1,5}(?:[.,]\d+)?|[.,]\d+)\s*(mm|cm|m|in|inch|inches|")?$/i.exec(text.trim());
  if (match === null) return undefined;
  const written = match[2]?.toLowerCase();
  const per =
    written === undefined ? unit : written === '"' || written.startsWith('in') ? 'in' : (written as DepthUnit);
  if (per === undefined) return undefined;
  return Number((Number(match[1]?.replace(',', '.')) * MM_PER[per]).toFixed(2));
}
