import { expect, test } from 'vitest';
import { z } from 'zod';
import { withGarden } from './loamtide.ts';

const grams = z.strictObject({ low: z.number(), usual: z.number(), high: z.number() });
/** The shape docs/commands.md promises, written out anew. */
const output = z.looseObject({
  garden: z.string(),
  beds: z.array(
    z.strictObject({
      bed: z.string(),
      season: z.number(),
      band: z.enum(['enough', 'low', 'short']),
      wantsGPerM2: z.number(),
      givesGPerM2: grams,
      lines: z.array(
        z.strictObject({
          side: z.enum(['want', 'give']),
          of: z.string(),
          gPerM2: grams,
          how: z.string(),
          source: z.string(),
        }),
      ),
      notes: z.array(z.string()),
      ways: z.array(z.strictObject({ name: z.string(), analysis: z.string(), speed: z.string(), grams: z.number() })),
    }),
  ),
});

test('fertility gives every bed a line, and one bed its arithmetic', async () => {
  const { loamtide } = await withGarden();
  const all = await loamtide('fertility');
  expect(all.code).toBe(0);
  expect(all.out).toMatch(/(enough|may run low|short)/);
  expect(all.out).toContain('With --bed');
});

test('an unknown bed is refused with the nearest names', async () => {
  const { loamtide } = await withGarden();
  const refused = await loamtide('fertility', '--bed', 'Nroth bed');
  expect(refused.code).toBe(2);
  expect(refused.err).toContain('is not a bed of this garden');
});

test('fertility --format json holds what the page promises, each balance the sum of its lines', async () => {
  const { loamtide } = await withGarden();
  const { out } = await loamtide('fertility', '--format', 'json');
  const { beds } = output.parse(JSON.parse(out));
  for (const { lines, givesGPerM2 } of beds) {
    const sum = lines.filter(({ side }) => side === 'give').reduce((total, { gPerM2 }) => total + gPerM2.usual, 0);
    expect(sum).toBeCloseTo(givesGPerM2.usual, 6);
  }
});
