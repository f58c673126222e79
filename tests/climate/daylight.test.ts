import { describe, expect, it } from 'vitest';
import { daylight } from '../../src/climate/daylight.ts';

describe('daylight', () => {
  it('is one local day’s, wherever on earth that is', () => {
    // Sunrise by UTC falls on the day before east of Greenwich and sunset on the day after west of it.
    expect(daylight(-43.5, 172.6, '2027-12-21').sunrise?.slice(0, 10)).toBe('2027-12-20');
    expect(daylight(45, -111, '2027-06-21').sunset?.slice(0, 10)).toBe('2027-06-22');
    // A day at the equinox grows by four minutes, and the two shores of the date line are a day of sun apart.
    const [west, east] = [daylight(52, 179.9, '2027-03-21').hours, daylight(52, -179.9, '2027-03-21').hours];
    expect((east - west) * 60).toBeGreaterThan(3);
    expect((east - west) * 60).toBeLessThan(5);
  });

  it('has no sunset under the midnight sun and no sunrise in the polar night', () => {
    expect(daylight(69.6, 18.9, '2027-06-21')).toEqual({ hours: 24, alwaysUp: true, alwaysDown: false });
    expect(daylight(69.6, 18.9, '2027-12-21')).toEqual({ hours: 0, alwaysUp: false, alwaysDown: true });
  });

  it('is longest in June in the north and in December in the south, by the same amount within minutes', () => {
    const north = daylight(45, 0, '2027-06-21').hours;
    const south = daylight(-45, 0, '2027-12-21').hours;
    expect(north).toBeCloseTo(south, 1);
    expect(daylight(45, 0, '2027-12-21').hours).toBeLessThan(9);
  });

  it('steps smoothly over a leap day and New Year', () => {
    const lengths = ['2028-02-28', '2028-02-29', '2028-03-01'].map((day) => daylight(45, 0, day).hours);
    const [before = 0, leap = 0, after = 0] = lengths;
    expect(leap - before).toBeCloseTo(after - leap, 2);
    expect(daylight(45, 0, '2028-01-01').hours - daylight(45, 0, '2027-12-31').hours).toBeCloseTo(0.016, 2);
  });
});
