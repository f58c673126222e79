import { describe, expect, it } from 'vitest';
import { yardSheet } from '../../../src/digest/yard-sheet.ts';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { compostBalance } from '../../../src/practices/catalogue.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { makePlan } from '../../../src/schedule/reconcile.ts';
import { bed, draftsIn, frostDates, garden, pile, setOut } from '../gardens.ts';

const climate = frostDates('05-10', '10-01');

/** Two beds with tomatoes on June 1, brought in on a day. */
function brought(startedOn: Day, parts: Partial<Garden> = {}): Garden {
  return garden({
    startedOn,
    beds: [bed('a'), bed('b')],
    plantings: [setOut('tomato', '2027-06-01'), setOut('tomato', '2027-06-01', { id: 'tb', bedId: 'b' })],
    topdressing: { depthMm: 20, season: 'spring' },
    place: { hardinessZone: '5b' },
    ...parts,
  });
}

const layersOf = (drafts: readonly TaskDraft[], season: number) =>
  drafts.filter(({ key }) => key.startsWith('topdress/') && key.includes(`/${season}`));
const heldBack = ({ reasons }: TaskDraft) => reasons.find(({ rule }) => rule === 'topdress.in-hand');

describe('a layer that leans on compost to be ordered', () => {
  it('keeps its days where an order put at once, five weeks and three days of slack leave one', () => {
    // A week before June 1 is May 25; 38 days before that is April 17.
    const [layer] = layersOf(draftsIn(brought('2027-04-17'), climate), 2027);
    expect(layer).toMatchObject({ key: 'topdress/bed:a/2027', window: { latest: '2027-05-25' } });
    expect(layer && heldBack(layer)).toBeUndefined();
  });

  it('a day later may go on up to the day before the planting, and says why', () => {
    const [layer] = layersOf(draftsIn(brought('2027-04-18'), climate), 2027);
    expect(layer).toMatchObject({ key: 'topdress/bed:a/2027', window: { latest: '2027-05-31' } });
    expect(layer && heldBack(layer)).toMatchObject({
      saw: { comes: '2027-05-23', how: 'to the day' },
      limit: '2027-05-25',
    });
  });

  it('goes on among what grows where that is too soon as well: nothing waits for it', () => {
    const drafts = draftsIn(brought('2027-05-01'), climate);
    const [layer] = layersOf(drafts, 2027);
    expect(layer).toMatchObject({
      key: 'topdress/bed:a/2027/among-crops',
      window: { earliest: '2027-06-05', preferred: '2027-06-05', latest: '2027-06-19' },
    });
    expect(drafts.filter(({ after }) => after.some(({ key }) => key === layer?.key))).toEqual([]);
  });

  it('is left to the next season where that is past midsummer, and the yard says so', () => {
    const plantings = ['a', 'b'].map((bedId) => setOut('tomato', '2027-06-25', { id: bedId, bedId }));
    const late = brought('2027-06-10', { plantings });
    expect(layersOf(draftsIn(late, climate), 2027)).toEqual([]);
    const { spared } = yardSheet(compostBalance({ garden: late, climate, today: '2027-06-10' }), '2027-06-10');
    expect(spared[0]).toMatch(/^Bed A gets none for 2027: .*2027-06-18.*2027-07-15.*Its next layer is that of 2028\.$/);
  });

  it('whose days were over before the garden was brought in is told as missed, until midsummer', () => {
    const late = brought('2027-12-10', { topdressing: { depthMm: 20, season: 'autumn' } });
    expect(layersOf(draftsIn(late, climate), 2028)).toEqual([]);
    const toldOn = (today: string) => yardSheet(compostBalance({ garden: late, climate, today }), today).spared;
    expect(toldOn('2027-12-10')[0]).toMatch(
      /^Bed A gets none for 2028: its days were over on .*2027-1[01]-\d\d.*, before the garden was brought in\. Its next layer is that of 2029\.$/,
    );
    expect(toldOn('2028-06-01')).toHaveLength(2);
    expect(toldOn('2028-08-01')).toEqual([]);
    const early = brought('2027-09-01', { topdressing: { depthMm: 20, season: 'autumn' } });
    expect(yardSheet(compostBalance({ garden: early, climate, today: '2027-09-01' }), '2027-09-01').spared).toEqual([]);
  });

  it('is spread thinner at its time where the bins give half of it or more, and nothing is ordered for it', () => {
    const piles = [pile('2026-05-01', { finishedOn: '2027-01-01', finishedLitres: 90 })];
    const drafts = draftsIn(brought('2027-05-10', { piles }), climate);
    const [a, b] = layersOf(drafts, 2027);
    expect(a?.key).toBe('topdress/bed:a/2027');
    // 90 of 120 L: bed A has its 60, bed B half of its own.
    expect(b?.reasons.find(({ rule }) => rule === 'topdress.thinner-now')?.saw).toMatchObject({
      litres: 30,
      percent: 50,
    });
    expect(drafts.filter(({ key }) => key === 'compost-order/garden/2027')).toEqual([]);
  });
});

describe('a layer that leans on compost on its way', () => {
  it('waits for what was ordered too late for its days, and for its beans', () => {
    const compostBought = [{ on: '2027-05-01', litres: 120, ordered: true } as const];
    const [layer] = layersOf(draftsIn(brought('2027-04-01', { compostBought }), climate, '2027-05-02'), 2027);
    expect(layer?.window.earliest).toBe('2027-06-05');
    expect(layer?.after).toContainEqual({ key: 'compost-test/garden/2027/bought:1', minDays: 0 });
  });

  it('waits for what was delivered and is not yet tested, and it is not ordered again', () => {
    const compostBought = [{ on: '2027-05-10', litres: 120 }];
    const drafts = draftsIn(brought('2027-05-10', { compostBought }), climate);
    expect(layersOf(drafts, 2027)[0]).toMatchObject({ window: { earliest: '2027-05-31' } });
    expect(drafts.filter(({ kind, key }) => kind === 'order-compost' && key.includes('2027'))).toEqual([]);
  });
});

describe('on whatever day a garden is brought in', () => {
  const days = Array.from({ length: 21 }, (_, step) => addDays('2027-03-01', 10 * step));

  it.each(['spring', 'autumn'] as const)(
    'no layer falls before its order and five weeks, with layers in %s',
    (season) => {
      for (const today of days) {
        const of = brought(today, { topdressing: { depthMm: 20, season } });
        const drafts = draftsIn(of, climate);
        const plan = makePlan({ garden: of, drafts, today, now: `${today}T06:00:00.000Z`, factsVersion: 1 });
        const dayOf = (key: string) => plan.tasks.find((task) => task.key === key)?.day ?? '';
        const layers = layersOf(drafts, 2027).concat(layersOf(drafts, 2028));
        expect(layers.length).toBeGreaterThan(0);
        for (const { key, after } of layers) {
          const order = after.find((wait) => wait.key.startsWith('compost-order/'));
          expect(order).toBeDefined();
          expect([today, key, dayOf(key) >= addDays(dayOf(order?.key ?? ''), 35)]).toEqual([today, key, true]);
        }
        expect(plan.clashes.filter(({ key }) => key.startsWith('topdress/'))).toEqual([]);
      }
    },
  );
});
