import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { BARROW_KG, barrowLoads } from '../../../src/practices/topdressing/barrow.ts';
import type { BedNeed } from '../../../src/practices/topdressing/need.ts';
import { shareOut } from '../../../src/practices/topdressing/stock.ts';
import { bed, draft, draftsIn, frostDates, garden, pile } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const NOTHING = { topdressed: [], compostBought: [] };

function need(id: string, litres: number, latest: Day, parts: Partial<BedNeed> = {}): BedNeed {
  return {
    bed: bed(id),
    season: 2028,
    litres,
    skipped: false,
    key: `topdress/bed:${id}/2028`,
    half: 'autumn',
    window: { earliest: addDays(latest, -30), preferred: addDays(latest, -30), latest },
    after: [],
    reasons: [],
    ...parts,
  };
}

const heap = (pileId: string, litres: number, ready: Day, finished = true) => ({ pileId, litres, ready, finished });
const given = (shares: ReturnType<typeof shareOut>) => shares.map(({ fromBins }) => fromBins);

describe('compost shared out', () => {
  it('serves beds in the order they want it until it is gone', () => {
    const needs = [need('a', 40, '2027-10-01'), need('b', 40, '2027-10-02'), need('c', 40, '2027-10-03')];
    expect(given(shareOut(NOTHING, [heap('p', 100, '2027-04-01')], needs))).toEqual([40, 40, 20]);
  });

  it('counts a heap only for windows that close after it is ready, and opens those no earlier', () => {
    const needs = [need('a', 40, '2027-09-01'), need('b', 40, '2027-10-20')];
    const shares = shareOut(NOTHING, [heap('p', 100, '2027-10-05', false)], needs);
    expect(given(shares)).toEqual([0, 40]);
    expect(shares[1]?.window).toEqual({ earliest: '2027-10-05', preferred: '2027-10-05', latest: '2027-10-20' });
    expect(shares[0]?.window).toEqual(needs[0]?.window);
  });

  it('waits for the look at compost nobody has yet found ready', () => {
    const shares = shareOut(
      NOTHING,
      [heap('p', 30, '2027-08-01', false), heap('q', 30, '2027-08-02')],
      [need('a', 40, '2027-10-01')],
    );
    expect(shares[0]?.unproven).toEqual(['pile-maturity/pile:p']);
  });

  it('is less by what was spread since it was ready, and not by what was spread before', () => {
    const spread = (on: Day) => ({ ...NOTHING, topdressed: [{ bedId: 'z', on, litres: 70 }] });
    const needs = [need('a', 100, '2027-10-01')];
    expect(given(shareOut(spread('2027-05-01'), [heap('p', 100, '2027-04-01')], needs))).toEqual([30]);
    expect(given(shareOut(spread('2027-03-01'), [heap('p', 100, '2027-04-01')], needs))).toEqual([100]);
  });

  it('never falls below nothing, however much was spread', () => {
    const spread = { ...NOTHING, topdressed: [{ bedId: 'z', on: '2027-05-01', litres: 900 }] };
    expect(given(shareOut(spread, [heap('p', 100, '2027-04-01')], [need('a', 40, '2027-10-01')]))).toEqual([0]);
  });

  it('counts what was bought', () => {
    const bought = { ...NOTHING, compostBought: [{ on: '2027-08-01', litres: 25 }] };
    expect(given(shareOut(bought, [], [need('a', 40, '2027-10-01')]))).toEqual([25]);
  });

  it('gives nothing to a bed that was skipped, and its share to the next', () => {
    const needs = [need('a', 40, '2027-10-01', { skipped: true }), need('b', 40, '2027-10-02')];
    expect(given(shareOut(NOTHING, [heap('p', 40, '2027-04-01')], needs))).toEqual([0, 40]);
  });

  it('is not given twice where two seasons want it', () => {
    const needs = [need('a', 40, '2027-10-01'), need('a', 40, '2028-10-01', { season: 2029 })];
    expect(given(shareOut(NOTHING, [heap('p', 50, '2027-04-01')], needs))).toEqual([40, 10]);
  });
});

describe('barrow loads', () => {
  it.each([
    [10, 'half a barrow load'],
    [37.5, 'half a barrow load'],
    [38, '1 barrow load'],
    [75, '1 barrow load'],
    [76, '1.5 barrow loads'],
    [225, '3 barrow loads'],
  ])('%d L are %s', (litres, loads) => {
    expect(barrowLoads(litres)).toBe(loads);
  });

  it('weigh 49 kg: 75 L at 650 kg/m³ (compost:S59)', () => {
    expect(BARROW_KG).toBe(49);
  });
});

describe('the order for what is short', () => {
  const beds = [bed('a'), bed('b'), bed('c')];
  const habit = { topdressing: { depthMm: 20, season: 'autumn' } } as const;
  const of = (parts: Parameters<typeof garden>[0] = {}) =>
    garden({ ...habit, beds, startedOn: '2027-07-05', ...parts });
  const orders = (of: Garden, today?: Day) =>
    draftsIn(of, climate, today).filter(({ kind }) => kind === 'order-compost');

  it('is the sum of what the beds lack, rounded up to ten litres', () => {
    // Three beds of 3 m² under 20 mm want 180 L; a finished pile has 65.
    const short = of({ piles: [pile('2026-05-01', { finishedOn: '2027-06-01', finishedLitres: 65 })] });
    const order = orders(short)[0];
    expect(order?.supplies[0]).toEqual({
      what: 'compost to order',
      amount: { value: 120, unit: 'L' },
      also: '2 barrow loads',
    });
    expect(order?.reasons[0]?.saw).toMatchObject({ need: 180, have: 65, litres: 120 });
    expect(order?.makes).toEqual([{ makes: 'compost-bought', litres: 120 }]);
    expect(order?.cautions[0]).toContain('weedkiller');
  });

  it('comes five to eight weeks before the first bed that goes short, for the bean test', () => {
    const short = of();
    const first =
      draftsIn(short, climate)
        .filter(({ kind }) => kind === 'topdress')
        .map(({ window }) => window.latest)
        .sort()[0] ?? '';
    expect(orders(short)[0]?.window).toEqual({
      earliest: addDays(first, -56),
      preferred: addDays(first, -42),
      latest: addDays(first, -35),
    });
  });

  it('comes at once where that time is past when the garden is brought in', () => {
    const late = of({ startedOn: '2027-10-01' });
    expect(orders(late)[0]?.window).toEqual({ earliest: '2027-10-01', preferred: '2027-10-01', latest: '2027-10-08' });
  });

  it('is not made where there is enough, and is over once it is bought', () => {
    expect(orders(of({ piles: [pile('2026-05-01', { finishedOn: '2027-06-01', finishedLitres: 180 })] }))).toEqual([]);
    expect(orders(of({ compostBought: [{ on: '2027-07-06', litres: 180 }] }))).toEqual([]);
  });

  it('leaves out beds that were skipped', () => {
    const skipped = {
      'topdress/bed:a/2028/before-winter': '2027-07-06',
      'topdress/bed:b/2028/before-winter': '2027-07-06',
    };
    expect(orders(of({ skipped }))[0]?.reasons[0]?.saw.need).toBe(60);
    expect(draft(draftsIn(of({ skipped }), climate), 'topdress/bed:a/2028').key).toContain('before-winter');
  });

  it('stops counting a layer nobody spread two months after its window', () => {
    const one = garden({ ...habit, startedOn: '2027-07-05' });
    const latest = draft(draftsIn(one, climate), 'topdress/').window.latest;
    const wanted = (today: Day) =>
      draftsIn(one, climate, today).filter(({ key }) => key === 'topdress/bed:a/2028/before-winter');
    expect([wanted(addDays(latest, 60)).length, wanted(addDays(latest, 61)).length]).toEqual([1, 0]);
  });
});
