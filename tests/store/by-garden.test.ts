/**
 * Rows of a garden are asked for by the garden they are of.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

const STORE = new URL('../../src/store/', import.meta.url);

/** What is looked for across all gardens, and why that is right. */
const ACROSS: Readonly<Record<string, string>> = {
  "drafts .where('id', '=', id)": 'a draft is no garden yet, and has an id of its own',
  "feeds .where('token', '=', token)": 'the token is the secret, and says whose feed it is',
  "former_addresses .where('former_addresses.token', '=', token)": 'the same',
  "plans .where('gardens.put_away_at', 'is', null)":
    'whether planning goes on at all: a day, and of no garden in particular',
  "reading_keys .where('key_hash', '=', keyHash)": 'the key is the secret, and says whose it is',
};

/** The tables that have a garden's id in every row, by the interfaces of their rows. */
function tablesOfGardens(): string[] {
  const text = readFileSync(new URL('tables.ts', STORE), 'utf8');
  const ofGardens = [...text.matchAll(/interface (\w+) \{\n([^}]*)\}/g)]
    .filter(([, , columns = '']) => columns.includes('garden_id'))
    .map(([, name = '']) => name);
  const tables = /interface Tables \{([^}]*)\}/.exec(text)?.[1] ?? '';
  return [...tables.matchAll(/(\w+): (\w+);/g)]
    .filter(([, , row = '']) => ofGardens.includes(row))
    .map(([, table = '']) => table);
}

test('every statement about rows of a garden names the garden', () => {
  const tables = tablesOfGardens();
  expect(tables.length).toBeGreaterThan(8);
  const across: string[] = [];
  let count = 0;
  for (const file of readdirSync(STORE).filter((name) => name.endsWith('.ts'))) {
    const text = readFileSync(new URL(file, STORE), 'utf8');
    for (const { index, 1: table = '' } of text.matchAll(/\.(?:selectFrom|updateTable|deleteFrom)\('(\w+)'\)/g)) {
      if (!tables.includes(table)) continue;
      count += 1;
      const statement = text.slice(index, text.indexOf('.execute', index));
      // A draft that is no garden's yet is of nobody.
      if (/\.where\('garden_id', 'is', null\)/.test(statement)) continue;
      // keyOf(name) is the key of a delivery: its garden is part of it.
      if (/\.where\('garden_id', '=', gardenId\)|and\(keyOf\(name\)\)/.test(statement)) continue;
      const where = /\.where\('(?!garden_id)[^)]*\)/.exec(statement)?.[0] ?? statement.trim();
      across.push(`${table} ${where}`);
    }
  }
  expect(count).toBeGreaterThan(20);
  expect([...new Set(across)].sort()).toEqual(Object.keys(ACROSS).sort());
});
