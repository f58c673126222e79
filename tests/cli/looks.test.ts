import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { loamtideIn, SMALL_GARDEN, withGarden } from './loamtide.ts';

const WISHING = `${SMALL_GARDEN}wishes:\n  - { crop: tomato, beds: 1 }\n`;

/** Ten weeks after the day of the plan there is: a server may stand on that day while the clock goes on. */
const LATER = '2027-06-27T15:00:00.000Z';

describe('a command that only looks', () => {
  test.each([
    ['fertility'],
    ['rotation'],
    ['plan'],
    ['week'],
    ['yard'],
    ['climate'],
    ['feed', 'list'],
    ['undo'],
    ['season-end'],
  ])('leaves the plan of another day as it is: %s', async (...argv) => {
    const { folder, loamtide } = await withGarden(WISHING);
    await loamtide('report', 'cold-night', '--low', '-1C', '--measured', '--evening', '2027-04-17');
    const published = () => openedIn(folder, ({ store }) => store.plan('hollow-lane'));
    const before = await published();
    expect(before?.today).toBe('2027-04-18');
    const later = loamtideIn(folder, { now: () => LATER });
    const { code, err } = await later(...argv);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(await published()).toEqual(before);
  });

  test('shows the plan of the day it is, all the same', async () => {
    const { folder } = await withGarden();
    const { out } = await loamtideIn(folder, { now: () => LATER })('week');
    expect(out).toContain('Week of June 21 to 27, 2027');
  });
});

test('what is told on a later day moves the plan on to it', async () => {
  const { folder } = await withGarden();
  const later = loamtideIn(folder, { now: () => LATER });
  expect(await later('report', 'cold-night', '--low', '5C', '--measured', '--evening', '2027-06-26')).toMatchObject({
    code: 0,
  });
  const plan = await openedIn(folder, ({ store }) => store.plan('hollow-lane'));
  expect(plan?.today).toBe('2027-06-27');
});
