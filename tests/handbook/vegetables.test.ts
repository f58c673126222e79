import { describe, expect, it } from 'vitest';
import { originOf, provenanceOf } from '../../src/handbook/shapes/row.ts';
import { vegetableById, vegetables } from '../../src/handbook/vegetables.ts';
import { addDays, type Day, daysBetween } from '../../src/measures/days.ts';

/** The test garden of the reference: median last freeze 10 May, first freeze 25 September. */
const LAST_FREEZE = '2025-05-10';
const FIRST_FREEZE = '2025-09-25';

/** Median first freezes, NOAA 1981–2010: Bangor, Maine, and Ames, Iowa (the middle of two stations). */
const BANGOR_FIRST = '2025-10-04';
const AMES_FIRST = '2025-10-08';

function weeksBefore(day: Day, freeze: Day): number {
  return Math.round((daysBetween(day, freeze) / 7) * 10) / 10;
}

/** The day so many weeks before the test garden's first freeze. */
function beforeFirst(weeks: number): Day {
  return addDays(FIRST_FREEZE, -Math.round(weeks * 7));
}

function last(id: string): { preferred: number; hard: number } {
  const found = vegetableById(id).lastSowWeeks;
  if (found === undefined) throw new Error(`${id} has no last sowing`);
  return found;
}

describe('the vegetables', () => {
  it('are sixty-two', () => {
    expect(vegetables).toHaveLength(62);
  });

  it('are found by id, and a name that is none is refused with one that is', () => {
    expect(vegetableById('kale').name).toBe('Kale');
    expect(() => vegetableById('kael')).toThrow(
      'No vegetable is called "kael" in the handbook. One that is: "tomato".',
    );
  });

  it('each have a first window of some kind', () => {
    expect(vegetables.filter((crop) => !crop.firstSowWeeks && !crop.autumnSetWeeks)).toEqual([]);
  });

  it('open every window before they close it', () => {
    for (const { id, firstSowWeeks, firstSetOutWeeks, autumnSetWeeks, lastSowWeeks } of vegetables) {
      for (const window of [firstSowWeeks, firstSetOutWeeks]) {
        if (window) expect(window.fromWeeks, id).toBeLessThanOrEqual(window.toWeeks);
      }
      if (autumnSetWeeks) expect(autumnSetWeeks.fromWeeks, id).toBeGreaterThan(autumnSetWeeks.toWeeks);
      if (lastSowWeeks) expect(lastSowWeeks.preferred, id).toBeGreaterThanOrEqual(lastSowWeeks.hard);
    }
  });

  it('keep the soil minimum under the optimum and the optimum under the maximum', () => {
    for (const { id, soilMinC = -9, soilPracticalC, soilOptimumC, soilMaxC } of vegetables) {
      const rising = [soilMinC, soilPracticalC, soilOptimumC, soilMaxC].filter((tempC) => tempC !== undefined);
      expect(rising, id).toEqual(rising.toSorted((a, b) => a - b));
    }
  });

  it('are hurt no earlier the hardier they are', () => {
    const coldest = {
      hardy: -3.9,
      'half-hardy': -2.2,
      tender: 0,
      'very-tender': 0,
    };
    for (const { id, frostClass, damageTempC } of vegetables) {
      expect(damageTempC, id).toBeGreaterThanOrEqual(coldest[frostClass]);
      expect(damageTempC, id).toBeLessThanOrEqual(0);
    }
  });

  it('give a set-out window only to kinds that are also sown in place', () => {
    const both = vegetables.filter((crop) => crop.firstSetOutWeeks !== undefined);
    expect(both.map((crop) => crop.id)).toEqual(['kale', 'collards', 'kohlrabi', 'onion-seed', 'chives']);
    expect(both.every((crop) => crop.establish === 'either')).toBe(true);
  });
});

describe('first sowings', () => {
  it('set hardy plants out four weeks before the last freeze at the earliest', () => {
    // Colorado State University: 2–4 weeks; at six weeks a night of 25 °F still came in 93 % of years at Milwaukee.
    const hardyPlants = vegetables.filter((crop) => crop.frostClass === 'hardy' && crop.establish === 'transplant');
    expect(hardyPlants.length).toBeGreaterThan(4);
    for (const { id, firstSowWeeks } of hardyPlants) {
      if (firstSowWeeks) expect(firstSowWeeks.fromWeeks, id).toBeGreaterThanOrEqual(-4);
    }
    expect(vegetableById('kale').firstSetOutWeeks?.fromWeeks).toBe(-4);
  });

  it('leave hardy seed six weeks', () => {
    // University of Illinois: 4–6 weeks before the last freeze.
    expect(vegetableById('spinach').firstSowWeeks?.fromWeeks).toBe(-6);
    expect(vegetableById('kale').firstSowWeeks?.fromWeeks).toBe(-6);
  });

  it('hold peas of Maine inside the hardy window', () => {
    // University of Maine: peas from 15 April; Bangor median last freeze 6 May.
    const { fromWeeks = 0, toWeeks = 0 } = vegetableById('pea').firstSowWeeks ?? {};
    const maine = daysBetween('2025-05-06', '2025-04-15') / 7;
    expect(maine).toBe(-3);
    expect(maine).toBeGreaterThanOrEqual(fromWeeks);
    expect(maine).toBeLessThanOrEqual(toWeeks);
  });

  it('start leeks indoors on 18 January in the test garden, not on the 4th', () => {
    const leek = vegetableById('leek');
    const out = addDays(LAST_FREEZE, 7 * (leek.firstSowWeeks?.fromWeeks ?? 0));
    expect(addDays(out, -7 * (leek.indoorWeeks?.high ?? 0))).toBe('2025-01-18');
  });

  it('keep very tender kinds back until two weeks after the last freeze where no record says better', () => {
    const veryTender = vegetables.filter((crop) => crop.frostClass === 'very-tender');
    expect(veryTender.map((crop) => crop.firstSowWeeks?.fromWeeks)).toEqual(veryTender.map(() => 2));
  });
});

describe('windows that a plain rule would put in the wrong season', () => {
  it.each([
    ['brussels-sprouts', '2025-05-20', '2025-06-10'],
    ['rutabaga', '2025-06-11', '2025-06-26'],
    ['winter-radish', '2025-07-13', '2025-07-27'],
    ['chinese-cabbage', '2025-06-19', '2025-07-03'],
    ['garlic', '2025-10-16', '2025-10-23'],
  ])('%s goes in from %s to %s in the test garden', (id, from, to) => {
    const { autumnSetWeeks, firstSowWeeks } = vegetableById(id);
    expect(beforeFirst(autumnSetWeeks?.fromWeeks ?? 0)).toBe(from);
    expect(beforeFirst(autumnSetWeeks?.toWeeks ?? 0)).toBe(to);
    expect(firstSowWeeks).toBeUndefined();
  });
});

describe('last sowings', () => {
  it.each([
    // University of Maine planting chart, latest dates in central Maine, against Bangor's median.
    ['snap-bean', '2025-07-15'],
    ['broccoli', '2025-08-01'],
    ['cabbage', '2025-08-01'],
    ['carrot', '2025-07-15'],
    ['cucumber', '2025-07-15'],
  ])('%s is sown by %s in central Maine', (id, day) => {
    expect(last(id).preferred).toBe(weeksBefore(day, BANGOR_FIRST));
  });

  it.each([
    // The reference read these from a newspaper's freeze dates before; corrected to NOAA's, in weeks.
    ['tomato', 15.1],
    ['pepper', 15.1],
    ['eggplant', 15.9],
    ['potato', 17.9],
    ['pole-bean', 15.9],
    ['pea', 11.6],
    ['sweet-corn', 13.6],
    ['summer-squash', 11.6],
    ['winter-squash', 16.6],
    ['pumpkin', 16.6],
  ])('%s goes in %d weeks before the first freeze at the latest', (id, weeks) => {
    expect(last(id).hard).toBe(weeks);
    expect(provenanceOf(vegetableById(id), 'lastSowWeeks')).toBe('derived');
  });

  it('has cabbage of the last day ripe as the first freeze comes', () => {
    const latest = beforeFirst(last('cabbage').hard);
    expect(latest).toBe('2025-07-23');
    const { low, high } = vegetableById('cabbage').maturityDays;
    expect([addDays(latest, low), addDays(latest, high)]).toEqual(['2025-09-26', '2025-10-16']);
  });

  it.each([
    // Iowa State University: last practical dates against Ames, 8 October.
    ['snap-bean', 9.7],
    ['swiss-chard', 9.7],
    ['carrot', 9.7],
  ])('%s may still go in on 1 August in central Iowa', (id, weeks) => {
    expect(weeksBefore('2025-08-01', AMES_FIRST)).toBe(weeks);
    expect(last(id).hard).toBe(weeks);
  });

  it.each([
    ['radish', 3.3],
    ['lettuce-leaf', 5.4],
    ['turnip', 4.4],
  ])('%s may follow until %d weeks before the first freeze, as in Iowa', (id, weeks) => {
    expect(last(id).hard).toBe(weeks);
  });

  it('stops muskmelon and watermelon earlier than the rule of thumb', () => {
    // Iowa: 20 June, early kinds; heat runs out before frost.
    expect(last('muskmelon')).toEqual({ preferred: 15.7, hard: 15.7 });
    expect(last('watermelon')).toEqual({ preferred: 15.7, hard: 15.7 });
  });

  it('stops parsnip on its own rule', () => {
    // (middle of 100–130 days + 14) ÷ 7; the root keeps in the ground, so two weeks more at the hard end.
    expect(last('parsnip')).toEqual({ preferred: 18.4, hard: 16.4 });
    expect(Math.round(((115 + 14) / 7) * 10) / 10).toBe(last('parsnip').preferred);
  });

  it('gives hardy kinds two weeks past the slow-autumn rule', () => {
    for (const id of ['kale', 'collards', 'spinach', 'arugula', 'leek', 'parsley']) {
      expect(last(id).preferred - last(id).hard, id).toBeCloseTo(2, 5);
      expect(provenanceOf(vegetableById(id), 'lastSowWeeks'), id).toBe('house default');
    }
  });

  it('gives tender kinds no day past their last', () => {
    const tender = vegetables.filter((crop) => crop.frostClass.endsWith('tender') && crop.lastSowWeeks);
    const later = tender.filter((crop) => crop.lastSowWeeks?.preferred !== crop.lastSowWeeks?.hard);
    // Snap bean alone has two published dates.
    expect(later.map((crop) => crop.id)).toEqual(['snap-bean']);
  });

  it('ends onions, shallot and lasting kinds with their first window', () => {
    for (const id of ['onion-seed', 'onion-sets', 'shallot', 'asparagus', 'rhubarb', 'chives']) {
      expect(vegetableById(id).lastSowWeeks, id).toBeUndefined();
    }
  });

  it('asks for early kinds only in the last three weeks of slow crops', () => {
    const slow = vegetables.filter((crop) => crop.earlyKindsOnlyWeeks === 3).map((crop) => crop.id);
    expect(slow.toSorted()).toEqual(
      ['celery', 'dry-bean', 'edamame', 'pumpkin', 'sweet-corn', 'sweet-potato', 'watermelon'].toSorted(),
    );
  });
});

describe('soil temperatures', () => {
  it.each([
    ['carrot', 4.4],
    ['parsley', 4.4],
    ['leek', 4.4],
    ['lettuce-leaf', 1.7],
    ['onion-seed', 1.7],
    ['spinach', 1.7],
    ['parsnip', 1.7],
    ['endive', 1.7],
    ['snap-bean', 15],
    ['cucumber', 15],
    ['pepper', 15],
    ['okra', 15],
    ['turnip', 8],
    ['pea', 4.4],
  ])('%s waits for %d °C', (id, tempC) => {
    expect(vegetableById(id).soilMinC).toBe(tempC);
  });

  it('sows nothing in frozen ground', () => {
    expect(vegetables.filter((crop) => crop.soilMinC !== undefined && crop.soilMinC <= 0)).toEqual([]);
  });

  it('holds lettuce, spinach and celery in hot soil', () => {
    expect(vegetableById('lettuce-head').soilMaxC).toBe(27);
    expect(vegetableById('spinach').soilMaxC).toBe(24);
    expect(vegetableById('celery').soilMaxC).toBe(21.1);
  });

  it('takes the pepper and melon optimum that the misprint hid', () => {
    expect(vegetableById('pepper').soilOptimumC).toBe(29.4);
    expect(vegetableById('muskmelon').soilOptimumC).toBe(29.4);
    expect(vegetableById('garlic').soilOptimumC).toBe(10);
  });
});

describe('frost', () => {
  it.each([
    // The warmer of the class value and the published band (PMC10202904, Table 2).
    ['potato', 0],
    ['pea', -2],
    ['asparagus', -2],
    ['broccoli', -2],
    ['cauliflower', -2],
    ['lettuce-leaf', -2],
    ['tomato', 0],
    ['cucumber', 0],
    ['cabbage', -3.9],
    ['carrot', -2.2],
  ])('%s is covered at %d °C', (id, tempC) => {
    expect(vegetableById(id).damageTempC).toBe(tempC);
  });
});

describe('rotation and feeding', () => {
  it('keeps clubroot out for seven years, white rot for twenty, wilt for four', () => {
    // University of Connecticut; University of California IPM.
    expect(vegetableById('radish')).toMatchObject({
      rotationYears: 3,
      rotationYearsIfDisease: 7,
    });
    expect(vegetableById('leek').rotationYearsIfDisease).toBe(20);
    expect(vegetableById('potato')).toMatchObject({
      rotationYears: 4,
      rotationYearsIfDisease: 4,
    });
  });

  it('leaves lasting kinds where they are', () => {
    const lasting = vegetables.filter((crop) => crop.rotationYears === 99).map((crop) => crop.id);
    expect(lasting.toSorted()).toEqual(['asparagus', 'chives', 'jerusalem-artichoke', 'rhubarb']);
  });

  it('feeds hungry crops 3 lb of nitrogen per 1000 sq ft, the others 2, light ones 1, legumes none', () => {
    // University of Maryland, 1 lb per 1000 sq ft = 48.8 kg/ha; the light rate is half the general one, ours.
    const expected = { high: 146, medium: 98, low: 49, 'legume-fixer': 0 };
    for (const { id, nitrogen, nitrogenKgPerHa } of vegetables) expect(nitrogenKgPerHa, id).toBe(expected[nitrogen]);
    expect(provenanceOf(vegetableById('carrot'), 'nitrogenKgPerHa')).toBe('house default');
    expect(originOf(vegetableById('tomato'), 'nitrogenKgPerHa')).toBe('veg:V10');
  });
});

describe('seed', () => {
  it('tells small seed from large', () => {
    const small = vegetables.filter((crop) => crop.smallSeed).map((crop) => crop.id);
    expect(small).toEqual(expect.arrayContaining(['carrot', 'parsnip', 'lettuce-leaf', 'radish', 'beet', 'spinach']));
    expect(small).not.toContain('snap-bean');
    expect(small).not.toContain('garlic');
  });

  it('knows the seed that maggots eat in fresh residue', () => {
    // University of Delaware: peas, beans, spinach, melons, cole crops, sweet corn.
    for (const id of ['pea', 'snap-bean', 'spinach', 'muskmelon', 'cabbage', 'sweet-corn']) {
      expect(vegetableById(id).seedcornMaggot, id).toBe(true);
    }
    expect(vegetableById('carrot').seedcornMaggot).toBeUndefined();
  });
});

describe('warnings', () => {
  it.each([
    ['rhubarb', /leaf blades are poisonous/],
    ['rhubarb', /limp stalks/],
    ['potato', /Green or sprouted tubers are poisonous/],
    ['dry-bean', /raw or half-cooked/],
    ['fava-bean', /G6PD/],
    ['parsnip', /sap blisters skin/],
  ])('%s carries its warning', (id, words) => {
    expect(
      vegetableById(id)
        .cautions.map(({ text }) => text)
        .join(' '),
    ).toMatch(words);
  });
});
