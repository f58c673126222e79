import { expect, test } from 'vitest';
import { weekList } from '../../src/digest/week-list.ts';
import type { Member } from '../../src/garden/household.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const SUNDAY = '2027-04-18';
const MEMBERS: Member[] = [
  { id: 'ann', name: 'Ann', beds: ['north'] },
  { id: 'bo', name: 'Bo', practices: ['composting'] },
  { id: 'cy', name: 'Cy' },
];
const garden = { ...hollowLane, household: { people: 3, members: MEMBERS } };

const window = ['2027-04-19', '2027-04-21', '2027-04-25'] as const;
const WORK: Wanted[] = [
  { key: 'sow/north', window, supplies: [{ what: 'oat seed' }] },
  { key: 'sow/south', window },
  { key: 'cut/south', window: ['2027-04-26', '2027-04-28', '2027-04-30'], supplies: [{ what: 'sickle' }] },
  { key: 'turn/bay', window, practice: 'composting', subject: { type: 'pile', id: 'bay', name: 'bay', binId: 'left' } },
];

function listFor(person?: string) {
  const plan = planOf(SUNDAY, WORK, undefined, garden);
  return weekList(plan, garden, '2027-04-19', person === undefined ? {} : { person });
}

function titlesFor(person?: string): string[] {
  return listFor(person).days.flatMap(({ entries }) => entries.map(({ entry }) => entry.title));
}

test('a member gets the entries with a task of theirs, whole, as in their feed', () => {
  expect(titlesFor()).toEqual(['sow: north, south', 'turn bay']);
  expect(titlesFor('Ann')).toEqual(['sow: north, south', 'turn bay']);
  expect(titlesFor('Bo')).toEqual(['turn bay']);
  expect(titlesFor('Cy')).toEqual(titlesFor());
});

test('hours, supplies and closing windows are those of their own work; the household is named beside them', () => {
  expect(listFor('Bo')).toMatchObject({ person: 'Bo', openMinutes: 30, householdMinutes: 90, supplies: [] });
  expect(listFor('Bo').closing.map(({ title }) => title)).toEqual(['turn bay']);
  expect(listFor('Ann').closing.map(({ title }) => title)).not.toContain('cut south');
  expect(listFor('Cy').closing.map(({ title }) => title)).toContain('cut south');
});

test('somebody who is no member is refused with the names there are', () => {
  expect(() => listFor('Dot')).toThrow('Nobody called "Dot" is in the household; its members are: Ann, Bo, Cy.');
});
