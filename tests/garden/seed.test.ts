import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { importDifferences } from '../../src/garden/file-difference.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const STAND = 'north-bed-oats-2027-09-15';
const ordered = (grams = 500, on = '2027-08-10'): Fact =>
  done(on, `cover-order/stand:${STAND}`, { makes: 'seed-bought', coverId: 'oats', grams });
const sown = (grams = 320, on = '2027-09-12'): Fact =>
  done(
    on,
    `cover-sow/stand:${STAND}`,
    { makes: 'stand-sown', standId: STAND, bedId: 'north-bed', coverId: 'oats' },
    { makes: 'seed-sown', standId: STAND, coverId: 'oats', grams },
  );
const OF_2027 = { plant: { kind: 'cover', id: 'oats' }, packedYear: 2027 } as const;
const PACKET = { ...OF_2027, held: { grams: 500, on: '2027-08-10' } };

const ledgerAfter = (...facts: Fact[]) =>
  ledgerOf(['2027-06-01', imported(exampleFile())], ...facts.map((fact) => ['2027-09-30', fact] as [string, Fact]));
const gardenAfter = (...facts: Fact[]) => gardenOf(ledgerAfter(...facts));
const fileAfter = (...facts: Fact[]) => gardenFileOf(gardenAfter(...facts));
/** The garden once a file was brought in over what was told. */
const broughtIn = (file: unknown, facts: Fact[], prefer: 'reported' | 'file' = 'reported') =>
  gardenAfter(...facts, imported(checkGardenFile(file), prefer));

describe('cover seed', () => {
  it('that was ordered is a packet of that year, holding so much on that day', () => {
    expect(gardenAfter(ordered()).seeds).toEqual([PACKET]);
  });

  it('that was sown is kept with its stand, day and grams', () => {
    const [stand] = gardenAfter(ordered(), sown()).stands;
    expect(stand?.sow).toEqual({ day: '2027-09-12', happened: true });
    expect(stand?.seed).toEqual([{ coverId: 'oats', on: '2027-09-12', grams: 320 }]);
  });

  it('taken back is as it never was', () => {
    const undo = (entry: number): Fact => ({ kind: 'entry-undone', entry });
    expect(gardenAfter(ordered(), sown(), undo(3))).toEqual(gardenAfter(ordered()));
    expect(gardenAfter(ordered(), undo(2)).seeds).toEqual([]);
  });

  it('about a stand that has gone from the file changes nothing', () => {
    const gone = done('2027-09-12', 'k', { makes: 'seed-sown', standId: 'gone', coverId: 'oats', grams: 1 });
    expect(gardenAfter(gone).stands).toEqual(gardenAfter().stands);
  });
});

describe('cover seed in the garden file', () => {
  it('is written with grams and days, and read as it was', () => {
    const file = fileAfter(ordered(), sown());
    expect(file.seeds).toEqual([{ cover: 'oats', packed: 2027, grams: 500, on: '2027-08-10' }]);
    expect(file.coverStands[0]?.seed).toEqual([{ cover: 'oats', on: '2027-09-12', grams: 320 }]);
    const again = gardenOf(ledgerOf(['2027-09-30', imported(checkGardenFile(file))]));
    expect([again.seeds, again.stands]).toEqual([[PACKET], gardenAfter(sown()).stands]);
  });

  it('brought in again over what was told counts once, whosever word is kept', () => {
    const facts = [ordered(), sown()];
    const file = fileAfter(...facts);
    for (const prefer of ['reported', 'file'] as const) {
      const again = broughtIn(file, facts, prefer);
      expect([again.seeds, again.stands]).toEqual([[PACKET], gardenAfter(...facts).stands]);
    }
    const terms = { prefer: 'reported', readOn: '2027-09-30' } as const;
    expect(importDifferences(ledgerAfter(...facts), checkGardenFile(file), terms)).toEqual([]);
  });

  it('ordered twice alike on one day is two packets, before and after', () => {
    const facts = [ordered(250), ordered(250)];
    expect(gardenAfter(...facts).seeds).toHaveLength(2);
    expect(broughtIn(fileAfter(...facts), facts).seeds).toHaveLength(2);
  });

  it('weighed anew takes the place of what was ordered of it', () => {
    const facts = [ordered(), sown()];
    const seeds = [{ cover: 'oats', packed: 2027, grams: 150, on: '2027-12-01' }];
    const again = broughtIn({ ...fileAfter(...facts), seeds }, facts);
    expect(again.seeds).toEqual([{ ...OF_2027, held: { grams: 150, on: '2027-12-01' } }]);
  });

  it.each([
    ['weighed before the order', { cover: 'oats', packed: 2027, grams: 90, on: '2027-03-01' }],
    ['of another year', { cover: 'oats', packed: 2026, grams: 90, on: '2027-12-01' }],
    ['of another cover', { cover: 'barley', packed: 2027, grams: 90, on: '2027-12-01' }],
    ['of unknown weight', { cover: 'oats', packed: 2027 }],
  ])('%s stands beside what was ordered', (_, row) => {
    const again = broughtIn({ ...fileAfter(ordered()), seeds: [row] }, [ordered()]);
    expect(again.seeds).toHaveLength(2);
    expect(again.seeds).toContainEqual(PACKET);
  });

  it('sets the order aside where the file is preferred and has no such packet', () => {
    const again = broughtIn({ ...fileAfter(ordered()), seeds: [] }, [ordered()], 'file');
    expect([again.seeds, again.done]).toEqual([[], []]);
  });

  it('shows that its stand was sown, though the sowing is listed as a plan', () => {
    const coverStands = [
      { bed: 'North bed', cover: 'oats', sow: '2027-05-20', seed: [{ cover: 'oats', on: '2027-05-20', grams: 40 }] },
    ];
    expect(gardenOf(ledgerOf(['2027-06-01', imported(exampleFile({ coverStands }))])).stands[0]).toMatchObject({
      sow: { happened: true },
      seed: [{ coverId: 'oats', grams: 40 }],
    });
  });

  it.each([
    [{ seeds: [{ cover: 'oats', packed: 2027, grams: 500 }] }, 'Give grams and on together'],
    [{ seeds: [{ cover: 'oats', packed: 2027, on: '2027-08-10' }] }, 'Give grams and on together'],
    [{ seeds: [{ cover: 'oats', packed: 2027, grams: -5, on: '2027-08-10' }] }, 'grams of seed'],
    [{ coverStands: [stand({ cover: 'oats', on: '2027-09-01', grams: 40 })] }, 'from the day of its sowing on'],
    [{ coverStands: [stand({ cover: 'oat', on: '2027-09-15', grams: 40 })] }, 'oats'],
  ])('is refused where it cannot be: %j', (change, mend) => {
    let refused = '';
    try {
      exampleFile(change);
    } catch (error) {
      refused = JSON.stringify(error);
    }
    expect(refused).toContain(mend);
  });
});

function stand(seed: object) {
  return { bed: 'North bed', cover: 'oats', sow: '2027-09-15', seed: [seed] };
}
