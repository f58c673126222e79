import { expect, test } from 'vitest';
import { z } from 'zod';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const WISHES = `wishes:
  - { crop: tomato, areaM2: 2.5 }
  - { crop: kale, beds: 1 }
`;

const withWishes = async (wishes = WISHES) => (await withGarden(`${SMALL_GARDEN}${wishes}`)).loamtide;

test('a bed is proposed for each wish, round what is planned', async () => {
  const { code, out } = await (await withWishes())('rotation');
  expect(code).toBe(0);
  expect(out).toMatch(/^North bed +\(carrot\)$/m);
  expect(out).toMatch(/^South bed +tomato 27 sq ft$/m);
  expect(out).toMatch(/^ {2}- 1 bed of kale in 2027: 0 beds found room\.$/m);
  expect(out).toContain('These cannot all be kept. The least to give: move what is planned for North');
  expect(out).not.toContain('⟦');
});

test('made anew, what is only planned makes room', async () => {
  const { out } = await (await withWishes())('rotation', '--anew');
  expect(out).toMatch(/^(North|South) bed +kale$/m);
  expect(out).not.toContain('Not met');
  expect(out).toContain('No plan does better by the rules.');
});

test('the same as data, for two seasons', async () => {
  const { out } = await (await withWishes())('rotation', '--anew', '--years', '2', '--format', 'json');
  const crop = z.strictObject({
    season: z.number(),
    crop: z.string(),
    how: z.literal('proposed'),
    areaM2: z.number(),
    sow: z.iso.date().optional(),
    setOut: z.iso.date().optional(),
    lastHarvest: z.iso.date(),
  });
  const output = z.looseObject({
    garden: z.string(),
    seasons: z.array(z.number()),
    found: z.enum(['best', 'best found']),
    beds: z.array(z.looseObject({ bed: z.string(), crops: z.array(crop) })),
    broken: z.array(z.looseObject({ rule: z.string(), hard: z.boolean(), why: z.string(), source: z.string() })),
  });
  const { seasons, beds } = output.parse(JSON.parse(out));
  expect(seasons).toEqual([2027, 2028]);
  expect(beds.flatMap(({ crops }) => crops.map(({ crop: id }) => id)).sort()).toEqual([
    'kale',
    'kale',
    'tomato',
    'tomato',
  ]);
});

test('without wishes it says where to write them', async () => {
  const { code, err } = await (await withWishes(''))('rotation');
  expect(code).toBe(2);
  expect(err).toContain('wishes');
});

test('more seasons than can be planned are refused', async () => {
  const { err } = await (await withWishes())('rotation', '--years', '5');
  expect(err).toContain('from 1 to 4');
});

test('what taking the plan would do is shown first, and it is taken only when that is asked for', async () => {
  const loamtide = await withWishes('wishes: [{ crop: tomato, areaM2: 2.5 }]\n');
  const shown = await loamtide('rotation', '--accept');
  expect(shown.out).toMatch(/^Would be planned:\n {2}- tomato in South bed on 27 sq ft, set out about/m);
  expect(shown.out).toContain('What is added:');
  expect(shown.out).toContain('Nothing was changed. Add --apply to take it.');
  expect((await loamtide('rotation', '--accept', '--apply')).out).toContain('It is planned.');
  expect((await loamtide('rotation')).out).toMatch(/^South bed +\(tomato\)$/m);
  expect((await loamtide('garden', 'export', '-')).out).toMatch(/crop: tomato.*areaM2: 2.5/);
  const nothing = await loamtide('rotation', '--accept');
  expect([nothing.code, nothing.err]).toEqual([2, expect.stringContaining('would plan nothing')]);
});

test('a plan is not taken unless it is accepted', async () => {
  const { code, err } = await (await withWishes())('rotation', '--apply');
  expect([code, err]).toEqual([2, expect.stringContaining('Add --accept.')]);
});
