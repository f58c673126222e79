import { describe, expect, test } from 'vitest';
import { awaySheet, comingAway } from '../../src/digest/away-sheet.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { bed, cover, draftsIn, garden, milwaukee, pile, setOut, sown } from '../practices/gardens.ts';

const TODAY = '2027-05-01';

function planned(of: Garden) {
  const now = `${TODAY}T12:00:00.000Z`;
  const plan = makePlan({ garden: of, drafts: draftsIn(of, milwaukee, TODAY), today: TODAY, now, factsVersion: 1 });
  return { garden: of, climate: milwaukee, plan };
}

const AWAY = { from: '2027-05-02', to: '2027-06-30' };
const VIEW = planned(
  garden({
    startedOn: TODAY,
    beds: [bed('a'), bed('b'), bed('c')],
    stands: [cover('cereal_rye', '2026-09-20')],
    plantings: [setOut('leek', '2027-04-20', { bedId: 'b' }), setOut('tomato', '2027-05-25', { bedId: 'c' })],
    piles: [pile('2027-04-10')],
    away: [AWAY],
  }),
);

describe('the sheet for whoever minds the garden', () => {
  const sheet = awaySheet(VIEW, AWAY);

  test('asks only for what cannot wait, in words for a stranger and on days of the time away', () => {
    expect(sheet.asks.map(({ text }) => text)).toEqual([
      'Cut the winter rye in Bed A off at the ground, and leave what you cut lying on the bed.',
    ]);
    for (const { from, to, day } of sheet.asks) {
      expect(from >= AWAY.from && to <= AWAY.to && day >= AWAY.from && day <= AWAY.to && from <= to).toBe(true);
    }
    expect(VIEW.plan.tasks.some(({ day, minder }) => minder === undefined && day > AWAY.from && day < AWAY.to)).toBe(
      true,
    );
  });

  test('names each bed with what stands in it on leaving, and not what is still to come', () => {
    expect(sheet.beds).toEqual([
      { name: 'Bed A', holds: 'winter rye, grown to feed the soil', thirsty: false, newlySown: false },
      { name: 'Bed B', holds: 'leek', thirsty: true, newlySown: false },
      { name: 'Bed C', holds: 'no crop; it may be mulched', thirsty: false, newlySown: false },
    ]);
  });

  test('names the bins to be left alone, and the cautions of what it asks for', () => {
    expect(sheet.piles).toEqual(['Left bay']);
    expect(sheet.cautions).toEqual(['Blades and bent backs: gloves and stout shoes, small bites, rest between beds.']);
  });

  test.each([
    ['2027-04-11', true],
    ['2027-04-10', false],
    ['2027-05-02', false],
  ])('calls a bed sown on %s newly sown: %s', (day, newlySown) => {
    const view = planned(garden({ startedOn: TODAY, stands: [cover('oats', day)] }));
    expect(awaySheet(view, AWAY).beds).toMatchObject([{ name: 'Bed A', newlySown }]);
    const sowing = planned(garden({ startedOn: TODAY, plantings: [sown('carrot', day)] }));
    expect(awaySheet(sowing, AWAY).beds).toMatchObject([{ newlySown }]);
  });

  test('asks for nothing where nothing presses', () => {
    expect(awaySheet(VIEW, { from: '2028-01-01', to: '2028-01-09' }).asks).toEqual([]);
  });
});

describe('the time away that comes', () => {
  const away = [
    { from: '2027-12-20', to: '2027-12-29' },
    { from: '2027-07-01', to: '2027-07-09' },
    { from: '2027-12-28', to: '2028-01-03' },
  ];
  test.each([
    ['2027-06-01', '2027-07-01'],
    ['2027-07-09', '2027-07-01'],
    ['2027-07-10', '2027-12-20'],
    ['2028-01-03', '2027-12-20'],
    ['2028-01-04', undefined],
  ])('seen from %s begins %s', (day, from) => {
    expect(comingAway(garden({ away }), day)?.from).toBe(from);
  });
});
