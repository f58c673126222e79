import { describe, expect, it } from 'vitest';
import { editedFile } from '../../src/garden/edit.ts';
import type { GardenFile } from '../../src/garden/garden-file.ts';
import { InputRefused, type Problem } from '../../src/garden/problem.ts';
import { entriesAbout } from '../../src/steward/ledger/entries-about.ts';
import { NORTH_TODAY, northernFile } from './gardens.ts';
import { type Household, household, openTask } from './household.ts';

async function refusal(doing: () => Promise<unknown>): Promise<readonly Problem[]> {
  try {
    await doing();
  } catch (error) {
    if (error instanceof InputRefused) return error.problems;
    throw error;
  }
  throw new Error('Nothing was refused.');
}

const bedOf = (file: GardenFile, id: string) => {
  const bed = file.beds.find((row) => row.id === id);
  if (bed === undefined) throw new Error(`There is no bed ${id}.`);
  return bed;
};

async function northBed({ steward, garden }: Household) {
  return bedOf(await steward.fileNow(garden), 'north');
}

describe('changing what a garden was told', () => {
  it('gives the plan of a garden that was told so from the start', async () => {
    const house = await household();
    const { steward, garden } = house;
    const row = { ...(await northBed(house)), lengthM: 6 };
    const plan = await steward.mend(garden, [{ list: 'beds', id: 'north', row }], 'ada');
    const other = await household(
      northernFile({ beds: northernFile().beds.map((bed) => (bed.id === 'north' ? row : bed)) }),
    );
    const told = (await other.steward.view(other.garden)).plan;
    const shown = ({ tasks }: typeof plan) => tasks.map(({ key, day, supplies }) => ({ key, day, supplies }));
    expect(shown(plan)).toEqual(shown(told));
  });

  it('shows what it changes and what it moves first, and keeps nothing of that', async () => {
    const house = await household();
    const { steward, garden } = house;
    const before = await steward.view(garden);
    const row = { ...(await northBed(house)), lengthM: 6 };
    const preview = await steward.previewMend(garden, [{ list: 'beds', id: 'north', row }]);
    expect(preview.differences).toEqual([{ path: 'beds.north.lengthM', now: '3', file: '6' }]);
    expect(preview.moves.some(({ amounts = [] }) => amounts.length > 0)).toBe(true);
    expect(preview.refs).toEqual([{ list: 'beds', at: 0 }]);
    expect(await steward.view(garden)).toEqual(before);
    const kept = await steward.mend(garden, [{ list: 'beds', id: 'north', row }], 'ada');
    expect(kept.tasks).toEqual(preview.after.tasks);
  });

  it('is taken back like anything else, and the plan is as it was', async () => {
    const house = await household();
    const { steward, garden } = house;
    const { plan } = await steward.view(garden);
    const shown = ({ tasks }: typeof plan) =>
      tasks.map(({ key, day, title, supplies }) => ({ key, day, title, supplies }));
    await steward.mend(garden, [{ list: 'beds', id: 'north' }], 'ada');
    expect(shown(await steward.undo(garden, undefined, 'ada'))).toEqual(shown(plan));
  });

  it('keeps what was done and marked of everything else', async () => {
    const house = await household();
    const { steward, garden } = house;
    const { plan } = await steward.view(garden);
    const turn = openTask(plan, 'turn-pile');
    await steward.markDone(garden, [turn.key], NORTH_TODAY, 'ada');
    await steward.pin(garden, openTask(plan, 'cut-cover').key, '2027-05-03', 'ada');
    const before = (await steward.view(garden)).garden;
    await steward.mend(
      garden,
      [{ list: 'beds', id: 'south', row: { ...bedOf(await steward.fileNow(garden), 'south'), lengthM: 2 } }],
      'ada',
    );
    const after = (await steward.view(garden)).garden;
    expect({ ...after, beds: before.beds }).toEqual(before);
  });

  it('says what goes with a bed that is taken out', async () => {
    const { steward, garden } = await household();
    const { gone } = await steward.previewMend(garden, [{ list: 'beds', id: 'north' }]);
    expect(gone).toEqual([
      { list: 'plantings', words: 'snap bean in north bed, sown June 1, 2027' },
      { list: 'coverStands', words: 'winter rye in north bed, sown September 20, 2026' },
    ]);
  });

  it('says what of its own log goes with a pile, and with the piles of a bin', async () => {
    const { steward, garden } = await household();
    const gone = async (list: 'piles' | 'bins', id: string) =>
      (await steward.previewMend(garden, [{ list, id }])).gone.map(({ words }) => words);
    expect([(await gone('piles', 'spring-pile'))[0], (await gone('bins', 'left'))[0]]).toEqual([
      '1 turn',
      expect.stringMatching(/^the pile in Left bay built April 6, 2027, with 1 turn$/),
    ]);
  });

  it('stands in the history of its bed, also when the crop it was about is gone', async () => {
    const { steward, garden } = await household();
    const beans = (await steward.fileNow(garden)).plantings.find(({ id }) => id === 'beans');
    await steward.mend(garden, [{ list: 'plantings', id: 'beans', row: { ...beans, sow: '2027-06-03' } }], 'ada');
    await steward.mend(garden, [{ list: 'plantings', id: 'beans' }], 'ada');
    const view = await steward.view(garden);
    const about = (id: string) => entriesAbout(view.ledger, view.garden, { type: 'bed', id }).map(({ entry }) => entry);
    expect([about('north'), about('middle')]).toEqual([[2, 3], []]);
  });

  it('makes no entry where nothing changes', async () => {
    const house = await household();
    const { steward, garden } = house;
    const { ledger } = await steward.view(garden);
    await steward.mend(garden, [{ list: 'beds', id: 'north', row: await northBed(house) }], 'ada');
    expect((await steward.view(garden)).ledger).toEqual(ledger);
  });

  it('takes many beds at once, each with an id of its own', async () => {
    const { steward, garden } = await household();
    const rows = [1, 2, 3].map((n) => ({ name: `Terrace ${n}`, lengthM: 2, widthM: 1 }));
    await steward.mend(
      garden,
      rows.map((row) => ({ list: 'beds', row })),
      'ada',
    );
    const { beds } = await steward.fileNow(garden);
    expect(beds.slice(-3).map(({ id }) => id)).toEqual(['terrace-1', 'terrace-2', 'terrace-3']);
    expect((await steward.view(garden)).ledger).toHaveLength(2);
  });

  it('plans by another climate at once', async () => {
    const house = await household();
    const { steward, garden } = house;
    const { plan } = await steward.view(garden);
    const warm = { frostDates: { lastSpring: '04-10', firstAutumn: '11-10' } };
    const after = await steward.mend(garden, [{ part: 'climate', row: warm }], 'ada');
    expect(after.tasks.map(({ key, day }) => [key, day])).not.toEqual(plan.tasks.map(({ key, day }) => [key, day]));
  });
});

describe('a change that cannot be', () => {
  it('is refused with every problem, each where it would stand in the file, and keeps nothing', async () => {
    const house = await household();
    const { steward, garden } = house;
    const { ledger } = await steward.view(garden);
    const edits = [
      { list: 'beds', id: 'middle', row: { ...bedOf(await steward.fileNow(garden), 'middle'), lengthM: 900 } },
      { list: 'plantings', row: { bed: 'north', crop: 'carott', sow: '2027-05-32' } },
    ] as const;
    const problems = await refusal(() => steward.mend(garden, edits, 'ada'));
    const { refs } = editedFile(await steward.fileNow(garden), edits);
    expect(refs).toEqual([
      { list: 'beds', at: 1 },
      { list: 'plantings', at: 4 },
    ]);
    expect(problems.map(({ where }) => where)).toEqual(['beds[1].lengthM', 'plantings[4].sow', 'plantings[4].crop']);
    expect(await refusal(() => steward.previewMend(garden, edits))).toEqual(problems);
    expect((await steward.view(garden)).ledger).toEqual(ledger);
  });

  it('is refused where two crops would stand in each other’s way', async () => {
    const { steward, garden } = await household();
    const row = { bed: 'north', crop: 'cabbage', setOut: '2027-06-20' };
    const [problem] = await refusal(() => steward.mend(garden, [{ list: 'plantings', row }], 'ada'));
    expect(problem?.where).toBe('plantings[4].setOut');
  });

  it('is refused where no climate can be worked out from it', async () => {
    const { steward, garden } = await household();
    const record = { part: 'climate', row: { dailyRecord: 'weather.csv' } } as const;
    expect((await refusal(() => steward.mend(garden, [record], 'ada')))[0]?.where).toBe('climate.dailyRecord');
    const station = { part: 'climate', row: { station: 'XX0000' } } as const;
    expect((await refusal(() => steward.previewMend(garden, [station])))[0]?.where).toBe('climate.station');
  });

  it('is refused for what somebody has taken out meanwhile', async () => {
    const house = await household();
    const { steward, garden } = house;
    const row = { ...(await northBed(house)), lengthM: 6 };
    await steward.mend(garden, [{ list: 'beds', id: 'north' }], 'ben');
    const problems = await refusal(() => steward.mend(garden, [{ list: 'beds', id: 'north', row }], 'ada'));
    expect(problems).toEqual([
      expect.objectContaining({ where: 'beds', what: '"north" is not there as it was any more.' }),
    ]);
  });

  it('is refused for weather that cannot have been', async () => {
    const { steward, garden } = await household();
    const days = [{ day: '2027-04-23', kind: 'observed', rainMm: 4 }] as const;
    expect(await refusal(() => steward.mend(garden, [{ days }], 'ada'))).toHaveLength(1);
  });
});
