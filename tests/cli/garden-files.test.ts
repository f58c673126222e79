import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { inventedRecord } from './invented-record.ts';
import { loamtideIn, SMALL_GARDEN, withGarden, withGardenFile } from './loamtide.ts';

const RECORD_GARDEN = SMALL_GARDEN.replace(/frostDates: .*/, 'dailyRecord: weather.csv.gz');
const TURN = 'pile-turn/pile:left-bay-2027-04-04/turn:1';

/** A garden file that names a weather record, and that record beside it. */
function withRecord(csv: string) {
  const made = withGardenFile(RECORD_GARDEN);
  writeFileSync(join(made.folder, 'weather.csv.gz'), gzipSync(csv));
  return made;
}

const ledgerOf = (folder: string) => openedIn(folder, ({ store }) => store.ledger('hollow-lane'));

describe('garden check', () => {
  test('passes a good file and makes no data folder', async () => {
    const { folder, loamtide } = withGardenFile();
    const { code, out } = await loamtide('garden', 'check', 'garden.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(
      /^Nothing is wrong with it\.\nHollow Lane \(hollow-lane\): 2 beds, 1 planting, 1 cover stand, /,
    );
    expect(existsSync(join(folder, 'data'))).toBe(false);
  });

  test('prints every problem of a bad file with its path and the mend', async () => {
    const bad = SMALL_GARDEN.replace('units: us', 'units: feet')
      .replace('crop: carrot', 'crop: carot')
      .replace('widthM: 1.2', 'widthm: 1.2');
    const { loamtide } = withGardenFile(bad);
    const { code, out, err } = await loamtide('garden', 'check', 'garden.yaml');
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain('garden.units: "feet" cannot be used. Give one of us, metric.');
    expect(err).toContain('beds[0].widthm: is not a key this file knows. Did you mean widthM');
  });

  test('reads the weather record too and names the lines that are wrong', async () => {
    const csv = inventedRecord('2010-01-01', '2026-12-31').replace(/^2011-03-02,.*$/m, '2011-03-02,12,5,0,0,0');
    const { code, err } = await withRecord(csv).loamtide('garden', 'check', 'garden.yaml');
    expect(code).toBe(2);
    expect(err).toContain("weather.csv.gz, line 427: The day's highest, 5 °C, is below its lowest, 12 °C.");
  });

  test('finds a record too short to plan by, and a station that is not in the table', async () => {
    const short = await withRecord(inventedRecord('2024-01-01', '2026-12-31')).loamtide(
      'garden',
      'check',
      'garden.yaml',
    );
    expect(short).toMatchObject({ code: 2, out: '' });
    expect(short.err).toContain('The daily record is too short');
    const strange = withGardenFile(SMALL_GARDEN.replace(/frostDates: .*/, 'station: USW00099999'));
    const { code, err } = await strange.loamtide('garden', 'check', 'garden.yaml');
    expect(code).toBe(2);
    expect(err).toContain('climate.station: "USW00099999" is not in the built-in table.');
  });

  test('tells a station that is not in the table together with everything else', async () => {
    const bad = SMALL_GARDEN.replace(/frostDates: .*/, 'station: USW00099999').replace('crop: carrot', 'crop: carot');
    const { code, err } = await withGardenFile(bad).loamtide('garden', 'check', 'garden.yaml');
    expect(code).toBe(2);
    expect(err).toContain('The garden file cannot be used: 2 problems.');
    expect(err).toContain('plantings[0].crop: "carot" is not a known crop.');
    expect(err).toContain('climate.station: "USW00099999" is not in the built-in table.');
  });

  test('takes what is hardly meant, and asks to look again, as text and as JSON', async () => {
    const { loamtide } = withGardenFile(SMALL_GARDEN.replace('litres: 400', 'litres: 4000'));
    const { code, out } = await loamtide('garden', 'check', 'garden.yaml');
    expect(code).toBe(0);
    expect(out).toContain('It can be used as it stands.');
    const said = out.replace(/\s+/g, ' ');
    expect(said).toContain(
      'Look at these again; they are taken as they stand: piles[0].ingredients: They make 5.5 cu yd',
    );
    const json = JSON.parse((await loamtide('garden', 'check', 'garden.yaml', '--format', 'json')).out);
    expect(json).toMatchObject({ garden: 'hollow-lane', doubts: [{ where: 'piles[0].ingredients' }] });
    const imported = (await loamtide('garden', 'import', 'garden.yaml')).out;
    expect(imported).toContain('Brought in.');
    expect(imported).toContain('piles[0].ingredients: They make');
  });

  test.each([
    ['nowhere.yaml', 'nowhere.yaml: does not exist.'],
    ['.', '.: is a folder.'],
    ['pictures.yaml', 'pictures.yaml: is not UTF-8 text.'],
    ['packed.yaml', 'packed.yaml: cannot be unpacked.'],
  ])('cannot read %s and says why', async (name, complaint) => {
    const { folder, loamtide } = withGardenFile();
    writeFileSync(join(folder, 'pictures.yaml'), Buffer.from([0xff, 0xd8, 0xff, 0x00]));
    writeFileSync(join(folder, 'packed.yaml'), Buffer.from([0x1f, 0x8b, 0x08, 0x00, 0x01]));
    const { code, err } = await loamtide('garden', 'check', name);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
  });
});

describe('garden import of a new garden', () => {
  test('brings it in at once, with its record', async () => {
    const { folder, loamtide } = withRecord(inventedRecord('2005-01-01', '2026-12-31'));
    const { code, out } = await loamtide('garden', 'import', 'garden.yaml');
    expect(code).toBe(0);
    expect(out).toMatch(/^Brought in\.\nHollow Lane \(hollow-lane\): /);
    const record = await openedIn(folder, ({ store }) => store.weatherRecord('hollow-lane'));
    expect(record).toMatchObject({ origin: 'Daily record weather.csv.gz, 2005-01-01 to 2026-12-31.', leftOut: [] });
    expect(record?.days).toHaveLength(8035);
    expect((await loamtide('climate')).out).toContain('Daily record weather.csv.gz, 2005-01-01 to 2026-12-31.');
  });

  test('that is refused leaves nothing half done', async () => {
    const { folder, loamtide } = withRecord(inventedRecord('2024-01-01', '2026-12-31'));
    expect((await loamtide('garden', 'import', 'garden.yaml')).code).toBe(2);
    const held = await openedIn(folder, async ({ store }) => store.gardenIds());
    expect(held).toEqual([]);
    expect((await loamtide('week')).err).toContain('There is no garden yet.');
  });

  test('without the record it names is refused before a data folder is made', async () => {
    const { loamtide } = withGardenFile(RECORD_GARDEN);
    const { code, err } = await loamtide('garden', 'import', 'garden.yaml');
    expect(code).toBe(2);
    expect(err).toContain('weather.csv.gz: does not exist.');
  });

  test('reads the record from beside the file, not from where the command is given', async () => {
    const { folder } = withRecord(inventedRecord('2005-01-01', '2026-12-31'));
    const { loamtide } = withGardenFile();
    expect((await loamtide('garden', 'import', join(folder, 'garden.yaml'))).code).toBe(0);
  });
});

describe('garden import of one that is there', () => {
  const longer = SMALL_GARDEN.replace('lengthM: 2.4', 'lengthM: 3');

  test('shows the differences first and writes nothing', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(join(folder, 'longer.yaml'), longer);
    const { code, out } = await loamtide('garden', 'import', 'longer.yaml');
    expect(code).toBe(0);
    expect(out).toContain(
      'hollow-lane is here already. The file would change:\n  beds.north-bed.lengthM: now 2.4; in the file 3\n',
    );
    expect(out).toContain('Nothing was written. Add --apply to bring it in.');
    expect(await ledgerOf(folder)).toHaveLength(1);
  });

  test('does it with --apply', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(join(folder, 'longer.yaml'), longer);
    expect((await loamtide('garden', 'import', 'longer.yaml', '--apply')).out).toContain('Brought in.');
    const beds = await openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.beds);
    expect(beds.map(({ id, lengthM }) => [id, lengthM])).toEqual([
      ['north-bed', 3],
      ['south-bed', 2.4],
    ]);
  });

  test('with nothing new writes nothing, even with --apply', async () => {
    const { folder, loamtide } = await withGarden();
    const { code, out } = await loamtide('garden', 'import', 'garden.yaml', '--apply');
    expect({ code, out }).toEqual({ code: 0, out: 'hollow-lane is here already, and the file says nothing new.\n' });
    expect(await ledgerOf(folder)).toHaveLength(1);
  });

  test('finds in the preview what would be refused', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(join(folder, 'strange.yaml'), SMALL_GARDEN.replace(/frostDates: .*/, 'station: USW00099999'));
    const { code, err } = await loamtide('garden', 'import', 'strange.yaml');
    expect(code).toBe(2);
    expect(err).toContain('"USW00099999" is not in the built-in table.');
    expect(await ledgerOf(folder)).toHaveLength(1);
  });

  test.each([
    ['reported', 'what was reported is kept', ['2027-04-16']],
    ['file', 'the file is taken at its word', []],
  ] as const)('lets the %s side win where they disagree', async (prefer, said, turns) => {
    const { folder, loamtide } = await withGarden();
    await openedIn(folder, ({ steward }) => steward.markDone('hollow-lane', [TURN], '2027-04-16', 'a test'));
    const argv = ['garden', 'import', 'garden.yaml', '--prefer', prefer];
    expect((await loamtide(...argv)).out.replace(/\s+/g, ' ')).toContain(said);
    await loamtide(...argv, '--apply');
    const [pile] = await openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.piles);
    expect(pile?.turns).toEqual(turns);
  });

  test('keeps its record where the file brings none along, and takes a new one', async () => {
    const { folder, loamtide } = withRecord(inventedRecord('2005-01-01', '2026-12-31'));
    await loamtide('garden', 'import', 'garden.yaml');
    const alone = loamtideIn(withGardenFile(RECORD_GARDEN).folder);
    const same = await alone('garden', 'import', 'garden.yaml', '--data', join(folder, 'data'));
    expect(same).toMatchObject({ code: 0, out: 'hollow-lane is here already, and the file says nothing new.\n' });
    writeFileSync(join(folder, 'weather.csv.gz'), inventedRecord('2000-01-01', '2026-12-31'));
    const { out } = await loamtide('garden', 'import', 'garden.yaml', '--apply');
    expect(out).toContain('the weather record: 9862 days. Daily record weather.csv.gz, 2000-01-01 to 2026-12-31.');
    const record = await openedIn(folder, ({ store }) => store.weatherRecord('hollow-lane'));
    expect(record?.days[0]?.day).toBe('2000-01-01');
  });

  test('refuses a file of another garden under --garden', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(join(folder, 'other.yaml'), SMALL_GARDEN.replace('id: hollow-lane', 'id: elsewhere'));
    const { code, err } = await loamtide('garden', 'import', 'other.yaml', '--garden', 'hollow-lane');
    expect(code).toBe(2);
    expect(err).toContain('garden.id: "elsewhere" is not the garden "hollow-lane".');
  });

  test('takes a file without an id for the garden named by --garden', async () => {
    const { folder, loamtide } = await withGarden();
    writeFileSync(
      join(folder, 'renamed.yaml'),
      SMALL_GARDEN.replace('  id: hollow-lane\n', '').replace('name: Hollow Lane', 'name: The Lane'),
    );
    const { out } = await loamtide('garden', 'import', 'renamed.yaml', '--garden', 'hollow-lane');
    expect(out).toContain('garden.name: now Hollow Lane; in the file The Lane');
  });
});

describe('garden export', () => {
  test('writes a file that says nothing new when it is brought back', async () => {
    const { folder, loamtide } = await withGarden();
    await openedIn(folder, ({ steward }) => steward.markDone('hollow-lane', [TURN], '2027-04-16', 'a test'));
    expect((await loamtide('garden', 'export', 'out.yaml')).out).toBe('Written to out.yaml.\n');
    expect(readFileSync(join(folder, 'out.yaml'), 'utf8')).toContain('2027-04-16');
    expect((await loamtide('garden', 'import', 'out.yaml')).out).toContain('says nothing new');
  });

  test('writes to standard output under the name -', async () => {
    const { folder, loamtide } = await withGarden();
    await loamtide('garden', 'export', 'out.yaml');
    expect((await loamtide('garden', 'export', '-')).out).toBe(readFileSync(join(folder, 'out.yaml'), 'utf8'));
  });

  test('replaces a file only when told to', async () => {
    const { folder, loamtide } = await withGarden();
    const before = readFileSync(join(folder, 'garden.yaml'), 'utf8');
    const { code, err } = await loamtide('garden', 'export', 'garden.yaml');
    expect(code).toBe(2);
    expect(err).toContain('garden.yaml: exists already. Name another file, or add --replace.');
    expect(readFileSync(join(folder, 'garden.yaml'), 'utf8')).toBe(before);
    expect((await loamtide('garden', 'export', 'garden.yaml', '--replace')).code).toBe(0);
    expect(readFileSync(join(folder, 'garden.yaml'), 'utf8')).not.toBe(before);
  });

  test('into a folder that is not there is refused', async () => {
    const { loamtide } = await withGarden();
    const { code, err } = await loamtide('garden', 'export', 'nowhere/out.yaml');
    expect(code).toBe(2);
    expect(err).toContain('nowhere/out.yaml: lies in a folder that does not exist.');
  });
});
