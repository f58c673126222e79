import { describe, expect, it } from 'vitest';
import type { DiseaseFound } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { draft, draftsIn, garden, pile, setOut } from '../gardens.ts';

const clubroot: DiseaseFound = { bedId: 'a', cropId: 'cabbage', disease: 'clubroot', on: '2027-07-20' };
const plantings = [setOut('cabbage', '2027-05-01', { id: 'cab', harvested: '2027-09-10' })];

function held(piles: ReturnType<typeof pile>[], parts: Parameters<typeof garden>[0] = {}) {
  return draftsIn(garden({ startedOn: '2027-07-01', plantings, piles, diseases: [clubroot], ...parts })).filter(
    ({ kind }) => kind === 'hold-compost',
  );
}

describe('a pile is held back', () => {
  it('where it was open at some time while the sick crop grew', () => {
    const [task, ...others] = held([pile('2027-06-10')]);
    expect(others).toEqual([]);
    expect(task?.key).toBe('pile-disease/pile:p/planting:cab');
    expect(task?.title).toBe('Hold back the compost in Left bay: it may have taken sick cabbage');
    expect(task?.window).toEqual({ earliest: '2027-07-20', preferred: '2027-07-20', latest: '2027-08-03' });
    expect(task?.steps[0]).toContain('not for beds of cabbage and all its kin');
    expect(task?.reasons.map(reasonSentence)[0]).toContain('Nobody wrote down whether any of it went in');
  });

  it.each<[string, ReturnType<typeof pile>, number]>([
    ['built before and still open', pile('2027-01-10', { method: 'cold' }), 1],
    ['moved to cure before the crop went in', pile('2027-01-10', { curingSince: '2027-04-20' }), 0],
    ['moved to cure after it', pile('2027-01-10', { curingSince: '2027-05-20' }), 1],
    ['finished before it', pile('2026-01-10', { finishedOn: '2027-03-01' }), 0],
    ['only planned', pile('2027-07-10'), 0],
  ])('or not: %s', (_, of, count) => {
    expect(held([of])).toHaveLength(count);
  });

  it('half a year back where nobody knows when the crop went in', () => {
    const closed = (curingSince: Day) => held([pile('2026-06-01', { curingSince })], { plantings: [] }).length;
    expect([closed('2027-01-20'), closed('2027-01-21')]).toEqual([0, 1]);
  });

  it('not for a disease of before the garden was brought in', () => {
    expect(held([pile('2025-06-10', { method: 'cold' })], { diseases: [{ ...clubroot, on: '2025-07-20' }] })).toEqual(
      [],
    );
  });
});

describe('a pile that may hold sick remains', () => {
  const days = Array.from({ length: 15 }, (_, at) => addDays('2027-06-12', at));
  const hot = pile('2027-06-10', {
    readings: days.map((on) => ({ on, tempC: 60 })),
    turns: ['2027-06-13', '2027-06-16', '2027-06-19', '2027-06-22', '2027-06-25'],
    curingSince: '2027-06-27',
  });

  it('is warned of again when it is looked at, unless its log shows 15 hot days and 5 turns', () => {
    const look = (of: ReturnType<typeof pile>) =>
      draft(
        draftsIn(garden({ startedOn: '2027-07-01', plantings, piles: [of], diseases: [clubroot] })),
        'pile-maturity/',
      ).cautions.join(' ');
    expect(look({ ...hot, readings: hot.readings.slice(1) })).toContain('cabbage from Bed A that had clubroot');
    expect(look(hot)).not.toContain('clubroot');
  });

  it('has its log counted in the task, and what came later left out', () => {
    expect(held([hot])[0]?.steps.join(' ')).toContain('What went in later was not.');
    expect(held([pile('2027-06-10')])[0]?.steps.join(' ')).toContain('so far it shows 0 and 0.');
  });
});
