/**
 * Garden files that are refused, by what is wrong with them.
 */
import { SMALL_GARDEN } from '../cli/loamtide.ts';

/** Lists of lists by anchors, each nine times the one before. */
export const bomb = (levels: number): string =>
  [
    'a0: &a0 [x, x, x, x, x, x, x, x, x]',
    ...Array.from({ length: levels }, (_, at) => `a${at + 1}: &a${at + 1} [${`*a${at}, `.repeat(9)}]`),
  ].join('\n');
const keys = (count: number): string => Array.from({ length: count }, (_, at) => `k${at}: 1`).join('\n');
const indented = (deep: number): string => Array.from({ length: deep }, (_, at) => `${' '.repeat(at)}a:`).join('\n');

/** Each refused, by what is wrong with it. */
export const REFUSED: Readonly<Record<string, string>> = {
  'a bomb of anchors': bomb(9),
  'a bomb of anchors in a list that is known': `beds: &a [*a, *a]\n`,
  'a ring': 'beds: &b { again: *b }',
  'brackets in brackets': '['.repeat(300_000),
  'braces in braces': '{"a":'.repeat(100_000),
  'dashes in dashes': '- '.repeat(100_000),
  'rows in rows': indented(1200),
  'questions in questions': '? '.repeat(100_000),
  'a hundred thousand keys': keys(100_000),
  'as many in braces': `{${keys(100_000).replaceAll('\n', ', ')}}`,
  'a tag of a language': 'beds: !!js/function "function () { return 1 }"',
  'a tag of nobody': `${SMALL_GARDEN.replace('beds:', 'beds: !rows')}`,
  'a key told twice': `${SMALL_GARDEN}beds: []\n`,
  'keys merged in': SMALL_GARDEN.replace('  units: us', '  <<: { units: us }'),
  'a name of a million letters': SMALL_GARDEN.replace('Hollow Lane', 'x'.repeat(1_000_000)),
  'two files in one': `${SMALL_GARDEN}---\n${SMALL_GARDEN}`,
  nothing: '',
  'a remark': '# nothing',
  'a number': '7',
  'a word': 'beds',
  'no number': SMALL_GARDEN.replace('44.5', '.nan'),
  'a number without end': SMALL_GARDEN.replace('44.5', '.inf'),
  'a number in sixties': SMALL_GARDEN.replace('44.5', '190:20:30'),
  'a latitude beyond the pole': SMALL_GARDEN.replace('44.5', '90.01'),
  'a zone that is not': SMALL_GARDEN.replace('America/Chicago', 'America/Atlantis'),
  'a zone that is a path': SMALL_GARDEN.replace('America/Chicago', '../../etc/localtime'),
  'a day that is not': SMALL_GARDEN.replace('2027-05-20', '2027-02-29'),
  'a frost on 30 February': SMALL_GARDEN.replace('05-10', '02-30'),
  'names of prototypes': 'garden: { __proto__: { name: x }, constructor: 1 }\nbeds: [{ __proto__: 1 }]',
  'a key that is a list': `? [garden, beds]\n: 1\n${SMALL_GARDEN}`,
  'a letter of nothing': SMALL_GARDEN.replace('Hollow Lane', 'Hollow\u0000Lane').replace('44.5', '\u0000'),
  'half a letter': SMALL_GARDEN.replace('44.5', '\uD800'),
};
