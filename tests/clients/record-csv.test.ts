import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { CSV_COLUMNS, recordCsv } from '../../src/digest/record/csv.ts';
import type { RecordRow } from '../../src/digest/record/row.ts';
import { PYTHON } from './tools.ts';

const READ =
  'import csv, io, json, sys; print(json.dumps(list(csv.DictReader(io.StringIO(sys.stdin.buffer.read().decode(), newline="")))))';

it("Python's csv reads the record as it was written: quotes, commas, line breaks and signs", () => {
  const line = {
    season: 2027,
    on: '2027-06-10',
    about: 'bed',
    aboutId: 'north',
    doing: 'pile-read',
    origin: 'told',
  } as const;
  const names = ['North, "the wall"', 'two\nlines', '=1+1', 'Übers Eck · 土', ''];
  const rows: RecordRow[] = names.map((aboutName) => ({ ...line, aboutName, tempC: -2.5 }));
  const { stdout, status } = spawnSync(PYTHON, ['-c', READ], { input: recordCsv(rows), encoding: 'utf8' });
  expect(status).toBe(0);
  const read = JSON.parse(stdout) as Record<string, string>[];
  expect(Object.keys(read[0] ?? {})).toEqual(Object.values(CSV_COLUMNS));
  expect(read.map(({ about_name }) => about_name)).toEqual([
    'North, "the wall"',
    'two\nlines',
    "'=1+1",
    'Übers Eck · 土',
    '',
  ]);
  expect(read.every(({ temp_c, day }) => Number(temp_c) === -2.5 && day === '2027-06-10')).toBe(true);
});
