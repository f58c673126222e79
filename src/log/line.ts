/**
 * A line of the log, as words or as JSON.
 */
import type { Instant } from '../measures/days.ts';

/** How much a line matters, the least first. */
export const LOG_LEVELS = ['debug', 'info', 'warn', 'error'] as const;

/** One of them. */
export type LogLevel = (typeof LOG_LEVELS)[number];

/** How lines are written: words for people, or JSON for programs. */
export const LOG_SHAPES = ['plain', 'json'] as const;

/** One of these. */
export type LogShape = (typeof LOG_SHAPES)[number];

/** What is told of an event, by name. Names carry units; what is absent is left out. */
export type LogFields = Readonly<Record<string, string | number | boolean | undefined>>;

/** One thing that happened. */
export interface LogEntry {
  at: Instant;
  level: LogLevel;
  /** What happened, in words: "planned again". */
  event: string;
  fields: LogFields;
}

/** Longest value kept of a field, in characters: a stack is some 2,000. House default. */
export const VALUE_CHARACTERS = 8_000;

/** Characters that end a line or steer a terminal; a tab is harmless. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for.
const CONTROLS = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u2028\u2029]/g;

/** The entry as one JSON object on one line: time, level, event, then its fields. */
export function jsonLine({ at, level, event, fields }: LogEntry): string {
  return JSON.stringify({ time: at, level, event, ...mapped(fields, shortened) });
}

/**
 * The entry as words: `2027-04-18T09:30:00.000Z info  planned again gardens=2`. A value of several lines follows below,
 * indented, so that nothing in it can pass for a line of its own.
 */
export function plainLine({ at, level, event, fields }: LogEntry): string {
  const told = Object.entries(mapped(fields, (text) => tamed(shortened(text))));
  const inLine = told.filter(([, value]) => !isLong(value)).map(([name, value]) => ` ${name}=${valueText(value)}`);
  const below = told.filter(([, value]) => isLong(value)).map(([name, value]) => `\n  ${name}:${indented(value)}`);
  return `${at} ${level.padEnd(5)} ${tamed(event).replaceAll('\n', ' ')}${inLine.join('')}${below.join('')}`;
}

type Value = string | number | boolean;

function mapped(fields: LogFields, change: (text: string) => string): Record<string, Value> {
  const told: Record<string, Value> = {};
  for (const [name, value] of Object.entries(fields)) {
    if (value !== undefined) told[name] = typeof value === 'string' ? change(value) : value;
  }
  return told;
}

function shortened(text: string): string {
  return text.length <= VALUE_CHARACTERS ? text : `${text.slice(0, VALUE_CHARACTERS)}…`;
}

/** Without characters that steer: what a stranger sent must not move the cursor of whoever reads the log. */
function tamed(text: string): string {
  return text
    .replace(/\r\n?/g, '\n')
    .replace(CONTROLS, (found) => `\\u${found.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

function isLong(value: Value): value is string {
  return typeof value === 'string' && value.includes('\n');
}

function valueText(value: Value): string {
  return typeof value === 'string' && !/^[^\s"=]+$/.test(value) ? JSON.stringify(value) : String(value);
}

function indented(text: Value): string {
  return String(text)
    .split('\n')
    .map((line) => `\n    ${line}`)
    .join('');
}
