import { describe, expect, it } from 'vitest';
import { bloomModels } from '../../src/handbook/cover-blooms.ts';
import { coldLimits } from '../../src/handbook/cover-cold.ts';
import { coverCropById, coverCrops } from '../../src/handbook/cover-crops.ts';
import { heatNeeds } from '../../src/handbook/cover-heat.ts';
import { coverMixById, coverMixes, lateSowingRates } from '../../src/handbook/cover-mixes.ts';
import { diseases } from '../../src/handbook/diseases.ts';
import { feedstocks } from '../../src/handbook/feedstocks.ts';
import { germinationTemperatures } from '../../src/handbook/germination.ts';
import { rotationIntervals } from '../../src/handbook/rotation.ts';
import type { Row } from '../../src/handbook/shapes/row.ts';
import { soilTextures } from '../../src/handbook/soil-textures.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';

type NamedRow = Row<string> & { id: string };

const named: Record<string, readonly NamedRow[]> = {
  coverCrops,
  coverMixes,
  vegetables,
  feedstocks,
  soilTextures,
  diseases,
};

/** Every object in a row that has both a low and a high end. */
function spansIn(value: unknown): { low: number; high: number }[] {
  if (typeof value !== 'object' || value === null) return [];
  const inside = Object.values(value).flatMap(spansIn);
  return 'low' in value && 'high' in value ? [value as { low: number; high: number }, ...inside] : inside;
}

describe.each(Object.entries(named))('%s', (_, rows) => {
  it('names each row once', () => {
    expect(new Set(rows.map((row) => row.id)).size).toBe(rows.length);
  });

  it('marks only fields the row has', () => {
    const stray = rows.flatMap((row) =>
      Object.keys(row.marks)
        .filter((field) => !(field in row))
        .map((f) => `${row.id}.${f}`),
    );
    expect(stray).toEqual([]);
  });

  it('reads every figure in a book the row lists', () => {
    const stray = rows.flatMap((row) =>
      Object.entries(row.readIn ?? {})
        .filter(([field, id]) => field in row && id !== undefined && !row.sources.includes(id))
        .filter(([field]) => row.marks[field] === undefined || ['derived', 'secondary'].includes(row.marks[field]))
        .map(([field, id]) => `${row.id}.${field} in ${id}`),
    );
    expect(stray).toEqual([]);
  });

  it('lists a source for every row', () => {
    expect(rows.filter((row) => row.sources.length === 0 && Object.keys(row.marks).length === 0)).toEqual([]);
  });

  it('keeps every low end at or under its high end', () => {
    expect(spansIn(rows).filter(({ low, high }) => low > high)).toEqual([]);
  });
});

describe('the other tables', () => {
  it('keeps every low end at or under its high end', () => {
    const all = [bloomModels, coldLimits, germinationTemperatures, rotationIntervals];
    const spans = spansIn(all);
    expect(spans.length).toBeGreaterThan(100);
    expect(spans.filter(({ low, high }) => low > high)).toEqual([]);
  });

  it('knows every cover it speaks of', () => {
    const coverIds = [
      ...bloomModels.map((model) => model.coverId),
      ...coldLimits.map((limit) => limit.coverId),
      ...heatNeeds.map((need) => need.coverId),
      ...lateSowingRates.map((rate) => rate.coverId),
      ...coverMixes.flatMap((mix) => mix.parts.map((part) => part.coverId)),
      ...diseases.flatMap((disease) => disease.coverIds),
    ];
    expect(coverIds.filter((id) => !coverCropById.has(id))).toEqual([]);
  });

  it('gives no mix the id of a cover', () => {
    expect(coverCrops.filter((cover) => coverMixById.has(cover.id))).toEqual([]);
  });
});
