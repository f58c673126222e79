import { describe, expect, it } from 'vitest';
import { InputRefused } from '../../src/garden/problem.ts';
import { bedGaps, choiceOf } from '../../src/practices/cover-cropping/fit/bed-gaps.ts';
import { planningInput } from '../../src/steward/planner.ts';
import type { CoverChoice, GardenView, Steward } from '../../src/steward/steward.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { household, later, told } from './household.ts';

/** Beans in the wall bed until the end of August, tomatoes there in the last days of May; nothing meant for between. */
const file = northernFile({
  plantings: [
    { id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-05-25', lastHarvest: '2027-08-28' },
    { id: 'tomatoes', bed: 'wall', crop: 'tomato', setOut: '2028-05-29' },
  ],
  coverStands: [],
});

const rye: CoverChoice = {
  kind: 'stand-planned',
  standId: 'wall-rye',
  bedId: 'wall',
  coverId: 'cereal_rye',
  sowOn: '2027-09-15',
};

const gapAfterBeans = (view: GardenView) => {
  const bed = view.garden.beds.find(({ id }) => id === 'wall');
  const gap = bed && bedGaps(planningInput(view), bed).gaps.find(({ span }) => span.before?.planting.id === 'beans');
  if (gap === undefined) throw new Error('The beans leave no gap.');
  return gap;
};

const refusalOf = async (steward: Steward, garden: string, choice: CoverChoice): Promise<string[]> => {
  const refused = await steward.previewReport(garden, choice).catch((error: unknown) => error);
  if (!(refused instanceof InputRefused)) throw new Error('It was not refused.');
  return refused.problems.map(({ what, mend }) => `${what} ${mend}`);
};

describe('choosing a cover', () => {
  it('writes the stand, and its tasks follow at once', async () => {
    const { steward, garden } = await household(file);
    const { tasks } = await steward.report(garden, rye, 'ada');
    const kinds = tasks.filter(({ subject }) => subject.id === 'wall-rye').map(({ kind }) => kind);
    expect(kinds).toEqual(
      expect.arrayContaining(['order-cover-seed', 'sow-cover', 'check-stand', 'cut-cover', 'check-regrowth']),
    );
  });

  it('is taken back as one: every day, text, reason and state is as it was', async () => {
    const { steward, garden, clock } = await household(file);
    const before = (await steward.view(garden)).plan;
    later(clock);
    await steward.report(garden, rye, 'ada');
    later(clock);
    expect(told(await steward.undo(garden, undefined, 'ada'))).toEqual(told(before));
  });

  it('keeps the tasks of a suggestion that is chosen, and their entries with them', async () => {
    const { steward, garden } = await household(file);
    const view = await steward.view(garden);
    const suggested = view.plan.tasks.find(
      ({ kind, subject }) => kind === 'sow-cover' && 'bedId' in subject && subject.bedId === 'wall',
    );
    const gap = gapAfterBeans(view);
    const fit = gap.fits.find(({ name }) => suggested?.title.toLowerCase().includes(name));
    const choice = fit && choiceOf(planningInput(view), gap, fit);
    if (choice === undefined) throw new Error('Nothing is suggested.');
    const after = await steward.report(garden, choice, 'ada');
    expect(after.tasks.map(({ key }) => key)).toContain(suggested?.key);
  });

  it('leaves a bed under mulch where mulch is chosen: its own task, and no cover suggested', async () => {
    const { steward, garden } = await household(file);
    const view = await steward.view(garden);
    const gap = gapAfterBeans(view);
    const straw = gap.fits.find(({ choice }) => choice.choice === 'mulch' && choice.mulch === 'straw');
    const choice = straw && choiceOf(planningInput(view), gap, straw);
    if (choice === undefined) throw new Error('Straw is not among the choices.');
    const { tasks } = await steward.report(garden, choice, 'ada');
    const inGap = tasks.filter(
      ({ subject, day }) => 'bedId' in subject && subject.bedId === 'wall' && day > '2027-08-28',
    );
    expect(inGap.filter(({ practice }) => practice === 'cover-cropping')).toEqual([]);
    const mulch = tasks.find(({ kind, subject }) => kind === 'mulch-bare-bed' && subject.id === 'wall');
    expect(mulch?.steps.join(' ')).toContain('Lay clean straw over the whole bed');
    expect(mulch?.supplies.map(({ what }) => what)).toContain('straw');
    expect(mulch?.reasons[0]?.rule).toBe('cover-none.mulch-chosen');
  });

  it('takes the place of what was only planned there, and of a mulch', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, rye, 'ada');
    const again = await steward.view(garden);
    const gap = gapAfterBeans(again);
    expect(gap.planned.map(({ stand }) => stand.coverId)).toEqual(['cereal_rye']);
    const leaves = gap.fits.find(({ choice }) => choice.choice === 'mulch');
    const mulch = leaves && choiceOf(planningInput(again), gap, leaves);
    if (mulch === undefined) throw new Error('Leaves are not among the choices.');
    await steward.report(garden, mulch, 'ada');
    expect((await steward.view(garden)).garden.stands).toEqual([]);
    await steward.report(garden, rye, 'ada');
    const { garden: last } = await steward.view(garden);
    expect(last.stands.map(({ id }) => id)).toEqual(['wall-rye']);
    expect(last.mulches).toEqual([]);
  });

  it('drops a planned stand, and gives the gap back to a suggestion', async () => {
    const { steward, garden } = await household(file);
    const before = (await steward.view(garden)).plan.tasks.map(({ key }) => key);
    await steward.report(garden, rye, 'ada');
    const dropped = { kind: 'stand-dropped', standId: 'wall-rye', bedId: 'wall', coverId: 'cereal_rye' } as const;
    const after = await steward.report(garden, dropped, 'ada');
    expect(after.tasks.map(({ key }) => key).sort()).toEqual(before.sort());
  });
});

describe('a choice that cannot be meant', () => {
  it('is refused inside a growing crop, with the two dates', async () => {
    const { steward, garden } = await household(file);
    const [problem] = await refusalOf(steward, garden, { ...rye, sowOn: '2027-07-10' });
    expect(problem).toContain('Snap bean grows there from May 25, 2027 until about August 28, 2027');
    expect(problem).toContain('July 10, 2027 lies in its time');
    expect(problem).toContain('Sow from August 29, 2027 on');
  });

  it('is refused over a stand that is planned there, unless it takes its place', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, rye, 'ada');
    const oats: CoverChoice = { ...rye, standId: 'wall-oats', coverId: 'oats', sowOn: '2027-09-16' };
    const [problem] = await refusalOf(steward, garden, oats);
    expect(problem).toContain('is planned there from September 15, 2027');
    expect(problem).toContain('September 16, 2027 lies in its time');
    const { after } = await steward.previewReport(garden, { ...oats, instead: ['wall-rye'] });
    const sown = after.tasks.filter(({ kind }) => kind === 'sow-cover').map(({ subject }) => subject.id);
    expect(sown).toContain('wall-oats');
    expect(sown).not.toContain('wall-rye');
  });

  it('names the nearest cover or bed for one that is not known', async () => {
    const { steward, garden } = await household(file);
    expect(await refusalOf(steward, garden, { ...rye, coverId: 'buckweat' })).toEqual([
      '"buckweat" is not a known cover or mix. Did you mean buckwheat?',
    ]);
    expect((await refusalOf(steward, garden, { ...rye, bedId: 'wal' }))[0]).toContain('Did you mean wall?');
  });

  it('keeps nothing of what it refuses', async () => {
    const { steward, garden } = await household(file);
    const before = await steward.view(garden);
    await expect(steward.report(garden, { ...rye, sowOn: '2027-01-01' }, 'ada')).rejects.toThrow(InputRefused);
    expect((await steward.view(garden)).ledger).toEqual(before.ledger);
    expect(NORTH_TODAY > '2027-01-01').toBe(true);
  });
});
