import { describe, expect, it } from 'vitest';
import type { BedFed, Garden } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import { nitrogenLedgers } from '../../../src/practices/catalogue.ts';
import type { BedLedger } from '../../../src/practices/fertility/ledger.ts';
import { draftsIn, frostDates, garden, inputOf, setOut, sown } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const thin = { topdressing: { depthMm: 6, season: 'autumn' } } as const;

const of = (parts: Parameters<typeof garden>[0] = {}): Garden =>
  garden({ ...thin, plantings: [setOut('tomato', '2027-05-25')], ...parts });
const strewn = (parts: Partial<BedFed> = {}): BedFed => ({
  bedId: 'a',
  on: '2027-05-25',
  fertiliserId: 'blood_meal',
  grams: 230,
  plantingId: 'tomato-2027-05-25',
  ...parts,
});
const ledger = (g: Garden, season = 2027): BedLedger => {
  const [found] = nitrogenLedgers(inputOf(g, climate), [season]);
  if (found === undefined) throw new Error('no ledger');
  return found;
};
const fedLine = (g: Garden, season?: number) =>
  ledger(g, season).lines.find(({ reason }) => reason.rule === 'ledger.fed');

describe('a meal that was strewn', () => {
  it('is a line of the ledger: 230 g of 12-0-0 on 3 m² are 9.2 g/m², three quarters of it free in the season', () => {
    const line = fedLine(of({ fed: [strewn()] }));
    expect(line?.of).toBe('blood meal strewn for the tomato');
    expect(line?.gPerM2.usual).toBeCloseTo(9.2, 6);
    expect(line?.gPerM2.low).toBeCloseTo(6.9, 6);
    expect(line?.reason.source).toBe('veg:V10');
  });

  it('strewn as it was asked for, leaves the crop with enough', () => {
    expect(ledger(of()).band).toBe('short');
    expect(ledger(of({ fed: [strewn()] })).band).toBe('enough');
    expect(draftsIn(of({ fed: [strewn()] }), climate).filter(({ kind }) => kind === 'feed-crop')).toEqual([]);
  });

  it('strewn too thin, counts for what it was', () => {
    expect(ledger(of({ fed: [strewn({ grams: 60 })] })).band).toBe('short');
  });

  it('of plants comes more slowly: of alfalfa meal a good fifth in the season', () => {
    const line = fedLine(of({ fed: [strewn({ fertiliserId: 'alfalfa_meal', grams: 1100 })] }));
    expect((line?.gPerM2.low ?? 0) / (line?.gPerM2.usual ?? 1)).toBeCloseTo(0.225, 6);
  });

  it('on half a bed feeds that half twice as well, and not the crop beside it', () => {
    const beside = [setOut('tomato', '2027-05-25', { areaM2: 1.5 }), setOut('pepper', '2027-05-25', { areaM2: 1.5 })];
    const grounds = (fed: BedFed[]) =>
      Object.fromEntries(
        ledger(of({ plantings: beside, fed })).grounds.map(({ span, gives }) => [span.crop.id, gives.usual]),
      );
    const [bare, fed] = [grounds([]), grounds([strewn({ grams: 100 })])];
    expect((fed.tomato ?? 0) - (bare.tomato ?? 0)).toBeCloseTo(8, 6);
    expect(fed.pepper).toBe(bare.pepper);
  });

  it('feeds what comes after on the same ground too, and so that is given less', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-04-20', { harvested: '2027-06-10' }),
      sown('beet', '2027-06-12', { harvested: '2027-09-10' }),
    ];
    const beet = (fed: BedFed[]) =>
      draftsIn(of({ plantings, fed }), climate).find(({ key }) => key === 'feed/planting:beet-2027-06-12')?.supplies[0]
        ?.amount?.value ?? 0;
    expect(beet([strewn({ plantingId: 'lettuce-leaf-2027-04-20', grams: 100 })])).toBeLessThan(beet([]));
  });

  it('counts in its crop’s season, for garlic the one after it was planted; for no crop, in the one it was strewn in', () => {
    const garlic = of({ plantings: [sown('garlic', '2026-10-20')] });
    const fed = [strewn({ plantingId: 'garlic-2026-10-20', on: '2027-04-10' })];
    expect(fedLine({ ...garlic, fed })?.of).toBe('blood meal strewn for the garlic');
    const { plantingId: _none, ...whole } = strewn({ on: '2027-12-31' });
    const two = of({ plantings: [setOut('tomato', '2027-05-25'), setOut('cabbage', '2028-04-25')], fed: [whole] });
    expect([fedLine(two, 2027)?.of, fedLine(two, 2028)]).toEqual(['blood meal strewn', undefined]);
  });

  it('for a crop that lasts counts in the season it was strewn in, not in that of the planting', () => {
    const chives = of({ plantings: [setOut('chives', '2024-05-10')] });
    const fed = [strewn({ plantingId: 'chives-2024-05-10', on: '2027-04-20' })];
    expect([2024, 2026, 2027].map((season) => fedLine({ ...chives, fed }, season)?.of)).toEqual([
      undefined,
      undefined,
      'blood meal strewn for the chives',
    ]);
  });

  it('for a crop that lasts counts in the season of its day in the south, over New Year', () => {
    const south = { ...climate, seasonTurn: '07-01' } as typeof climate;
    const rhubarb = of({ plantings: [setOut('rhubarb', '2024-09-10')] });
    const fed = (on: Day) => ({ ...rhubarb, fed: [strewn({ plantingId: 'rhubarb-2024-09-10', on })] });
    const seasons = (on: Day) =>
      nitrogenLedgers(inputOf(fed(on), south), [2024, 2026, 2027]).map(({ lines }) =>
        lines.some(({ reason }) => reason.rule === 'ledger.fed'),
      );
    expect(seasons('2027-01-05')).toEqual([false, true, false]);
    expect(seasons('2027-08-20')).toEqual([false, false, true]);
  });
});

describe('bone meal strewn', () => {
  it('brings a little nitrogen of its own: 2 percent of 140 g, of which a seventh is free in the season', () => {
    const { plantingId: _none, ...whole } = strewn({ fertiliserId: 'bone_meal', grams: 140 });
    const line = fedLine(of({ fed: [whole] }));
    expect(line?.gPerM2.usual).toBeCloseTo((140 * 0.02) / 3, 6);
    expect((line?.gPerM2.low ?? 0) / (line?.gPerM2.usual ?? 1)).toBeCloseTo(0.15, 6);
  });
});
