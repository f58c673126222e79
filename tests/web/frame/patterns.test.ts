import { expect, test } from 'vitest';
import { coverCrops } from '../../../src/handbook/cover-crops.ts';
import type { RotationGroup } from '../../../src/handbook/shapes/plant.ts';
import { vegetables } from '../../../src/handbook/vegetables.ts';
import { PRACTICE_WORDS } from '../../../src/schedule/entry-text.ts';
import {
  FamilyLegend,
  FamilyPatterns,
  FamilySwatch,
  familyWord,
  PracticeMark,
} from '../../../src/web/frame/patterns.tsx';

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

const families = new Set([...vegetables, ...coverCrops].map(({ rotationGroup }) => rotationGroup));

/** The strokes of a family's tile, as the page that holds the patterns has them. */
function tileOf(family: RotationGroup): string {
  const tile = new RegExp(`id="family-${family}".*?<path class="([^"]*)" d="([^"]*)"`).exec(String(FamilyPatterns()));
  return `${tile?.[1]} ${tile?.[2]}`;
}

test('every family of the handbook has a pattern and a word of its own', () => {
  expect(new Set([...families].map(tileOf)).size).toBe(families.size);
  expect(new Set([...families].map(familyWord)).size).toBe(families.size);
  expect([...families].filter((family) => !/^family-\w+ [Mm][\d\s.MmLlHhVvQqTtAaZz-]+$/.test(tileOf(family)))).toEqual(
    [],
  );
});

test('a swatch is filled with a pattern that is there', () => {
  const patterns = String(FamilyPatterns());
  for (const family of families) {
    const fill = /url\(#([^)]+)\)/.exec(String(FamilySwatch({ family })))?.[1];
    expect(patterns).toContain(`<pattern id="${fill}"`);
  }
});

test('a legend names each family once, in the same order on every page', () => {
  const words = (shown: RotationGroup[]) =>
    [...String(FamilyLegend({ families: shown })).matchAll(/<\/svg>([^<]+)</g)].map(([, word]) => word);
  expect(words(['onion', 'cabbage', 'onion'])).toEqual(['cabbage family', 'onion family']);
  expect(words(['cabbage', 'onion'])).toEqual(['cabbage family', 'onion family']);
});
