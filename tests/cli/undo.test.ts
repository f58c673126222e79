import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { withGarden } from './loamtide.ts';

const TURN = 'pile-turn/pile:left-bay-2027-04-04/turn:1';

/** A garden in which the first turn was marked done (entry 2) and the pile was then looked at (entry 3). */
async function withHistory() {
  const { folder, loamtide } = await withGarden();
  await openedIn(folder, async ({ steward }) => {
    await steward.markDone('hollow-lane', [TURN], '2027-04-17', 'a test');
    await steward.readPile('hollow-lane', { pileId: 'left-bay-2027-04-04', on: '2027-04-18', tempC: 40 }, 'a test');
  });
  const ledger = () => openedIn(folder, ({ store }) => store.ledger('hollow-lane'));
  const turn = () =>
    openedIn(folder, async ({ steward }) =>
      (await steward.view('hollow-lane')).plan.tasks.find(({ key }) => key === TURN),
    );
  return { loamtide, ledger, turn };
}

describe('undo', () => {
  test('shows what taking back the newest change would do, and changes nothing', async () => {
    const { loamtide, ledger } = await withHistory();
    const { code, out } = await loamtide('undo');
    expect(code).toBe(0);
    expect(out).toContain('Would take back entry 3: Looked at the pile in Left bay on April 18: 104 °F');
    expect(out).toContain('Nothing was changed. Add --apply to take it back.');
    expect(await ledger()).toHaveLength(3);
  });

  test('of an older change lists later ones about the same things and the tasks that would move', async () => {
    const { loamtide } = await withHistory();
    const { out } = await loamtide('undo', '--entry', '2');
    expect(out).toContain('Would take back entry 2: Done on April 17: Turn the pile in Left bay');
    expect(out).toContain('Later changes about the same things, which stay:\n  3: Looked at the pile in Left bay');
    expect(out).toMatch(/What would move:\n {2}Turn the pile in Left bay: /);
  });

  test('takes it back with --apply, the task open again as before', async () => {
    const { loamtide, ledger, turn } = await withHistory();
    expect((await turn())?.state).toBe('done');
    const { code, out } = await loamtide('undo', '--entry', '2', '--apply');
    expect(code).toBe(0);
    expect(out).toContain('Taken back entry 2');
    expect((await ledger()).at(-1)).toMatchObject({ by: 'command line', fact: { kind: 'entry-undone', entry: 2 } });
    expect((await turn())?.state).toBe('open');
  });

  test('says the same as JSON', async () => {
    const { loamtide } = await withHistory();
    const preview = JSON.parse((await loamtide('undo', '--entry', '2', '--format', 'json')).out);
    expect(preview).toMatchObject({
      garden: 'hollow-lane',
      applied: false,
      entry: { entry: 2, kind: 'tasks-done', by: 'a test' },
      leaning: [{ entry: 3, kind: 'pile-read' }],
    });
    expect(preview.moves).toContainEqual(expect.objectContaining({ key: TURN, from: '2027-04-17' }));
  });

  test('with nothing to undo says so and exits 0', async () => {
    const { loamtide } = await withGarden();
    expect(await loamtide('undo', '--apply')).toMatchObject({
      code: 0,
      out: expect.stringContaining('Nothing can be undone'),
    });
  });

  test.each([
    ['9', 'entry 9: does not exist.'],
    ['1', 'entry 1: holds the garden itself.'],
    ['two', '--entry: "two" cannot be used.'],
  ])('refuses entry %s', async (entry, complaint) => {
    const { loamtide } = await withHistory();
    const { code, err } = await loamtide('undo', '--entry', entry);
    expect(code).toBe(2);
    expect(err).toContain(complaint);
  });
});
