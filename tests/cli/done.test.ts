import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

const TURN = 'pile-turn/pile:left-bay-2027-04-04/turn:1';

async function opened() {
  const { folder, loamtide } = await withGarden();
  const view = () => openedIn(folder, ({ steward }) => steward.view('hollow-lane'));
  const task = async (kind: string) => {
    const found = (await view()).plan.tasks.find((each) => each.kind === kind && each.state === 'open');
    if (found === undefined) throw new Error(`no ${kind} is open`);
    return found;
  };
  return { loamtide, view, task };
}

describe('done', () => {
  test('without a key lists what could be marked, each with its key, and changes nothing', async () => {
    const { loamtide, view } = await opened();
    const { code, out } = await loamtide('done');
    expect(code).toBe(0);
    expect(out).toContain('Squeeze a handful of the loam (April 21, 2027)\n  squeeze-test/soil:loam/2027/1\n');
    expect((await view()).ledger).toHaveLength(1);
  });

  test('marks a task done on its day, and tells what moved', async () => {
    const { loamtide, view } = await opened();
    const { code, out } = await loamtide('done', TURN, '--on', '2027-04-16');
    expect(code).toBe(0);
    expect(out).toContain('Entry 2: Done on April 16: Turn the pile in Left bay');
    expect(out).toMatch(/What moved:\n {2}Turn the pile in Left bay: comes on/);
    expect((await view()).garden.piles[0]?.turns).toEqual(['2027-04-16']);
  });

  test('answers a key that is not there with the nearest ones', async () => {
    const { loamtide } = await opened();
    const { code, err } = await loamtide('done', 'pile-turn/pile:left-bay-2027-04-04/turn:11');
    expect(code).not.toBe(0);
    expect(err).toContain('is not in the plan.');
    expect(err).toContain(`Did you mean ${TURN}`);
  });

  test('takes litres for the one task that counts them, and refuses them for others', async () => {
    const { loamtide, view, task } = await opened();
    const { key } = await task('topdress');
    expect((await loamtide('done', TURN, '--litres', '5')).err).toContain('none of these tasks counts that.');
    expect((await loamtide('done', key, TURN, '--litres', '31.5', '--on', '2027-04-16')).code).toBe(0);
    expect((await view()).garden.topdressed.at(-1)).toMatchObject({ litres: 31.5, on: '2027-04-16' });
  });

  test('takes grams of seed for an order, and keeps them in the drawer', async () => {
    const { loamtide, view, task } = await opened();
    const { key, makes } = await task('order-cover-seed');
    const [ordered] = makes;
    expect((await loamtide('done', key, '--grams', '500')).code).toBe(0);
    const { seeds } = (await view()).garden;
    expect(seeds.at(-1)?.plant.id).toBe(ordered?.makes === 'seed-bought' ? ordered.coverId : 'no seed');
    expect(seeds.reduce((sum, { held }) => sum + (held?.grams ?? 0), 0)).toBeCloseTo(500, 0);
  });

  test.each([
    ['--litres', '0'],
    ['--litres', 'lots'],
    ['--grams', '-3'],
    ['--on', '2027-02-29'],
    ['--on', '2030-01-01'],
  ])('refuses %s %s, and keeps nothing', async (flag, value) => {
    const { loamtide, view, task } = await opened();
    const { key } = await task('topdress');
    expect((await loamtide('done', key, flag, value)).code).not.toBe(0);
    expect((await view()).ledger).toHaveLength(1);
  });

  test('says the same as JSON', async () => {
    const { loamtide } = await opened();
    const listed = JSON.parse((await loamtide('done', '--format', 'json')).out);
    expect(listed.tasks).toContainEqual(expect.objectContaining({ key: 'seed-order/garden/2027', state: 'open' }));
    const told = JSON.parse((await loamtide('done', TURN, '--format', 'json')).out);
    expect(told).toMatchObject({ garden: 'hollow-lane', entry: 2, doubts: [] });
    expect(told.moves.length).toBeGreaterThan(0);
  });
});

describe('skip', () => {
  test('takes a task out of the plan, and undo brings it back', async () => {
    const { loamtide, view } = await opened();
    const state = async () => (await view()).plan.tasks.find(({ key }) => key === TURN)?.state;
    expect((await loamtide('skip', TURN)).out).toContain('Entry 2: Skipped: Turn the pile in Left bay');
    expect(await state()).toBe('skipped');
    expect((await loamtide('undo', '--apply')).code).toBe(0);
    expect(await state()).toBe('open');
  });

  test('answers a wrong key with the nearest ones, and refuses one that is skipped already', async () => {
    const { loamtide } = await opened();
    expect((await loamtide('skip', TURN.toUpperCase())).err).toContain(`Did you mean ${TURN}`);
    await loamtide('skip', TURN);
    expect((await loamtide('skip', TURN)).err).toContain('is skipped already.');
  });
});
