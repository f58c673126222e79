import { expect, test } from 'vitest';
import { PRACTICE_WORDS } from '../../src/schedule/entry-text.ts';
import { PracticeMark } from '../../src/web/patterns.tsx';

const practices = Object.keys(PRACTICE_WORDS) as (keyof typeof PRACTICE_WORDS)[];

function drawn(practice: keyof typeof PRACTICE_WORDS): string {
  return /<path d="([^"]*)"/.exec(String(PracticeMark({ practice })))?.[1] ?? '';
}

test('every practice has a drawing of its own, so that it is known without colour', () => {
  expect(new Set(practices.map(drawn)).size).toBe(practices.length);
  expect(practices.map(drawn).filter((path) => !/^[Mm][\d\s.MmLlHhVvQqTtAaZz-]+$/.test(path))).toEqual([]);
});

test('every drawing has its word beside it', () => {
  for (const practice of practices) expect(String(PracticeMark({ practice }))).toContain(PRACTICE_WORDS[practice]);
});
