import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const page = readFileSync(new URL('../../docs/feeds.md', import.meta.url), 'utf8');
const supported = page.split('\n').filter((line) => /^\|[^|]+\|[^|]+\| supported/.test(line));

it('every row of the conformance table that says "supported" names tests that exist', () => {
  expect(supported.length).toBeGreaterThan(20);
  for (const row of supported) {
    const [, file, titles] = /\| ([a-z-]+): ("[^|]*") \|$/.exec(row) ?? [];
    expect(file, row).toBeDefined();
    const tests = readFileSync(new URL(`${file}.test.ts`, import.meta.url), 'utf8');
    for (const [, title] of (titles ?? '').matchAll(/"([^"]+)"/g)) expect(tests).toContain(`it('${title}`);
  }
});
