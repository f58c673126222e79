/**
 * A temperature as somebody types it.
 */
import { celsius } from './units.ts';

/** Lows that a night on earth where vegetables grow can have, °C: what a ledger takes. */
const COLDEST_C = -60;
const WARMEST_C = 40;

/**
 * Degrees Celsius of a typed night's low: "-1", "−1,5", "30 F", "-1C", "30 °F". Nothing where it is no number, or no
 * night is so cold or so warm.
 *
 * @param unit what a number without a unit is in; where absent, the unit must be written
 */
export function readTemperature(text: string, unit?: 'C' | 'F'): number | undefined {
  const tempC = readDegrees(text, unit);
  return tempC !== undefined && tempC >= COLDEST_C && tempC <= WARMEST_C ? tempC : undefined;
}

/**
 * Degrees Celsius of a typed temperature, however cold or warm.
 *
 * @param unit what a number without a unit is in; where absent, the unit must be written
 */
export function readDegrees(text: string, unit?: 'C' | 'F'): number | undefined {
  const match = /^([+\-−–]?)(\d{1,3}(?:[.,]\d+)?)\s*°?\s*([CF]?)$/i.exec(text.trim());
  const written = match?.[3]?.toUpperCase() || unit;
  if (match === null || written === undefined) return undefined;
  const size = Number(match[2]?.replace(',', '.'));
  const degrees = match[1] === '' || match[1] === '+' ? size : -size;
  return written === 'F' ? celsius(degrees) : degrees;
}
