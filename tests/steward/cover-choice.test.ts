import { describe, expect, it } from 'vitest';
import { choiceNotes } from '../../src/digest/choice-words.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { InputRefused } from '../../src/garden/problem.ts';
import { bedGaps, choiceOf } from '../../src/practices/cover-cropping/fit/bed-gaps.ts';
import { choiceName } from '../../src/practices/cover-cropping/fit/fit.ts';
import type { CoverChoice, GardenView, Steward } from '../../src/steward/doings/steward.ts';
import { planningInput } from '../../src/steward/planning/planner.ts';
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

/** The beans go early enough for a cover to be suggested after them. */
const earlyBeans = northernFile({
  plantings: [
    { id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-05-20', lastHarvest: '2027-07-25' },
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

const gapsOfWall = (view: GardenView) => {
  const bed = view.garden.beds.find(({ id }) => id === 'wall');
  if (bed === undefined) throw new Error('There is no wall bed.');
  return bedGaps(planningInput(view), bed);
};

const notes = (view: GardenView, choice: CoverChoice, after: Garden) =>
  choiceNotes(planningInput(view), { choice, gaps: gapsOfWall(view) }, after);

const gapAfterBeans = (view: GardenView) => {
  const gap = gapsOfWall(view).gaps.find(({ span }) => span.before?.planting.id === 'beans');
  if (gap === undefined) throw new Error('The beans leave no gap.');
  return gap;
};

const sowingInWall = ({ plan }: GardenView) =>
  plan.tasks.find(({ kind, subject }) => kind === 'sow-cover' && 'bedId' in subject && subject.bedId === 'wall');

const refusalOf = async (steward: Steward, garden: string, choice: CoverChoice): Promise<string[]> => {
  const refused = await steward.previewReport(garden, choice).catch((error: unknown) => error);
  if (!(refused instanceof InputRefused)) return [];
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
    const { steward, garden } = await household(earlyBeans);
    const view = await steward.view(garden);
    const suggested = sowingInWall(view);
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

describe('a cover that was skipped and is chosen after all', () => {
  const WORK = ['order-cover-seed', 'sow-cover', 'check-stand', 'cut-cover', 'check-regrowth'];
  const openWork = (plan: GardenView['plan'], standId: string) =>
    plan.tasks.filter(({ subject, state }) => subject.id === standId && state === 'open').map(({ kind }) => kind);

  it('brings all its work, and taking the choice back skips it again', async () => {
    const { steward, garden, clock } = await household(earlyBeans);
    const view = await steward.view(garden);
    const sow = sowingInWall(view);
    const gap = gapAfterBeans(view);
    const fit = gap.fits.find(({ name }) => sow?.title.toLowerCase().includes(name));
    const choice = fit && choiceOf(planningInput(view), gap, fit);
    if (sow === undefined || choice?.kind !== 'stand-planned') throw new Error('Nothing is suggested.');
    await steward.skip(garden, [sow.key], 'ada');
    const before = (await steward.view(garden)).plan;
    expect(openWork(before, choice.standId)).toEqual([]);
    later(clock);
    const after = await steward.report(garden, choice, 'ada');
    expect(openWork(after, choice.standId)).toEqual(expect.arrayContaining(WORK.slice(0, 3)));
    later(clock);
    expect(told(await steward.undo(garden, undefined, 'ada'))).toEqual(told(before));
  });

  it('does so also where it was chosen, skipped and chosen again', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, rye, 'ada');
    await steward.skip(garden, ['cover-sow/stand:wall-rye'], 'ada');
    const after = await steward.report(garden, { ...rye, instead: ['wall-rye'] }, 'ada');
    expect(openWork(after, 'wall-rye')).toEqual(expect.arrayContaining(WORK));
  });
});

describe('a choice that cannot be meant', () => {
  it('is refused inside a growing crop, with the two dates', async () => {
    const { steward, garden } = await household(file);
    const [problem] = await refusalOf(steward, garden, { ...rye, sowOn: '2027-07-10' });
    expect(problem).toContain('Snap bean grows there from May 25, 2027 until about August 28, 2027');
    expect(problem).toContain('July 10, 2027 lies in its time');
    expect(problem).toContain(
      'The bed is free now until May 25, 2027; from August 29, 2027 until May 29, 2028; from September 29, 2028 on.',
    );
  });

  it('is refused over a stand that is planned there, unless it takes its place', async () => {
    const { steward, garden } = await household(file);
    await steward.report(garden, rye, 'ada');
    const oats: CoverChoice = { ...rye, standId: 'wall-oats', coverId: 'oats', sowOn: '2027-09-16' };
    const [problem] = await refusalOf(steward, garden, oats);
    expect(problem).toContain('is planned there for September 15, 2027 (it may be sown from August 29, 2027 to ');
    expect(problem).toContain('September 16, 2027 lies in its time');
    const [sooner] = await refusalOf(steward, garden, { ...rye, standId: 'wall-rye-2', sowOn: '2027-09-10' });
    expect(sooner).toContain('it may be sown from August 29, 2027 to September 28, 2027');
    expect(sooner).toContain('September 10, 2027 lies in its time');
    const { after } = await steward.previewReport(garden, { ...oats, instead: ['wall-rye'] });
    const sown = after.tasks.filter(({ kind }) => kind === 'sow-cover').map(({ subject }) => subject.id);
    expect(sown).toContain('wall-oats');
    expect(sown).not.toContain('wall-rye');
  });

  it('is refused where a crop goes in before it has grown, with the two dates', async () => {
    const { steward, garden } = await household(file);
    const late = { ...rye, sowOn: '2028-05-28' };
    expect(await refusalOf(steward, garden, late)).toEqual([
      'Tomato goes in there on May 29, 2028; winter rye sown on May 28, 2028 would have 1 day to grow, and 30 are the ' +
        'least. Sow by April 29, 2028, or mulch the bed until then.',
    ]);
    expect(await refusalOf(steward, garden, { ...rye, sowOn: '2028-04-29' })).toEqual([]);
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

describe('a mulch that cannot be meant', () => {
  const straw: CoverChoice = {
    kind: 'mulch-planned',
    bedId: 'wall',
    from: '2027-08-29',
    to: '2028-05-29',
    mulch: 'straw',
  };

  it('is refused over a growing crop, on its first day or later', async () => {
    const { steward, garden } = await household(file);
    expect(await refusalOf(steward, garden, straw)).toEqual([]);
    const [first] = await refusalOf(steward, garden, { ...straw, from: '2027-07-10' });
    expect(first).toContain('Snap bean grows there from May 25, 2027 until about August 28, 2027');
    expect(first).toContain('July 10, 2027 lies in its time. The bed is free now until May 25, 2027');
    const [later] = await refusalOf(steward, garden, { ...straw, to: '2028-06-20' });
    expect(later).toContain('Tomato grows there from May 29, 2028');
    expect(later).toContain('the days from August 29, 2027 to June 20, 2028 run into its time');
  });

  it('is refused where it ends before it begins, so that an export can be read back', async () => {
    const { steward, garden } = await household(file);
    expect(await refusalOf(steward, garden, { ...straw, from: '2027-10-01', to: '2027-05-25' })).toEqual([
      'It would begin on October 1, 2027 and end on May 25, 2027. Give an end that comes after its first day.',
    ]);
  });

  it('is refused over a cover that was sown, and over one that is planned unless it takes its place', async () => {
    const sown = northernFile({
      plantings: [],
      coverStands: [{ id: 'rye', bed: 'wall', cover: 'cereal_rye', sow: '2026-09-20' }],
    });
    const { steward, garden } = await household(sown);
    const [problem] = await refusalOf(steward, garden, { ...straw, from: '2027-05-01' });
    expect(problem).toMatch(
      /^Winter rye stands there from September 20, 2026 to about \w+ \d+, 2027; a mulch from May 1, 2027/,
    );
    const other = await household(file);
    await other.steward.report(other.garden, rye, 'ada');
    const [planned] = await refusalOf(other.steward, other.garden, straw);
    expect(planned).toContain('Winter rye is planned there for September 15, 2027');
    expect(await refusalOf(other.steward, other.garden, { ...straw, instead: ['wall-rye'] })).toEqual([]);
  });
});

describe('what is planned already', () => {
  /** Nothing after the beans: the gap has no end. */
  const open = northernFile({
    plantings: [{ id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-05-25', lastHarvest: '2027-08-28' }],
    coverStands: [],
  });
  const oats: CoverChoice = { ...rye, standId: 'wall-oats', coverId: 'oats', sowOn: '2028-08-22' };

  const chosenIn = (view: GardenView, word: string, on?: string) => {
    const gap = gapAfterBeans(view);
    const fit = gap.fits.find(({ choice }) => choiceName(choice) === word);
    const choice = fit && choiceOf(planningInput(view), gap, fit, on);
    if (choice === undefined) throw new Error(`${word} is not among the choices.`);
    return choice;
  };

  it('stays where it is meant for the year after: rye this autumn leaves next August’s oats alone', async () => {
    const { steward, garden } = await household(open);
    await steward.report(garden, oats, 'ada');
    const choice = chosenIn(await steward.view(garden), 'cereal_rye', '2027-09-04');
    expect(choice).not.toHaveProperty('instead');
    await steward.report(garden, choice, 'ada');
    const { stands } = (await steward.view(garden)).garden;
    expect(stands.map(({ coverId, sow }) => [coverId, sow.day])).toEqual(
      expect.arrayContaining([
        ['oats', '2028-08-22'],
        ['cereal_rye', '2027-09-04'],
      ]),
    );
  });

  it('bounds a mulch chosen before it', async () => {
    const { steward, garden } = await household(open);
    await steward.report(garden, oats, 'ada');
    const straw = chosenIn(await steward.view(garden), 'mulch-straw');
    expect(straw).toMatchObject({ from: '2027-08-29', to: '2028-08-22' });
    expect(straw).not.toHaveProperty('instead');
  });

  it('gives way in its own season, and that is said with its day', async () => {
    const { steward, garden } = await household(open);
    await steward.report(garden, rye, 'ada');
    const view = await steward.view(garden);
    const vetch = chosenIn(view, 'hairy_vetch', '2027-09-02');
    expect(vetch).toMatchObject({ instead: ['wall-rye'] });
    const { garden: after } = await steward.previewReport(garden, vetch);
    expect(notes(view, vetch, after).told).toContain('It takes the place of the winter rye planned for ⟦2027-09-15⟧.');
  });

  it('is said of a mulch, too, that it gives way', async () => {
    const { steward, garden } = await household(open);
    await steward.report(garden, chosenIn(await steward.view(garden), 'mulch-leaves'), 'ada');
    const view = await steward.view(garden);
    const { garden: after } = await steward.previewReport(garden, rye);
    expect(notes(view, rye, after).told).toEqual([
      'It takes the place of the mulch of leaves chosen from ⟦2027-08-29⟧ on.',
    ]);
  });
});

describe('what is said before a choice is accepted', () => {
  const notesOf = async (choice: CoverChoice) => {
    const { steward, garden } = await household(file);
    const view = await steward.view(garden);
    const { garden: after } = await steward.previewReport(garden, choice);
    return notes(view, choice, after);
  };

  it('is nothing against a choice that fits', async () => {
    const { steward, garden } = await household(file);
    const view = await steward.view(garden);
    const gap = gapAfterBeans(view);
    const choice = gap.fits[0] && choiceOf(planningInput(view), gap, gap.fits[0]);
    if (choice === undefined || gap.fits[0]?.verdict === 'poor') throw new Error('Nothing fits.');
    const { garden: after } = await steward.previewReport(garden, choice);
    expect(notes(view, choice, after)).toEqual({ told: [], against: [] });
  });

  it('is the reasons against one that fits badly or not at all', async () => {
    const { verdict, against } = await notesOf({ ...rye, sowOn: '2027-09-27' });
    expect(verdict).toMatch(/^Winter rye (fits badly|does not fit) here$/);
    expect(against.join(' ')).toContain('left before hard cold');
  });

  it('is the time it can be sown for a day outside it', async () => {
    const { verdict, against } = await notesOf({ ...rye, coverId: 'oats', sowOn: '2027-10-20' });
    expect(verdict).toBe('Oats does not fit on that day');
    expect(against[0]).toMatch(/^(In this gap it can be sown from|It has no time to be sown in this gap)/);
  });
});
