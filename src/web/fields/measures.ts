/**
 * Amounts in forms: shown in the reader's units, typed in those or with another unit behind, kept as the file keeps them.
 */
import { readArea, readDepthMm, readHeap, readLength, readSides } from '../../measures/typed-amount.ts';
import { readNumber } from '../../measures/typed-number.ts';
import { readDegrees } from '../../measures/typed-temperature.ts';
import {
  fahrenheit,
  GRAMS_PER_OUNCE,
  LITRES_PER_CUBIC_FOOT,
  M_PER_FOOT,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
  type UnitSystem,
} from '../../measures/units.ts';
import type { Field, MeasureAs } from './field.ts';

/** A unit a field is shown and typed in. */
export interface FormUnit {
  label: string;
  /** An amount of the file in this unit. */
  of: (value: number) => number;
  /** The amount a text says, in the unit of the file; nothing where it is none. */
  read: (text: string) => number | undefined;
}

/** What each amount is called in a complaint. */
export const MEASURE_NOUNS: Readonly<Record<MeasureAs, string>> = {
  length: 'a length',
  height: 'a height',
  depth: 'a depth',
  area: 'an area',
  volume: 'a volume',
  temp: 'a temperature',
  warmth: 'a difference of temperatures',
  grams: 'a weight',
};

/** The unit of a field; nothing where it holds no amount with one. */
export function unitOfField({ as, name }: Pick<Field, 'as' | 'name'>, units: UnitSystem): FormUnit | undefined {
  const us = units === 'us';
  switch (as) {
    case 'length':
      return us ? by('ft', M_PER_FOOT, lengthIn('ft')) : by('m', 1, lengthIn('m'));
    case 'height':
      return us ? by('ft', M_PER_FOOT, signed(lengthIn('ft'))) : by('m', 1, signed(lengthIn('m')));
    case 'depth':
      return depthUnit(us, /Mm$/.test(name));
    case 'area':
      return us ? by('sq ft', M2_PER_SQUARE_FOOT, areaIn('sq ft')) : by('m²', 1, areaIn('m²'));
    case 'volume':
      return us ? by('cu ft', LITRES_PER_CUBIC_FOOT, litresIn('cu ft', 'ft')) : by('L', 1, litresIn('L', 'm'));
    case 'grams':
      return us ? by('oz', GRAMS_PER_OUNCE, gramsIn('oz')) : by('g', 1, gramsIn('g'));
    case 'temp':
      return us
        ? { label: '°F', of: fahrenheit, read: (text) => readDegrees(text, 'F') }
        : { label: '°C', of: (value) => value, read: (text) => readDegrees(text, 'C') };
    case 'warmth':
      return us ? by('°F', C_PER_F, signed(warmthIn('F'))) : by('°C', 1, signed(warmthIn('C')));
    default:
      return undefined;
  }
}

/** A depth of soil, which the file keeps in metres, or of a layer, which it keeps in millimetres. */
function depthUnit(us: boolean, inMm: boolean): FormUnit {
  const perMm = inMm ? 1 : 1000;
  const metric = inMm ? ('mm' as const) : ('cm' as const);
  const read = (text: string): number | undefined => {
    const depthMm = readDepthMm(text, us ? 'in' : metric);
    return depthMm === undefined ? undefined : depthMm / perMm;
  };
  if (us) return by('in', MM_PER_INCH / perMm, read);
  return by(metric, inMm ? 1 : 0.01, read);
}

function by(label: string, siEach: number, read: (text: string) => number | undefined): FormUnit {
  return { label, of: (value) => value / siEach, read };
}

const BARE = /^\+?[\d.,]+$/;

/** A text with the unit it is asked for in behind it, where it has none of its own. */
function withUnit(text: string, unit: string): string {
  return BARE.test(text) ? `${text} ${unit}` : text;
}

const FEET_AND_INCHES = /^(\d{1,4})\s*(?:ft|foot|feet|')\s*(\d{1,2}(?:[.,]\d+)?)\s*(?:in|inch|inches|")?$/i;

function lengthIn(unit: string): (text: string) => number | undefined {
  return (text) => {
    const [, feet, inches] = FEET_AND_INCHES.exec(text) ?? [];
    if (feet === undefined || inches === undefined) return readLength(withUnit(text, unit))?.value;
    const more = readLength(`${inches} in`)?.value ?? 0;
    return Number((Number(feet) * M_PER_FOOT + more).toPrecision(12));
  };
}

const UNIT_BEHIND = /\s*[a-z]+$/i;

/** The same with a sign before it, and nought. */
function signed(read: (text: string) => number | undefined): (text: string) => number | undefined {
  return (text) => {
    const size = text.replace(/^[+\-−–]\s*/, '');
    const value = readNumber(size.replace(UNIT_BEHIND, '')) === 0 ? 0 : read(size);
    return value === undefined || !/^[-−–]/.test(text) ? value : 0 - value;
  };
}

const LITRES_PER_M3 = 1000;

/** Degrees Celsius in one of Fahrenheit. */
const C_PER_F = 5 / 9;

/** Degrees by which it is warmer; those of the other scale say so behind them. */
function warmthIn(unit: 'C' | 'F'): (text: string) => number | undefined {
  return (text) => {
    const [, figure = '', scale = unit] = /^([\d.,]+)\s*°?\s*([CF])?$/i.exec(text) ?? [];
    const size = readNumber(figure);
    return size === undefined ? undefined : size * (scale.toUpperCase() === 'F' ? C_PER_F : 1);
  };
}

function areaIn(unit: string): (text: string) => number | undefined {
  return (text) => readArea(withUnit(text, unit))?.value;
}

/** Litres of a volume, or of three sides multiplied. */
function litresIn(unit: string, sideUnit: 'm' | 'ft'): (text: string) => number | undefined {
  return (text) => {
    if (text === '0') return 0;
    const sides = readSides(text, sideUnit);
    if (sides !== undefined)
      return Number((sides.lengthM * sides.widthM * sides.heightM * LITRES_PER_M3).toPrecision(6));
    const heap = readHeap(withUnit(text, unit));
    return heap !== undefined && 'litres' in heap ? heap.litres : undefined;
  };
}

function gramsIn(unit: string): (text: string) => number | undefined {
  return (text) => {
    if (text === '0') return 0;
    const heap = readHeap(withUnit(text, unit));
    return heap !== undefined && 'kg' in heap ? Number((heap.kg * 1000).toPrecision(12)) : undefined;
  };
}

/** Figures shown behind the point: finer than a tape or a scale in a garden. */
const DIGITS = 2;

/** A number as it stands in a field. */
export function plainNumber(value: number): string {
  return String(Number(value.toFixed(DIGITS)));
}

/** The least number that may be typed, as it is told: never below what is taken. */
export function roundedUp(value: number): string {
  return plainNumber(Math.ceil(value * 100 - 1e-9) / 100);
}

/** The most that may be typed, as it is told: never above what is taken. */
export function roundedDown(value: number): string {
  return plainNumber(Math.floor(value * 100 + 1e-9) / 100);
}
