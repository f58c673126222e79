import { describe, expect, it } from 'vitest';
import { addDays } from '../../src/measures/days.ts';
import { NORTH_TODAY } from './gardens.ts';
import { emptyHousehold, household, later, openTask } from './household.ts';

describe('a garden brought in', () => {
  it('has a plan made from its facts for its own day', async () => {
    const { steward, garden } = await household();
    const { plan, ledger, garden: held } = await steward.view(garden);
    expect([plan.today, plan.gardenId, held.name]).toEqual([NORTH_TODAY, 'hollow-lane', 'Hollow Lane']);
    expect(ledger.map(({ entry, by, fact }) => [entry, by, fact.kind])).toEqual([[1, 'ada', 'garden-imported']]);
    expect(plan.tasks.some(({ state }) => state === 'open')).toBe(true);
    expect(await steward.today(garden)).toBe(NORTH_TODAY);
    expect(await steward.gardenIds()).toEqual(['hollow-lane']);
  });

  it('is refused under a name nobody brought in', async () => {
    const { steward } = await emptyHousehold();
    await expect(steward.view('nowhere')).rejects.toThrow('There is no such garden.');
    await expect(steward.importedFile('nowhere')).rejects.toThrow('no garden file');
  });
});

describe('marking done', () => {
  it('makes facts: a cut stand is cut, and its regrowth check counts from the day', async () => {
    const { steward, garden, clock } = await household();
    clock.moment = '2027-04-22T13:00:00.000Z';
    const cut = openTask((await steward.view(garden)).plan, 'cut-cover');
    await steward.markDone(garden, [cut.key], '2027-04-21', 'ada');
    const { garden: held, plan } = await steward.view(garden);
    const standId = cut.subject.type === 'stand' ? cut.subject.id : '';
    expect(held.stands.find(({ id }) => id === standId)?.cutOn).toBe('2027-04-21');
    expect(plan.tasks.find(({ key }) => key === cut.key)).toMatchObject({ state: 'done', day: '2027-04-21' });
  });

  it('refuses a day more than a year away, to have been done on or to be pinned to', async () => {
    const { steward, garden } = await household();
    const [task] = (await steward.view(garden)).plan.tasks;
    const key = task?.key ?? '';
    await expect(steward.markDone(garden, [key], '1990-01-01', 'ada')).rejects.toThrow('"1990-01-01" cannot be used');
    await expect(steward.pin(garden, key, '2040-08-01', 'ada')).rejects.toThrow('"2040-08-01" cannot be used');
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });

  it('takes tasks marked together back together', async () => {
    const { steward, garden } = await household();
    const before = (await steward.view(garden)).plan.tasks.map(({ key, state }) => `${key} ${state}`);
    const keys = (await steward.view(garden)).plan.tasks.slice(0, 3).map(({ key }) => key);
    await steward.markDone(garden, keys, NORTH_TODAY, 'ada');
    const after = await steward.undo(garden, undefined, 'ada');
    expect(after.tasks.map(({ key, state }) => `${key} ${state}`)).toEqual(before);
  });

  it('takes several tasks at once as one entry', async () => {
    const { steward, garden } = await household();
    const keys = (await steward.view(garden)).plan.tasks.slice(0, 3).map(({ key }) => key);
    await steward.markDone(garden, keys, NORTH_TODAY, 'ada');
    const { ledger, plan } = await steward.view(garden);
    expect(ledger.slice(1).map(({ fact }) => fact.kind === 'tasks-done' && fact.tasks.map(({ key }) => key))).toEqual([
      keys,
    ]);
    expect(
      plan.tasks
        .filter(({ state }) => state === 'done')
        .map(({ key }) => key)
        .sort(),
    ).toEqual([...keys].sort());
  });

  it('refuses a day that is not real or still to come, and names every task that cannot be marked', async () => {
    const { steward, garden } = await household();
    const { plan } = await steward.view(garden);
    const [key = ''] = plan.tasks.map((task) => task.key);
    await expect(steward.markDone(garden, [key], addDays(NORTH_TODAY, 1), 'ada')).rejects.toThrow('up to today');
    await expect(steward.markDone(garden, [key], '2027-02-29', 'ada')).rejects.toThrow('"2027-02-29" cannot be used.');
    await expect(steward.markDone(garden, [], NORTH_TODAY, 'ada')).rejects.toThrow('None was chosen.');
    await expect(steward.markDone(garden, ['x/1', key, 'x/2'], NORTH_TODAY, 'ada')).rejects.toThrow(
      /x\/1: is not in the plan[\s\S]*x\/2: is not in the plan/,
    );
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });

  it('refuses what is done already', async () => {
    const { steward, garden } = await household();
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    await steward.markDone(garden, [key], NORTH_TODAY, 'ada');
    await expect(steward.markDone(garden, [key], NORTH_TODAY, 'ada')).rejects.toThrow('is done already.');
    await expect(steward.skip(garden, [key], 'ada')).rejects.toThrow('is done already.');
  });
});

describe('skipping and pinning', () => {
  it('takes a skipped task out of the entries', async () => {
    const { steward, garden } = await household();
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    const plan = await steward.skip(garden, [key], 'ben');
    expect(plan.tasks.find((task) => task.key === key)?.state).toBe('skipped');
    expect(plan.entries.flatMap(({ keys }) => keys)).not.toContain(key);
  });

  it('keeps a pin until it is taken off', async () => {
    const { steward, garden, clock } = await household();
    const { key, day } = openTask((await steward.view(garden)).plan, 'clear-bed');
    const pinned = await steward.pin(garden, key, '2027-05-31', 'ada');
    expect(pinned.tasks.find((task) => task.key === key)).toMatchObject({ day: '2027-05-31', pinned: true });
    later(clock);
    const free = await steward.unpin(garden, key, 'ada');
    expect(free.tasks.find((task) => task.key === key)).toMatchObject({ day, pinned: false });
  });

  it('refuses to pin to a day that has passed, and what is not there', async () => {
    const { steward, garden } = await household();
    const { key } = openTask((await steward.view(garden)).plan, 'clear-bed');
    await expect(steward.pin(garden, key, addDays(NORTH_TODAY, -1), 'ada')).rejects.toThrow('from today on');
    await expect(steward.pin(garden, 'x/1', NORTH_TODAY, 'ada')).rejects.toThrow('is not in the plan.');
  });
});

describe('a look at a pile', () => {
  it('changes when the pile is turned', async () => {
    const { steward, garden } = await household();
    const before = openTask((await steward.view(garden)).plan, 'turn-pile');
    await steward.readPile(garden, { pileId: 'spring-pile', on: NORTH_TODAY, tempC: 68 }, 'ada');
    const after = openTask((await steward.view(garden)).plan, 'turn-pile');
    expect([before.key, after.key]).toEqual([after.key, before.key]);
    expect(after.window.latest < before.window.latest).toBe(true);
    expect(after.reasons.map(({ rule }) => rule)).toContain('pile-turn.too-hot');
  });

  it('is refused of a pile that is not there, of a day that cannot be, and with a figure that is none', async () => {
    const { steward, garden } = await household();
    const read = (pileId: string, on: string, tempC?: number) =>
      steward.readPile(garden, { pileId, on, ...(tempC === undefined ? {} : { tempC }) }, 'ada');
    await expect(read('heap', NORTH_TODAY)).rejects.toThrow('Piles: spring-pile, summer-pile.');
    await expect(read('spring-pile', 'yesterday')).rejects.toThrow('"yesterday" cannot be used.');
    await expect(read('spring-pile', addDays(NORTH_TODAY, 1))).rejects.toThrow('up to today');
    await expect(read('spring-pile', NORTH_TODAY, Number.NaN)).rejects.toThrow('tempC: cannot be kept');
    expect((await steward.view(garden)).ledger).toHaveLength(1);
  });

  it('shows that a planned pile was begun, within a month; older, its building is to be marked first', async () => {
    const { steward, garden } = await household();
    const built = async () =>
      (await steward.view(garden)).garden.piles.find(({ id }) => id === 'summer-pile')?.built ?? { day: '' };
    const read = (daysBack: number) =>
      steward.readPile(garden, { pileId: 'summer-pile', on: addDays(NORTH_TODAY, -daysBack), tempC: 50 }, 'ada');
    await expect(read(31)).rejects.toThrow('before the pile was to be built, on 2027-07-10');
    await expect(read(400)).rejects.toThrow('Mark its building done on its day first');
    const failed: 'heats'[] = ['heats'];
    const tooOld = { kind: 'compost-not-ready', pileId: 'summer-pile', on: '2026-05-01', failed } as const;
    await expect(steward.report(garden, tooOld, 'ada')).rejects.toThrow('before the pile was to be built');
    expect(await built()).toEqual({ day: '2027-07-10', happened: false });
    await read(30);
    expect(await built()).toEqual({ day: addDays(NORTH_TODAY, -30), happened: true });
    await expect(read(31)).rejects.toThrow('before the pile was built');
  });

  it('counts from the planned day on, however late it is told: the pile was built as planned', async () => {
    const { steward, garden, clock } = await household();
    clock.moment = '2027-12-01T13:00:00.000Z';
    await expect(
      steward.readPile(garden, { pileId: 'summer-pile', on: '2027-07-09', tempC: 50 }, 'ada'),
    ).rejects.toThrow('before the pile was to be built');
    await steward.readPile(garden, { pileId: 'summer-pile', on: '2027-07-20', tempC: 50 }, 'ada');
    expect((await steward.view(garden)).garden.piles[1]?.built).toEqual({ day: '2027-07-10', happened: true });
  });
});
