/**
 * Planting windows against charts published for Maine, Wisconsin and Iowa, the frost classes of three states, and
 * figures for garlic, hardening off and emergence. Freeze medians are those of the places the charts are for.
 *
 * What was seen when these were first held against each other: soil reckoned from air had tender kinds wait up to 35 days
 * past Maine's first dates, so it now holds them only inside their class's published weeks (docs/planting.md). No figure
 * was changed to fit.
 */
import { describe, expect, it } from 'vitest';
import type { Climate } from '../../src/climate/climate.ts';
import { freezeDay } from '../../src/climate/freeze.ts';
import { climateFromStation } from '../../src/climate/from-station.ts';
import { emergenceByVegetable } from '../../src/handbook/emergence.ts';
import { vegetableById, vegetables } from '../../src/handbook/vegetables.ts';
import { addDays, type Day, daysBetween, inYear } from '../../src/measures/days.ts';
import { cropWindow } from '../../src/practices/planting/crop-window.ts';
import { ratePerDay } from '../../src/practices/planting/emergence.ts';
import { groundFreezes } from '../../src/practices/planting/ground.ts';
import { HARDEN_DAYS } from '../../src/practices/planting/raise-drafts.ts';
import { NO_OFFSETS, recordClimate, stationById } from '../climate/real-data.ts';
import { draftsIn, frostDates, garden, setOut } from '../practices/gardens.ts';

const YEAR = 2027;

function station(id: string): Climate {
  const { latitude, longitude } = stationById(id);
  return climateFromStation(stationById(id), { latitude, longitude, ...NO_OFFSETS });
}

function windowOf(cropId: string, climate: Climate) {
  const crop = vegetableById(cropId);
  const how = crop.establish === 'transplant' ? 'set-out' : 'sow';
  const found = cropWindow(climate, { crop, how, season: YEAR, frostRisk: 30 });
  if (found === undefined) throw new Error(`No window for ${cropId}.`);
  return found;
}

/** Days by which a window's end lies after the chart's date (before it when negative). */
function misses(chart: Record<string, string>, climate: Climate, end: 'earliest' | 'latest') {
  return Object.entries(chart).map(([cropId, date]) => ({
    cropId,
    days: daysBetween(inYear(date, YEAR), windowOf(cropId, climate)[end]),
  }));
}

const outside = (found: readonly { cropId: string; days: number }[], early: number, late: number) =>
  found.filter(({ days }) => days < -early || days > late).map(({ cropId, days }) => `${cropId} ${days}`);

/** Bangor International Airport: medians 6 May and 4 October (NOAA NCEI, Normals 1981–2010). */
const bangor = station('USW00014606');
/** Madison Dane Regional Airport: 2 May and 5 October. */
const madison = station('USW00014837');
/** Two stations at Ames, Iowa: 10 and 6 October. */
const ames = [station('USC00130200'), station('USC00130203')];

describe('first dates of central Maine (University of Maine, Planting Chart, veg:V1), twenty-one crops at Bangor', () => {
  // The chart's last dates are no check: the handbook's were worked out from them.
  const found = misses(
    {
      asparagus: '04-20',
      'pole-bean': '05-15',
      'snap-bean': '05-15',
      beet: '04-25',
      broccoli: '05-01',
      cabbage: '05-01',
      carrot: '05-01',
      'sweet-corn': '05-15',
      cucumber: '06-01',
      eggplant: '06-01',
      'onion-sets': '04-20',
      parsnip: '05-01',
      pea: '04-15',
      pepper: '05-25',
      potato: '05-01',
      pumpkin: '05-20',
      spinach: '04-10',
      'summer-squash': '05-25',
      'winter-squash': '05-20',
      tomato: '05-25',
      turnip: '05-01',
    },
    bangor,
    'earliest',
  );

  it('never open more than two weeks after the chart: largest miss 14 days, squash and pumpkin', () => {
    expect(outside(found, 99, 14)).toEqual([]);
  });

  it('open up to 25 days before it, for kinds that bear frost and wait for dry soil: onion sets 25, potatoes 21', () => {
    // Illinois lets hardy kinds in six weeks before the last freeze (veg:V6); Maine's soil is seldom fit by then.
    expect(outside(found, 25, 99)).toEqual([]);
    const tender = found.filter(({ cropId }) => vegetableById(cropId).frostClass.endsWith('tender'));
    expect(outside(tender, 9, 99)).toEqual([]);
  });

  it('lie eleven days from it on the middle', () => {
    const sorted = found.map(({ days }) => Math.abs(days)).sort((a, b) => a - b);
    expect(sorted[Math.floor(sorted.length / 2)] ?? 99).toBeLessThanOrEqual(11);
  });
});

describe('average first plantings of Wisconsin (Delahaut & Binning, veg:V3), fifteen crops at Madison', () => {
  // Its last dates are a grower's: cole crops close on 1 July for their pests, carrots on 1 June. They are not held here.
  it('lie within 25 days before and 10 days after; onions 25 before, lima bean, melon and asparagus 10 after', () => {
    const found = misses(
      {
        asparagus: '04-15',
        'snap-bean': '05-10',
        'lima-bean': '05-20',
        beet: '04-15',
        broccoli: '04-15',
        cabbage: '04-15',
        carrot: '04-15',
        cauliflower: '04-15',
        cucumber: '06-01',
        eggplant: '06-01',
        kohlrabi: '04-15',
        'lettuce-leaf': '04-15',
        'lettuce-head': '04-15',
        muskmelon: '05-20',
        'onion-seed': '04-15',
      },
      madison,
      'earliest',
    );
    expect(outside(found, 25, 10)).toEqual([]);
  });
});

describe('last practical dates of central Iowa (Iowa State University, veg:V8) at two stations of Ames', () => {
  // Melons, beet, carrot, snap bean and chard have their last weeks from this page itself and are left out.
  const chart = {
    tomato: '06-20',
    pepper: '06-20',
    eggplant: '06-20',
    'lima-bean': '07-01',
    'sweet-corn': '07-01',
    cucumber: '07-20',
    'summer-squash': '07-20',
  };

  it.each(ames.map((climate) => ({ climate })))(
    'seven crops close within a week of them: largest miss 7 days',
    ({ climate }) => {
      expect(outside(misses(chart, climate, 'latest'), 7, 7)).toEqual([]);
    },
  );

  it('sweet corn is for early kinds by then, as the page says', () => {
    for (const climate of ames)
      expect((windowOf('sweet-corn', climate).earlyKindsFrom ?? '') <= '2027-07-01').toBe(true);
  });

  it('rutabaga is sown from 15 June to 15 July in Iowa (Iowa State University Extension): ours lies inside', () => {
    for (const climate of ames) {
      const { earliest, latest } = windowOf('rutabaga', climate);
      expect(earliest >= '2027-06-15' && latest <= '2027-07-15').toBe(true);
    }
  });

  it('radishes go in until mid-September, leaf lettuce and spinach in early August, for autumn', () => {
    for (const climate of ames) {
      expect(Math.abs(daysBetween('2027-09-12', windowOf('radish', climate).latest))).toBeLessThanOrEqual(10);
      for (const cropId of ['lettuce-leaf', 'spinach'])
        expect(windowOf(cropId, climate).latest >= '2027-08-07').toBe(true);
    }
  });
});

describe('weeks of the frost classes in three states (Colorado veg:V2, Illinois veg:V6, Utah veg:V7)', () => {
  // Weeks from the average last freeze in which a class goes in, the widest of the three.
  const published = {
    hardy: { from: -6, to: -2 },
    'half-hardy': { from: -3, to: 0 },
    tender: { from: 0, to: 2 },
    'very-tender': { from: 1, to: 4 },
  } as const;
  /** Kinds whose own source opens them wider than their class (see the handbook): potatoes, beet, lettuce, snap bean. */
  const wider = ['potato', 'beet', 'lettuce-leaf', 'lettuce-head', 'snap-bean'];
  const freeze = '2027-05-10';
  const climate = frostDates('05-10', '11-10');
  const spring = vegetables.filter(({ id, autumnSetWeeks }) => autumnSetWeeks === undefined && !wider.includes(id));

  it.each(spring.map(({ id }) => id))('%s opens in them', (id) => {
    const weeks = daysBetween(freeze, windowOf(id, climate).earliest) / 7;
    const { from, to } = published[vegetableById(id).frostClass];
    // One week over: hard nights hold set-out plants a little, the odds of the garden tender ones.
    expect(weeks).toBeGreaterThanOrEqual(from);
    expect(weeks).toBeLessThanOrEqual(to + 1);
  });

  it.each(wider)('%s opens within two weeks of them', (id) => {
    const weeks = daysBetween(freeze, windowOf(id, climate).earliest) / 7;
    expect(weeks).toBeGreaterThanOrEqual(published[vegetableById(id).frostClass].from - 2);
  });
});

describe('snap beans, Montana: up to 12 weeks before the first freeze (veg:V50)', () => {
  it('are late three days after that at the earliest, and closed within three weeks of it', () => {
    const { lateFrom, latest } = windowOf('snap-bean', madison);
    const rule = addDays('2027-10-05', -84);
    expect(Math.abs(daysBetween(rule, lateFrom ?? ''))).toBeLessThanOrEqual(4);
    expect(daysBetween(rule, latest)).toBeLessThanOrEqual(21);
  });
});

describe('garlic', () => {
  const killing = (climate: Climate): Day =>
    freezeDay(climate, { event: 'first-autumn', limitF: 28, season: YEAR, chancePercent: 50 }) ?? '';

  it.each(['milwaukee', 'bozeman'] as const)(
    'goes in within two weeks after the first killing freeze, four weeks and more before the ground freezes, at %s (veg:V43)',
    (name) => {
      const climate = recordClimate(name, 2020);
      const { earliest, latest } = windowOf('garlic', climate);
      expect(earliest <= addDays(killing(climate), 14) && latest <= addDays(killing(climate), 14)).toBe(true);
      expect(daysBetween(latest, groundFreezes(climate, YEAR) ?? '')).toBeGreaterThanOrEqual(28);
    },
  );

  it('goes in between mid-September and the end of October in Maine (from a newspaper column), within a week', () => {
    const { earliest, latest } = windowOf('garlic', bangor);
    expect(earliest >= '2027-09-15' && latest <= '2027-11-07').toBe(true);
  });

  it('counted from 32 °F alone is within a week of what 28 °F says, at Milwaukee and Bozeman', () => {
    for (const name of ['milwaukee', 'bozeman'] as const) {
      const climate = recordClimate(name, 2020);
      const light = freezeDay(climate, { event: 'first-autumn', limitF: 32, season: YEAR, chancePercent: 50 }) ?? '';
      const three = addDays(light, 21);
      expect(Math.abs(daysBetween(three, addDays(killing(climate), 7)))).toBeLessThanOrEqual(7);
    }
  });
});

describe('hardening off, University of Maryland: one to two weeks (veg:V26)', () => {
  it('for plants set out on 1 June begins between 18 and 25 May', () => {
    expect(HARDEN_DAYS).toEqual({ low: 7, high: 14 });
    const drafts = draftsIn(garden({ plantings: [setOut('tomato', '2027-06-01')] }), frostDates('05-10', '10-01'));
    const harden = drafts.find(({ kind }) => kind === 'harden-off');
    expect([harden?.window.earliest, harden?.window.latest]).toEqual(['2027-05-18', '2027-05-25']);
  });
});

describe('emergence in another printing of the same trial (veg:V5), days at 10, 15 and 20 °C', () => {
  const printed: Record<string, readonly [number | undefined, number, number]> = {
    carrot: [17, 10, 7],
    'lettuce-leaf': [7, 4, 3],
    'onion-seed': [13, 7, 5],
    pea: [14, 9, 8],
    spinach: [12, 7, 6],
    beet: [17, 10, 6],
    'snap-bean': [undefined, 16, 11],
    'sweet-corn': [22, 12, 7],
    cucumber: [undefined, 13, 6],
    tomato: [43, 14, 8],
  };

  it.each(Object.entries(printed))('%s', (cropId, days) => {
    const row = emergenceByVegetable.get(cropId);
    for (const [i, tempC] of [10, 15, 20].entries()) {
      const here = days[i];
      if (row && here !== undefined) expect(1 / ratePerDay(row, tempC)).toBeCloseTo(here, 6);
    }
  });
});
