import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { draft, entryWith, garden, planOn, taskIn } from './drafts.ts';

/** Half past five in the evening in Chicago. */
const EVENING = '2027-09-28T22:30:00.000Z';
const AT = { from: EVENING, minutes: 45 };
const ON = ['2027-09-28', '2027-09-28', '2027-09-28'] as const;

function cover(bed: string, at: TaskDraft['at'] = AT): TaskDraft {
  return draft('cover', bed, ON, at === undefined ? {} : { at });
}

describe('work with an hour', () => {
  it('gives its entry the hour it shares', () => {
    const plan = planOn('2027-09-27', [cover('a'), cover('b')]);
    expect(plan.entries).toHaveLength(1);
    expect(plan.entries[0]).toMatchObject({ day: '2027-09-28', at: AT });
  });

  it('never stands in one entry with work of another hour, or of none', () => {
    const later = { from: '2027-09-28T23:30:00.000Z', minutes: 45 };
    const anyTime = draft('cover', 'c', ON);
    const plan = planOn('2027-09-27', [cover('a'), cover('b', later), anyTime]);
    expect(plan.entries.map(({ at }) => at?.from)).toEqual([undefined, EVENING, later.from]);
  });

  it('loses it when it is pinned to another day', () => {
    const plan = planOn('2027-09-27', [cover('a')], { garden: garden({ pins: { 'cover/bed:a': '2027-09-29' } }) });
    expect(entryWith(plan, 'cover/bed:a')).not.toHaveProperty('at');
    expect(taskIn(plan, 'cover/bed:a')).not.toHaveProperty('at');
  });

  it('rises in revision when the hour alone moves, or only grows longer', () => {
    const published = planOn('2027-09-27', [cover('a')]);
    const now = (at: TaskDraft['at']) =>
      entryWith(planOn('2027-09-27', [cover('a', at)], { published }), 'cover/bed:a');
    expect(now(AT).sequence).toBe(0);
    expect(now({ from: '2027-09-28T22:15:00.000Z', minutes: 45 }).sequence).toBe(1);
    expect(now({ from: EVENING, minutes: 60 }).sequence).toBe(1);
  });
});
