import { describe, expect, it } from 'vitest';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import type { Fact } from '../../src/garden/facts.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { done, exampleFile, gardenOf, imported, ledgerOf } from './example-garden.ts';

const STAND = 'north-bed-oats-2027-09-15';
const KEY = `cover-check/stand:${STAND}`;
const sown: Fact = done('2027-09-12', `cover-sow/stand:${STAND}`, {
  makes: 'stand-sown',
  standId: STAND,
  bedId: 'north-bed',
  coverId: 'oats',
});
const looked = (on: string, covered: 'a-third' | 'nearly-all', withTask = true): Fact => {
  const check = done(on, KEY);
  const [task] = check.kind === 'tasks-done' ? check.tasks : [];
  return { kind: 'stand-looked', standId: STAND, on, covered, weedy: false, ...(withTask && task ? { task } : {}) };
};
const resown = done('2027-10-02', 'cover-resow', { makes: 'stand-resown', standId: STAND, coverId: 'cereal_rye' });

const gardenAfter = (...facts: Fact[]) =>
  gardenOf(
    ledgerOf(['2027-06-01', imported(exampleFile())], ...facts.map((fact) => ['2027-10-10', fact] as [string, Fact])),
  );
const standAfter = (...facts: Fact[]) => gardenAfter(...facts).stands.find(({ id }) => id === STAND);

describe('a look at a young stand', () => {
  it('is kept with the stand, and settles the task that asked for it', () => {
    const garden = gardenAfter(sown, looked('2027-09-30', 'a-third'));
    expect(garden.stands[0]?.looked).toEqual([{ on: '2027-09-30', covered: 'a-third', weedy: false }]);
    expect(garden.done.at(-1)).toMatchObject({ key: KEY, on: '2027-09-30' });
  });

  it('shows that the stand was sown, where nobody marked it', () => {
    expect(standAfter(looked('2027-09-30', 'a-third'))?.sow.happened).toBe(true);
  });

  it('without a task settles nothing', () => {
    expect(gardenAfter(sown, looked('2027-09-30', 'a-third', false)).done).toHaveLength(1);
  });

  it('keeps every look, oldest first, however they were told', () => {
    const stand = standAfter(sown, looked('2027-10-08', 'nearly-all', false), looked('2027-09-30', 'a-third'));
    expect(stand?.looked?.map(({ on }) => on)).toEqual(['2027-09-30', '2027-10-08']);
  });

  it('is kept through a garden file, with what its thin places were sown with again', () => {
    const garden = gardenAfter(sown, looked('2027-09-30', 'a-third'), resown);
    expect(garden.stands[0]?.resown).toEqual([{ on: '2027-10-02', coverId: 'cereal_rye' }]);
    const again = gardenOf(ledgerOf(['2027-10-10', imported(checkGardenFile(gardenFileOf(garden)))]));
    expect(again.stands[0]).toEqual(garden.stands[0]);
  });

  it('told by a file and by a fact counts once', () => {
    const told = gardenFileOf(gardenAfter(sown, looked('2027-09-30', 'a-third')));
    const ledger = ledgerOf(
      ['2027-10-10', imported(checkGardenFile(told))],
      ['2027-10-10', looked('2027-09-30', 'a-third')],
    );
    expect(gardenOf(ledger).stands[0]?.looked).toHaveLength(1);
  });

  it.each([
    [{ on: '2027-09-30', covered: 'half' }, 'hardly-any'],
    [{ on: '2027-09-30', covered: 'a-third', weedy: 'some' }, 'Give true or false.'],
    [{ on: '2027-09-11', covered: 'a-third' }, 'Give looks that are not before the sowing.'],
  ])('is refused in a file when it is none: %j', (look, mend) => {
    const coverStands = [{ bed: 'North bed', cover: 'oats', sow: '2027-09-12', looked: [look] }];
    expect(() => exampleFile({ coverStands })).toThrow();
    try {
      exampleFile({ coverStands });
    } catch (error) {
      expect(JSON.stringify(error)).toContain(mend);
    }
  });

  it('knows no unknown mix among what was sown again', () => {
    const coverStands = [
      { bed: 'North bed', cover: 'oats', sow: '2027-09-12', resown: [{ on: '2027-10-01', mix: 'rye-daisy' }] },
    ];
    expect(() => exampleFile({ coverStands })).toThrow();
  });
});
