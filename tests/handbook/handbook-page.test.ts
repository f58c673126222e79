import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const read = (path: string) => new URL(`../../${path}`, import.meta.url);

it('the handbook page names every file of the handbook', () => {
  const page = readFileSync(read('docs/handbook.md'), 'utf8');
  const files = readdirSync(read('src/handbook'), { withFileTypes: true }).filter((entry) => entry.isFile());
  expect(files.length).toBeGreaterThan(10);
  for (const { name } of files) expect(page, name).toContain(`\`${name}\``);
});
