import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { yardSheet } from '../../../src/digest/yard-sheet.ts';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, latestOf } from '../../../src/measures/days.ts';
import { readableIn } from '../../../src/measures/quantity.ts';
import { compostBalance } from '../../../src/practices/catalogue.ts';
import { CURING_DAYS, HOT_DAYS, startBy } from '../../../src/practices/composting/pile-life.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { runs } from '../../runs.ts';
import { anyCase, inputIn } from '../any-garden.ts';
import { bed, draft, draftsIn, frostDates, garden, milwaukee, pile } from '../gardens.ts';

const FOUR_BEDS = ['a', 'b', 'c', 'd'].map((id) => bed(id));
const autumn = { topdressing: { depthMm: 20, season: 'autumn' } } as const;
/** Four beds of 3 m² at 20 mm want 240 L; a pile of 500 L gives 200 L. */
const short = (parts: Partial<Garden> = {}) =>
  garden({
    startedOn: '2027-03-01',
    beds: FOUR_BEDS,
    ...autumn,
    piles: [pile('2026-05-01', { ingredients: [{ materialId: 'leaves_dry_loose', litres: 500 }] })].map((row) => ({
      ...row,
      finishedOn: '2027-02-01',
    })),
    ...parts,
  });
const balanceIn = (of: Garden, climate = milwaukee, today = of.startedOn) =>
  compostBalance({ garden: of, climate, today });
const told = (texts: readonly string[]) => texts.map((text) => readableIn('metric', text)).join(' ');

describe('a pile in the yard and four beds to dress', () => {
  it('three beds are served whole, the fourth in part, and 40 L are short', () => {
    const { beds, heaps, shortfalls } = balanceIn(short());
    const first = beds.filter(({ season }) => season === 2028);
    expect(first.map(({ litres, given }) => [litres, given])).toEqual([
      [60, 60],
      [60, 60],
      [60, 60],
      [60, 20],
    ]);
    expect(heaps).toEqual([{ what: 'pile', of: 'p', ready: '2027-02-01', litres: 200, proven: true }]);
    expect(shortfalls[0]).toMatchObject({ season: 2028, litres: 40 });
  });

  it('the ways out: thinner on the bed that goes short, a pile by a day, or bags with their weight', () => {
    const [shortfall] = balanceIn(short()).shortfalls;
    expect(shortfall?.waysOut.thinner).toEqual([{ bedName: 'Bed D', depthMm: 6, insteadMm: 20 }]);
    expect(shortfall?.waysOut.evenPercent).toBe(83);
    // A bag of 40 L; 650 kg/m³.
    expect(shortfall?.waysOut.buy).toMatchObject({ bags: 1, bagLitres: 40, kg: 26 });
    // 40 L would need 100 L of raw stuff, but less than 3 × 3 × 3 ft (765 L) does not heat.
    expect(shortfall?.waysOut.pile?.litres).toBe(800);
  });

  it('a pile planned in time closes the gap, and the beds wait for it', () => {
    const { beds, shortfalls } = balanceIn(
      short({ piles: [pile('2027-04-20', { ingredients: [{ materialId: 'leaves_dry_loose', litres: 800 }] })] }),
    );
    expect(beds.filter(({ season }) => season === 2028).every(({ litres, given }) => given === litres)).toBe(true);
    expect(shortfalls.map(({ season }) => season)).not.toContain(2028);
  });

  it('what is bought is bags of a cubic foot where feet are read, or yards with what a seller may ask', () => {
    const us = balanceIn(short({ place: { ...short().place, units: 'us' }, piles: [] })).shortfalls[0];
    expect(us?.waysOut.buy.bags).toBe(9);
    const words = told(
      yardSheet(balanceIn(short({ piles: [], beds: FOUR_BEDS.map((row) => ({ ...row, lengthM: 20 })) })), '2027-03-01')
        .shortfalls[0]?.lines ?? [],
    );
    expect(words).toMatch(/Loose it is 2\.6 cubic yards/);
    expect(words).toMatch(/tarp/);
    expect(words).toMatch(/jumping worms/);
    expect(words).toMatch(/Go and look before you pay/);
  });
});

describe('a season that goes hardly short', () => {
  const holding = (finishedLitres: number, parts: Partial<Garden> = {}) =>
    short({ piles: [{ ...pile('2026-05-01'), finishedOn: '2027-02-01', finishedLitres }], ...parts });
  const season = (of: Garden) => balanceIn(of).beds.filter((row) => row.season === 2028);

  it('is spread a touch thinner on every bed, and nothing is ordered', () => {
    // 240 L wanted, 225 there: each bed of 60 L gets 225/240 of it.
    expect(season(holding(225)).map(({ litres, given }) => [litres, given])).toEqual(Array(4).fill([56, 56]));
    const drafts = draftsIn(holding(225), milwaukee);
    expect(drafts.some(({ key }) => key === 'compost-order/garden/2028')).toBe(false);
    const layer = draft(drafts, 'topdress/bed:a/2028');
    expect(layer.steps[0]).toContain('⟦56 L⟧ of finished compost over the bed, ⟦18.7 mm⟧ deep');
    const told = layer.reasons.find(({ rule }) => rule === 'topdress.thinner');
    expect(told && reasonSentence(told)).toContain('lack only ⟦15 L⟧ in all, too little to order');
    const { thinned, shortfalls } = yardSheet(balanceIn(holding(225)), '2027-03-01');
    expect(thinned[0]).toContain('every bed is given 93 % of its layer');
    expect(shortfalls.filter((row) => row.season === 2028)).toEqual([]);
  });

  it('up to a tenth of what is wanted; more is ordered', () => {
    expect([season(holding(216)), season(holding(215))].map(([row]) => row?.thinner !== undefined)).toEqual([
      true,
      false,
    ]);
    expect(balanceIn(holding(215)).shortfalls.some((row) => row.season === 2028)).toBe(true);
  });

  it('and never for a bag or more, however large the garden: 40 L, or a cubic foot', () => {
    const long = FOUR_BEDS.map((row) => ({ ...row, lengthM: 25 }));
    // 2400 L wanted.
    expect(season(holding(2361, { beds: long }))[0]?.thinner).toBeDefined();
    expect(season(holding(2360, { beds: long }))[0]?.thinner).toBeUndefined();
    const us = { beds: long, place: { ...short().place, units: 'us' as const } };
    expect(season(holding(2361, us))[0]?.thinner).toBeUndefined();
  });

  it('gives never more than there is, and is never thinned and short at once', () => {
    fc.assert(
      fc.property(fc.integer({ min: 200, max: 260 }), (litres) => {
        const { beds, shortfalls } = balanceIn(holding(litres));
        const given = beds.filter((row) => row.season === 2028);
        expect(given.reduce((sum, row) => sum + row.given, 0)).toBeLessThanOrEqual(litres);
        const thin = given.some(({ thinner }) => thinner !== undefined);
        if (thin) expect(given.every((row) => row.given >= row.litres)).toBe(true);
        expect(thin && shortfalls.some((row) => row.season === 2028)).toBe(false);
      }),
      { numRuns: runs(10, 61) },
    );
  });
});

describe('a pile to begin', () => {
  it('is asked for in May for October’s layers (Texas 120 days, Utah four weeks of curing)', () => {
    const task = draft(draftsIn(short({ piles: [] }), milwaukee), 'compost-begin/garden/2028');
    const first = balanceIn(short({ piles: [] })).shortfalls[0];
    expect(task.window.latest).toBe(startBy(milwaukee, first?.by ?? ''));
    expect(task.window.latest.slice(0, 7)).toMatch(/2027-0[56]/);
    expect(task.steps.join(' ')).toContain('browns');
  });

  it('begun on the last day it is just in time, a day later it is not', () => {
    const ready = '2027-10-20';
    const last = startBy(milwaukee, ready) ?? '';
    // All of summer is warm enough to work in Milwaukee.
    expect(last).toBe(addDays(ready, -HOT_DAYS.high - CURING_DAYS.high));
    const early = startBy(milwaukee, '2027-06-01') ?? '';
    expect(early < '2026-09-01').toBe(true);
  });

  it('is not asked for where nothing is short, nor without a bin', () => {
    const enough = short({ piles: [{ ...pile('2026-05-01'), finishedOn: '2027-02-01', finishedLitres: 5000 }] });
    const noBin = short({ piles: [], bins: [] });
    for (const of of [enough, noBin]) expect(draftsIn(of).filter(({ kind }) => kind === 'begin-pile')).toEqual([]);
  });
});

describe('the yard by month', () => {
  it('adds up: what is wanted is given or short, and what is left is what was ready less what was given', () => {
    const { months, beds } = yardSheet(balanceIn(short()), '2027-03-01');
    expect(months).toHaveLength(13);
    expect(months[0]).toMatchObject({ from: '2027-03-01', ready: 200, left: 200 });
    const total = (of: 'wanted' | 'given' | 'short') => months.reduce((sum, month) => sum + month[of], 0);
    expect(total('wanted')).toBe(beds.reduce((sum, { litres }) => sum + litres, 0));
    expect(total('given') + total('short')).toBeCloseTo(total('wanted'), 6);
    expect(months.at(-1)?.left).toBeCloseTo(200 - total('given'), 6);
  });

  it('runs over New Year, in the south and over 29 February', () => {
    const south = garden({
      startedOn: '2027-11-01',
      place: { latitude: -43 },
      beds: FOUR_BEDS,
      ...autumn,
      piles: [pile('2027-11-05')],
    });
    const { months } = yardSheet(balanceIn(south, frostDates('11-01', '04-10', -43)), '2027-11-01');
    expect(months.slice(0, 5).map(({ from }) => from)).toEqual([
      '2027-11-01',
      '2027-12-01',
      '2028-01-01',
      '2028-02-01',
      '2028-03-01',
    ]);
  });

  it('says of a bed very rich in phosphorus why it gets none', () => {
    const { topdressing: _, ...rest } = short({ soilTests: [{ on: '2026-10-01', bedId: 'a', phosphorusPpm: 40 }] });
    expect(yardSheet(balanceIn(rest), '2027-03-01').spared.join(' ')).toMatch(/Bed A gets none: .* 40 ppm/);
  });
});

describe('in any garden', () => {
  it('supply never exceeds what the piles can give, on any day', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const { garden: of, climate, today } = inputIn(each);
        const { beds, heaps } = compostBalance({ garden: of, climate, today });
        for (const { window } of beds) {
          const day = latestOf(window.latest, today);
          const drawn = beds.flatMap((bed) => bed.drawn).filter(({ ready }) => ready <= day);
          const there = heaps.filter(({ ready }) => ready <= day).reduce((sum, { litres }) => sum + litres, 0);
          expect(drawn.reduce((sum, { litres }) => sum + litres, 0)).toBeLessThanOrEqual(there + 1e-6);
        }
        const raw = of.piles.reduce(
          (sum, row) => sum + row.ingredients.reduce((all, { litres }) => all + litres, 0),
          0,
        );
        const measured = of.piles.reduce((sum, { finishedLitres = 0 }) => sum + finishedLitres, 0);
        const made = heaps.filter(({ what }) => what === 'pile').reduce((sum, { litres }) => sum + litres, 0);
        expect(made).toBeLessThanOrEqual(0.4 * raw + measured + of.piles.length);
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('nothing is given before it is ready, nor more than is wanted', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const { garden: of, climate, today } = inputIn(each);
        for (const { window, given, litres, drawn } of compostBalance({ garden: of, climate, today }).beds) {
          expect(given).toBeLessThanOrEqual(litres + 1e-6);
          for (const { ready } of drawn) expect(ready <= latestOf(window.latest, today)).toBe(true);
        }
      }),
      { numRuns: runs(20, 300) },
    );
  });

  it('no month ends with less than nothing left', () => {
    fc.assert(
      fc.property(anyCase, (each) => {
        const { garden: of, climate, today } = inputIn(each);
        for (const { left, short: lacking } of yardSheet(compostBalance({ garden: of, climate, today }), today)
          .months) {
          expect(left).toBeGreaterThanOrEqual(-1e-6);
          expect(lacking).toBeGreaterThanOrEqual(-1e-6);
        }
      }),
      { numRuns: runs(20, 300) },
    );
  });
});
