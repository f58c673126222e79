import { expect, test } from 'vitest';
import { weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import type { Member } from '../../src/garden/household.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const window = ['2027-04-19', '2027-04-21', '2027-04-25'] as const;
const BOTH: Wanted[] = [
  { key: 'sow/north', window },
  { key: 'sow/south', window },
];

const ANN: Member = { id: 'ann', name: 'Ann', beds: ['north'] };
const BO: Member = { id: 'bo', name: 'Bo', beds: ['south', 'north'] };
const CY: Member = { id: 'cy', name: 'Cy', practices: ['composting'] };

function listOf(wanted: readonly Wanted[], members: Member[], assigned = {}, person?: string) {
  const garden = { ...hollowLane, household: { people: 2, members }, assigned };
  const reader = person === undefined ? {} : { person };
  return weekList(planOf('2027-04-18', wanted, undefined, garden), garden, '2027-04-19', reader);
}

function whoseOf(...given: Parameters<typeof listOf>) {
  return listOf(...given).days.flatMap(({ entries }) => entries.map(({ whose }) => whose));
}

test('work that one member sees to is theirs by name, and what two see to is either one’s', () => {
  expect(whoseOf([{ key: 'sow/south', window }], [ANN, BO])).toEqual(['For Bo.']);
  expect(whoseOf([{ key: 'sow/north', window }], [ANN, BO, CY])).toEqual(['For Ann or Bo.']);
});

test('where beds differ each is told', () => {
  expect(whoseOf(BOTH, [ANN, { id: 'bo', name: 'Bo', beds: ['south'] }])).toEqual(['North: for Ann. South: for Bo.']);
});

test('what everybody may do, or nobody in particular, has no name', () => {
  expect(
    whoseOf(BOTH, [
      { id: 'ann', name: 'Ann' },
      { id: 'bo', name: 'Bo' },
    ]),
  ).toEqual([undefined]);
  expect(whoseOf(BOTH, [CY])).toEqual([undefined]);
  expect(whoseOf(BOTH, [])).toEqual([undefined]);
});

test('what was given to somebody is theirs, whoever sees to it otherwise', () => {
  expect(whoseOf([{ key: 'sow/south', window }], [ANN, BO, CY], { 'sow/south': 'Cy' })).toEqual(['For Cy.']);
});

test('a reader is not told that their own work is theirs, but whom they share it with', () => {
  expect(whoseOf([{ key: 'sow/south', window }], [ANN, BO], {}, 'Bo')).toEqual([undefined]);
  expect(whoseOf([{ key: 'sow/north', window }], [ANN, BO, CY], {}, 'Bo')).toEqual(['For Ann or Bo.']);
});

test('the text says it first under the entry', () => {
  const text = weekListText(listOf([{ key: 'sow/south', window }], [ANN, BO]), 'metric');
  expect(text).toContain('[ ] sow south (30 min)\n      For Bo.\n      Last day');
});
