import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { CSV_COLUMNS, harmless, recordCsv } from '../../../src/digest/record/csv.ts';
import { recordJson } from '../../../src/digest/record/json.ts';
import type { RecordRow } from '../../../src/digest/record/row.ts';
import { recordFile } from '../../../src/digest/record/shape.ts';
import { gardenFileOf } from '../../../src/garden/export-garden-file.ts';
import type { Fact } from '../../../src/garden/facts.ts';
import type { LedgerEntry } from '../../../src/garden/ledger.ts';
import { projectGarden } from '../../../src/garden/project.ts';
import { checkGardenFile } from '../../../src/garden/read-garden-file.ts';
import { addDays } from '../../../src/measures/days.ts';
import { effortTogether } from '../../../src/schedule/effort-together.ts';
import { anyGardenData } from '../../garden/any-garden.ts';
import { exampleFile, gardenOf, imported, ledgerOf } from '../../garden/example-garden.ts';
import { did, recordOf } from './recorded.ts';

/** Columns whose cells are numbers. */
const NUMBERS = new Set<string>(['season', 'litres', 'grams', 'areaM2', 'tempC', 'minutes', 'entry']);

/** CSV read back by a library that has nothing to do with the writer, as the lines it was written from. */
function readBack(csv: string): Record<string, unknown>[] {
  const rows = parse(csv, { columns: true, record_delimiter: '\r\n' }) as Record<string, string>[];
  return rows.map((cells) =>
    Object.fromEntries(
      Object.entries(CSV_COLUMNS).flatMap(([key, column]) => {
        const cell = cells[column];
        if (cell === undefined || cell === '') return [];
        return [[key, NUMBERS.has(key) ? Number(cell) : cell.replace(/^'('*[=+\-@\t\r\n＝＋－＠])/, '$1')]];
      }),
    ),
  );
}

const row: RecordRow = {
  ...{
    season: 2027,
    on: '2027-06-10',
    about: 'bed',
    aboutId: 'north',
    aboutName: 'North bed',
    doing: 'compost-spread',
  },
  origin: 'garden-file',
};
const cellsOf = (line: Partial<RecordRow>) =>
  parse(recordCsv([{ ...row, ...line }]), { columns: true })[0] as Record<string, string>;

describe('the record as CSV', () => {
  it('has a header with units in its names, a line each, and CRLF at the end of every one (RFC 4180)', () => {
    const csv = recordCsv([{ ...row, litres: 38.5, tempC: -2.5, areaM2: 1.2, minutes: 40, grams: 120 }]);
    expect(csv.split('\r\n')).toEqual([
      'season,day,last_day,about,about_id,about_name,doing,what,item_id,litres,grams,area_m2,temp_c,minutes,piles,planned_for,' +
        'last_day_that_would_do,title,note,practice,task,told_by,told_on,entry,origin',
      '2027,2027-06-10,,bed,north,North bed,compost-spread,,,38.5,120,1.2,-2.5,40,,,,,,,,,,,garden-file',
      '',
    ]);
    expect(csv.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  it('is a header alone where nothing was done', () => {
    expect(recordCsv([]).split('\r\n')).toHaveLength(2);
  });

  it('quotes commas, quotes and line breaks, and doubles quotes', () => {
    const csv = recordCsv([{ ...row, aboutName: 'North, by "the wall"\nand on' }]);
    expect(csv).toContain('"North, by ""the wall""\nand on"');
    expect(cellsOf({ aboutName: 'North, by "the wall"\nand on' }).about_name).toBe('North, by "the wall"\nand on');
  });

  it('writes amounts and days in texts in SI and ISO, whatever the garden reads', () => {
    expect(cellsOf({ title: 'Spread ⟦13 mm⟧ by ⟦2027-04-18⟧', note: '⟦400 L⟧ of leaves' })).toMatchObject({
      title: 'Spread 13 mm by 2027-04-18',
      note: '400 L of leaves',
    });
  });

  // The signs are those of OWASP, "CSV Injection": equals, plus, minus, at, tab, carriage return, line feed, and wide forms.
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', '\n=1', '＝1', "'=1"])('writes %j as text', (text) => {
    expect(cellsOf({ aboutName: text }).about_name).toBe(`'${text}`);
    expect(harmless(text)).toBe(`'${text}`);
  });

  it('leaves other texts, and numbers below zero, as they are', () => {
    expect(['Bed = one', "'Tis", '7', ''].map(harmless)).toEqual(['Bed = one', "'Tis", '7', '']);
    expect(cellsOf({ tempC: -3 }).temp_c).toBe('-3');
  });
});

test('a bed with a dangerous name comes back from both files as itself', () => {
  const name = '=HYPERLINK("http://127.0.0.1/","North")';
  const beds = [{ id: 'north-bed', name, lengthM: 2.4, widthM: 1.2 }];
  const file = exampleFile({ beds, plantings: [], coverStands: [] });
  const spread = did('2027-06-10', [{ makes: 'bed-topdressed', bedId: 'north-bed', litres: 10 }]);
  const record = recordOf(ledgerOf(['2027-06-01', imported(file)], ['2027-06-10', spread]));
  const csv = recordCsv(record.rows);
  expect(csv).not.toMatch(/(^|,)"?=/m);
  expect(readBack(csv).at(-1)?.aboutName).toBe(name);
  expect(JSON.parse(recordJson(record)).rows.at(-1).aboutName).toBe(name);
});

/** Facts over whatever a garden has: compost, turns, readings, meals, squeezes, and takings-back. */
function someFacts(ledger: readonly LedgerEntry[], picks: readonly number[]): LedgerEntry[] {
  const { beds, piles } = gardenOf(ledger);
  const worked = [...ledger];
  picks.forEach((pick, at) => {
    const on = addDays('2026-11-20', at * 9 + (pick % 5));
    const bedId = beds[pick % beds.length]?.id ?? '';
    const pileId = piles[pick % Math.max(1, piles.length)]?.id;
    const key = `made-up/bed:${bedId}/${at}`;
    const from = pileId === undefined ? {} : { pileIds: [pileId] };
    const facts: Fact[] = [
      did(on, [{ makes: 'bed-topdressed', bedId, litres: (pick % 40) + 1, ...from }], { key, onceMinutes: pick % 30 }),
      did(on, [{ makes: 'bed-fed', bedId, fertiliserId: 'blood_meal', grams: pick + 1 }], {
        key,
        taskKind: 'feed-crop',
      }),
      did(on, pileId === undefined ? [] : [{ makes: 'pile-turned', pileId }], { key, onceMinutes: 20 }),
      { kind: 'soil-squeezed', on, soilTexture: 'loam', answer: 'smears' },
      { kind: 'entry-undone', entry: Math.max(2, worked.length - (pick % 3)) },
      { kind: 'tasks-skipped', on, tasks: [{ key, title: 'Mulch ⟦50 mm⟧ deep' }] },
      ...(pileId === undefined ? [] : [{ kind: 'pile-read', pileId, on, tempC: pick % 70 } as const]),
    ];
    const fact = facts[pick % facts.length];
    const told = { entry: worked.length + 1, recordedAt: `${on}T18:00:00.000Z`, recordedOn: on, by: 'household' };
    if (fact !== undefined) worked.push({ ...told, fact });
  });
  return worked;
}

/** A garden read, worked in, and for some written out and brought in again. */
const anyLedger = fc
  .tuple(anyGardenData, fc.array(fc.nat(200), { maxLength: 14 }), fc.constantFrom('never', 'reported', 'file'))
  .map(([data, picks, again]) => {
    const begun = ledgerOf(['2026-11-15', imported(checkGardenFile(data))]);
    const worked = someFacts(begun, picks);
    if (again === 'never') return worked;
    const file = checkGardenFile(gardenFileOf(gardenOf(worked)));
    const prefer = again === 'file' ? 'file' : 'reported';
    const entry = { ...begun[0], entry: worked.length + 1, recordedOn: '2027-06-01', fact: imported(file, prefer) };
    return [...worked, entry] as LedgerEntry[];
  });

const TODAY = '2029-12-31';

describe('over gardens of every kind', () => {
  const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

  it('litres spread on each bed, grams strewn and minutes worked are those the garden holds', () => {
    fc.assert(
      fc.property(anyLedger, (ledger) => {
        const garden = projectGarden(ledger);
        const { rows, seasons } = recordOf(ledger, TODAY);
        for (const { id } of garden?.beds ?? []) {
          const held = garden?.topdressed.filter(({ bedId }) => bedId === id) ?? [];
          const own = rows.filter(({ aboutId, about }) => about === 'bed' && aboutId === id);
          const of = (doing: string) =>
            total(own.filter((line) => line.doing === doing).map(({ litres = 0 }) => litres));
          expect(of('compost-spread')).toBe(
            total(held.filter(({ materialId }) => materialId === undefined).map(({ litres }) => litres)),
          );
          expect(of('material-spread')).toBe(
            total(held.filter(({ materialId }) => materialId !== undefined).map(({ litres }) => litres)),
          );
          const summed = total(
            seasons.flatMap(({ beds }) => beds.filter((bed) => bed.id === id).map(({ compostL }) => compostL)),
          );
          expect(summed).toBe(of('compost-spread'));
          const fed = garden?.fed.filter(({ bedId }) => bedId === id) ?? [];
          expect(total(own.map(({ grams = 0 }) => grams))).toBe(total(fed.map(({ grams }) => grams)));
        }
        const days = [...new Set(garden?.done.map(({ on }) => on) ?? [])];
        const done = total(days.map((day) => effortTogether((garden?.done ?? []).filter(({ on }) => on === day))));
        expect(total(rows.map(({ minutes = 0 }) => minutes))).toBe(done);
        expect(total(seasons.map(({ work }) => work.minutes))).toBe(done);
        const turns = total(garden?.piles.map((pile) => pile.turns.length) ?? []);
        expect(rows.filter(({ doing }) => doing === 'pile-turned')).toHaveLength(turns);
        const readings = total(garden?.piles.map((pile) => pile.readings.length) ?? []);
        expect(rows.filter(({ doing }) => doing === 'pile-read')).toHaveLength(readings);
      }),
      { numRuns: 60 },
    );
  });

  it('the lines in JSON are the lines in CSV, and each file keeps its shape', () => {
    fc.assert(
      fc.property(anyLedger, (ledger) => {
        const record = recordOf(ledger, TODAY);
        const json = recordFile.parse(JSON.parse(recordJson(record)));
        expect(readBack(recordCsv(record.rows))).toEqual(json.rows);
        expect(json.rows.length).toBe(record.rows.length);
      }),
      { numRuns: 60 },
    );
  });

  it('every line lies in one season, and the seasons apart hold what they hold together', () => {
    fc.assert(
      fc.property(anyLedger, (ledger) => {
        const whole = recordOf(ledger, TODAY);
        const apart = whole.seasons.flatMap(({ season }) => recordOf(ledger, TODAY, { season }).rows);
        expect(apart).toHaveLength(whole.rows.length);
        for (const { season, from, to } of whole.seasons) {
          const own = whole.rows.filter((line) => line.season === season);
          expect(own.every(({ on }) => on >= from && on <= to)).toBe(true);
        }
      }),
      { numRuns: 30 },
    );
  });
});
