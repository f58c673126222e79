/**
 * Values that nobody types on purpose, and some do by mistake; and what may be done with them to a form that is right.
 */
import fc from 'fast-check';
import type { FoundForm } from './page-forms.ts';

const NUMBERS = [
  'NaN',
  '-NaN',
  '1e999',
  '-1e999',
  'Infinity',
  '-0',
  '0',
  '-1',
  '0.0000001',
  '1e3',
  '0x1F',
  '1_000',
  '1,5',
  '٣',
  '½',
];
const LONG_NUMBERS = ['99999999999999999999', '-99999999999999999999', '9'.repeat(400), `0.${'3'.repeat(400)}`];
const DAYS = [
  '2026-02-30',
  '2027-02-29',
  '2028-02-29',
  '2027-04-31',
  '0000-00-00',
  '0000-01-01',
  '0001-01-01',
  '1900-02-29',
  '9999-12-31',
  '10000-01-01',
  '+275760-09-13',
  '+275760-09-14',
  '-000001-12-31',
  '2026-W53',
  '2026-W54',
  '2027-04-18T00:00',
  '2027-4-8',
  '18.04.2027',
  '2027-04-18 ',
];
const NAMES = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'undefined',
  'null',
  '[object Object]',
];
const PLACES = ['../../../etc/passwd', '..%2f..%2fetc%2fpasswd', '%00', '%', '%ff', '/', '\\', '.', '..', '?', '#'];
const MARKUP = [
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "'; drop table ledger; --",
  '{{7*7}}',
  '&amp;',
  '&#0;',
];
const LETTERS = [
  '\u0000',
  'a\u0000b',
  '\u202Eabc',
  '\uFEFF',
  '\u2028',
  'a\r\nBcc: b@example.org',
  '\t',
  '𓆱',
  '\uD800',
  'é'.repeat(300),
  '👩‍🌾',
];
const SHAPES = [
  '{}',
  '[]',
  '[[[[',
  '{"__proto__":{"x":1}}',
  '"',
  `${'['.repeat(20_000)}`,
  `${'{"a":'.repeat(5000)}1${'}'.repeat(5000)}`,
];
const LONG = ['a'.repeat(201), 'a'.repeat(5000), ' '.repeat(3000), 'all', ' ', ''];

/** Every saved value. */
export const ODD_TEXTS: readonly string[] = [
  ...NUMBERS,
  ...LONG_NUMBERS,
  ...DAYS,
  ...NAMES,
  ...PLACES,
  ...MARKUP,
  ...LETTERS,
  ...SHAPES,
  ...LONG,
];

/** A saved value, or one nobody thought of. */
export const oddText = fc.oneof(
  { weight: 5, arbitrary: fc.constantFrom(...ODD_TEXTS) },
  { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 40 }) },
  { weight: 1, arbitrary: fc.double().map(String) },
  { weight: 1, arbitrary: fc.date({ noInvalidDate: true }).map((date) => date.toISOString().slice(0, 10)) },
);

/** One thing done to a form. */
export interface Twist {
  how: 'set' | 'drop' | 'double' | 'choose' | 'press' | 'add' | 'file';
  at: number;
  value: string;
}

const twist: fc.Arbitrary<Twist> = fc.record({
  how: fc.oneof(
    { weight: 8, arbitrary: fc.constant('set' as const) },
    { weight: 2, arbitrary: fc.constant('choose' as const) },
    { weight: 2, arbitrary: fc.constant('press' as const) },
    { weight: 3, arbitrary: fc.constantFrom('drop' as const, 'double' as const, 'add' as const, 'file' as const) },
  ),
  at: fc.nat(10_000),
  value: oddText,
});

/** One or two things done to a form. */
export const twists = fc.array(twist, { minLength: 1, maxLength: 2 });

/** What is sent in place of a form: its fields, some of them perhaps as files. */
export interface Twisted {
  fields: readonly (readonly [string, string])[];
  /** Names of fields that are sent as files. */
  files: ReadonlySet<string>;
}

/** The form with things done to it. */
export function twisted({ fields, types, offers, presses }: FoundForm, done: readonly Twist[]): Twisted {
  let now = [...fields];
  const files = new Set([...types].filter(([, type]) => type === 'file').map(([name]) => name));
  const names = [...new Set([...fields.map(([name]) => name), ...types.keys(), ...presses.map(([name]) => name)])];
  for (const { how, at, value } of done) {
    const name = names[at % Math.max(1, names.length)] ?? '__proto__';
    const others = now.filter(([held]) => held !== name);
    const choices = offers.get(name) ?? [];
    if (how === 'set') now = [...others, [name, value]];
    if (how === 'drop') now = others;
    if (how === 'double') now = [...now, [name, value]];
    if (how === 'choose') now = [...others, [name, choices[at % Math.max(1, choices.length)] ?? value]];
    if (how === 'press') now = [...now, presses[at % Math.max(1, presses.length)] ?? [name, value]];
    if (how === 'add') now = [...now, [value === '' ? 'constructor' : value, value]];
    if (how === 'file') files.add(name);
  }
  return { fields: now, files };
}
