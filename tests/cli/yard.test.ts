import { expect, test } from 'vitest';
import { z } from 'zod';
import { withGarden } from './loamtide.ts';

const day = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
const window = z.strictObject({ earliest: day, preferred: day, latest: day });
/** The shape docs/commands.md promises, written out anew. */
const yardOutput = z.strictObject({
  garden: z.string(),
  today: day,
  heaps: z.array(
    z.strictObject({ what: z.string(), of: z.string(), ready: day, litres: z.number(), proven: z.boolean() }),
  ),
  beds: z.array(
    z.strictObject({
      task: z.string(),
      bed: z.string(),
      season: z.number(),
      window,
      areaM2: z.number(),
      depthMm: z.number(),
      litres: z.number(),
      given: z.number(),
    }),
  ),
  months: z
    .array(
      z.strictObject({
        from: day,
        ready: z.number(),
        wanted: z.number(),
        given: z.number(),
        left: z.number(),
        short: z.number(),
      }),
    )
    .length(13),
  shortfalls: z.array(z.strictObject({ season: z.number(), heading: z.string(), lines: z.array(z.string()) })),
  spared: z.array(z.string()),
  thinned: z.array(
    z.strictObject({ bed: z.string(), fullLitres: z.number(), lacking: z.number(), percent: z.number() }),
  ),
});

const inGarden = async () => (await withGarden()).loamtide;

test('the yard is told: what is there, what the beds want, and by month', async () => {
  const { code, out } = await (await inGarden())('yard');
  expect(code).toBe(0);
  expect(out).toMatch(/^Compost yard of Hollow Lane$/m);
  expect(out).toMatch(/^ {2}Left bay +[\d.]+ cu ft +counted on from \w+ \d+/m);
  expect(out).toMatch(/^ {2}North bed +½ in +1\.3 cu ft/m);
  expect(out).toMatch(/^ {2}April 2027 /m);
  expect(out).not.toMatch(/⟦/);
});

test('the same as data', async () => {
  const { out } = await (await inGarden())('yard', '--format', 'json');
  const { beds, months, garden } = yardOutput.parse(JSON.parse(out));
  expect(garden).toBe('hollow-lane');
  // 13 mm over 2.4 × 1.2 m, 2.88 m².
  expect(beds[0]).toMatchObject({ depthMm: 13, litres: 38 });
  expect(months[0]?.from).toBe('2027-04-18');
});
