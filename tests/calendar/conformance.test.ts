import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const page = readFileSync(new URL('../../docs/feed-conformance.md', import.meta.url), 'utf8');
const rows = page
  .split('\n')
  .filter((line) => line.startsWith('| ') && !line.includes('| state |') && !line.startsWith('| ---'))
  .map((line) => line.slice(2, -2).split(' | '));
const supported = rows.filter((row) => row.at(-2)?.startsWith('supported'));

describe('the conformance page', () => {
  it('names for every supported line tests that exist', () => {
    expect(supported.length).toBeGreaterThan(40);
    for (const row of supported) {
      const [, file, titles] = /^([a-z-]+(?:\/[a-z-]+)+): (".*")$/.exec(row.at(-1) ?? '') ?? [];
      expect(file, row.join()).toBeDefined();
      const tests = readFileSync(new URL(`../${file}.test.ts`, import.meta.url), 'utf8');
      const named = [...(titles ?? '').matchAll(/"([^"]+)"/g)].map(([, title]) => title);
      for (const title of named) expect(tests.includes(`'${title}`), `${file}: ${title}`).toBe(true);
    }
  });

  it('gives a reason for every line that is not', () => {
    const others = rows.filter((row) => !supported.includes(row));
    expect(others.length).toBeGreaterThan(8);
    for (const row of others) expect([row.at(-2), (row.at(-1) ?? '').length > 20], row.join()).toEqual(['not', true]);
  });
});
