import { mkdirSync, readdirSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { type DailyCopy, dailyCopies, outlived } from '../../src/store/daily-copies.ts';
import { openStore, type Store } from '../../src/store/store.ts';
import { NOON } from './entries.ts';
import { tempFolder } from './temp-folder.ts';

const DAY_MS = 86_400_000;

function later(moment: string, ms: number): string {
  return new Date(Date.parse(moment) + ms).toISOString();
}

async function household(copies?: { folder: string } | 'none'): Promise<{ store: Store; folder: string }> {
  const folder = tempFolder();
  const store = await openStore({
    file: join(folder, 'loamtide.db'),
    now: NOON,
    ...(copies === undefined ? {} : { copies }),
  });
  onTestFinished(() => store.close());
  await store.createGarden({ id: 'plot', name: 'Hollow Lane', createdAt: NOON });
  return { store, folder };
}

const copyAt = (at: string): DailyCopy => ({ file: at, at });

describe('which daily copies are kept', () => {
  test('after a year of days: the newest of seven days, and of four weeks', () => {
    let kept: DailyCopy[] = [];
    for (let day = 0; day < 365; day += 1) {
      const now = later('2027-01-01T03:10:00.000Z', day * DAY_MS);
      kept = [copyAt(now), ...kept];
      const gone = new Set(outlived(kept, now));
      kept = kept.filter((copy) => !gone.has(copy));
    }
    // 31 December 2027 is a Friday: its week's newest is its own, those of the three weeks before are Sundays.
    expect(kept.map(({ at }) => at.slice(0, 10))).toEqual([
      '2027-12-31',
      '2027-12-30',
      '2027-12-29',
      '2027-12-28',
      '2027-12-27',
      '2027-12-26',
      '2027-12-25',
      '2027-12-19',
      '2027-12-12',
    ]);
  });

  test('of two copies of one day the newer', () => {
    const [morning, evening] = [copyAt('2027-04-18T03:00:00.000Z'), copyAt('2027-04-18T20:00:00.000Z')];
    expect(outlived([evening, morning], '2027-04-18T21:00:00.000Z')).toEqual([morning]);
  });

  test('after months without the program the old ones stay: days are counted that have a copy', () => {
    const old = [5, 4, 3, 2, 1].map((day) => copyAt(`2027-01-0${day}T03:00:00.000Z`));
    const now = '2027-06-01T12:00:00.000Z';
    expect(outlived([copyAt(now), ...old], now)).toEqual([]);
  });

  test('those of a clock that ran ahead are left alone, and take no place', () => {
    const ahead = Array.from({ length: 9 }, (_, day) => copyAt(`2037-04-0${9 - day}T03:00:00.000Z`));
    const real = Array.from({ length: 7 }, (_, day) => copyAt(`2027-04-1${8 - day}T03:00:00.000Z`));
    expect(outlived([...ahead, ...real], '2027-04-18T12:00:00.000Z')).toEqual([]);
  });
});

describe('the daily copy', () => {
  test('is made at once where there is none, is a whole store, and is for its owner alone', async () => {
    const { store, folder } = await household();
    const made = (await store.renewCopies(NOON, 12)) ?? '';
    expect(made).toBe(join(folder, 'copies', `loamtide.daily.${NOON.slice(0, 19).replace(/[-:]/g, '')}Z.db`));
    expect((statSync(made).mode & 0o777).toString(8)).toBe('600');
    expect((statSync(join(folder, 'copies')).mode & 0o777).toString(8)).toBe('700');
    const copy = await openStore({ file: made, copies: 'none' });
    onTestFinished(() => copy.close());
    expect(await copy.gardenIds()).toEqual(['plot']);
  });

  test.each([
    [11, 3, false],
    [12, 3, true],
    [23, 14, false],
    [24, 14, true],
  ])('with a copy %i hours old, in hour %i of the day, is it due: %s', async (hours, hour, isDue) => {
    const { store } = await household();
    await store.renewCopies(NOON, 12);
    const made = await store.renewCopies(later(NOON, hours * 3_600_000), hour);
    expect(made !== undefined).toBe(isDue);
  });

  test('removes only what it made: names of others, links and folders stay', async () => {
    const { store, folder } = await household();
    const copies = join(folder, 'copies');
    mkdirSync(copies);
    const others = ['by-hand.db', 'loamtide.daily.20200101T000000Z.db.bak', 'xloamtide.daily.20200101T000000Z.db'];
    for (const name of others) writeFileSync(join(copies, name), 'kept');
    symlinkSync(join(copies, 'by-hand.db'), join(copies, 'loamtide.daily.20200101T000000Z.db'));
    mkdirSync(join(copies, 'loamtide.daily.20200102T000000Z.db'));
    for (let day = 0; day < 20; day += 1) await store.renewCopies(later(NOON, day * DAY_MS), 12);
    const left = readdirSync(copies);
    expect(left).toEqual(expect.arrayContaining([...others, 'loamtide.daily.20200101T000000Z.db']));
    expect(left).toContain('loamtide.daily.20200102T000000Z.db');
    expect(dailyCopies(copies).length).toBeLessThanOrEqual(7 + 3);
  });

  test('what a kill left unfinished is cleared away by the next', async () => {
    const { store, folder } = await household();
    const copies = join(folder, 'copies');
    mkdirSync(copies);
    for (const ending of ['', '-journal'])
      writeFileSync(join(copies, `loamtide.daily.20270101T000000Z.db.unfinished${ending}`), 'half');
    await store.renewCopies(NOON, 12);
    expect(readdirSync(copies)).toEqual([expect.stringMatching(/^loamtide\.daily\.\d{8}T\d{6}Z\.db$/)]);
  });

  test('can be turned off', async () => {
    const { store, folder } = await household('none');
    expect(await store.renewCopies(NOON, 3)).toBeUndefined();
    expect(readdirSync(folder)).not.toContain('copies');
    expect(await store.checkUp(later(NOON, 90 * DAY_MS))).toEqual([]);
  });

  test('into a folder that was named and is not there is refused: its disk may not be mounted', async () => {
    const nowhere = join(tempFolder(), 'unmounted');
    const { store } = await household({ folder: nowhere });
    await expect(store.renewCopies(NOON, 12)).rejects.toMatchObject({
      name: 'StoreFault',
      problems: [{ where: nowhere, what: 'The folder for daily copies is not there.' }],
    });
    expect(await store.checkUp(NOON)).toEqual([
      expect.objectContaining({ where: nowhere, what: expect.stringContaining('was not made') }),
    ]);
    expect(await store.renewCopies(later(NOON, 59 * 60_000), 12)).toBeUndefined();
    mkdirSync(nowhere);
    expect(await store.renewCopies(later(NOON, 60 * 60_000), 12)).toContain(nowhere);
    expect(await store.checkUp(later(NOON, DAY_MS))).toEqual([]);
  });
});

describe('a check-up', () => {
  test('finds nothing on a sound database with a copy of yesterday', async () => {
    const { store } = await household();
    await store.renewCopies(NOON, 12);
    expect(await store.checkUp(later(NOON, DAY_MS))).toEqual([]);
  });

  test('tells of a copy that is two days old, and of none on the second day', async () => {
    const { store } = await household();
    expect(await store.checkUp(later(NOON, DAY_MS))).toEqual([]);
    expect(await store.checkUp(later(NOON, 2 * DAY_MS))).toMatchObject([{ what: 'There is no daily copy yet.' }]);
    await store.renewCopies(NOON, 12);
    expect(await store.checkUp(later(NOON, 2 * DAY_MS))).toMatchObject([{ what: expect.stringContaining('is of') }]);
  });
});
