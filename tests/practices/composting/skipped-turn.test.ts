import { describe, expect, it } from 'vitest';
import type { Garden, Pile } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import { turnKey } from '../../../src/practices/composting/turn-count.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { doneMark } from '../../schedule/drafts.ts';
import { draft, draftsIn, garden, milwaukee, pile, rulesOf } from '../gardens.ts';

const theGarden = (parts: Partial<Pile>, rest: Partial<Omit<Garden, 'place'>> = {}): Garden =>
  garden({ startedOn: '2027-05-25', piles: [pile('2027-05-10', { turns: ['2027-05-20'], ...parts })], ...rest });

const thePile = pile('2027-05-10', { turns: ['2027-05-20'] });
const [SECOND, THIRD, FOURTH] = [turnKey(thePile, 2), turnKey(thePile, 3), turnKey(thePile, 4)];

const turnsOf = (of: Garden, today: Day = '2027-05-28') =>
  draftsIn(of, milwaukee, today)
    .filter(({ kind }) => kind === 'turn-pile')
    .map(({ key, window }) => `${key} ${window.preferred}`);

describe('a turn that is skipped', () => {
  const skipped = theGarden({}, { skipped: { [SECOND]: '2027-05-28' } });

  it('falls out alone: the next is asked for a week on, every seven to ten days (compost:S46)', () => {
    expect(turnsOf(skipped)).toEqual([`${THIRD} 2027-06-04`, `${SECOND} 2027-05-27`]);
  });

  it('is named as the day the next is counted from', () => {
    const next = draft(draftsIn(skipped, milwaukee, '2027-05-28'), THIRD);
    expect(rulesOf(next)[0]).toBe('pile-turn.after-skip');
    expect(next.reasons[0] && reasonSentence(next.reasons[0])).toContain('was skipped on ⟦2027-05-28⟧');
  });

  it('passes over what was read until then, and not what is read after', () => {
    const hot = (on: Day) => theGarden({ readings: [{ on, tempC: 62 }] }, { skipped: { [SECOND]: '2027-05-28' } });
    expect(turnsOf(hot('2027-05-27'))[0]).toBe(`${THIRD} 2027-06-04`);
    expect(turnsOf(hot('2027-05-30'), '2027-05-30')[0]).toBe(`${THIRD} 2027-05-31`);
  });

  it('skipped ahead of its day falls out all the same, and so does the next one with it', () => {
    const early = theGarden({}, { skipped: { [SECOND]: '2027-05-25' } });
    expect(turnsOf(early, '2027-05-25')[0]).toBe(`${THIRD} 2027-06-03`);
    const both = theGarden({}, { skipped: { [SECOND]: '2027-05-25', [THIRD]: '2027-05-25' } });
    const drafts = draftsIn(both, milwaukee, '2027-05-25');
    expect(turnsOf(both, '2027-05-25')[0]).toBe(`${FOURTH} 2027-06-10`);
    const [reason] = draft(drafts, FOURTH).reasons;
    expect(reason && reasonSentence(reason)).toContain(
      'The turn before, due about ⟦2027-06-03⟧, was skipped on ⟦2027-05-25⟧;',
    );
  });

  it('may be followed by another that is skipped', () => {
    const twice = theGarden({}, { skipped: { [SECOND]: '2027-05-28', [THIRD]: '2027-06-04' } });
    expect(turnsOf(twice, '2027-06-04')[0]).toBe(`${FOURTH} 2027-06-11`);
  });

  it('stops no turning after the next was made, nor when the skip is taken back then', () => {
    const turned = { turns: ['2027-05-20', '2027-06-04'] };
    const marks = [{ ...doneMark(draft(draftsIn(skipped, milwaukee, '2027-05-28'), THIRD), '2027-06-04'), entry: 2 }];
    const kept = theGarden(turned, { done: marks, skipped: { [SECOND]: '2027-05-28' } });
    expect(turnsOf(kept, '2027-06-04')).toEqual([`${FOURTH} 2027-06-11`]);
    expect(turnsOf({ ...kept, skipped: {} }, '2027-06-04')).toEqual([`${FOURTH} 2027-06-11`]);
  });

  it('of a curing pile leaves the look whether it is ready', () => {
    const curing = { curingSince: '2027-05-20', readings: [{ on: '2027-05-25', tempC: 62 }] };
    expect(turnsOf(theGarden(curing))).toEqual([`${SECOND} 2027-05-26`]);
    const passed = theGarden(curing, { skipped: { [SECOND]: '2027-05-28' } });
    expect(draftsIn(passed, milwaukee, '2027-05-28').map(({ kind }) => kind)).toContain('check-maturity');
  });
});
