/**
 * The value one field of a form says.
 */
import type { KeyLimits } from '../../garden/file-limits.ts';
import { dayParts, daysInMonth, isDay, isMonthDay } from '../../measures/days.ts';
import { readNumber } from '../../measures/typed-number.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { SHOWN_CHARACTERS } from '../requests/form.ts';
import type { Field } from './field.ts';
import { MEASURE_NOUNS, plainNumber, roundedDown, roundedUp, unitOfField } from './measures.ts';

interface Asked {
  field: Field;
  /** What was sent, without empty texts. */
  texts: readonly string[];
  units: UnitSystem;
  limits: KeyLimits;
}

/** A value, or what is wrong with what was typed; neither where nothing was and nothing need be. */
export interface ReadField {
  value?: unknown;
  problem?: { what: string; mend: string };
}

/** Longest line of words a field takes: as in a garden file. */
const LONGEST = 200;

/** Reads a field. */
export function readField(asked: Asked): ReadField {
  const { field, texts, limits } = asked;
  if (field.as === 'check') return { value: texts.length > 0 ? true : field.unticked === 'absent' ? undefined : false };
  if (texts.length === 0) {
    if (!limits.required) return {};
    return { problem: { what: isChosen(field) ? 'Nothing is chosen.' : 'It is empty.', mend: mendOf(asked) } };
  }
  const value = valueIn(asked);
  if (value !== undefined) return { value };
  return { problem: { what: whatIsWrong(asked), mend: mendOf(asked) } };
}

function isChosen({ as }: Field): boolean {
  return as === 'choice' || as === 'many';
}

function valueIn({ field, texts, units, limits }: Asked): unknown {
  const [text = ''] = texts;
  switch (field.as) {
    case 'text':
      return text.length <= LONGEST ? text : undefined;
    case 'day':
      return isDay(text) ? text : undefined;
    case 'month-day':
      return isMonthDay(text) ? text : undefined;
    case 'time':
      return /^([01]\d|2[0-3]):[0-5]\d$/.test(text) ? text : undefined;
    case 'whole':
      return within(/^[+−-]?\d{1,9}$/.test(text) ? Number(text.replace('−', '-')) : undefined, limits);
    case 'number':
      return within(signedNumber(text), limits);
    case 'choice':
      return isOffered(field, text) ? chosen(field, text) : undefined;
    case 'many':
      return texts.every((each) => isOffered(field, each)) ? texts.map((each) => chosen(field, each)) : undefined;
    default:
      return within(unitOfField(field, units)?.read(text), limits);
  }
}

function isOffered({ options = [] }: Field, value: string): boolean {
  return options.some((option) => option.value === value);
}

/** What a choice is kept as. */
function chosen({ isNumber }: Field, text: string): unknown {
  return isNumber ? Number(text) : text;
}

function signedNumber(text: string): number | undefined {
  const size = readNumber(text.replace(/^[+−–-]/, ''));
  return size === undefined ? undefined : /^[−–-]/.test(text) ? -size : size;
}

/** What a reader's unit rounds away at an end of what is allowed. */
const SLACK = 1e-9;

function within(value: number | undefined, { least = -Infinity, most = Infinity }: KeyLimits): number | undefined {
  if (value === undefined || value < least - SLACK || value > most + SLACK) return undefined;
  return Math.min(Math.max(value, least), most);
}

function whatIsWrong({ field, texts, limits, units }: Asked): string {
  const [text = ''] = texts;
  const shown = `"${text.slice(0, SHOWN_CHARACTERS)}"`;
  if (field.as === 'text') return `It has ${text.length} characters.`;
  if (isChosen(field)) return `${shown} is not one of those that can be chosen.`;
  if (field.as === 'day') return noDay(text, shown);
  const free = valueIn({ field, texts, units, limits: { required: limits.required } });
  if (free !== undefined) return `${shown} cannot be.`;
  return `${shown} is not ${nounOf(field)}.`;
}

function noDay(text: string, shown: string): string {
  if (!/^\d{4}-(0[1-9]|1[0-2])-\d{2}$/.test(text)) return `${shown} is not a date.`;
  const { year, month } = dayParts(text);
  return `${shown} is not a date: that month has ${daysInMonth(year, month)} days.`;
}

function nounOf({ as }: Field): string {
  switch (as) {
    case 'length':
    case 'height':
    case 'depth':
    case 'area':
    case 'volume':
    case 'temp':
    case 'warmth':
    case 'grams':
      return MEASURE_NOUNS[as];
    case 'whole':
      return 'a whole number';
    case 'time':
      return 'an hour of the day';
    case 'month-day':
      return 'a day of the year';
    default:
      return 'a number';
  }
}

/** How to put a field right, with an example in the reader's own unit. */
function mendOf({ field, units, limits: { least, most } }: Asked): string {
  if (field.as === 'choice') return 'Choose one of those offered.';
  if (field.as === 'many') return 'Tick at least one of those offered.';
  if (field.as === 'text') return `Give up to ${LONGEST} characters${such(field, units)}.`;
  if (field.as === 'day') return `Give a date as year-month-day, such as ${field.example ?? '2027-04-18'}.`;
  if (field.as === 'month-day') return 'Choose a month and a day that it has.';
  if (field.as === 'time') return 'Give it as hours and minutes, such as 14:30.';
  const unit = unitOfField(field, units);
  const [from, to] = [least, most].map((limit) => limit !== undefined && (unit?.of(limit) ?? limit));
  const span =
    typeof from !== 'number'
      ? ''
      : typeof to !== 'number'
        ? ` from ${roundedUp(from)}`
        : ` from ${roundedUp(from)} to ${roundedDown(to)}`;
  return `Give ${nounOf(field)}${span}${unit === undefined ? '' : ` ${unit.label}`}${such(field, units)}.`;
}

/** An example, roughly: what is even in one unit is an odd figure in another. */
function such(field: Field, units: UnitSystem): string {
  const { example } = field;
  const unit = unitOfField(field, units);
  if (example === undefined) return '';
  if (typeof example === 'string' || unit === undefined) return `, such as ${example}`;
  const size = unit.of(example);
  return `, such as ${units === 'us' ? Number(size.toPrecision(Math.abs(size) < 10 ? 1 : 2)) : plainNumber(size)}`;
}
