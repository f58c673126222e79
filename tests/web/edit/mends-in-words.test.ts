/**
 * What the check of the whole file says of a form: never in the file's own words.
 */
import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { gardenFileSchema } from '../../../src/garden/garden-file.ts';
import { kinds } from '../../../src/web/edit/kinds.ts';
import { laidProblems } from '../../../src/web/edit/lay-problems.ts';
import { GARDEN, type SampleApp, sampleApp, sampleFile } from '../sample-garden.ts';
import { fillIn, wordsOf } from './opened-form.ts';

interface Rule {
  path: string;
  mend: string;
}

/** Every rule across the keys of a row, by the place it is told at. */
function rulesOf(held: unknown, path = ''): Rule[] {
  if (held instanceof z.ZodOptional || held instanceof z.ZodDefault) return rulesOf(held.unwrap(), path);
  if (held instanceof z.ZodArray) return rulesOf(held.element, path === '' ? '' : `${path}[0]`);
  if (!(held instanceof z.ZodObject)) return [];
  const own = (held.def.checks ?? []).flatMap((check) => {
    const def = check._zod.def as { check: string; path?: string[]; error?: (issue: object) => unknown };
    const mend = def.error?.({});
    return typeof mend === 'string'
      ? [{ path: [path, ...(def.path ?? [])].filter((part) => part !== '').join('.'), mend }]
      : [];
  });
  const within = Object.entries(held.shape).flatMap(([key, each]) =>
    rulesOf(each, path === '' ? key : `${path}.${key}`),
  );
  return [...own, ...within];
}

/** Words of the file that no gardener was ever asked for: keys run together, keys with a value, written dates. */
const OF_THE_FILE =
  /\b[a-z]+[A-Z]\w*|such as [a-z]\w*: |\bwhat: |\d{4}-\d{2}-\d{2}|"(?:to|from|again)"|\bgrams and on\b|either beds or|\bor (?:setOut|cover|mix)\b/;

describe('a rule of the file across several of its keys', () => {
  const rules = kinds.flatMap((kind) =>
    rulesOf(gardenFileSchema.shape[kind.of]).map((rule) => ({ ...rule, kind, called: `${kind.list} ${rule.path}` })),
  );

  test('has a mend in the words of its form, whatever the kind', async () => {
    const { steward } = await sampleApp();
    const [view, file] = [await steward.view('mill-row'), await steward.fileNow('mill-row')];
    const told = rules.map(({ kind, path, mend, called }) => {
      const fields = kind.fields({ view, file } as never);
      const where = [`${kind.of}[0]`, path].filter((part) => part !== '').join('.');
      const laid = { kind, fields, at: [`${kind.of}[0]`], row: {}, places: new Map<string, string>(), typed: () => [] };
      const problem = { where, what: '226.796185 cannot be used.', mend };
      const [words] = laidProblems([problem], laid, { kinds, file, garden: view.garden });
      return `${called} → ${words?.what} ${words?.mend}`;
    });
    expect(new Set(rules.map(({ kind }) => kind.of)).size).toBeGreaterThan(6);
    expect(told.filter((line) => OF_THE_FILE.test(line.split(' → ')[1] ?? ''))).toEqual([]);
  });
});

describe('a form that is refused', () => {
  async function refused(app: SampleApp, path: string, change: Record<string, string>): Promise<string> {
    const answer = await fillIn(app, `${GARDEN}/edit/${path}`, change);
    expect([path, answer.status]).toEqual([path, 422]);
    return wordsOf(/<section class="problems".*?<\/section>/s.exec(await answer.text())?.[0] ?? '');
  }

  test('shows an amount as it was typed', async () => {
    const app = await sampleApp();
    const told = await refused(app, 'seeds/new', { plant: 'cover:oats', packed: '2026', grams: '8' });
    expect(told).toContain('How much it holds: “8 oz” cannot be used. Give how much it holds and the day');
    expect(await refused(app, 'seeds/new', { plant: 'cover:oats', packed: '2026', grams: '1 lb' })).toContain('“1 lb”');
    expect(await refused(app, 'seeds/new', { plant: 'cover:oats', packed: '2029' })).toContain(
      '2029 is still to come.',
    );
    expect(await refused(app, 'wishes/new', { crop: 'tomato' })).toContain(
      'Give either a number of whole beds or how much',
    );
  });

  test('shows a day in its reader’s order, at the entry that breaks the rule', async () => {
    const turns = ['2027-04-16', '2027-03-10'];
    const app = await sampleApp(
      sampleFile({ piles: sampleFile().piles.map((pile) => ({ ...pile, turns: turns.slice(0, 1) })) }),
    );
    const told = await fillIn(app, `${GARDEN}/edit/piles/spring-pile`, { 'turns[1].on': turns[1] ?? '' });
    const html = await told.text();
    expect(told.status).toBe(422);
    expect(wordsOf(html)).toContain(
      'Turns, The day: “March 10, 2027” cannot be used. Give turns from the day it was built on.',
    );
    expect(html).toContain('href="#field-turns-1-on"');
  });

  test('takes no day to come for what can only have happened', async () => {
    const app = await sampleApp();
    const on = '2027-06-01';
    const told = await Promise.all(
      [
        ['piles/spring-pile', { 'turns[0].on': on }] as const,
        ['piles/spring-pile', { 'readings[0].on': on }] as const,
        ['cover-stands/rye-north', { cut: on }] as const,
        ['cover-stands/rye-north', { 'looked[0].on': on, 'looked[0].covered': 'a-third' }] as const,
        ['cover-stands/rye-north', { 'seed[0].cover': 'cereal_rye', 'seed[0].on': on, 'seed[0].grams': '9' }] as const,
        ['soil-tests/new', { on, ph: '6.5' }] as const,
        ['soil-squeezes/new', { on, soilTexture: 'loam', answer: 'smears' }] as const,
        ['topdressed/new', { bed: 'north', on, litres: '3' }] as const,
        ['compost-bought/new', { on, litres: '3' }] as const,
      ].map(([path, change]) => refused(app, path, { ...change })),
    );
    expect(told.filter((words) => !words.includes('That day is still to come. Give a day up to today'))).toEqual([]);
  });
});
