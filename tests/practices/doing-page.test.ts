import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDays, type Day } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { demoClimate, demoGarden } from '../demo-data/demo-season.ts';
import { cover, draftsIn, frostDates, garden, pile, setOut, sown } from './gardens.ts';

const page = readFileSync(new URL('../../docs/doing.md', import.meta.url), 'utf8');
const PRACTICES = new URL('../../src/practices/', import.meta.url);

/** The rows of the table under a heading, their cells without the marks of code. */
function rowsUnder(heading: string): string[][] {
  const section = page.split(`## ${heading}\n`)[1]?.split('\n## ')[0] ?? '';
  const rows = section.split('\n').filter((line) => line.startsWith('| `'));
  return rows.map((line) =>
    line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.replaceAll('`', '').trim()),
  );
}

const facts = rowsUnder('Work that makes a fact');
const marks = rowsUnder('Work whose day counts, and that changes nothing else');
const nothing = rowsUnder('Work that tells nothing later work needs');

/** Every kind that a practice gives a draft, as it is written in the source. */
function kindsInSource(): string[] {
  const files = readdirSync(PRACTICES, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.ts'));
  const lines = files.flatMap((name) => readFileSync(new URL(name, PRACTICES), 'utf8').split('\n'));
  const named = lines.filter((line) => /^\s+kind: /.test(line)).flatMap((line) => line.match(/'[a-z-]+'/g) ?? []);
  return [...new Set(named.map((word) => word.slice(1, -1)))].filter((word) => word !== 'sow');
}

/** The demo garden through its year, and gardens with what it has not. */
function walked(): TaskDraft[] {
  const year = ['2027-03-15', '2027-06-15', '2027-09-15', '2027-12-31'] as Day[];
  const demo = year.flatMap((today) =>
    draftsOf({ garden: demoGarden(today), climate: demoClimate, today, until: addDays(today, 396) }),
  );
  const climate = frostDates('05-10', '10-01');
  const poor = garden({
    topdressing: { depthMm: 6, season: 'autumn' },
    soilTests: [{ on: '2026-10-01', phosphorusPpm: 4, ph: 6.4 }],
    plantings: [setOut('tomato', '2027-05-25'), sown('garlic', '2026-10-20')],
    piles: [pile('2027-06-01')],
  });
  const grown = [{ on: '2027-05-20', what: 'grew-again', answer: 'sheet' } as const];
  const again = garden({
    startedOn: '2027-05-21',
    stands: [cover('cereal_rye', '2026-09-10', { cutOn: '2027-05-08', regrowth: grown })],
  });
  return [...demo, ...draftsIn(poor, climate), ...draftsIn(again, climate)];
}

describe('docs/doing.md', () => {
  test('has every kind of work in one of its tables, once, and no other', () => {
    const told = [...facts, ...marks, ...nothing].map(([kind]) => kind);
    expect([...told].sort()).toEqual(kindsInSource().sort());
  });

  test('names the facts each kind makes and the amount it asks for, as the drafts have them', () => {
    const byKind = new Map(
      facts.map(([kind = '', made = '', , amount = '']) => [kind, { made: made.split(', '), amount }]),
    );
    for (const { key, kind, makes } of walked()) {
      const row = byKind.get(kind);
      expect(makes.length > 0, key).toBe(row !== undefined);
      for (const effect of makes) {
        expect(row?.made, key).toContain(effect.makes);
        if ('litres' in effect) expect(row?.amount, key).toBe('litres');
        if ('grams' in effect) expect(row?.amount, key).toBe('grams');
      }
    }
  });

  test('walks most of the kinds that make a fact', () => {
    const seen = new Set(walked().map(({ kind }) => kind));
    expect(facts.filter(([kind = '']) => seen.has(kind)).length).toBeGreaterThan(facts.length * 0.7);
  });
});
