import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { loamtideIn, tempFolder } from './loamtide.ts';

const monthDay = z.string().regex(/^\d{2}-\d{2}$/);
const published = z.strictObject({ p50: monthDay, p90: monthDay });
const mean = z.strictObject({ p10: monthDay, p50: monthDay, p90: monthDay });

/** The shape docs/commands.md promises, written out anew. */
const nearOutput = z.strictObject({
  place: z.strictObject({ latitude: z.number(), longitude: z.number(), elevationM: z.number().optional() }),
  stations: z
    .array(
      z.strictObject({
        id: z.string(),
        name: z.string(),
        state: z.string(),
        distanceKm: z.number(),
        heightDifferenceM: z.number().optional(),
        elevationM: z.number(),
        yearRoundFreeze: z.boolean(),
        wrapsYear: z.boolean(),
        lastSpring: published.optional(),
        firstAutumn: published.optional(),
        seasonDays: z.strictObject({ p50: z.number(), p90: z.number() }),
      }),
    )
    .length(5),
  together: z
    .strictObject({ stationsUsed: z.number(), lastSpring: mean, firstAutumn: mean, giveOrTakeDays: z.literal(7) })
    .nullable(),
  notes: z.array(z.string()),
});

const near = (...argv: string[]) => loamtideIn(tempFolder())('near', ...argv);
const nearAsData = async (...argv: string[]) =>
  nearOutput.parse(JSON.parse((await near(...argv, '--format', 'json')).out));

// Stations, distances and dates: our own look-up in NOAA's 1981–2010 tables (climate:NCEI-8110), one list a place.
test('around Madison, Wisconsin, it lists these stations with distance, height and dates', async () => {
  const { stations } = await nearAsData('--lat', '43.07', '--lon', '-89.40', '--elevation', '260');
  expect(stations.slice(0, 3)).toMatchObject([
    { id: 'USC00471416', name: 'Charmany Farm', distanceKm: 6.8, lastSpring: { p50: '04-22' } },
    { id: 'USW00014837', name: 'Madison Dane Regional Airport', distanceKm: 9, lastSpring: { p50: '05-02' } },
    { id: 'USC00470308', name: 'Arlington University Farm', distanceKm: 26.3, lastSpring: { p50: '05-11' } },
  ]);
  for (const { elevationM, heightDifferenceM } of stations)
    expect(heightDifferenceM).toBe(Math.round(elevationM - 260));
});

describe('the mean of six', () => {
  test('lies among the dates it is made of and says how sure it is', async () => {
    const { together, notes } = await nearAsData('--lat', '43.07', '--lon', '-89.40', '--elevation', '260');
    expect(together).toMatchObject({ stationsUsed: 6 });
    expect((together?.lastSpring.p50 ?? '') > '04-21' && (together?.lastSpring.p50 ?? '') < '05-12').toBe(true);
    expect(notes.join(' ')).toContain('Give or take a week');
    expect(notes.join(' ')).toContain('mirrored');
  });

  test('is later in spring and earlier in autumn higher up', async () => {
    const at = ['--lat', '43.07', '--lon', '-89.40', '--elevation'];
    const [low, high] = [(await nearAsData(...at, '200')).together, (await nearAsData(...at, '500')).together];
    expect((high?.lastSpring.p50 ?? '') > (low?.lastSpring.p50 ?? '')).toBe(true);
    expect((high?.firstAutumn.p50 ?? '') < (low?.firstAutumn.p50 ?? '')).toBe(true);
  });

  test('says that no height was given', async () => {
    const { stations, notes } = await nearAsData('--lat', '43.07', '--lon', '-89.40');
    expect(stations[0]?.heightDifferenceM).toBeUndefined();
    expect(notes.join(' ')).toContain("The garden's height is not known");
  });
});

test('around Embarrass, Minnesota, where any month may freeze, no date is given', async () => {
  const asked = ['--lat', '47.66', '--lon', '-92.20'];
  const { stations, together } = await nearAsData(...asked);
  expect(stations[0]).toMatchObject({ id: 'USC00212576', yearRoundFreeze: true, seasonDays: { p50: 61 } });
  expect(together).toBeNull();
  const { out } = await near(...asked);
  expect(out).toMatch(/^USC00212576 .* any month +any month +61$/m);
  expect(out).toContain('Together they give no dates.');
});

test('as text it is a table with the mean below it', async () => {
  const { code, out } = await near('--lat', '43.07', '--lon', '-89.40', '--elevation', '260');
  expect(code).toBe(0);
  expect(out).toMatch(/^USC00471416 {2}Charmany Farm, WI +6\.8 km +\+17 m +22 April/m);
  expect(out).toMatch(/^ {2}last freeze, that day or later +\d+ \w+ +\d+ \w+ +\d+ \w+$/m);
});

describe('what cannot be looked up', () => {
  test('is refused by name, all at once', async () => {
    const { code, err } = await near('--lat', '91', '--elevation', 'high');
    expect(code).toBe(2);
    expect(err).toContain('--lat: "91" cannot be used. Give degrees north from -90 to 90, such as 43.1.');
    expect(err).toContain('--lon: is missing.');
    expect(err).toContain('--elevation: "high" cannot be used.');
  });

  test('a place without a station within reach is refused, with a look at the sign', async () => {
    const { code, err } = await near('--lat', '43.07', '--lon', '89.40');
    expect(code).toBe(2);
    expect(err).toContain('Check the sign of the longitude');
  });
});
