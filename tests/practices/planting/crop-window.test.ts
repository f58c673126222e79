import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import { vegetableById, vegetables } from '../../../src/handbook/vegetables.ts';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { cropWindow } from '../../../src/practices/planting/crop-window.ts';
import type { How } from '../../../src/practices/planting/first-day.ts';
import { groundFreezes, lastHardNight } from '../../../src/practices/planting/ground.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { recordClimate } from '../../climate/real-data.ts';
import { frostDates, milwaukee } from '../gardens.ts';

/** The garden of the reference's list of absurd dates: median freezes 10 May and 25 September. */
const listed = frostDates('05-10', '09-25');
const bozeman = recordClimate('bozeman', 2020);

function windowOf(cropId: string, how: How, climate: Climate = listed, frostRisk = 30) {
  const found = cropWindow(climate, { crop: vegetableById(cropId), how, season: 2027, frostRisk });
  if (found === undefined) throw new Error(`No window for ${cropId}.`);
  return found;
}

describe('dates that a table allows and a garden does not', () => {
  it('Brussels sprouts go out from 20 May to 10 June to crop in the cool, not on 29 March to crop in June', () => {
    const { earliest, latest } = windowOf('brussels-sprouts', 'set-out');
    expect([earliest, latest]).toEqual(['2027-05-20', '2027-06-10']);
    // 90 days after the first of them is 18 August, past the heat of the year.
    expect(addDays(earliest, 90) >= '2027-08-15').toBe(true);
  });

  it('rutabaga is sown from 11 to 26 June, not in spring', () => {
    const { earliest, latest } = windowOf('rutabaga', 'sow');
    expect([earliest, latest]).toEqual(['2027-06-11', '2027-06-26']);
  });

  it('winter radish is sown in July, not in April to bolt', () => {
    const { earliest, latest } = windowOf('winter-radish', 'sow');
    expect([earliest, latest]).toEqual(['2027-07-13', '2027-07-27']);
  });

  it('Chinese cabbage goes in for autumn, not on 19 April to bolt after a cold spring', () => {
    for (const how of ['sow', 'set-out'] as const) {
      const { earliest, bestUntil, latest } = windowOf('chinese-cabbage', how);
      expect([earliest, bestUntil, latest]).toEqual(['2027-06-19', '2027-07-03', '2027-07-17']);
    }
  });

  it('sweet potato closes on 29 May and potato on 23 May, the earlier of window and last planting', () => {
    expect(windowOf('sweet-potato', 'set-out').latest).toBe('2027-05-29');
    expect(windowOf('potato', 'sow').latest).toBe('2027-05-23');
  });

  it.each(['celery', 'sweet-potato', 'pumpkin', 'dry-bean', 'edamame', 'watermelon', 'sweet-corn'])(
    'the last three weeks for %s are for early kinds only',
    (cropId) => {
      const how = ['celery', 'sweet-potato'].includes(cropId) ? 'set-out' : 'sow';
      const { latest, earlyKindsFrom } = windowOf(cropId, how);
      expect(daysBetween(earlyKindsFrom ?? '', latest)).toBe(21);
    },
  );

  it.each(['spinach', 'arugula', 'lettuce-leaf', 'radish'])(
    'quick %s is not closed in July or mid-August: it is late from its preferred last day and lost only weeks after',
    (cropId) => {
      const { lateFrom, latest } = windowOf(cropId, 'sow');
      expect(latest >= '2027-08-11').toBe(true);
      expect(daysBetween(lateFrom ?? '', latest)).toBeGreaterThanOrEqual(13);
    },
  );

  it('cabbage is set out until 23 July: 65 to 85 days later is 26 September to 16 October', () => {
    const { latest } = windowOf('cabbage', 'set-out');
    expect(latest).toBe('2027-07-23');
    expect([addDays(latest, 65), addDays(latest, 85)]).toEqual(['2027-09-26', '2027-10-16']);
  });

  it.each(['broccoli', 'cabbage', 'kale', 'leek', 'onion-seed'])(
    'hardy %s is never set out six weeks before the last freeze, to meet 25 °F in most years',
    (cropId) => {
      for (const climate of [listed, milwaukee, bozeman]) {
        const { earliest } = windowOf(cropId, 'set-out', climate);
        expect(earliest >= (lastHardNight(climate, 2027) ?? '9999')).toBe(true);
      }
      // 10 May less four weeks is 12 April.
      expect(windowOf(cropId, 'set-out').earliest >= '2027-04-12').toBe(true);
    },
  );

  it('turnip waits for soil of 8 °C, carrot and parsley for 4.4 °C', () => {
    const soilDay = (cropId: string) =>
      windowOf(cropId, 'sow', bozeman).opens.find(({ rule }) => rule === 'plant.soil')?.saw.tempC;
    expect(vegetableById('turnip').soilMinC).toBe(8);
    expect(soilDay('turnip')).toBe(8);
    expect([vegetableById('carrot').soilMinC, vegetableById('parsley').soilMinC]).toEqual([4.4, 4.4]);
  });

  it('snap beans are best by 11.6 weeks before the freeze and lost at 9.7', () => {
    const { lateFrom, latest } = windowOf('snap-bean', 'sow');
    expect([lateFrom, latest]).toEqual(['2027-07-07', '2027-07-19']);
  });

  it('melons close 15.7 weeks before the freeze: heat runs out before frost comes', () => {
    // 25 September less 110 days is 7 June.
    for (const cropId of ['muskmelon', 'watermelon']) expect(windowOf(cropId, 'sow').latest).toBe('2027-06-07');
  });
});

describe('the first day', () => {
  it('of very tender kinds is the day freezes come in a tenth of years, where they were counted, whatever the garden risks', () => {
    const [bold, careful] = [
      windowOf('tomato', 'set-out', milwaukee, 50),
      windowOf('tomato', 'set-out', milwaukee, 10),
    ];
    expect(bold.earliest).toBe(careful.earliest);
    expect(bold.opens[0]).toMatchObject({ rule: 'plant.odds', saw: { percent: 10 } });
  });

  it('of very tender kinds is two weeks after the last freeze where only two dates are known', () => {
    expect(windowOf('tomato', 'set-out').earliest).toBe('2027-05-24');
  });

  it('of tender plants goes by the odds the garden is planned by', () => {
    const days = [10, 30, 50].map((risk) => windowOf('celery', 'set-out', milwaukee, risk).earliest);
    expect(days).toEqual([...days].sort().reverse());
    expect(new Set(days).size).toBe(3);
  });

  it('of tender seed comes a week before that of tender plants: it is still under the ground', () => {
    const [seed, plants] = (['sow', 'set-out'] as const).map(
      (how) => windowOf('summer-squash', how, listed, 10).earliest,
    );
    expect(daysBetween(seed ?? '', plants ?? '')).toBe(7);
  });

  it('waits for the soil where its warmth is known', () => {
    const { earliest, opens } = windowOf('sweet-corn', 'sow', milwaukee);
    expect(opens[0]).toMatchObject({ rule: 'plant.soil', limit: earliest, saw: { tempC: 10 } });
  });

  it('of tender kinds waits for modelled soil no longer than to the end of their class’s weeks, and says so', () => {
    // Two weeks after the median last freeze, 23 April.
    const { earliest, opens } = windowOf('snap-bean', 'sow', milwaukee);
    expect(daysBetween('2027-04-23', earliest)).toBe(14);
    const slow = opens.find(({ rule }) => rule === 'plant.soil-slow');
    expect(slow?.limit).toBe(earliest);
    expect(String(slow?.saw.day) > earliest).toBe(true);
  });
});

describe('garlic', () => {
  it('goes in one to two weeks after the median first 28 °F, on the record of Milwaukee', () => {
    const { earliest, latest, closes } = windowOf('garlic', 'sow', milwaukee);
    const freeze = String(closes[0]?.saw.freeze);
    expect([daysBetween(freeze, earliest), daysBetween(freeze, latest)]).toEqual([7, 14]);
  });

  it('goes in three to four weeks after the first 32 °F where that is all that is known', () => {
    const { earliest, latest } = windowOf('garlic', 'sow');
    expect([earliest, latest]).toEqual(['2027-10-16', '2027-10-23']);
  });

  it('stops four weeks before the ground freezes', () => {
    for (const climate of [milwaukee, bozeman]) {
      const frozen = groundFreezes(climate, 2027) ?? '9999';
      expect(daysBetween(windowOf('garlic', 'sow', climate).latest, frozen)).toBeGreaterThanOrEqual(28);
    }
  });
});

describe('seasons that do not bear a crop', () => {
  it('a season up to three weeks short opens a week for early kinds, with a warning', () => {
    const { earliest, latest, earlyKindsFrom, closes } = windowOf('tomato', 'set-out', bozeman);
    expect(daysBetween(earliest, latest)).toBe(7);
    expect(earlyKindsFrom).toBe(earliest);
    expect(closes[0]?.rule).toBe('plant.short-season');
  });

  it('one that is shorter has no window', () => {
    const crop = vegetableById('sweet-potato');
    expect(cropWindow(bozeman, { crop, how: 'set-out', season: 2027, frostRisk: 30 })).toBeUndefined();
  });

  it('a place without freeze dates has none either', () => {
    const crop = vegetableById('carrot');
    expect(cropWindow(inventedClimate(), { crop, how: 'sow', season: 2027, frostRisk: 30 })).toBeUndefined();
  });
});

describe('every crop of the handbook', () => {
  const long = frostDates('04-01', '11-10');

  it.each(vegetables.map(({ id }) => id))(
    '%s has a window in a long season, in order, and the same in the south',
    (id) => {
      const crop = vegetableById(id);
      const how = crop.establish === 'transplant' ? 'set-out' : 'sow';
      const north = windowOf(id, how, long);
      expect(north.earliest <= north.bestUntil && north.bestUntil <= north.latest).toBe(true);
      const south = windowOf(id, how, frostDates('09-30', '05-12', -43));
      expect(Math.abs(daysBetween(addDays(north.earliest, 182), south.earliest))).toBeLessThanOrEqual(4);
      expect(Math.abs(daysBetween(addDays(north.latest, 183), south.latest))).toBeLessThanOrEqual(4);
    },
  );

  it('sown in the bed instead of set out, a kind counted from plants closes the weeks of raising earlier', () => {
    // Broccoli: 9.1 weeks as plants, six weeks more as seed.
    const [seed, plants] = (['sow', 'set-out'] as const).map((how) => windowOf('broccoli', how, long).latest);
    expect(daysBetween(seed ?? '', plants ?? '')).toBe(42);
  });
});
