import { expect, test } from 'vitest';
import { isToGet } from '../../src/digest/to-get.ts';
import { weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const SUNDAY = '2027-04-18';
const NEXT = ['2027-04-26', '2027-04-28', '2027-04-30'] as const;

const textOf = (wanted: readonly Wanted[]) =>
  weekListText(weekList(planOf(SUNDAY, wanted), hollowLane, '2027-04-19'), 'metric');

test.each(['dry leaves', 'seed compost and pots', '12 cabbage plants', 'opaque sheet, in case it regrows'])(
  '%s has to be got',
  (what) => expect(isToGet({ what })).toBe(true),
);

test.each(['fork', 'barrow and rake', 'watering can', 'knife or loppers', 'water, if it is dry'])(
  '%s hangs in the shed',
  (what) => expect(isToGet({ what })).toBe(false),
);

test('what the week after wants is told a week before, equal things added up and tools left out', () => {
  const sowing = (bed: string): Wanted => ({
    key: `sow/${bed}`,
    window: NEXT,
    supplies: [{ what: 'oat seed', amount: { value: 120, unit: 'g' } }, { what: 'rake' }],
  });
  expect(textOf([sowing('north'), sowing('south')])).toContain(
    '\n\nTo buy or gather for the week after\n  oat seed 240 g\n\nClosing soon\n',
  );
});

test('what is only ordered in the week after need not be there before it', () => {
  const order: Wanted = { key: 'order-cover-seed/north', window: NEXT, supplies: [{ what: 'oat seed' }] };
  expect(textOf([order])).not.toContain('To buy or gather');
});

test('an order without amounts says in full what to order', () => {
  const order: Wanted = {
    key: 'order-seed/garden',
    window: ['2027-04-19', '2027-04-21', '2027-04-25'],
    title: 'Order seed: beet and 1 more',
    steps: ['Wanted: beet ⟦2027-06-08⟧; kale ⟦2027-06-24⟧.', 'Look through the drawer.'],
  };
  const text = textOf([order]);
  expect(text).toContain('\n      Wanted: beet 8 June; kale 24 June.\n');
  expect(text).not.toContain('drawer');
});
