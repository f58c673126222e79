import { parse } from 'csv-parse/sync';
import { expect, test } from 'vitest';
import { recordFile } from '../../src/digest/record/shape.ts';
import { withGarden } from './loamtide.ts';

const inGarden = async () => (await withGarden()).loamtide;

test('the record is told season by season, every date with its year, in the units of the garden', async () => {
  const loamtide = await inGarden();
  const { code, out } = await loamtide('record', '--season', '2026');
  expect(code).toBe(0);
  expect(out).toMatch(/^Record of 2026, Hollow Lane$/m);
  expect(out).toMatch(/^January 1, 2026 to December 31, 2026$/m);
  expect(out).toMatch(/^ {2}Cover: Winter rye, sown September 20, 2026$/m);
  expect(out).toMatch(/^ {2}September 20, 2026: Winter rye sown †$/m);
  expect(out).not.toMatch(/⟦/);
  expect(out.split('\n').filter((line) => line.length > 80)).toEqual([]);
});

test('what is told is on record at once, and what is taken back is not', async () => {
  const loamtide = await inGarden();
  await loamtide('report', 'cold-night', '--evening', '2027-04-16', '--low', '-2C', '--measured');
  const line = /^ {2}April 16, 2027: Cold night measured, 28 °F \(told April 18, 2027\)$/m;
  const { out } = await loamtide('record');
  expect(out).toMatch(line);
  expect(out).toContain('Last freeze of spring seen: April 17, 2027, 28 °F.');
  await loamtide('undo', '--apply');
  expect((await loamtide('record')).out).not.toMatch(line);
});

test('the same lines as CSV and as JSON, for every season where that is asked for', async () => {
  const loamtide = await inGarden();
  const csv = (await loamtide('record', '--season', 'all', '--format', 'csv')).out;
  const rows = parse(csv, { columns: true }) as Record<string, string>[];
  const json = recordFile.parse(JSON.parse((await loamtide('record', '--season', 'all', '--format', 'json')).out));
  expect(rows.map(({ day, doing, about_id }) => [day, doing, about_id])).toEqual(
    json.rows.map(({ on, doing, aboutId }) => [on, doing, aboutId]),
  );
  expect(new Set(rows.map(({ season }) => season)).size).toBeGreaterThan(1);
  expect(csv.endsWith('\r\n')).toBe(true);
});

test('one bed, or the piles of a bin, are asked for by name', async () => {
  const loamtide = await inGarden();
  const rowsOf = async (...asked: string[]) =>
    parse((await loamtide('record', '--season', 'all', '--format', 'csv', ...asked)).out, { columns: true }) as Record<
      string,
      string
    >[];
  const bed = await rowsOf('--bed', 'south bed');
  expect(bed.length).toBeGreaterThan(0);
  expect(new Set(bed.map(({ about_id }) => about_id))).toEqual(new Set(['south-bed']));
  expect(new Set((await rowsOf('--pile', 'Left bay')).map(({ about }) => about))).toEqual(new Set(['pile']));
});

test('everything that names nothing on record is told at once', async () => {
  const { code, err } = await (await inGarden())('record', '--season', '1999', '--bed', 'Noth bed');
  expect(code).toBe(2);
  expect(err).toContain('--season: Nothing is on record of a season "1999".');
  expect(err).toContain('Seasons on record: 2027, 2026');
  expect(err).toContain('--bed: "Noth bed" is no bed of this garden. Did you mean North bed');
  const both = await (await inGarden())('record', '--bed', 'North bed', '--pile', 'Left bay');
  expect(both.err).toContain('Name a bed or a pile, not both.');
});
