/**
 * Amounts and days inside sentences.
 *
 * A step such as "Spread ⟦13 mm⟧ of compost" keeps the amount in SI between white brackets until the sentence meets
 * its reader; {@link readableIn} then writes it in the gardener's units. So a text can be stored, compared and
 * re-read in other units without ever being guessed at.
 */
import { type Day, dayParts } from './days.ts';
import {
  CM_PER_INCH,
  fahrenheit,
  GRAMS_PER_OUNCE,
  GRAMS_PER_POUND,
  KM_PER_MILE,
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_YARD,
  LITRES_PER_GALLON,
  LITRES_PER_QUART,
  M_PER_FOOT,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
  type UnitSystem,
} from './units.ts';

/**
 * Units an amount may be stated in. `sumL` is litres of a sum, whose parts are all read in one unit. `tempC` is a temperature, `deltaC` a difference of temperatures, `degreeDaysC`
 * degrees Celsius above a base added up over days.
 */
export type QuantityUnit =
  | 'mm'
  | 'cm'
  | 'm'
  | 'km'
  | 'm2'
  | 'L'
  | 'sumL'
  | 'g'
  | 'kg'
  | 'tempC'
  | 'deltaC'
  | 'degreeDaysC'
  | 'gPerM2';

/** An amount with its unit, SI. */
export interface Quantity {
  value: number;
  unit: QuantityUnit;
}

/**
 * An amount marked for later writing inside a sentence.
 *
 * @throws {RangeError} when the value is not a finite number: a sentence must never be stored without its amount
 */
export function quantity(value: number, unit: QuantityUnit): string {
  if (!Number.isFinite(value)) throw new RangeError(`${value} ${unit} is not an amount.`);
  return `⟦${value} ${unit}⟧`;
}

/**
 * Two ends of an amount marked for later writing, the unit once: "3.5 to 10.5 g/m²".
 *
 * @throws {RangeError} when an end is not a finite number
 */
export function quantitySpan(low: number, high: number, unit: QuantityUnit): string {
  if (!Number.isFinite(low) || !Number.isFinite(high)) throw new RangeError(`${low} to ${high} ${unit} is no span.`);
  return `⟦${low} to ${high} ${unit}⟧`;
}

/** A day marked for later writing inside a sentence. */
export function dated(day: Day): string {
  return `⟦${day}⟧`;
}

/**
 * A text with every marked amount and day written as its reader writes them.
 *
 * @param beside a day the reader has in mind: days of another year are then written with their year
 */
export function readableIn(units: UnitSystem, text: string, beside?: Day): string {
  return text
    .replace(/⟦(\d{4}-\d{2}-\d{2})⟧/g, (_, day: Day) => formatDay(day, units, beside))
    .replace(/⟦(-?[\d.e+-]+) to (-?[\d.e+-]+) (\w+)⟧/g, (_, low: string, high: string, unit: string) =>
      formatSpan([Number(low), Number(high)], unit as QuantityUnit, units),
    )
    .replace(/⟦(-?[\d.e+-]+) (\w+)⟧/g, (_, value: string, unit: string) =>
      formatQuantity({ value: Number(value), unit: unit as QuantityUnit }, units),
    );
}

/** The months by name, January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/**
 * A day in words, in the reader's order: "18 April", or "April 18" where inches are read.
 *
 * @param beside a day the reader has in mind: a day of another year is then written with its year
 */
export function formatDay(day: Day, units: UnitSystem, beside: Day = day): string {
  const { year, month, dayOfMonth } = dayParts(day);
  const name = MONTHS[month - 1] ?? '';
  const other = year !== dayParts(beside).year;
  if (units === 'us') return other ? `${name} ${dayOfMonth}, ${year}` : `${name} ${dayOfMonth}`;
  return other ? `${dayOfMonth} ${name} ${year}` : `${dayOfMonth} ${name}`;
}

/** An amount written in the reader's units, rounded to what a gardener can measure. */
export function formatQuantity({ value, unit }: Quantity, units: UnitSystem): string {
  return units === 'metric' ? formatMetric(value, unit) : formatUs(value, unit);
}

function formatMetric(value: number, unit: QuantityUnit): string {
  switch (unit) {
    case 'mm':
      return `${amount(value, 0)} mm`;
    case 'cm':
      return `${amount(value, 1)} cm`;
    case 'm':
      return `${amount(value, 2)} m`;
    case 'km':
      return `${rounded(value, 0)} km`;
    case 'm2':
      return `${amount(value, 1)} m²`;
    case 'L':
    case 'sumL':
      return `${amount(value, value < 10 ? 1 : 0)} L`;
    case 'g':
      return value >= 1000 ? `${amount(value / 1000, 2)} kg` : `${amount(value, value < 10 ? 1 : 0)} g`;
    case 'kg':
      return `${amount(value, value < 10 ? 1 : 0)} kg`;
    case 'tempC':
      return `${rounded(value, 1)} °C`;
    case 'deltaC':
      return `${rounded(value, 1)} °C`;
    case 'degreeDaysC':
      return `${rounded(value, 0)} degree-days`;
    case 'gPerM2':
      return `${amount(value, 1)} g/m²`;
    default:
      return unit satisfies never;
  }
}

function formatUs(value: number, unit: QuantityUnit): string {
  switch (unit) {
    case 'mm':
      return `${inches(value / MM_PER_INCH)} in`;
    case 'cm':
      return `${inches(value / CM_PER_INCH)} in`;
    case 'm':
      return `${amount(value / M_PER_FOOT, 1)} ft`;
    case 'km':
      return `${rounded(value / KM_PER_MILE, 0)} mi`;
    case 'm2':
      return `${amount(value / M2_PER_SQUARE_FOOT, value < 10 * M2_PER_SQUARE_FOOT ? 1 : 0)} sq ft`;
    case 'L':
      return usVolume(value);
    case 'sumL':
      return `${amount(value / LITRES_PER_CUBIC_FOOT, 1)} cu ft`;
    case 'g':
      return usWeight(value);
    case 'kg':
      return value === 0 ? '0 lb' : usWeight(value * 1000);
    case 'tempC':
      return `${rounded(fahrenheit(value), 0)} °F`;
    case 'deltaC':
      return `${rounded((value * 9) / 5, 0)} °F`;
    case 'degreeDaysC':
      return `${rounded((value * 9) / 5, 0)} degree-days`;
    case 'gPerM2':
      return `${amount((value / GRAMS_PER_OUNCE) * M2_PER_SQUARE_FOOT * 100, 1)} oz per 100 sq ft`;
    default:
      return unit satisfies never;
  }
}

/** Cubic yards by the load, cubic feet by the barrow, gallons by the bucket, and quarts below one gallon. */
function usVolume(litres: number): string {
  if (litres >= LITRES_PER_CUBIC_YARD) return `${amount(litres / LITRES_PER_CUBIC_YARD, 1)} cu yd`;
  if (litres >= LITRES_PER_CUBIC_FOOT / 2) return `${amount(litres / LITRES_PER_CUBIC_FOOT, 1)} cu ft`;
  if (litres >= LITRES_PER_GALLON) return `${amount(litres / LITRES_PER_GALLON, 1)} gal`;
  return litres === 0 ? '0 cu ft' : `${amount(litres / LITRES_PER_QUART, 1)} qt`;
}

/** Pounds from which ounces are left out: a scale for more does not show them. House default. */
const WHOLE_POUNDS = 10;
const OUNCES_PER_POUND = 16;

/** Ounces below a pound, as finely as a kitchen scale shows them; pounds and ounces above, and whole pounds of a load. */
function usWeight(grams: number): string {
  const ounces = grams / GRAMS_PER_OUNCE;
  const whole = Math.round(ounces);
  if (whole < OUNCES_PER_POUND) return `${amount(ounces, ounces < 1 ? 2 : ounces < 10 ? 1 : 0)} oz`;
  const pounds = Math.floor(whole / OUNCES_PER_POUND);
  if (pounds >= WHOLE_POUNDS) return `${amount(grams / GRAMS_PER_POUND, 0)} lb`;
  const rest = whole % OUNCES_PER_POUND;
  return rest === 0 ? `${pounds} lb` : `${pounds} lb ${rest} oz`;
}

const EIGHTHS = ['', '⅛', '¼', '⅜', '½', '⅝', '¾', '⅞'] as const;

/** Inches as a ruler shows them: to the eighth below half an inch, to the quarter above. ⅛, ½, 1 ¼, 18. */
function inches(value: number): string {
  const size = Math.abs(value);
  const eighths = size < 0.5 ? Math.round(size * 8) : 2 * Math.round(size * 4);
  if (eighths === 0) return size === 0 ? '0' : 'less than ⅛';
  const [whole, fraction] = [Math.floor(eighths / 8), EIGHTHS[eighths % 8] ?? ''];
  const written = fraction === '' ? String(whole) : whole === 0 ? fraction : `${whole} ${fraction}`;
  return value < 0 ? `-${written}` : written;
}

/** A rounded amount; one too small for its digits keeps its first figure, so that something never reads as nothing. */
function amount(value: number, digits: number): string {
  if (value === 0 || Number(value.toFixed(digits)) !== 0) return rounded(value, digits);
  return String(Number(value.toPrecision(1)));
}

function rounded(value: number, digits: number): string {
  return String(Number(value.toFixed(digits)));
}

const WITH_OUNCES = /^.* lb \d+ oz$/;

/** Both ends of a span with the unit once, where it is the same for both. */
function formatSpan(ends: readonly [number, number], unit: QuantityUnit, units: UnitSystem): string {
  const [low, high] = ends.map((value) => formatQuantity({ value, unit }, units));
  if (low === undefined || high === undefined) return '';
  // Not "1 to 2 lb 3 oz" of two weights that both end in 3 oz.
  const unitWords = /[^\d.,–−-].*$/.exec(high.replace(WITH_OUNCES, ''))?.[0] ?? '';
  return unitWords !== '' && low.endsWith(unitWords)
    ? `${low.slice(0, -unitWords.length)} to ${high}`
    : `${low} to ${high}`;
}
