import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { loamtideIn, tempFolder } from './loamtide.ts';

const fill = (...argv: string[]) => loamtideIn(tempFolder())('fill', ...argv);
const METRIC = ['--length', '2.4m', '--width', '120cm', '--depth', '0.3m'];

/** The shape docs/commands.md promises, written out anew. */
const fillOutput = z.strictObject({
  areaM2: z.number(),
  volumeLitres: z.number(),
  pathsM2: z.number(),
  pathsMeasured: z.boolean(),
  topsoilLitres: z.number(),
  topsoilMostLitres: z.number(),
  looseLitres: z.number(),
  compostMostLitres: z.number(),
  compostLimit: z.enum(['depth', 'share', 'phosphorus']),
  compostLitres: z.number(),
  bedMixLitres: z.number(),
  bedMixKg: z.number(),
  movedLitres: z.number(),
  minutes: z.number(),
  cautions: z.array(z.string()),
});
const asData = async (...argv: string[]) => fillOutput.parse(JSON.parse((await fill(...argv, '--format', 'json')).out));

test('a bed is answered with its amounts, its sum, what to ask and what to mind', async () => {
  const { code, out } = await fill(...METRIC, '--paths', '2m2', '--compost', '50L');
  const flat = out.replace(/\s+/g, ' ');
  expect(code).toBe(0);
  expect(out).toMatch(/^topsoil from the paths +101 L/m);
  expect(out).toMatch(/^bed mix to buy +790 L +11 barrow loads$/m);
  expect(flat).toContain('2.9 m² filled 300 mm deep hold 864 L.');
  expect(flat).toContain('840 L less 50 L of compost: 790 L of bed mix to buy, each figure rounded by itself.');
  expect(flat).toMatch(/No bed is filled with compost alone/);
  expect(flat).toMatch(/weighs about 98 kg, twice one of compost \(49 kg\): fill it half/);
  expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
});

test('what is typed in feet is answered in feet, and its sum adds up in cubic feet', async () => {
  const { out } = await fill('--length', '8ft', '--width', '4 ft', '--depth', '12in', '--paths', '0');
  expect(out.replace(/\s+/g, ' ')).toContain('32 sq ft filled 12 in deep hold 32 cu ft.');
  expect(out).toContain('No topsoil is taken from paths.');
  expect(out).not.toMatch(/\d (L|kg|mm)\b/);
});

test('it is the same as data; phosphorus keeps compost out', async () => {
  expect(await asData(...METRIC)).toMatchObject({
    volumeLitres: 864,
    pathsM2: 2.16,
    pathsMeasured: false,
    minutes: 110,
  });
  expect(await asData(...METRIC, '--phosphorus', '30', '--compost', '90L')).toMatchObject({
    compostLimit: 'phosphorus',
    compostLitres: 0,
  });
  expect(await asData(...METRIC, '--phosphorus', '24', '--compost', '90L')).toMatchObject({ compostLitres: 90 });
});

describe('what cannot be used', () => {
  test('is named all at once, with a right amount', async () => {
    const { code, err } = await fill(
      '--length',
      '2.4',
      '--width',
      '90m',
      '--depth',
      '1cm',
      '--paths',
      'all',
      '--compost',
      '3kg',
    );
    expect(code).toBe(2);
    expect(err).toContain('--length: "2.4" cannot be used. Give it with its unit, 0.2 to 200 m, such as 2.4m or 8ft.');
    for (const option of ['--width: "90m"', '--depth: "1cm"', '--paths: "all"', '--compost: "3kg"'])
      expect(err).toContain(option);
  });

  test('a bed without its depth is no bed', async () => {
    const { code, err } = await fill('--length', '2.4m', '--width', '1.2m');
    expect(code).toBe(2);
    expect(err).toContain('--depth: is missing.');
  });
});
