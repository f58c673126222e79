import { describe, expect, it } from 'vitest';
import { awayList } from '../../src/digest/away-list.ts';
import { addDays } from '../../src/measures/days.ts';
import type { Report } from '../../src/steward/doings/steward.ts';
import { NORTH_TODAY, northernFile, SOUTH_TODAY, southernFile } from './gardens.ts';
import { household, later, told } from './household.ts';

/** Three weeks from the Thursday after the garden is brought in: the covers want cutting, the pile turning. */
const AWAY = { from: '2027-04-22', to: '2027-05-13' };
const REPORT: Report = { kind: 'away-told', ...AWAY };

describe('a household that goes away', () => {
  it('is shown beforehand just what then happens', async () => {
    const { steward, garden } = await household();
    const preview = await steward.previewReport(garden, REPORT);
    const shown = awayList(preview.before, preview.after, AWAY);
    expect(shown.earlier.length + shown.later.length).toBeGreaterThan(0);
    const before = (await steward.view(garden)).plan;
    const after = await steward.report(garden, REPORT, 'ada');
    expect(told(after)).toEqual(told(preview.after));
    expect(awayList(before, after, AWAY)).toEqual(shown);
  });

  it('finds no open work on its days away but what was left, and that has no day at home in its window', async () => {
    const { steward, garden } = await household();
    const plan = await steward.report(garden, REPORT, 'ada');
    const there = plan.tasks.filter(({ day, state }) => state === 'open' && day >= AWAY.from && day <= AWAY.to);
    const { left } = awayList(plan, plan, AWAY);
    expect(left.flatMap(({ keys }) => keys).sort()).toEqual(there.map(({ key }) => key).sort());
    for (const { window, after } of there.filter((task) => task.after.length === 0)) {
      expect([after, window.earliest >= NORTH_TODAY && window.earliest < AWAY.from]).toEqual([[], false]);
      expect(window.latest <= AWAY.to).toBe(true);
    }
  });

  it('gets days, texts and states back exactly when it takes that back', async () => {
    const { steward, garden, clock } = await household();
    const before = told((await steward.view(garden)).plan);
    later(clock);
    await steward.report(garden, REPORT, 'ada');
    later(clock);
    expect(told((await steward.view(garden)).plan)).not.toEqual(before);
    await steward.undo(garden, undefined, 'ada');
    expect(told((await steward.view(garden)).plan)).toEqual(before);
  });

  it('may tell two times that overlap, and take either back', async () => {
    const { steward, garden, clock } = await household();
    const first = told(await steward.report(garden, REPORT, 'ada'));
    later(clock);
    const longer: Report = { kind: 'away-told', from: '2027-05-10', to: '2027-05-20' };
    const both = await steward.report(garden, longer, 'ada');
    const inside = both.tasks.filter(({ day, window }) => day > AWAY.to && day <= '2027-05-20' && window.latest > day);
    expect(inside.filter(({ window }) => window.latest > '2027-05-20')).toEqual([]);
    await steward.undo(garden, 3, 'ada');
    expect(told((await steward.view(garden)).plan)).toEqual(first);
  });

  it('may be gone to an unknown end: a year away empties no plan and breaks nothing', async () => {
    const { steward, garden } = await household();
    const open: Report = { kind: 'away-told', from: AWAY.from, to: addDays(AWAY.from, 366) };
    const { plan: before } = await steward.view(garden);
    const after = await steward.report(garden, open, 'ada');
    expect(after.tasks.length).toBeGreaterThan(0);
    const here = after.tasks.filter(({ day, state }) => state === 'open' && day < AWAY.from);
    expect(here.length).toBeGreaterThanOrEqual(before.tasks.filter(({ day }) => day < AWAY.from).length);
  });

  it('works alike in the south, over New Year', async () => {
    const { steward, garden, clock } = await household(southernFile(), `${SOUTH_TODAY}T00:00:00.000Z`);
    const away = { from: '2027-12-20', to: '2028-01-10' };
    const preview = await steward.previewReport(garden, { kind: 'away-told', ...away });
    const before = told((await steward.view(garden)).plan);
    later(clock);
    expect(told(await steward.report(garden, { kind: 'away-told', ...away }, 'ada'))).toMatchObject({
      tasks: told(preview.after).tasks,
    });
    await steward.undo(garden, undefined, 'ada');
    expect(told((await steward.view(garden)).plan)).toEqual(before);
  });

  it('finds a task it pinned into those days where it pinned it, with a warning', async () => {
    const { steward, garden } = await household(northernFile());
    const { plan } = await steward.view(garden);
    const task = plan.tasks.find(({ state, weight }) => state === 'open' && weight === 'work');
    if (task === undefined) throw new Error('There is no open work to pin.');
    await steward.pin(garden, task.key, '2027-05-01', 'ada');
    const after = await steward.report(garden, REPORT, 'ada');
    const pinned = after.tasks.find(({ key }) => key === task.key);
    expect(pinned).toMatchObject({ day: '2027-05-01', pinned: true });
    expect(pinned?.pinWarning).toContain('when nobody is at home');
  });
});
