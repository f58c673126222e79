import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

async function reporting(...options: string[]) {
  const { folder, loamtide } = await withGarden();
  const outcome = await loamtide('report', 'cold-night', '--today', '2027-04-18', ...options);
  const nights = await openedIn(folder, async ({ steward }) => (await steward.view('hollow-lane')).garden.coldNights);
  return { ...outcome, nights };
}

describe('report cold-night', () => {
  test('takes a forecast in, in the unit that is written', async () => {
    const { code, out, nights } = await reporting('--evening', '2027-04-20', '--low', '-1C');
    expect(code).toBe(0);
    expect(out).toContain('Low expected for the night of April 20, 2027: 30 °F');
    expect(nights).toEqual([{ evening: '2027-04-20', lowC: -1, how: 'expected' }]);
  });

  test('takes a measured low in with --measured', async () => {
    const { nights } = await reporting('--evening', '2027-04-17', '--low', '32F', '--measured');
    expect(nights).toEqual([{ evening: '2027-04-17', lowC: 0, how: 'measured' }]);
  });

  test.each([
    [['--evening', '2027-04-20', '--low', '-1'], '--low: "-1" cannot be used. Give degrees with their unit'],
    [['--evening', '2027-04-20'], '--low: is missing.'],
    [['--evening', 'tonight', '--low', '-1C'], '--evening: "tonight" cannot be used.'],
    [['--evening', '2027-04-30', '--low', '-1C'], 'Give a day from 2027-04-18 to 2027-04-28.'],
  ])('refuses %j and keeps nothing', async (options, complaint) => {
    const { code, err, nights } = await reporting(...options);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
    expect(nights).toEqual([]);
  });
});
