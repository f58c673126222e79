import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { draft, garden, planOn } from './drafts.ts';

const today = '2027-09-01';
const saturday = '2027-09-04';

const on = (job: string, bed: string, after: readonly string[] = [], parts: Partial<TaskDraft> = {}) =>
  draft(job, bed, [saturday, saturday, saturday], { after: after.map((key) => ({ key, minDays: 0 })), ...parts });

const jobsOf = (drafts: readonly TaskDraft[], parts: Parameters<typeof planOn>[2] = {}) =>
  planOn(today, drafts, parts).entries.map(({ kind }) => kind);

describe('the entries of a day', () => {
  it('stand in the order of the work: compost before the sowing that waits for it', () => {
    expect(jobsOf([on('sow', 'a', ['topdress/bed:a']), on('topdress', 'a')])).toEqual(['topdress', 'sow']);
  });

  it('keep that order where only one bed of a lot is waited for', () => {
    const drafts = [on('sow', 'b', ['topdress/bed:b']), on('topdress', 'a'), on('topdress', 'b')];
    expect(jobsOf(drafts)).toEqual(['topdress', 'sow']);
  });

  it('keep it through work that was skipped', () => {
    const drafts = [on('sow', 'a', ['rake/bed:a']), on('rake', 'a', ['topdress/bed:a']), on('topdress', 'a')];
    const skipped = { garden: garden({ skipped: { 'rake/bed:a': today } }) };
    expect(jobsOf(drafts, skipped)).toEqual(['topdress', 'sow']);
  });

  it('come by their hour where nothing waits, those without one first', () => {
    const at = (hour: string) => ({ at: { from: `${saturday}T${hour}:00:00.000Z`, minutes: 30 } });
    const drafts = [on('air', 'a', [], at('22')), on('cover', 'a', [], at('13')), on('sow', 'a')];
    expect(jobsOf(drafts)).toEqual(['sow', 'cover', 'air']);
  });

  it('are all there, by id, where lots wait for each other', () => {
    const drafts = [
      on('sow', 'a', ['topdress/bed:a']),
      on('topdress', 'a'),
      on('sow', 'b'),
      on('topdress', 'b', ['sow/bed:b']),
    ];
    expect(jobsOf(drafts)).toEqual(['sow', 'topdress']);
  });

  it('never stand above what they wait for, whatever the names', () => {
    const names = fc.uniqueArray(fc.stringMatching(/^[a-z]{3}$/), { minLength: 3, maxLength: 7 });
    fc.assert(
      fc.property(names, (jobs) => {
        const drafts = jobs.map((job, at) =>
          on(
            job,
            'a',
            jobs
              .slice(0, at)
              .slice(-1)
              .map((key) => `${key}/bed:a`),
          ),
        );
        expect(jobsOf([...drafts].reverse())).toEqual(jobs);
      }),
      { numRuns: 30 },
    );
  });
});
