import { describe, expect, it } from 'vitest';
import { daylight } from '../../../src/climate/daylight.ts';
import type { Day } from '../../../src/measures/days.ts';
import { bed, frostDates, garden, setOut } from '../gardens.ts';
import { expected, watched } from './gardens.ts';

const MS_PER_MINUTE = 60_000;
const gear = [{ what: 'light-fabric', areaM2: 30 }] as const;

/** The tasks of a night over tomatoes set out four weeks before it, at a place of the earth. */
function nightAt(latitude: number, longitude: number, evening: Day, setOutOn: Day) {
  const of = garden({
    startedOn: evening,
    place: { latitude, longitude },
    beds: [bed('a')],
    plantings: [setOut('tomato', setOutOn)],
    coldNights: [expected(-1, evening)],
    gear: [...gear],
  });
  const climate = frostDates(latitude < 0 ? '10-10' : '05-10', latitude < 0 ? '04-10' : '10-01', latitude);
  const tasks = watched(of, climate, evening);
  return {
    cover: tasks.find(({ kind }) => kind === 'cover-beds'),
    uncover: tasks.find(({ kind }) => kind === 'uncover-beds'),
  };
}

describe('the hour to cover by', () => {
  it.each([
    ['north, in September', 43, -88, '2027-09-18', '2027-08-20'],
    ['south, where autumn is in March', -43, 172, '2028-03-20', '2028-02-20'],
    ['on the day the clocks go back in the United States', 33, -84, '2027-11-07', '2027-10-10'],
    ['on a leap day in the south', -38, 145, '2028-02-29', '2028-02-01'],
    ['east of the date line', 52, 177, '2027-09-18', '2027-08-20'],
  ])('ends half an hour before sunset, to five minutes: %s', (_, latitude, longitude, evening, setOutOn) => {
    const at = nightAt(latitude, longitude, evening, setOutOn).cover?.at;
    const end = Date.parse(at?.from ?? '') + (at?.minutes ?? 0) * MS_PER_MINUTE;
    const minutesLeft = (Date.parse(daylight(latitude, longitude, evening).sunset ?? '') - end) / MS_PER_MINUTE;
    expect(minutesLeft).toBeGreaterThanOrEqual(30);
    expect(minutesLeft).toBeLessThan(36);
    expect(end % (5 * MS_PER_MINUTE)).toBe(0);
    expect(at?.minutes).toBe(15);
  });

  it('grows with the work, and with it begins earlier', () => {
    const plantings = ['a', 'b', 'c'].map((id) => setOut('tomato', '2027-08-20', { id, bedId: id }));
    const of = garden({
      startedOn: '2027-09-18',
      beds: ['a', 'b', 'c'].map((id) => bed(id)),
      plantings,
      gear: [...gear],
    });
    const [task] = watched({ ...of, coldNights: [expected(-1, '2027-09-18')] }, undefined, '2027-09-18');
    expect(task?.effortMinutes).toBe(20);
    expect(task?.at?.minutes).toBe(30);
  });

  it('is left out where the sun does not set, and the task stands on its day', () => {
    const { cover, uncover } = nightAt(69, 20, '2027-06-20', '2027-06-01');
    expect(cover).toBeDefined();
    expect(cover).not.toHaveProperty('at');
    expect(cover?.needs).toEqual([]);
    expect(uncover).toBeDefined();
    expect(uncover).not.toHaveProperty('at');
  });
});

describe('the hour to uncover', () => {
  it('is an hour after sunrise on the next morning', () => {
    const at = nightAt(43, -88, '2027-09-30', '2027-08-20').uncover?.at;
    const after =
      (Date.parse(at?.from ?? '') - Date.parse(daylight(43, -88, '2027-10-01').sunrise ?? '')) / MS_PER_MINUTE;
    expect(after).toBeGreaterThanOrEqual(60);
    expect(after).toBeLessThan(65);
  });

  it('is on New Year’s Day after a cold New Year’s Eve in the far south', () => {
    const { uncover } = nightAt(-54, -68, '2027-12-31', '2027-12-01');
    expect(uncover?.window.earliest).toBe('2028-01-01');
    expect(uncover?.at?.from.slice(0, 10)).toBe('2028-01-01');
  });
});
