import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { readableIn } from '../../../src/measures/quantity.ts';
import { draft, draftsIn, garden, pile } from '../gardens.ts';

const withStraw = (built: string, material = 'straw_wheat') =>
  pile(built, {
    ingredients: [
      { materialId: material, litres: 400 },
      { materialId: 'grass_clippings_fresh_loose', litres: 200 },
    ],
  });

describe('hay, straw and dung of unknown history', () => {
  it.each(['straw_wheat', 'hay_nonlegume', 'horse_manure_bedded', 'cow_manure_solid'])(
    '%s is tested with beans before the pile that is to hold it',
    (material) => {
      const drafts = draftsIn(garden({ piles: [withStraw('2027-06-01', material)] }));
      const test = draft(drafts, 'pile-bean-test/pile:p');
      expect(test.window).toEqual({ earliest: '2027-04-20', preferred: '2027-04-27', latest: '2027-05-11' });
      expect(draft(drafts, 'pile-build/pile:p').after).toContainEqual({ key: test.key, minDays: 0 });
    },
  );

  it('leaves and grass are not', () => {
    const drafts = draftsIn(garden({ piles: [pile('2027-06-01')] }));
    expect(drafts.filter(({ kind }) => kind === 'test-material')).toEqual([]);
  });

  it('a pile built already, or to be built too soon, is not held up: its cautions say it', () => {
    const built = draftsIn(garden({ startedOn: '2027-06-10', piles: [withStraw('2027-06-01')] }));
    const soon = draftsIn(garden({ startedOn: '2027-05-20', piles: [withStraw('2027-06-01')] }));
    for (const drafts of [built, soon]) expect(drafts.filter(({ kind }) => kind === 'test-material')).toEqual([]);
    expect(draft(soon, 'pile-build/pile:p').cautions.join(' ')).toMatch(/weedkiller/);
  });

  it('nobody tested is tested in the compost: the look whether it is ready says so', () => {
    const look = (parts: Partial<Garden>) =>
      draft(
        draftsIn(
          garden({
            startedOn: '2027-10-10',
            piles: [{ ...withStraw('2027-06-01'), curingSince: '2027-10-01' }],
            ...parts,
          }),
        ),
        'pile-maturity/',
      ).cautions.join(' ');
    expect(look({})).toContain('It holds wheat straw.');
    expect(look({ skipped: { 'pile-bean-test/pile:p': '2027-05-01' } })).not.toContain('It holds');
  });

  it('a pile nobody builds needs no test', () => {
    const skipped = { 'pile-build/pile:p': '2027-03-01' };
    const drafts = draftsIn(garden({ piles: [withStraw('2027-06-01')], skipped }));
    expect(drafts.filter(({ kind }) => kind === 'test-material')).toEqual([]);
  });
});

describe('a planned pile', () => {
  const steps = (materials: readonly (readonly [string, number])[]): string =>
    draft(
      draftsIn(
        garden({
          piles: [
            pile('2027-06-01', { ingredients: materials.map(([materialId, litres]) => ({ materialId, litres })) }),
          ],
        }),
      ),
      'pile-build/',
    )
      .steps.map((step) => readableIn('metric', step))
      .join('\n');

  it('says what it comes to and that it wants nothing', () => {
    const said = steps([
      ['leaves_dry_loose', 400],
      ['grass_clippings_fresh_loose', 200],
    ]);
    expect(said).toContain('it begins at about 38 to 1 and 59 % water. It wants nothing more.');
  });

  it('says what it still wants', () => {
    const said = steps([
      ['leaves_dry_loose', 100],
      ['grass_clippings_fresh_loose', 200],
    ]);
    expect(said).toMatch(/It wants \d+ L of dry leaves, loose \([\d.]+ kg\): then it is about 3\d to 1/);
  });

  it('says when more of the same is no help', () => {
    expect(steps([['grass_clippings_fresh_loose', 200]])).toContain('it stays too rich');
  });

  it('of which nobody wrote what goes in says nothing of it', () => {
    expect(steps([])).not.toContain('Reckoned');
  });
});
