import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const ROOT = new URL('../../', import.meta.url);

const text = (path: string): string => readFileSync(new URL(path, ROOT), 'utf8');

/** Rows of the page's table of figures: figure, name and file. */
const rows = [...text('docs/how-a-day-is-chosen.md').matchAll(/^\|[^|]+\| (\d+) \| `(\w+)`, (\S+) \|$/gm)];

it('has thirteen figures on the page about days', () => {
  expect(rows).toHaveLength(13);
});

it.each(rows.map(([, days = '', name = '', file = '']) => [name, file, days] as const))(
  '%s stands in %s as the page says, %s',
  (name, file, days) => {
    expect(text(file)).toMatch(new RegExp(`^(export )?const ${name} = ${days};$`, 'm'));
  },
);
