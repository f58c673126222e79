import { describe, expect, it } from 'vitest';
import type { Climate } from '../../../src/climate/climate.ts';
import type { Garden, SoilTest } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import { nitrogenLedgers } from '../../../src/practices/catalogue.ts';
import type { BedLedger } from '../../../src/practices/fertility/ledger.ts';
import { cropsShort, waysToBring } from '../../../src/practices/fertility/what-to-strew.ts';
import { bed, cover, frostDates, garden, inputOf, milwaukee, setOut, sown } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const half = { topdressing: { depthMm: 13, season: 'autumn' } } as const;

function ledgerOf(garden: Garden, season = 2027, at: Climate = climate, today: Day = garden.startedOn): BedLedger {
  const [ledger] = nitrogenLedgers(inputOf(garden, at, today), [season]);
  if (ledger === undefined) throw new Error('The bed has no crop in that season.');
  return ledger;
}

const lineOf = (ledger: BedLedger, rule: string) =>
  ledger.lines.find(({ reason }) => reason.rule === `ledger.${rule}`)?.gPerM2;
const tested = (organicMatterPercent: number, on: Day = '2026-10-01'): SoilTest[] => [{ on, organicMatterPercent }];

describe('the nitrogen of a bed in a season', () => {
  it('is enough where soil and compost give what the crop wants by the usual figures', () => {
    const plantings = [setOut('cabbage', '2027-05-01')];
    const ledger = ledgerOf(garden({ ...half, soilTests: tested(5), plantings }));
    // 5 × 1.12 = 5.6; 13 mm × 650 × 0.55 × 0.015 × 0.1 = 7.0; 9.8 wanted.
    expect(ledger.worst.balance.usual).toBeCloseTo(5.6 + 6.97 - 9.8, 1);
    expect(ledger.band).toBe('enough');
  });

  it('is low where only the best figures reach, and short where not even they do', () => {
    const plantings = [setOut('tomato', '2027-05-25')];
    const rich = ledgerOf(garden({ ...half, soilTests: tested(5), plantings }));
    expect([rich.band, rich.worst.balance.usual < 0, rich.worst.balance.high >= 0]).toEqual(['low', true, true]);
    expect(ledgerOf(garden({ ...half, soilTests: tested(1), plantings })).band).toBe('short');
  });

  it('asks nothing for peas and beans, which leave a little to what follows', () => {
    const pea = sown('pea', '2027-04-15', { harvested: '2027-07-01' });
    const alone = ledgerOf(garden({ ...half, plantings: [pea] }));
    expect([alone.band, alone.lines[0]?.gPerM2.usual]).toEqual(['enough', 0]);
    const followed = ledgerOf(garden({ ...half, plantings: [pea, setOut('kale', '2027-07-10')] }));
    expect(lineOf(followed, 'pulse')).toMatchObject({ low: 2.2, high: 4.5 });
  });

  it('holds each crop against its own ground: a neighbour that wants nothing does not feed it', () => {
    const side = [
      { ...setOut('tomato', '2027-05-25'), areaM2: 1 },
      { ...sown('snap-bean', '2027-05-25'), areaM2: 2 },
    ];
    const alone = ledgerOf(garden({ ...half, plantings: [setOut('tomato', '2027-05-25')] }));
    const beside = ledgerOf(garden({ ...half, plantings: side }));
    expect(beside.worst.balance).toEqual(alone.worst.balance);
    const [all, third] = [alone, beside].map((each) => cropsShort(each)[0]?.nitrogenG ?? 0);
    expect(third).toBeCloseTo((all ?? 0) / 3, 6);
  });

  it('counts the roots of peas once, on the ground where they grew', () => {
    const pea = sown('pea', '2027-04-15', { harvested: '2027-07-01' });
    const after = ['tomato', 'pepper', 'eggplant'].map((id) => ({ ...setOut(id, '2027-07-10'), areaM2: 1 }));
    const pulses = (peas: typeof pea) =>
      ledgerOf(garden({ ...half, plantings: [peas, ...after] })).lines.filter(
        ({ reason }) => reason.rule === 'ledger.pulse',
      );
    expect(pulses(pea).map(({ gPerM2 }) => gPerM2.low)).toEqual([2.2]);
    expect(pulses({ ...pea, areaM2: 0.3 })[0]?.gPerM2.low).toBeCloseTo(0.22, 6);
  });

  it('counts a lasting crop on a share while others stand beside it', () => {
    const plantings = [
      { ...setOut('rhubarb', '2024-05-01'), areaM2: 1 },
      { ...setOut('lettuce-head', '2027-04-25'), areaM2: 1.5 },
    ];
    const { crops } = ledgerOf(garden({ ...half, plantings }));
    expect(crops.map(({ crop }) => crop.id)).toEqual(['rhubarb', 'lettuce-head']);
  });

  it('of a new bed goes by no test of the garden, and by no layer in its first season', () => {
    const bedNew = bed('a', { plannedFor: '2027-04-25', depthM: 0.3 });
    const plantings = [setOut('tomato', '2027-05-25')];
    const ledger = ledgerOf(garden({ ...half, beds: [bedNew], soilTests: tested(6), plantings }));
    expect(ledger.lines.map(({ reason }) => reason.rule)).toEqual(['ledger.wants', 'ledger.soil-untested']);
  });

  it('counts a layer with manure in it for more, and old layers for a few percent until a test has counted them', () => {
    const pile = {
      id: 'p',
      binId: 'bin',
      built: { day: '2026-05-01', happened: true },
      method: 'hot',
      readings: [],
      turns: [],
      ingredients: [{ materialId: 'horse_manure_bedded', litres: 400 }],
    } as const;
    const on = (day: Day, pileIds: string[] = []) => ({
      bedId: 'a',
      on: day,
      litres: 39,
      ...(pileIds.length > 0 ? { pileIds } : {}),
    });
    const plantings = [setOut('tomato', '2027-05-25')];
    const spread = ledgerOf(garden({ plantings, piles: [pile], topdressed: [on('2026-10-10', ['p'])] }));
    expect(lineOf(spread, 'compost-with-manure')?.usual).toBeCloseTo(
      1.5 * (lineOf(ledgerOf(garden({ ...half, plantings })), 'compost')?.usual ?? 0),
      5,
    );
    const years = [on('2024-10-10'), on('2025-10-10'), on('2026-10-10')];
    // Two layers of 13 mm hold 139 g/m²; three percent of it is 4.2.
    expect(lineOf(ledgerOf(garden({ plantings, topdressed: years })), 'compost-before')?.usual).toBeCloseTo(4.2, 1);
    expect(
      lineOf(ledgerOf(garden({ plantings, topdressed: years, soilTests: tested(3) })), 'compost-before'),
    ).toBeUndefined();
  });

  it('counts the seasons of the south from July to June', () => {
    const south = frostDates('10-05', '04-20', -43);
    const plantings = [setOut('tomato', '2027-11-20')];
    const topdressed = [{ bedId: 'a', on: '2027-04-01', litres: 39 }];
    const ledger = ledgerOf(garden({ startedOn: '2027-07-02', plantings, topdressed }), 2027, south);
    expect([ledger.season, lineOf(ledger, 'compost')?.usual.toFixed(1)]).toEqual([2027, '7.0']);
  });
});

describe('a cover in the ledger', () => {
  const tomato = setOut('tomato', '2027-05-30');
  const with_ = (stand: ReturnType<typeof cover>, plantings = [tomato]) =>
    ledgerOf(garden({ ...half, startedOn: '2027-05-29', stands: [stand], plantings }), 2027, milwaukee);

  it('of vetch gives some grams, never more than the published hundred pounds an acre', () => {
    const vetch = lineOf(with_(cover('hairy_vetch', '2026-08-20', { cutOn: '2027-05-20' })), 'cover');
    expect(vetch?.low).toBeGreaterThan(0.5);
    expect(vetch?.high).toBeLessThanOrEqual(11.2);
  });

  it('of rye cut leafy gives next to nothing, and left to flower takes some', () => {
    const leafy = with_(cover('cereal_rye', '2026-09-10', { cutOn: '2027-04-20' }));
    const flowering = with_(
      cover('cereal_rye', '2026-09-10', {
        cutOn: '2027-05-28',
        seen: [{ coverId: 'cereal_rye', on: '2027-05-27', stage: 'in-bloom' }],
      }),
    );
    expect(Math.abs(leafy.lines.find(({ of }) => of.includes('rye'))?.gPerM2.usual ?? 0)).toBeLessThan(2.5);
    const taken = lineOf(flowering, 'cover-ties-up');
    expect(taken?.low).toBeLessThan(0);
    expect(taken?.low).toBeGreaterThanOrEqual(-5.6);
  });

  it('feeds the next crop alone, once, and not one that goes in long after', () => {
    const buckwheat = cover('hairy_vetch', '2026-08-20', { cutOn: '2027-05-20' });
    const late = [setOut('kale', '2027-08-25')];
    expect(with_(buckwheat, late).lines.some(({ reason }) => reason.rule.startsWith('ledger.cover'))).toBe(false);
    const two = [tomato, setOut('broccoli', '2028-05-10')];
    const next = garden({ ...half, startedOn: '2027-05-29', stands: [buckwheat], plantings: two });
    const lines = nitrogenLedgers(inputOf(next, milwaukee, '2027-05-29'), [2027, 2028]).map(
      (ledger) => ledger.lines.filter(({ reason }) => reason.rule.startsWith('ledger.cover')).length,
    );
    expect(lines).toEqual([1, 0]);
  });

  it('cut in summer is spent by the next spring, and what grew after it has taken it up', () => {
    const summer = cover('hairy_vetch', '2026-04-20', { cutOn: '2026-08-10' });
    expect(with_(summer).lines.some(({ reason }) => reason.rule.startsWith('ledger.cover'))).toBe(false);
  });

  it('killed by winter still feeds the crop of spring: nothing rots in frozen soil', () => {
    const dead = cover('field_pea', '2026-08-20', { deadOn: '2027-03-20' });
    const spring = with_(dead, [setOut('broccoli', '2027-05-01')]);
    expect(lineOf(spring, 'cover')?.high).toBeGreaterThan(0.5);
  });

  it('of clover that has stood a year and more is a sod', () => {
    const sod = with_(cover('red_clover', '2025-08-10', { cutOn: '2027-05-10' }));
    expect(lineOf(sod, 'sod')?.usual).toBe(11.2);
  });
});

describe('what is strewn where a bed falls short', () => {
  const poor = garden({ topdressing: { depthMm: 6, season: 'autumn' }, plantings: [setOut('tomato', '2027-05-25')] });

  it('is one of several organic fertilisers, each by its analysis', () => {
    const [short] = cropsShort(ledgerOf(poor));
    const ways = waysToBring({ garden: poor }, 'a', short?.nitrogenG ?? 0);
    // 27.4 g of nitrogen: over 0.12, 0.06 and 0.025.
    const grams = (name: string) => ways.find(({ fertiliser }) => fertiliser.name === name)?.grams;
    expect(['blood meal', 'cottonseed meal', 'alfalfa meal'].map(grams)).toEqual([230, 460, 1100]);
  });

  it('brings no phosphate where the soil is very high in phosphorus', () => {
    const rich = { ...poor, soilTests: [{ on: '2026-10-01', phosphorusPpm: 27 }] };
    const ways = waysToBring({ garden: rich }, 'a', 27);
    expect(ways.map(({ fertiliser }) => fertiliser.phosphate)).toEqual(ways.map(() => 0));
    expect(ways.length).toBeGreaterThan(1);
  });
});
