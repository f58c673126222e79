import { describe, expect, it } from 'vitest';
import { bedOf, isTheirs } from '../../src/schedule/whose.ts';

const onNorth = {
  key: 'mulch/bed:north',
  practice: 'mulching',
  subject: { type: 'bed', id: 'north', name: 'North' },
} as const;
const thePile = {
  key: 'pile-turn/pile:p/turn:2',
  practice: 'composting',
  subject: { type: 'pile', id: 'p', name: 'Left bay', binId: 'left' },
} as const;
const ida = { name: 'Ida', practices: ['mulching'], beds: ['south'] } as const;

describe('a task', () => {
  it('that nobody was given is whose practice and bed it is', () => {
    expect(isTheirs(onNorth, { name: 'Ida' }, {})).toBe(true);
    expect(isTheirs(onNorth, ida, {})).toBe(false);
    expect(isTheirs(onNorth, { ...ida, beds: ['north'] }, {})).toBe(true);
  });

  it('on a pile goes by its practice alone', () => {
    expect(bedOf(thePile)).toBeUndefined();
    expect(isTheirs(thePile, { name: 'Ida', practices: ['composting'], beds: ['south'] }, {})).toBe(true);
  });

  it('that was given to somebody is theirs alone, whatever they and others see to', () => {
    const assigned = { [onNorth.key]: 'Ida' };
    expect(isTheirs(onNorth, ida, assigned)).toBe(true);
    expect(isTheirs(onNorth, { name: 'Jonas' }, assigned)).toBe(false);
  });

  it('of a row that repeats is given by itself: the next one is nobody’s in particular', () => {
    const assigned = { [thePile.key]: 'Jonas' };
    expect(isTheirs({ ...thePile, key: 'pile-turn/pile:p/turn:3' }, { name: 'Ida' }, assigned)).toBe(true);
  });
});
