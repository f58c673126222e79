import { expect, test } from 'vitest';
import { z } from 'zod';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const inGarden = async () => (await withGarden()).loamtide;

const share = z.strictObject({ of: z.number(), among: z.number() });
/** What docs/commands.md promises of a choice: shares are counts, seed is in grams. */
const choice = z.looseObject({
  choice: z.string(),
  name: z.string(),
  verdict: z.enum(['good', 'possible', 'poor', 'unusable']),
  seed: z.array(z.strictObject({ cover: z.string(), gPerM2: z.number(), grams: z.number() })),
  establish: z.looseObject({ share }).optional(),
  pros: z.array(z.string()),
  cons: z.array(z.string()),
});
const output = z.strictObject({
  garden: z.string(),
  beds: z.array(
    z.strictObject({
      bed: z.string(),
      name: z.string(),
      gaps: z.array(
        z.looseObject({
          from: z.string().optional(),
          to: z.string().optional(),
          planned: z.array(z.looseObject({ stand: z.string(), cover: z.string() })),
          choices: z.array(choice).min(20),
        }),
      ),
    }),
  ),
  seed: z.array(z.looseObject({ cover: z.string(), grams: z.number(), by: z.string() })),
});

test('every gap is told with the best choices and their reasons', async () => {
  const { code, out } = await (await inGarden())('season-end');
  expect(code).toBe(0);
  expect(out).toMatch(/^North bed: after carrot, from \w+ \d+; nothing is planned after it\.$/m);
  expect(out).toMatch(/^ {2}[a-z ]+ \([a-z_-]+\): fits well$/m);
  expect(out).toMatch(/^ {4}Seed: .+ \d+ g \([\d.]+ oz\)/m);
  expect(out).toMatch(/^ {4}\+ /m);
  expect(out).toMatch(/^ {2}After these: /m);
  expect(out).not.toMatch(/⟦/);
});

test('one bed is told whole, with why the rest do not fit', async () => {
  const { out } = await (await inGarden())('season-end', '--bed', 'north bed');
  expect(out).not.toContain('South bed');
  expect(out).toContain('  Does not fit:');
});

test('the same as data', async () => {
  const { out } = await (await inGarden())('season-end', '--format', 'json');
  const { beds, garden } = output.parse(JSON.parse(out));
  expect(garden).toBe('hollow-lane');
  const verdicts = beds[0]?.gaps.at(-1)?.choices.map(({ verdict }) => verdict) ?? [];
  const order = ['poor', 'unusable'];
  expect(verdicts).toEqual([...verdicts].sort((a, b) => order.indexOf(a) - order.indexOf(b)));
});

test('a choice is shown, and taken in only when asked; then it stands in the plan and its seed is to be bought', async () => {
  const loamtide = await inGarden();
  const looked = await loamtide('season-end', '--bed', 'North bed', '--choose', 'oats');
  expect(looked.out).toMatch(/^Chosen for North bed: oats, sown about /);
  expect(looked.out).toContain('Nothing was changed. Add --apply to take it in.');
  expect((await loamtide('season-end', '--bed', 'North bed')).out).not.toContain('Planned: oats');
  await loamtide('season-end', '--bed', 'North bed', '--choose', 'oats', '--apply');
  const told = (await loamtide('season-end', '--bed', 'North bed')).out;
  expect(told).toMatch(/Planned: oats, sown on \w+ \d+.*, between /s);
  expect(told).toMatch(/Seed to buy for what is planned:\n {2}oats: \d+ g/);
  expect((await loamtide('undo')).out).toContain('Chosen for North bed: oats');
});

test('mulch is a choice like any other', async () => {
  const { out, code } = await (await inGarden())('season-end', '--bed', 'North bed', '--choose', 'mulch-leaves');
  expect(code).toBe(0);
  expect(out).toMatch(/^Chosen for North bed: a mulch of leaves, from /);
});

test('--on chooses the gap its day lies in, and what is taken in can be exported and read back', async () => {
  const loamtide = await inGarden();
  const bed = ['season-end', '--bed', 'North bed', '--choose', 'mulch-straw', '--on', '2027-11-01'];
  expect((await loamtide(...bed, '--apply')).out).toContain('a mulch of straw, from November 1, 2027');
  await loamtide('garden', 'export', 'back.yaml');
  const back = await loamtide('garden', 'check', 'back.yaml');
  expect([back.code, back.err]).toEqual([0, '']);
});

test('a cover that fits only in a later gap is refused with why, and chosen for then only when asked', async () => {
  const summerGap = SMALL_GARDEN.replace(
    '{ bed: North bed, crop: carrot, sow: "2027-05-20" }',
    '{ bed: North bed, crop: spinach, sow: "2027-04-05", lastHarvest: "2027-05-25" }\n' +
      '  - { bed: North bed, crop: lettuce-head, sow: "2027-08-05", lastHarvest: "2027-09-02" }',
  );
  const { loamtide } = await withGarden(summerGap);
  const rye = ['season-end', '--bed', 'North bed', '--choose', 'cereal_rye'];
  const { code, err } = await loamtide(...rye);
  expect(code).toBe(2);
  expect(err).toContain('winter rye does not fit in North bed after spinach, from May 26, until');
  const on = /In a later gap it does: add --on (\d{4}-\d\d-\d\d)/.exec(err)?.[1] ?? 'no day';
  expect((await loamtide(...rye, '--on', on)).out).toMatch(
    /^Chosen for North bed: winter rye, sown about \w+ \d+, 2027/,
  );
});

test('a cover with no time in the bed within two years is refused as such, with no day nobody gave', async () => {
  const { loamtide } = await withGarden(
    SMALL_GARDEN.replace('crop: carrot, sow: "2027-05-20"', 'crop: asparagus, setOut: "2027-05-20"'),
  );
  const { code, err } = await loamtide('season-end', '--bed', 'North bed', '--choose', 'cereal_rye');
  expect(code).toBe(2);
  expect(err).toContain('winter rye has no time to be sown in North bed within two years.');
});

test('a cover that is passed over for a year says why it is that far off', async () => {
  const { out } = await (await inGarden())('season-end', '--bed', 'North bed', '--choose', 'oats');
  expect(out.replace(/\s+/g, ' ')).toMatch(
    /The time to sow oats before winter ends on \w+ \d+, 2027; the bed is free only from/,
  );
  const chosenFor = /oats, sown about (\w+ \d+, \d{4})/.exec(out)?.[1] ?? 'no day';
  expect(out.replace(/\s+/g, ' ')).toContain(`so it is sown about ${chosenFor}`);
});

test('a choice that fits badly says so with the reasons before it is taken in', async () => {
  const loamtide = await inGarden();
  const { out } = await loamtide('season-end', '--bed', 'North bed', '--choose', 'oats', '--on', '2027-10-20');
  expect(out).toContain('\nOats does not fit on that day:\n  - In this gap it can be sown from');
  const { out: json } = await loamtide(
    ...['season-end', '--bed', 'North bed', '--choose', 'oats', '--on', '2027-10-20', '--format', 'json'],
  );
  expect(JSON.parse(json)).toMatchObject({ verdict: 'Oats does not fit on that day', told: [] });
});

test.each([
  [['--choose', 'oats'], '--bed: is missing. Name the bed it is for with --bed.'],
  [['--bed', 'nort bed'], '"nort bed" is not a bed of this garden. Did you mean North bed'],
  [['--bed', 'North bed', '--choose', 'buckweat'], 'Did you mean buckwheat?'],
  [['--bed', 'North bed', '--apply'], '--choose: is missing.'],
  [['--bed', 'North bed', '--choose', 'oats', '--on', '2027-06-10'], 'Carrot grows there from May 20, 2027'],
  [['--bed', 'North bed', '--choose', 'oats', '--on', '2027-06-10'], 'The bed is free now until May 20, 2027; from'],
  [['--bed', 'North bed', '--choose', 'oats', '--on', '2020-06-10'], 'cannot be used. Give a day from 2027-04-18'],
])('is refused with the mend: %s', async (words, mend) => {
  const { code, err } = await (await inGarden())('season-end', ...words);
  expect(code).toBe(2);
  expect(err).toContain(mend);
});
