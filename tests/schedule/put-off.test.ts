import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { reasonSentence } from '../../src/schedule/explain.ts';
import { canWait, putOffIn, putOffPast } from '../../src/schedule/put-off.ts';
import { type Days, draft, garden, planOn } from './drafts.ts';

/** In April 2027 the Wednesdays are 7, 14, 21, 28 and the Saturdays 3, 10, 17, 24. */
const APRIL: Days = ['2027-04-01', '2027-04-12', '2027-04-30'];
const a = draft('sow', 'a', APRIL);
const b = draft('sow', 'b', APRIL);

function dayPutOff(past: string, drafts = [a], today = '2027-04-05') {
  const plan = planOn(today, drafts, { garden: garden({ putOff: { [a.key]: past } }) });
  return plan.tasks.find(({ key }) => key === a.key)?.day;
}

describe('work put off', () => {
  test('comes on the next day that suits after the one it was put off past', () => {
    expect(dayPutOff('2027-04-10')).toBe('2027-04-14');
    expect(dayPutOff('2027-04-14')).toBe('2027-04-17');
    expect(dayPutOff('2027-04-28')).toBe('2027-04-29');
  });

  test('begins no earlier, and ends when it always did', () => {
    expect(putOffIn(a, { [a.key]: '2027-04-10' }).window).toEqual({
      earliest: '2027-04-11',
      preferred: '2027-04-12',
      latest: '2027-04-30',
    });
    expect(putOffIn(a, { [a.key]: '2027-04-20' }).window.preferred).toBe('2027-04-21');
  });

  test('past its last day, or before its window begins, is as it was', () => {
    for (const past of ['2027-03-31', '2027-04-30', '2027-05-02']) expect(putOffIn(a, { [a.key]: past })).toBe(a);
    expect(putOffIn(a, { [b.key]: '2027-04-10' })).toBe(a);
  });

  test('leaves the same work on other beds where it is', () => {
    const plan = planOn('2027-04-05', [a, b], { garden: garden({ putOff: { [a.key]: '2027-04-10' } }) });
    expect(plan.tasks.map(({ key, day }) => `${key} ${day.slice(5)}`)).toEqual(['sow/bed:b 04-10', 'sow/bed:a 04-14']);
  });

  test('keeps a pin: a day the gardener chose afterwards counts', () => {
    const facts = { putOff: { [a.key]: '2027-04-20' }, pins: { [a.key]: '2027-04-22' } };
    const [task] = planOn('2027-04-05', [a], { garden: garden(facts) }).tasks;
    expect([task?.day, task?.pinWarning]).toEqual(['2027-04-22', undefined]);
  });

  test('says why it moved, in the plan and among what changed', () => {
    const published = planOn('2027-04-05', [a], { garden: garden() });
    const made = planOn('2027-04-05', [a], { published, garden: garden({ putOff: { [a.key]: '2027-04-10' } }) });
    const [change] = made.changes;
    expect([change?.kind, change?.from, change?.to]).toEqual(['moved', '2027-04-10', '2027-04-14']);
    expect(change?.because.map(reasonSentence)).toEqual(['It was put off past ⟦2027-04-10⟧.']);
    expect(made.tasks[0]?.reasons[0]?.rule).toBe('schedule.put-off');
  });

  test('is never asked for on or before that day while its window lasts', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }), (since, past) => {
        const [today, day] = [addDays('2027-03-28', since), addDays('2027-03-28', past)];
        const placed = dayPutOff(day, [a, b], today);
        const held = day >= '2027-04-01' && day < '2027-04-30' && today <= '2027-04-30';
        if (held) expect(placed !== undefined && placed > day).toBe(true);
      }),
    );
  });
});

describe('what can wait', () => {
  const task = { state: 'open' as const, window: a.window };

  test('is open work with a day left after the one it stands on', () => {
    expect(canWait(task, '2027-04-29')).toBe(true);
    expect(canWait(task, '2027-04-30')).toBe(false);
    expect(canWait({ ...task, state: 'lapsed' }, '2027-04-10')).toBe(false);
    expect(canWait({ ...task, state: 'done' }, '2027-04-10')).toBe(false);
  });

  test('waits past its own day, or past today where that is later', () => {
    expect(putOffPast({ day: '2027-04-10' }, '2027-04-05')).toBe('2027-04-10');
    expect(putOffPast({ day: '2027-04-10' }, '2027-04-12')).toBe('2027-04-12');
  });
});
