import { describe, expect, it } from 'vitest';
import type { ColdNight } from '../../src/garden/garden.ts';
import { toldNights } from '../../src/garden/told-nights.ts';
import type { LoggedDay } from '../../src/garden/weather.ts';

const nights = (weather: LoggedDay[], coldNights: ColdNight[] = []) =>
  toldNights({ weather, coldNights }).map(({ evening, lowC, how, from, snow }) => [evening, lowC, how, from, snow]);

describe('the nights a garden knows of', () => {
  it('take the low of a day for its morning: it belongs to the evening before', () => {
    expect(nights([{ day: '2027-05-13', kind: 'observed', tminC: -1 }])).toEqual([
      ['2027-05-12', -1, 'measured', 'log', false],
    ]);
    expect(nights([{ day: '2028-03-01', kind: 'expected', tminC: 2 }])).toEqual([
      ['2028-02-29', 2, 'expected', 'log', false],
    ]);
  });

  it('take snow that lies for a cold evening to come, and snow that is expected also for the one before', () => {
    expect(nights([{ day: '2027-05-13', kind: 'observed', snowDepthMm: 80 }])).toEqual([
      ['2027-05-13', 0, 'expected', 'snow', true],
    ]);
    expect(nights([{ day: '2027-05-13', kind: 'expected', newSnowMm: 80 }]).map(([evening]) => evening)).toEqual([
      '2027-05-12',
      '2027-05-13',
    ]);
  });

  it('have the stronger word last: snow, then the log, then what was told of the night itself', () => {
    const told = nights(
      [
        { day: '2027-05-13', kind: 'observed', newSnowMm: 80 },
        { day: '2027-05-14', kind: 'expected', tminC: 3 },
      ],
      [{ evening: '2027-05-13', lowC: -2, how: 'expected' }],
    );
    expect(told.map(([evening, lowC, , from]) => [evening, lowC, from])).toEqual([
      ['2027-05-13', 0, 'snow'],
      ['2027-05-13', 3, 'log'],
      ['2027-05-13', -2, 'told'],
    ]);
    expect(told.every(([, , , , snow]) => snow)).toBe(true);
  });

  it('make nothing of snow that was looked for and was not there', () => {
    expect(nights([{ day: '2027-05-13', kind: 'observed', newSnowMm: 0, snowDepthMm: 0, rainMm: 4 }])).toEqual([]);
  });
});
