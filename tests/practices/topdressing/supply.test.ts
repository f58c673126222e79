import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day, latestOf } from '../../../src/measures/days.ts';
import { BARROW_KG, barrowLoads } from '../../../src/practices/barrow.ts';
import { boughtHeaps } from '../../../src/practices/topdressing/bought.ts';
import type { BedNeed } from '../../../src/practices/topdressing/need.ts';
import { shareOut, stockOnHand } from '../../../src/practices/topdressing/stock.ts';
import { bed, draft, draftsIn, frostDates, garden, pile } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');
const NOTHING = { topdressed: [] };
const TODAY = '2027-01-01';

function need(id: string, litres: number, latest: Day, parts: Partial<BedNeed> = {}): BedNeed {
  return {
    bed: bed(id),
    season: 2028,
    layer: { depthMm: 13, season: 'autumn', by: 'own' },
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
const made = (...heaps: ReturnType<typeof heap>[]) => ({ made: heaps, bought: [] });
const given = (shares: ReturnType<typeof shareOut>) => shares.map(({ fromBins }) => fromBins);

describe('compost shared out', () => {
  it('serves beds in the order they want it until it is gone', () => {
    const needs = [need('a', 40, '2027-10-01'), need('b', 40, '2027-10-02'), need('c', 40, '2027-10-03')];
    expect(given(shareOut(NOTHING, TODAY, made(heap('p', 100, '2027-04-01')), needs))).toEqual([40, 40, 20]);
  });

  it('counts a heap only for windows that close after it is ready, and opens those no earlier', () => {
    const needs = [need('a', 40, '2027-09-01'), need('b', 40, '2027-10-20')];
    const shares = shareOut(NOTHING, TODAY, made(heap('p', 100, '2027-10-05', false)), needs);
    expect(given(shares)).toEqual([0, 40]);
    expect(shares[1]?.window).toEqual({ earliest: '2027-10-05', preferred: '2027-10-05', latest: '2027-10-20' });
    expect(shares[0]?.window).toEqual(needs[0]?.window);
  });

  it('waits for the look at compost nobody has yet found ready', () => {
    const shares = shareOut(NOTHING, TODAY, made(heap('p', 30, '2027-08-01', false), heap('q', 30, '2027-08-02')), [
      need('a', 40, '2027-10-01'),
    ]);
    expect(shares[0]?.unproven).toEqual(['pile-maturity/pile:p']);
  });

  it('is less by what was spread since it was ready, and not by what was spread before', () => {
    const spread = (on: Day) => ({ topdressed: [{ bedId: 'z', on, litres: 70 }] });
    const needs = [need('a', 100, '2027-10-01')];
    expect(given(shareOut(spread('2027-05-01'), TODAY, made(heap('p', 100, '2027-04-01')), needs))).toEqual([30]);
    expect(given(shareOut(spread('2027-03-01'), TODAY, made(heap('p', 100, '2027-04-01')), needs))).toEqual([100]);
  });

  it('never falls below nothing, however much was spread', () => {
    const spread = { topdressed: [{ bedId: 'z', on: '2027-05-01', litres: 900 }] };
    expect(given(shareOut(spread, TODAY, made(heap('p', 100, '2027-04-01')), [need('a', 40, '2027-10-01')]))).toEqual([
      0,
    ]);
  });

  it('is used up where only the sweepings of a finished pile are left: less than 5 L', () => {
    const left = (litres: number) =>
      stockOnHand({ topdressed: [{ bedId: 'z', on: '2027-05-01', litres }] }, made(heap('p', 100, '2027-04-01')));
    expect([left(95).length, left(95.1).length, left(100).length]).toEqual([1, 0, 0]);
    const unproven = made(heap('p', 4, '2027-04-01', false));
    expect(stockOnHand(NOTHING, unproven)).toHaveLength(1);
  });

  it('gives nothing to a bed that was skipped, and its share to the next', () => {
    const needs = [need('a', 40, '2027-10-01', { skipped: true }), need('b', 40, '2027-10-02')];
    expect(given(shareOut(NOTHING, TODAY, made(heap('p', 40, '2027-04-01')), needs))).toEqual([0, 40]);
  });

  it('is not given twice where two seasons want it', () => {
    const needs = [need('a', 40, '2027-10-01'), need('a', 40, '2028-10-01', { season: 2029 })];
    expect(given(shareOut(NOTHING, TODAY, made(heap('p', 50, '2027-04-01')), needs))).toEqual([40, 10]);
  });
});

describe('barrow loads', () => {
  it.each([
    [0.1, 'half a barrow'],
    [10, 'half a barrow'],
    [37.5, 'half a barrow'],
    [38, '1 barrow load'],
    [75, '1 barrow load'],
    [76, '1 ½ barrow loads'],
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
    garden({ ...habit, beds, startedOn: '2027-07-05', place: { hardinessZone: '5b' }, ...parts });
  const orders = (of: Garden, today?: Day) =>
    draftsIn(of, climate, today).filter(({ key }) => key.startsWith('compost-order/garden/2028'));

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

  it('comes eight weeks before the first bed is best served, and five before its last day, for the bean test', () => {
    const short = of();
    const layers = draftsIn(short, climate).filter(({ kind }) => kind === 'topdress');
    const first = (days: (Day | undefined)[]) => days.sort()[0] ?? '';
    const best = first(layers.map(({ window }) => window.preferred));
    expect(orders(short)[0]?.window).toEqual({
      earliest: latestOf('2027-07-05', addDays(best, -56)),
      preferred: latestOf('2027-07-05', addDays(best, -42)),
      latest: addDays(first(layers.map(({ window }) => window.latest)), -35),
    });
  });

  it('is for the spring layers where its time for the autumn ones is past when the garden is brought in', () => {
    // October 1 and 35 days are November 5: past the last autumn day of every bed.
    const brought = of({ startedOn: '2027-10-01' });
    const layers = draftsIn(brought, climate).filter(({ key }) => /^topdress\/bed:.\/2028/.test(key));
    expect(layers.map(({ key }) => key)).toEqual(['a', 'b', 'c'].map((id) => `topdress/bed:${id}/2028`));
    const last = layers.map(({ window }) => window.latest).sort()[0] ?? '';
    expect(orders(brought)[0]?.window.latest).toBe(addDays(last, -35));
  });

  it('never stays open past the day the compost is wanted', () => {
    const brought = of({ startedOn: '2027-10-20' });
    const layers = draftsIn(brought, climate).filter(({ key }) => /^topdress\/bed:.\/2028/.test(key));
    const last =
      layers
        .map(({ window }) => window.latest)
        .sort()
        .at(-1) ?? '';
    expect(layers.length).toBeGreaterThan(0);
    expect(orders(brought)[0]?.window.latest).toSatisfy((latest: string) => latest <= last);
  });

  it('is not made where there is enough, and is over once enough is ordered or there', () => {
    expect(orders(of({ piles: [pile('2026-05-01', { finishedOn: '2027-06-01', finishedLitres: 180 })] }))).toEqual([]);
    expect(orders(of({ compostBought: [{ on: '2027-07-06', litres: 180 }] }))).toEqual([]);
    expect(orders(of({ compostBought: [{ on: '2027-07-06', litres: 180, ordered: true }] }))).toEqual([]);
  });

  it('is not made again while what was ordered too late is on its way', () => {
    const late = of({ startedOn: '2027-10-01', compostBought: [{ on: '2027-10-02', litres: 180, ordered: true }] });
    expect(orders(late)).toEqual([]);
  });

  it('is made again, under a key of its own, where less was ordered than is short', () => {
    const mark = { key: 'compost-order/garden/2028', on: '2027-07-06' } as Garden['done'][number];
    const less = of({ done: [mark], compostBought: [{ on: '2027-07-06', litres: 60, ordered: true }] });
    expect(orders(less).map(({ key, reasons }) => [key, reasons[0]?.saw.litres])).toEqual([
      ['compost-order/garden/2028/order:2', 120],
    ]);
  });

  it('holds the layers that hang on it until what came of it can be tested', () => {
    const drafts = draftsIn(of(), climate);
    for (const { after } of drafts.filter(({ kind }) => kind === 'topdress'))
      expect(after).toContainEqual({ key: 'compost-order/garden/2028', minDays: 35 });
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
    const mulches = [{ bedId: 'a', mulch: 'leaves' as const, from: '2027-07-05' }];
    const one = garden({ ...habit, startedOn: '2027-07-05', mulches });
    const latest = draft(draftsIn(one, climate), 'topdress/').window.latest;
    const wanted = (today: Day) =>
      draftsIn(one, climate, today).filter(({ key }) => key === 'topdress/bed:a/2028/before-winter');
    expect([wanted(addDays(latest, 60)).length, wanted(addDays(latest, 61)).length]).toEqual([1, 0]);
  });
});

describe('compost that was bought', () => {
  const heaps = (compostBought: Garden['compostBought']) =>
    boughtHeaps({ compostBought }, climate).map(({ litres, ready, unproven }) => [litres, ready, unproven]);
  const key = 'compost-test/garden/2028/bought:1';

  it('counts three weeks after it came, or five after it was ordered: two for delivery, three for beans', () => {
    expect(heaps([{ on: '2027-08-01', litres: 25 }])).toEqual([[25, '2027-08-22', key]]);
    expect(heaps([{ on: '2027-08-01', litres: 25, ordered: true }])).toEqual([[25, '2027-09-05', key]]);
  });

  it('counts from its test once that is told, and no sooner than beans can show anything', () => {
    expect(heaps([{ on: '2027-08-01', litres: 25, tested: '2027-08-25' }])).toEqual([[25, '2027-08-25', undefined]]);
    expect(heaps([{ on: '2027-08-01', litres: 25, tested: '2027-08-01' }])).toEqual([[25, '2027-08-22', undefined]]);
  });

  it('counts once where the order and its delivery are both told', () => {
    const order = { on: '2027-08-01', litres: 100, ordered: true } as const;
    expect(heaps([order, { on: '2027-08-10', litres: 60 }])).toEqual([
      [40, '2027-09-05', key],
      [60, '2027-08-31', 'compost-test/garden/2028/bought:2'],
    ]);
  });

  it('is not charged with a layer spread before it came', () => {
    const [bought] = boughtHeaps({ compostBought: [{ on: '2027-08-01', litres: 40, ordered: true }] }, climate);
    const spreadOn = (on: Day) =>
      given(
        shareOut(
          { topdressed: [{ bedId: 'z', on, litres: 40 }] },
          TODAY,
          { made: [], bought: bought ? [bought] : [] },
          [need('a', 40, '2027-10-01')],
        ),
      );
    expect([spreadOn('2027-08-14'), spreadOn('2027-08-15')]).toEqual([[40], [0]]);
  });

  it('is tested with beans for three to four weeks, once for all that came on a day', () => {
    const row = { on: '2027-07-10', litres: 60 };
    const bought = garden({ startedOn: '2027-07-05', compostBought: [row, row] });
    const test = draft(draftsIn(bought, climate), 'compost-test/');
    expect(test).toMatchObject({
      key,
      weight: 'check',
      window: { earliest: '2027-07-10', preferred: '2027-07-10', latest: '2027-08-07' },
      makes: [{ makes: 'compost-tested', boughtOn: '2027-07-10' }],
    });
    const layer = draft(draftsIn(bought, climate), 'topdress/bed:a/2028/before-winter');
    expect(layer.after).toContainEqual({ key, minDays: 0 });
  });

  it('is not asked for once it was tested, nor of what came long before the garden was brought in', () => {
    const tests = (compostBought: Garden['compostBought']) =>
      draftsIn(garden({ startedOn: '2027-07-05', compostBought }), climate).filter(
        ({ kind }) => kind === 'test-compost',
      );
    expect(tests([{ on: '2027-07-06', litres: 60, tested: '2027-07-30' }])).toEqual([]);
    expect(tests([{ on: '2026-10-01', litres: 60 }])).toEqual([]);
  });

  it('is named by its own season at latitude −43', () => {
    const south = frostDates('10-20', '04-20', -43);
    expect(boughtHeaps({ compostBought: [{ on: '2028-02-29', litres: 25 }] }, south)[0]?.testKey).toBe(
      'compost-test/garden/2028/bought:1',
    );
  });
});
