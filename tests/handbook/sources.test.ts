import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { bloomModels } from '../../src/handbook/cover-blooms.ts';
import { coldLimits } from '../../src/handbook/cover-cold.ts';
import { coverCrops } from '../../src/handbook/cover-crops.ts';
import { heatNeeds } from '../../src/handbook/cover-heat.ts';
import { coverMixes, lateSowingRates } from '../../src/handbook/cover-mixes.ts';
import { coverYields, nitrogenClasses } from '../../src/handbook/cover-yields.ts';
import { diseases } from '../../src/handbook/diseases.ts';
import { feedstocks } from '../../src/handbook/feedstocks.ts';
import { germinationTemperatures } from '../../src/handbook/germination.ts';
import { rotationIntervals } from '../../src/handbook/rotation.ts';
import { coverSeedLives, seedLives } from '../../src/handbook/seed-life.ts';
import type { SourceId } from '../../src/handbook/shapes/row.ts';
import { clearOfSoil } from '../../src/handbook/soil-contact.ts';
import { soilTextures } from '../../src/handbook/soil-textures.ts';
import { sources } from '../../src/handbook/sources.ts';
import { sownAgain } from '../../src/handbook/sown-again.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';

const known = new Set<string>(sources.map((source) => source.id));

const tables: readonly { sources: readonly SourceId[]; readIn?: Readonly<Partial<Record<string, SourceId>>> }[] = [
  ...coverCrops,
  ...coverMixes,
  ...lateSowingRates,
  ...bloomModels,
  ...coldLimits,
  ...heatNeeds,
  ...nitrogenClasses,
  ...coverYields,
  ...vegetables,
  ...feedstocks,
  ...soilTextures,
  ...germinationTemperatures,
  ...rotationIntervals,
  ...diseases,
  ...seedLives,
  ...coverSeedLives,
  ...sownAgain,
  ...clearOfSoil,
];

const SOURCE_ID = /\b(?:veg|cover|phenology|compost|agro|climate):[A-Z][A-Za-z0-9-]*/g;

/** Ids written anywhere in the program, the bibliography itself left out. */
function idsInProgram(): Map<string, string> {
  const src = new URL('../../src/', import.meta.url);
  const files = readdirSync(src, { recursive: true, encoding: 'utf8' })
    .filter((file) => /\.tsx?$/.test(file))
    .filter((file) => !file.includes('bibliography'));
  const found = new Map<string, string>();
  for (const file of files) {
    for (const [id] of readFileSync(new URL(file, src), 'utf8').matchAll(SOURCE_ID)) found.set(id, file);
  }
  return found;
}

describe('the bibliography', () => {
  it('has every source a table names', () => {
    const named = tables.flatMap((row) => [...row.sources, ...Object.values(row.readIn ?? {})]);
    expect(named.filter((id) => id === undefined || !known.has(id))).toEqual([]);
  });

  it('has every source the program names', () => {
    const missing = [...idsInProgram()].filter(([id]) => !known.has(id)).map(([id, file]) => `${id} in ${file}`);
    expect(missing).toEqual([]);
  });

  it('has no source that nothing rests on', () => {
    const used = idsInProgram();
    expect([...known].filter((id) => !used.has(id))).toEqual([]);
  });

  it('has each source once', () => {
    expect(known.size).toBe(sources.length);
  });

  it('says of each source what it is', () => {
    for (const { id, citation } of sources) expect(citation.length, id).toBeGreaterThan(20);
  });

  it('gives no machine its path and no withdrawn source a place', () => {
    // The newspaper freeze dates of Bangor (V65) were withdrawn for NOAA's.
    expect(known.has('veg:V65')).toBe(false);
    for (const { id, citation } of sources) expect(citation, id).not.toMatch(/^\/|file:/);
  });
});
