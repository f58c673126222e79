/**
 * Amounts as somebody types them: a depth of rain or snow, a heap by volume or by weight, the sides of a bin, the length of a
 * bed, the area of a path.
 */
import { readNumber } from './typed-number.ts';
import {
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_YARD,
  LITRES_PER_GALLON,
  M_PER_FOOT,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
  type UnitSystem,
} from './units.ts';

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
  const depth = numberIn(match[1]);
  return Number.isNaN(depth) ? undefined : Number((depth * MM_PER[per]).toFixed(2));
}

/** What is no number is not one by any unit. */
function numberIn(text: string | undefined): number {
  return readNumber(text ?? '') ?? Number.NaN;
}

/** A heap as typed, SI, and whose units it was typed in. */
export type TypedHeap = ({ litres: number } | { kg: number }) & { units: UnitSystem };

const HEAP_UNITS: readonly { words: readonly string[]; units: UnitSystem; litres?: number; kg?: number }[] = [
  { words: ['l', 'litre', 'litres', 'liter', 'liters'], units: 'metric', litres: 1 },
  { words: ['m3', 'm³', 'cbm'], units: 'metric', litres: 1000 },
  { words: ['gal', 'gals', 'gallon', 'gallons'], units: 'us', litres: LITRES_PER_GALLON },
  { words: ['ft3', 'ft³', 'cuft', 'cu ft', 'cubic feet', 'cubic foot'], units: 'us', litres: LITRES_PER_CUBIC_FOOT },
  { words: ['yd3', 'yd³', 'cuyd', 'cu yd', 'cubic yard', 'cubic yards'], units: 'us', litres: LITRES_PER_CUBIC_YARD },
  { words: ['kg', 'kilo', 'kilos'], units: 'metric', kg: 1 },
  { words: ['g', 'gram', 'grams'], units: 'metric', kg: 1 / 1000 },
  { words: ['lb', 'lbs', 'pound', 'pounds'], units: 'us', kg: GRAMS_PER_POUND / 1000 },
  { words: ['oz', 'ounce', 'ounces'], units: 'us', kg: GRAMS_PER_OUNCE / 1000 },
];

/** Most litres or kilograms of one heap: more is a slip of the keys. */
const MOST_IN_A_HEAP = 100_000;

/** Litres or kilograms of a typed heap: "200L", "50 gal", "1.5 yd3", "30 lb". Nothing where it is no such amount. */
export function readHeap(text: string): TypedHeap | undefined {
  const match = /^\+?(\d{1,9}(?:[.,]\d+)?|[.,]\d+)\s*([a-z³3 ]+?)\.?$/i.exec(text.trim());
  const word = match?.[2]?.toLowerCase().replace(/\s+/g, ' ');
  const unit = HEAP_UNITS.find(({ words }) => word !== undefined && words.includes(word));
  const value = numberIn(match?.[1]);
  const size = Number((value * (unit?.litres ?? unit?.kg ?? Number.NaN)).toPrecision(12));
  if (unit === undefined || !(size > 0) || size > MOST_IN_A_HEAP) return undefined;
  return { ...(unit.litres === undefined ? { kg: size } : { litres: size }), units: unit.units };
}

const PER_METRE: Readonly<Record<string, number>> = { m: 1, cm: 0.01, ft: M_PER_FOOT, in: MM_PER_INCH / 1000 };

const SIDE = /^(\d+(?:[.,]\d+)?)\s*(m|cm|ft|foot|feet|in|inch|inches|'|")?$/i;

/** Longest side of a bin, metres: more is a slip of the keys. House default. */
const LONGEST_SIDE_M = 20;

/**
 * A bin of three sides as typed, metres: length, width, height: "1x1x0.9m", "3 x 3 x 3 ft", "4 ft by 3 ft by 3 ft". A side
 * without a unit has that of the next side that has one.
 *
 * @param unit what sides without any unit are in; where absent, one must be written
 */
export function readSides(
  text: string,
  unit?: 'm' | 'ft',
): { lengthM: number; widthM: number; heightM: number } | undefined {
  const sides = text
    .trim()
    .split(/\s*(?:x|×|\*|\bby\b)\s*/i)
    .map((side) => SIDE.exec(side));
  if (sides.length !== 3) return undefined;
  const [lengthM, widthM, heightM] = sides.map((side, at) => {
    const written = sides.slice(at).find((each) => each?.[2] !== undefined)?.[2];
    return numberIn(side?.[1]) * (PER_METRE[written === undefined ? (unit ?? '') : lengthUnit(written)] ?? Number.NaN);
  });
  if (!lengthM || !widthM || !heightM || Math.max(lengthM, widthM, heightM) > LONGEST_SIDE_M) return undefined;
  return { lengthM, widthM, heightM };
}

/** A unit of length by its short name, however it was written. */
function lengthUnit(written: string): string {
  const word = written.toLowerCase();
  return word === "'" || word.startsWith('f') ? 'ft' : word === '"' || word.startsWith('in') ? 'in' : word;
}

/** An amount as typed, SI, and whose units it was typed in. */
export interface TypedSize {
  value: number;
  units: UnitSystem;
}

/** Metres of a typed length with its unit: "2.4m", "240 cm", "8 ft", "12in". Nothing where it is no length. */
export function readLength(text: string): TypedSize | undefined {
  const match = /^\+?(\d{1,5}(?:[.,]\d+)?)\s*(m|cm|ft|in|foot|feet|inch|inches|'|")$/i.exec(text.trim());
  const unit = lengthUnit(match?.[2] ?? '');
  const value = Number((numberIn(match?.[1]) * (PER_METRE[unit] ?? Number.NaN)).toPrecision(12));
  return value > 0 ? { value, units: unit === 'ft' || unit === 'in' ? 'us' : 'metric' } : undefined;
}

/** Square metres of a typed area with its unit: "2m2", "20 sq ft", "20 ft²"; nought alone needs none. */
export function readArea(text: string): TypedSize | undefined {
  const trimmed = text.trim();
  if (trimmed === '0') return { value: 0, units: 'metric' };
  const match = /^\+?(\d{1,5}(?:[.,]\d+)?)\s*(m2|m²|sqm|ft2|ft²|sq ft|sqft)$/i.exec(trimmed);
  const isUs = /^(ft|sq ?ft)/i.test(match?.[2] ?? '');
  const value = numberIn(match?.[1]) * (isUs ? M2_PER_SQUARE_FOOT : 1);
  return Number.isFinite(value) ? { value: Number(value.toPrecision(12)), units: isUs ? 'us' : 'metric' } : undefined;
}
