import { describe, expect, test } from 'vitest';
import { weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import type { UnitSystem } from '../../src/measures/units.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const SUNDAY = '2027-04-18';

function textOf(wanted: readonly Wanted[], { weekOf = '2027-04-19', units = 'metric' as UnitSystem } = {}): string {
  return weekListText(weekList(planOf(SUNDAY, wanted), hollowLane, weekOf), units);
}

const sowing: Wanted = {
  key: 'sow/north',
  title: 'Sow oats in North bed',
  window: ['2027-04-19', '2027-04-21', '2027-04-25'],
  supplies: [{ what: 'oat seed', amount: { value: 120, unit: 'g' } }],
  needs: ['soil-fit', 'dry-day'],
  effortMinutes: 35,
};

test('the whole list of a small week reads so', () => {
  const check: Wanted = {
    key: 'look/north',
    title: 'Look whether it came up',
    window: ['2027-04-19', '2027-04-21', '2027-04-25'],
    weight: 'check',
    effortMinutes: 3,
  };
  const closing: Wanted = {
    key: 'cut/south',
    title: 'Cut the rye in South bed',
    window: ['2027-04-26', '2027-04-28', '2027-05-01'],
  };
  expect(textOf([sowing, check, closing])).toBe(`Hollow Lane
Week of 19 to 25 April 2027

38 min to do, of the 2 h a week kept for the garden.

Wednesday 21 April
  [ ] Sow oats in North bed (38 min)
      Last day 25 April.
      Needs soil dry enough to work, a dry day.
      With it: Look whether it came up.

To have at hand
  oat seed 120 g

Closing soon
  Cut the rye in South bed: last day 1 May, in 13 days.

The week after
  Wed 28 April: Cut the rye in South bed
`);
});

test('each entry says why, by the first reason of its work', () => {
  const own = "the garden's own plan" as const;
  const reasons = [
    { rule: 'changeover.last-harvest', saw: { crop: 'garlic', day: '2027-04-20' }, source: own },
    { rule: 'schedule.unpinned', saw: {}, source: own },
  ];
  const text = textOf([{ ...sowing, reasons }]);
  expect(text).toContain('\n      Why: The plan has the last of the garlic in on 20 April.\n');
  expect(text).not.toContain('no longer pinned');
});

test('amounts and days are written in the units of the reader', () => {
  const text = textOf([sowing], { units: 'us' });
  expect(text).toContain('Week of April 19 to 25, 2027');
  expect(text).toContain('Wednesday, April 21');
  expect(text).toContain('oat seed 4.2 oz');
  expect(text).not.toMatch(/[⟦⟧]/);
});

test('no line is longer than 80 characters, and no amount is broken in two', () => {
  const long =
    'Spread the finished compost of the left bay, sieved and well rotted, in an even layer of ⟦13 mm⟧ over it';
  const text = textOf([{ ...sowing, title: long }]);
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  expect(text.replace(/\s+/g, ' ')).toContain('an even layer of 13 mm over it');
});

test('a last day in another year is told with its year', () => {
  const long: Wanted = { ...sowing, window: ['2027-04-19', '2027-04-21', '2028-03-13'] };
  expect(textOf([long])).toContain('Last day 13 March 2028.');
});

test('hours over those kept for the garden are named', () => {
  expect(textOf([{ ...sowing, effortMinutes: 200 }])).toContain(
    '3 h 20 min to do, of the 2 h a week kept for the garden. That is 1 h 20 min\nover.',
  );
});

test('what can hurt stands with its work, in full once a list and by its day after that', () => {
  const cautions = ['Blades: gloves on.'];
  const later: Wanted = { ...sowing, key: 'cut/south', window: ['2027-04-23', '2027-04-24', '2027-04-24'], cautions };
  const text = textOf([{ ...sowing, cautions }, later]);
  expect(text).toContain('\n      Take care. Blades: gloves on.\n');
  expect(text).toContain('\n      Take care as on Wednesday 21 April.\n');
  expect(text.match(/gloves/g)).toHaveLength(1);
});

test('a day with more than one entry adds them up', () => {
  const other: Wanted = { ...sowing, key: 'cut/south', effortMinutes: 20 };
  expect(textOf([sowing, other])).toContain('\nWednesday 21 April (55 min)\n');
  expect(textOf([sowing])).toContain('\nWednesday 21 April\n');
});

test('with links, one address under each open entry leads to all three answers, and the last line stops the mail', () => {
  const links = {
    answer: (key: string, answer = '') => `https://garden.example/answer/${key}/${'x'.repeat(80)}${answer}`,
    stop: 'https://garden.example/stop/abc',
  };
  const text = weekListText(weekList(planOf(SUNDAY, [sowing]), hollowLane, '2027-04-19'), 'metric', links);
  expect(text).toContain(`\n      Done, not yet or skip:\n      ${links.answer('sow/north')}\n`);
  expect(text).toMatch(/\n\nTo stop this mail: https:\/\/garden\.example\/stop\/abc\n$/);
});

describe('an empty week', () => {
  test('names what comes next', () => {
    expect(textOf([{ ...sowing, window: ['2027-06-01', '2027-06-02', '2027-06-03'] }])).toContain(
      'Nothing asks for you this week. Next comes Wednesday 2 June: Sow oats in North\nbed.',
    );
  });

  test('says so when nothing comes', () => {
    expect(textOf([])).toBe('Hollow Lane\nWeek of 19 to 25 April 2027\n\nNothing asks for you this week.\n');
  });
});

describe('what went wrong is said', () => {
  test('missed work with what was lost', () => {
    expect(textOf([{ ...sowing, window: ['2027-04-01', '2027-04-05', '2027-04-10'] }])).toContain(
      'Window closed\n  Sow oats in North bed: closed 10 April. Leave it this year.',
    );
  });

  test('late work that still wants doing keeps its box to tick', () => {
    const late = textOf([{ ...sowing, window: ['2027-04-01', '2027-04-05', '2027-04-10'], ifMissed: 'still do' }]);
    expect(late).toContain('  [ ] Sow oats in North bed (35 min)');
    expect(late).not.toContain('Last day 10 April');
  });

  test('a day pinned outside its window', () => {
    const garden = { ...hollowLane, pins: { 'sow/north': '2027-04-20' } };
    const wanted: Wanted = { ...sowing, window: ['2027-04-24', '2027-04-24', '2027-04-25'] };
    const list = weekList(planOf(SUNDAY, [wanted], undefined, garden), garden, '2027-04-19');
    expect(weekListText(list, 'metric')).toContain('Pinned outside its window, which runs from 24 April to 25 April.');
  });

  test('what moved, with the sentence of its reason', () => {
    const before = planOf('2027-04-17', [sowing]);
    const garden = { ...hollowLane, pins: { 'sow/north': '2027-04-23' } };
    const list = weekList(planOf(SUNDAY, [sowing], before, garden), garden, '2027-04-19');
    expect(weekListText(list, 'metric')).toContain(
      'What moved and why\n  Sow oats in North bed: from 21 April to 23 April. You pinned it to 23 April.',
    );
  });
});

test('work with an hour says it beside its title', () => {
  const window = ['2027-04-21', '2027-04-21', '2027-04-21'] as const;
  const at = { from: '2027-04-21T23:30:00.000Z', minutes: 40 };
  const text = textOf([{ key: 'cover/north', title: 'Cover North bed', window, at, needs: ['before-sunset'] }]);
  expect(text).toContain('[ ] Cover North bed, before 19:10 (30 min)');
  expect(text).toContain('Needs to be finished before sunset.');
});

test('names the last list by the day it went out on the garden’s own clock, in place of seven days', () => {
  const moved = {
    key: 'sow/north',
    title: 'Sow oats',
    kind: 'moved' as const,
    from: '2027-04-20',
    to: '2027-04-21',
    because: [],
    at: '2027-04-17T12:00:00.000Z',
  };
  const plan = { ...planOf(SUNDAY, [sowing]), changes: [moved] };
  // two in the morning by Greenwich is still Friday evening in Wisconsin
  const text = weekListText(weekList(plan, hollowLane, SUNDAY, { since: '2027-04-17T02:00:00.000Z' }), 'metric');
  expect(text).toContain(
    'What moved since the last list, of 16 April 2027, and why\n  Sow oats: from 20 April to 21 April.\n',
  );
});
