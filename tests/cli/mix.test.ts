import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { loamtideIn, tempFolder } from './loamtide.ts';

const mix = (...argv: string[]) => loamtideIn(tempFolder())('mix', ...argv);

const figure = z.strictObject({
  low: z.number(),
  usual: z.number(),
  high: z.number(),
  standing: z.enum(['good', 'will do', 'too low', 'too high']),
});
const addition = z.strictObject({
  reach: z.enum(['good', 'will do']),
  add: z.array(z.strictObject({ material: z.string(), litres: z.number() })),
  waterLitres: z.number(),
  makes: z.strictObject({ carbonToNitrogen: z.number(), moisturePercent: z.number() }),
});
/** The shape docs/commands.md promises, written out anew. */
const mixOutput = z.strictObject({
  parts: z.array(
    z.strictObject({
      name: z.string(),
      kind: z.enum(['brown', 'green', 'other']),
      litres: z.number().optional(),
      kg: z.number().optional(),
    }),
  ),
  carbonToNitrogen: figure,
  moisturePercent: figure,
  brownsLitres: z.number(),
  greensLitres: z.number(),
  leftOut: z.array(z.string()),
  toAdd: z.union([
    addition,
    z.strictObject({ reach: z.literal('not'), hindrance: z.string(), instead: addition.nullable() }),
  ]),
  layers: z.record(z.string(), z.number()).nullable(),
  cautions: z.array(z.string()),
});

const asData = async (...argv: string[]) => mixOutput.parse(JSON.parse((await mix(...argv, '--format', 'json')).out));

describe('two of leaves to one of grass', () => {
  test('is told with its band, the rule of thumb, and what it wants', async () => {
    const { code, out } = await mix('dry-leaves:200L', 'grass-clippings:100L');
    expect(code).toBe(0);
    expect(out).toMatch(/^Dry leaves, loose +200 L +24 kg +brown$/m);
    expect(out).toMatch(/about 38 to 1, somewhere from 25 to 52/);
    expect(out).toMatch(/By volume 2 of browns to 1 of greens; the rule of thumb is 2 to 1/);
    expect(out).toMatch(/To add\n {2}Nothing/);
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test('is the same as data', async () => {
    const { carbonToNitrogen, brownsLitres, greensLitres, toAdd, layers } = await asData(
      'dry-leaves:200L',
      'grass-clippings:100L',
    );
    expect(carbonToNitrogen).toMatchObject({ usual: 38.2, standing: 'will do' });
    expect([brownsLitres, greensLitres, layers]).toEqual([200, 100, null]);
    expect(toAdd).toMatchObject({ add: [] });
  });
});

test('volumes and weights may be mixed, and what is typed in pounds is answered in feet and pounds', async () => {
  const { out } = await mix('straw:1yd3', 'kitchen-scraps:30lb', 'coffee:5gal', '--bin', '3x3x3ft');
  expect(out).toMatch(/^Straw +1 cu yd +228 lb/m);
  expect(out).toMatch(/layers of browns, .* in each/);
  expect(out).not.toMatch(/\d (L|kg|cm)\b/);
});

test('what is there to add may be named, with how much of it there is', async () => {
  const { toAdd } = await asData('grass-clippings:100L', '--with', 'dry-leaves:60L,cardboard');
  expect(toAdd.reach).not.toBe('not');
  const leaves = 'add' in toAdd ? toAdd.add.find(({ material }) => material === 'leaves_dry_loose') : undefined;
  expect(leaves?.litres ?? 0).toBeLessThanOrEqual(60);
});

test('what cannot be reached is said, with what would do it', async () => {
  const { out } = await mix('grass-clippings:100L', '--with', 'kitchen-scraps');
  const flat = out.replace(/\s+/g, ' ');
  expect(flat).toContain('cannot be reached: nothing there is brown enough');
  expect(flat).toMatch(/It would be with [\d.]+ L of (dry leaves|straw)/);
});

test('a bin is laid in layers, browns first and last, and what is over is said', async () => {
  const { out } = await mix('leaves:600L', 'grass:300L', '--bin', '760L');
  expect(out).toMatch(/layers of browns/);
  expect(out).toMatch(/140 L are over/);
});

describe('what cannot be used', () => {
  test('is named with the nearest name and a right amount, all at once', async () => {
    const { code, err } = await mix('dry-leafs:200L', 'grass-clippings:100', 'straw');
    expect(code).toBe(2);
    expect(err).toContain('dry-leafs: The handbook knows no such material. Did you mean dry-leaves');
    expect(err).toContain('grass-clippings: "100" is no amount. Give a volume or a weight with its unit');
    expect(err).toContain('straw: It has no amount.');
  });

  test.each([
    ['cheese:1kg', 'They draw rats'],
    ['cat-litter:5L', 'parasites'],
    ['bindweed:20L', 'enough for a new plant'],
    ['treated-clippings:50L', 'weedkiller'],
    ['diseased-plants:10L', 'rarely hot enough'],
    ['seeding weeds:10L', 'Cut the heads off'],
  ])('%s is kept out, with why or where it goes', async (pair, why) => {
    const { code, err } = await mix('dry-leaves:100L', pair);
    expect(code).toBe(2);
    expect(err).toContain(why);
  });

  test('a bin of no size, too many things to add, and stuff without any ratio are refused', async () => {
    expect((await mix('leaves:9L', '--bin', 'big')).err).toContain('"big" is no size of a bin.');
    expect((await mix('leaves:9L', '--with', 'a,b,c,d,e,f,g')).err).toContain('Name at most 6.');
    expect((await mix('leaves:9L', '--with', 'strow')).err).toContain('Did you mean straw');
    expect((await mix('eggshells:2L')).err).toContain('None of it has a ratio');
    expect((await mix()).code).toBe(2);
  });
});

test('manure, hay and food are told with what to mind', async () => {
  const { out } = await mix('horse-manure:100L', 'hay:200L', 'kitchen-scraps:20L');
  const flat = out.replace(/\s+/g, ' ');
  expect(flat).toMatch(/120 days before harvest/);
  expect(flat).toMatch(/Horse manure with bedding; Grass hay: It may carry weedkiller/);
  expect(flat).toMatch(/Food draws rats: a bin closed all round/);
  expect(flat).toMatch(/tetanus/);
  expect(flat).toMatch(/wear a mask/);
});
