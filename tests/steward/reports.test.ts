import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { NORTH_TODAY } from './gardens.ts';
import { household } from './household.ts';

const away: Report = { kind: 'away-told', from: NORTH_TODAY, to: addDays(NORTH_TODAY, 9) };

describe('a report', () => {
  it('is taken in as one fact and can be taken back', async () => {
    const { steward, garden } = await household();
    const before = (await steward.view(garden)).garden.away;
    await steward.report(garden, away, 'ada');
    expect((await steward.view(garden)).garden.away).toEqual([...before, { from: away.from, to: away.to }]);
    await steward.undo(garden, undefined, 'ada');
    expect((await steward.view(garden)).garden.away).toEqual(before);
  });

  it('is tried out without being kept: the moves shown are the moves made', async () => {
    const { steward, garden } = await household();
    const preview = await steward.previewReport(garden, away);
    expect((await steward.view(garden)).ledger).toHaveLength(1);
    const { plan: before } = await steward.view(garden);
    const after = await steward.report(garden, away, 'ada');
    const days = (tasks: typeof after.tasks) => tasks.map(({ key, day, state }) => `${key} ${day} ${state}`);
    expect(days(preview.after.tasks)).toEqual(days(after.tasks));
    expect(days(preview.before.tasks)).toEqual(days(before.tasks));
    expect(preview.moves.length).toBeGreaterThan(0);
  });

  it.each<[Report, string[]]>([
    [{ kind: 'cold-night-told', evening: addDays(NORTH_TODAY, 11), lowC: -2, how: 'expected' }, ['the evening']],
    [{ kind: 'cold-night-told', evening: addDays(NORTH_TODAY, 1), lowC: -2, how: 'measured' }, ['the evening']],
    [{ kind: 'away-told', from: NORTH_TODAY, to: addDays(NORTH_TODAY, -1) }, ['away to']],
    [{ kind: 'away-told', from: 'soon', to: NORTH_TODAY }, ['away from']],
    [
      { kind: 'soil-squeezed', on: addDays(NORTH_TODAY, 1), soilTexture: 'loam', answer: 'crumbles' },
      ['the day it was squeezed'],
    ],
    [
      { kind: 'disease-found', bedId: 'nowhere', cropId: 'triffid', disease: 'rust', on: addDays(NORTH_TODAY, 3) },
      ['the bed', 'the crop', 'the day it was found'],
    ],
  ])('that cannot be true is refused with every reason: %j', async (report, wheres) => {
    const { steward, garden } = await household();
    const told = (error: unknown) => (error as { problems: { where: string }[] }).problems.map(({ where }) => where);
    await expect(steward.report(garden, report, 'ada').catch(told)).resolves.toEqual(wheres);
    await expect(steward.previewReport(garden, report).catch(told)).resolves.toEqual(wheres);
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });
});
