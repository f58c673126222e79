/**
 * The limits that docs/bad-input.md tells are those that refuse.
 */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { MOST_CHARACTERS, tooManyDays } from '../../src/garden/weather-rows.ts';
import { outsizedIn } from '../../src/garden/yaml-data.ts';
import { MOST_BYTES } from '../../src/steward/files/file-text.ts';
import { GARDEN_FILE_LIMIT_BYTES } from '../../src/web/requests/guard.ts';

const PAGE = readFileSync(new URL('../../docs/bad-input.md', import.meta.url), 'utf8').replace(/\s+/g, ' ');

test('every limit on the page is the one that holds', () => {
  const deep = outsizedIn('['.repeat(500))?.what ?? '';
  const keys = outsizedIn(Array.from({ length: 500 }, (_, at) => `k${at}: 1`).join('\n'))?.what ?? '';
  const days = tooManyDays(1_000_000, 1)?.what ?? '';
  const numberIn = (words: string) => /\d+/.exec(words)?.[0];
  expect(PAGE).toContain(`rows within rows more than ${numberIn(deep)} deep`);
  expect(PAGE).toContain(`a row of more than ${numberIn(keys)} keys`);
  expect(PAGE).toContain(`more than ${numberIn(days)} days`);
  expect(PAGE).toContain(`a line of more than ${MOST_CHARACTERS} characters`);
  expect(PAGE).toContain(
    `more than ${GARDEN_FILE_LIMIT_BYTES / 1024 ** 2} MiB on the pages, ${MOST_BYTES / 1024 ** 2} MiB by command`,
  );
  const many = readWeatherFile(`date,tmin_c,tmax_c\n${'x,1,2\n'.repeat(3000)}`);
  expect(PAGE).toContain(`more than ${many.problems.length} problems`);
});
