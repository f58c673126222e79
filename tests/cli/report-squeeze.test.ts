import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

const squeeze = ['report', 'squeeze', '--texture', 'loam', '--answer'] as const;

describe('report squeeze', () => {
  test('of a handful that smears is kept, and says when to squeeze again', async () => {
    const { folder, loamtide } = await withGarden();
    const { code, out } = await loamtide(...squeeze, 'smears', '--on', '2027-04-17');
    expect(code).toBe(0);
    expect(out).toContain('Squeezed the loam on April 17: it smears');
    expect(out).toMatch(/Squeeze a handful of the loam again: April 21, 2027/);
    const last = await openedIn(folder, async ({ store }) => (await store.ledger('hollow-lane')).at(-1));
    expect(last?.fact).toEqual({ kind: 'soil-squeezed', on: '2027-04-17', soilTexture: 'loam', answer: 'smears' });
  });

  test('of one that crumbles asks for nothing more this season; the day is today unless told', async () => {
    const { folder, loamtide } = await withGarden();
    const { out } = await loamtide(...squeeze, 'crumbles');
    expect(out).toBe('Squeezed the loam on April 18: it crumbles\n');
    const keys = await openedIn(folder, async ({ steward }) =>
      (await steward.view('hollow-lane')).plan.tasks.map(({ key }) => key),
    );
    expect(keys.filter((key) => key.startsWith('squeeze-test/soil:loam/2027'))).toEqual([]);
  });

  test.each([
    [[...squeeze, 'maybe'], '--answer: "maybe" cannot be used.'],
    [['report', 'squeeze', '--texture', 'clay', '--answer', 'smears'], 'No bed here has the soil "clay".'],
    [[...squeeze, 'smears', '--on', '2027-05-01'], 'the day it was squeezed: "2027-05-01" cannot be used.'],
  ])('refuses %j', async (argv, complaint) => {
    const { loamtide } = await withGarden();
    const { code, err } = await loamtide(...argv);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
  });
});
