import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { SMALL_GARDEN, withGarden } from './loamtide.ts';

const KALE = SMALL_GARDEN.replace(
  'coverStands:',
  '  - { bed: North bed, crop: cabbage, setOut: "2027-04-10" }\n  - { bed: North bed, crop: kale, setOut: "2028-05-20" }\ncoverStands:',
);

async function reporting(...options: string[]) {
  const { folder, loamtide } = await withGarden(KALE);
  const outcome = await loamtide('report', 'disease', ...options);
  const found = await openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.diseases);
  return { ...outcome, found };
}

const ASKED = ['--bed', 'north bed', '--crop', 'Cabbage', '--disease', 'clubroot'];

describe('report disease', () => {
  test('shows what would come of it and keeps nothing', async () => {
    const { code, out, found } = await reporting(...ASKED);
    expect(code).toBe(0);
    expect(out).toContain('Found clubroot on the Cabbage in North bed on April 18');
    expect(out.replace(/\s+/g, ' ')).toContain('until April 18, 2034');
    expect(out).toContain('Plantings that break it:\n  Kale, planned for May 20, 2028');
    expect(out).toContain('New tasks:');
    expect(out).toContain('Nothing was changed. Add --apply to take it in.');
    expect(found).toEqual([]);
  });

  test('takes it in with --apply, on the day it was found', async () => {
    const { out, found } = await reporting(...ASKED, '--on', '2027-04-17', '--apply');
    expect(out).not.toContain('Nothing was changed');
    expect(found).toEqual([{ bedId: 'north-bed', cropId: 'cabbage', disease: 'clubroot', on: '2027-04-17' }]);
  });

  test.each([
    [['--bed', 'Nort bed', '--crop', 'cabbage', '--disease', 'rust'], '"Nort bed" is not a bed'],
    [['--bed', 'North bed', '--crop', 'cabage', '--disease', 'rust'], 'Did you mean cabbage'],
    [['--bed', 'North bed', '--crop', 'cabbage'], '--disease: is missing.'],
    [[...ASKED, '--on', '2027-04-19'], 'the day it was found'],
  ])('refuses %j', async (options, complaint) => {
    const { code, err, found } = await reporting(...options);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
    expect(found).toEqual([]);
  });
});
