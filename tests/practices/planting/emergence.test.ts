import { describe, expect, it } from 'vitest';
import { withWeather } from '../../../src/climate/logged.ts';
import type { LoggedDay } from '../../../src/garden/weather.ts';
import { emergenceByVegetable, emergenceDays } from '../../../src/handbook/emergence.ts';
import { germinationByVegetable } from '../../../src/handbook/germination.ts';
import { daysBetween, eachDay } from '../../../src/measures/days.ts';
import { expectedUp, ratePerDay } from '../../../src/practices/planting/emergence.ts';
import { bed, draftsIn, garden, milwaukee, setOut, sown } from '../gardens.ts';

const row = (id: string) => emergenceByVegetable.get(id) ?? { vegetableIds: [], byTempC: [] };

describe('days to emergence', () => {
  it('are those of the trial at its own temperatures, and between them in between', () => {
    for (const { byTempC, vegetableIds } of emergenceDays) {
      for (const [tempC, days] of byTempC) {
        expect(1 / ratePerDay(row(vegetableIds[0] ?? ''), tempC)).toBeCloseTo(days);
      }
    }
    const between = 1 / ratePerDay(row('carrot'), 12.5);
    expect(between > 10 && between < 17).toBe(true);
  });

  it('run out in soil colder than any the kind came up in', () => {
    expect(ratePerDay(row('snap-bean'), 10)).toBe(0);
    expect(ratePerDay(row('snap-bean'), 12.5)).toBeCloseTo(1 / 32);
  });

  it('are known for every kind whose germination temperatures are', () => {
    expect([...germinationByVegetable.keys()].filter((id) => !emergenceByVegetable.has(id))).toEqual([]);
  });

  it('are fewer the later in spring seed is sown', () => {
    const days = ['2027-04-10', '2027-05-10', '2027-06-10'].map((sownOn) =>
      daysBetween(sownOn, expectedUp(milwaukee, 'carrot', sownOn) ?? ''),
    );
    expect(days[0] ?? 0).toBeGreaterThan(days[1] ?? 0);
    expect(days[1] ?? 0).toBeGreaterThan(days[2] ?? 0);
  });

  it('are not waited for in frozen ground', () => {
    expect(expectedUp(milwaukee, 'snap-bean', '2027-01-05')).toBeUndefined();
  });
});

describe('seed kept moist', () => {
  const looks = (plantings: Parameters<typeof garden>[0], today?: string) =>
    draftsIn(garden(plantings), milwaukee, today).filter(({ kind }) => kind === 'keep-moist');

  it('is a step of every sowing, and a look of its own for small seed that is slow', () => {
    const all = draftsIn(garden({ plantings: [sown('radish', '2027-06-20')] }), milwaukee);
    expect(all.find(({ kind }) => kind === 'sow-crop')?.steps.join(' ')).toContain(
      'Keep the rows moist until the seed is up',
    );
    expect(all.some(({ kind }) => kind === 'keep-moist')).toBe(false);
    const [carrot] = looks({ plantings: [sown('carrot', '2027-04-24')] });
    expect(carrot).toMatchObject({ weight: 'check', title: 'Keep the carrot seed in Bed A moist until it is up' });
    expect(carrot?.after).toEqual([{ key: 'sow/planting:carrot-2027-04-24', minDays: 3 }]);
  });

  it('counts from the day it was sown on, and asks for no sowing any more', () => {
    const of = { startedOn: '2027-04-28', plantings: [sown('carrot', '2027-04-26')] };
    const [carrot] = looks(of);
    expect(carrot?.window.earliest).toBe('2027-04-29');
    expect(carrot?.window.latest).toBe(expectedUp(milwaukee, 'carrot', '2027-04-26'));
    expect(draftsIn(garden(of), milwaukee).some(({ kind }) => kind === 'sow-crop')).toBe(false);
  });

  it('is not asked of plants, sets or cloves', () => {
    const plantings = [setOut('leek', '2027-04-20'), sown('onion-sets', '2027-04-12'), sown('garlic', '2027-11-15')];
    expect(looks({ plantings })).toEqual([]);
  });
});

describe('quick seed in a bed that dries', () => {
  const SOWN = '2027-06-01';
  const spell = (weather: Partial<LoggedDay>): LoggedDay[] =>
    eachDay('2027-05-20', '2027-06-17').map((day) => ({ day, kind: 'observed', tminC: 12, tmaxC: 27, ...weather }));
  const looks = (weather: readonly LoggedDay[], parts: Parameters<typeof garden>[0] = {}) => {
    const of = garden({ startedOn: '2027-06-02', plantings: [sown('snap-bean', SOWN)], ...parts });
    const known = withWeather(milwaukee, weather, '2027-06-17');
    return draftsIn(of, known, '2027-06-17').filter(({ kind }) => kind === 'keep-moist');
  };

  it('is kept moist from the day its rows are reckoned dry, and says why', () => {
    // By hand (FAO-56 eq. 52): 12 to 27 °C under 41.5 MJ/m² take 5.6 mm, bare wet soil 1.15 of that: 8 mm in two days.
    const [bean] = looks(spell({ rainMm: 0 }));
    expect(bean).toMatchObject({ weight: 'check', title: 'Keep the snap bean seed in Bed A moist until it is up' });
    expect(bean?.window.earliest).toBe('2027-06-03');
    expect(bean?.reasons.map(({ rule }) => rule)).toEqual(['up.dries', 'up.expected']);
  });

  it('is left alone where rain or watering keeps the top moist, or the bed is watered', () => {
    expect(looks(spell({ rainMm: 8 }))).toEqual([]);
    expect(looks(spell({ rainMm: 0, wateringMm: 8 }))).toEqual([]);
    expect(looks(spell({ rainMm: 0 }), { beds: [bed('a', { watered: true })] })).toEqual([]);
  });

  it('moves the look at slow seed to the day it dries', () => {
    const plantings = [sown('carrot', SOWN)];
    const [wet] = looks(spell({ rainMm: 8 }), { plantings });
    const [dry] = looks(spell({ rainMm: 0 }), { plantings });
    expect([wet?.window.earliest, dry?.window.earliest]).toEqual(['2027-06-04', '2027-06-03']);
  });
});
