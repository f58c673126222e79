import { describe, expect, it } from 'vitest';
import { addDays } from '../../../src/measures/days.ts';
import { withDates } from '../../../src/steward/rotation-plan/placement-dates.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { cover, frostDates, garden, inputOf, milwaukee, setOut } from '../../practices/gardens.ts';
import { placed } from '../../practices/rotation-plan/problems.ts';

const inMilwaukee = (parts = {}, today = '2026-11-25') =>
  inputOf(garden({ startedOn: today, ...parts }), milwaukee, today);

describe('the days of a plan', () => {
  it('tomatoes are set out when hard nights are over, and last until the freeze', () => {
    const [tomato] = withDates(inMilwaukee(), [placed('a', 'tomato')]);
    // Milwaukee's median last freeze is 23 April and its first 23 October; very tender kinds wait one to two weeks more.
    expect(tomato?.start?.how).toBe('set-out');
    expect(tomato?.start?.day).toMatch(/^2027-05-/);
    expect(tomato?.lastHarvest).toMatch(/^2027-(09|10)-/);
  });

  it('garlic goes in the autumn before its season, once the crop before is out', () => {
    const carrotsLate = [setOut('carrot', '2026-06-01', { harvested: '2026-10-15' })];
    const [garlic] = withDates(inMilwaukee({ plantings: carrotsLate }, '2026-09-25'), [placed('a', 'garlic')]);
    expect(garlic?.start?.day.slice(0, 4)).toBe('2026');
    const [after, free] = [garlic, withDates(inMilwaukee({}, '2026-09-25'), [placed('a', 'garlic')])[0]];
    expect([after, free].every((each) => (each?.start?.day ?? '') > '2026-09-01')).toBe(true);
    expect(after?.start?.day === '2026-10-16' || (after?.start?.day ?? '') === free?.start?.day).toBe(true);
  });

  it('wait for a cover that stands in the bed to be cut at its best, where the crop can wait', () => {
    const rye = [cover('cereal_rye', '2026-09-20')];
    const day = (cropId: string, stands: ReturnType<typeof cover>[]) =>
      withDates(inMilwaukee({ stands }), [placed('a', cropId)])[0]?.start?.day ?? '';
    // Rye is cut before it flowers, in May; its residue keeps small seed from sprouting for weeks after that.
    expect(day('carrot', []) < '2027-05-01').toBe(true);
    expect(day('carrot', rye) > '2027-05-15').toBe(true);
    // Onion sets swell by the length of the day and are too late by then: the rye goes early.
    expect(day('onion-sets', rye)).toBe(day('onion-sets', []));
  });

  it('never lie in the past, and are left out once it is too late in the season', () => {
    const peas = (today: string) => withDates(inMilwaukee({}, today), [placed('a', 'pea', 2027)])[0]?.start?.day;
    expect((peas('2026-11-25') ?? '') < '2027-04-20').toBe(true);
    expect(peas('2027-04-20')).toBe('2027-04-20');
    expect(peas('2027-11-20')).toBeUndefined();
    expect(withDates(inMilwaukee(), [placed('a', 'garlic')])[0]).not.toHaveProperty('start');
  });

  it('a second crop goes in once the first is out and its ground is ready', () => {
    const [beet, peas] = withDates(inMilwaukee(), [{ ...placed('a', 'beet'), after: 'pea' }, placed('a', 'pea')]);
    const [alone] = withDates(inMilwaukee(), [placed('a', 'beet')]);
    expect(beet?.start?.day).toBe(peas?.lastHarvest && addDays(peas.lastHarvest, 3));
    expect((beet?.start?.day ?? '') > (alone?.start?.day ?? '')).toBe(true);
  });

  it('a lasting crop has a first day and no last', () => {
    const [asparagus] = withDates(inMilwaukee(), [placed('a', 'asparagus')]);
    expect(asparagus?.start).toBeDefined();
    expect(asparagus).not.toHaveProperty('lastHarvest');
  });

  it('come half a year on in the south', () => {
    const north = inputOf(garden({ startedOn: '2026-11-25' }), frostDates('04-23', '10-23'), '2026-11-25');
    const south = inputOf(
      garden({ startedOn: '2027-05-25', place: { latitude: -43 } }),
      frostDates('10-23', '04-23', -43),
      '2027-05-25',
    );
    const [inNorth] = withDates(north, [placed('a', 'pea', 2027)]);
    const [inSouth] = withDates(south, [placed('a', 'pea', 2027)]);
    expect(inNorth?.start?.day.slice(0, 6)).toBe('2027-0');
    expect(inSouth?.start?.day.slice(0, 5)).toBe('2027-');
    expect(Number(inSouth?.start?.day.slice(5, 7))).toBeGreaterThan(7);
  });

  it('are left out where no freeze is known', () => {
    const input = inputOf(garden({ startedOn: '2026-11-25' }), inventedClimate(), '2026-11-25');
    expect(withDates(input, [placed('a', 'tomato')])).toEqual([placed('a', 'tomato')]);
  });
});
