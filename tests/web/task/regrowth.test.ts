import { describe, expect, it } from 'vitest';
import { taskPath } from '../../../src/web/addresses/addresses.ts';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const KEY = 'cover-regrowth/stand:rye-north/check:1';
const PAGE = taskPath('mill-row', KEY);

/** Rye in the north bed, cut eleven days ago, with beans to follow on the first of June. */
async function cutApp(regrowth: object[] = []) {
  const { coverStands } = sampleFile();
  return sampleApp(
    sampleFile({
      coverStands: coverStands.map((stand) =>
        stand.id === 'rye-north' ? { ...stand, cut: '2027-04-09', regrowth } : stand,
      ),
    }),
  );
}

const text = async (answer: Response | Promise<Response>) => withoutWhys(await (await answer).text());

describe('the look for regrowth', () => {
  it('that found nothing green is marked done, and its page and its bed say from when the bed is free', async () => {
    const { get, send } = await cutApp();
    expect(await text(get(PAGE))).toContain('Nothing is green');
    expect((await send(PAGE, { do: 'done', on: TODAY, key: KEY })).status).toBe(303);
    const free = 'The bed is free for plants from April 23, 2027, for small seed from April 30, 2027.';
    expect(await text(get(PAGE))).toContain(`The winter rye was cut on April 9, 2027 and is over. ${free}`);
    expect(await text(get(`${GARDEN}/beds/north`))).toContain(free);
  });

  it('that found it grown again leads to another cut, and is told in the history', async () => {
    const { get, send, steward } = await cutApp();
    const answer = await send(PAGE, { do: 'grew-again', on: TODAY, answer: 'cut' });
    const next = taskPath('mill-row', 'cover-cut-again/stand:rye-north/1');
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, `${next}?kept=2`]);
    expect(await text(get(next))).toContain('Next here: snap bean, planned for June 1');
    expect(await text(get(`${GARDEN}/history`))).toContain(
      'The winter rye in North bed had grown again on April 20: to be cut again',
    );
    const done = (await steward.view('mill-row')).plan.tasks.find(({ key }) => key === KEY);
    expect(done?.state).toBe('done');
    await steward.undo('mill-row', undefined, 'a test');
    const { plan } = await steward.view('mill-row');
    expect(plan.tasks.some(({ key, state }) => key === KEY && state === 'open')).toBe(true);
  });

  it('may lead to a sheet at once, and from the second cut too', async () => {
    const { get, send, steward } = await cutApp();
    await send(PAGE, { do: 'grew-again', on: TODAY, answer: 'cut' });
    const cutAgain = taskPath('mill-row', 'cover-cut-again/stand:rye-north/1');
    expect(await text(get(cutAgain))).toContain('A sheet instead');
    const answer = await send(cutAgain, { do: 'grew-again', on: TODAY, answer: 'sheet' });
    expect(answer.headers.get('Location')).toBe(`${taskPath('mill-row', 'cover-sheet/stand:rye-north/lay:1')}?kept=3`);
    const { garden } = await steward.view('mill-row');
    expect(garden.stands.find(({ id }) => id === 'rye-north')?.regrowth).toHaveLength(2);
    expect(await text(get(`${GARDEN}/beds/north`))).toContain('it goes under a sheet');
  });

  it('offers only a sheet the second time', async () => {
    const { get } = await cutApp([
      { on: '2027-04-10', what: 'grew-again' },
      { on: '2027-04-10', what: 'cut-again' },
    ]);
    const page = await text(get(taskPath('mill-row', 'cover-regrowth/stand:rye-north/check:2')));
    expect(page).toContain('Lay a sheet');
    expect(page).not.toContain('Cut it again');
  });

  it.each([
    ['a day before the cut', { on: '2027-04-01', answer: 'cut' }, 'when it was cut'],
    ['a day to come', { on: '2027-04-28', answer: 'cut' }, 'cannot be used'],
    ['no answer', { on: TODAY }, 'Cut it again, or lay a sheet.'],
    ['an answer nobody offered', { on: TODAY, answer: 'burn' }, 'Cut it again, or lay a sheet.'],
  ])('refuses %s, with the mend', async (_, fields, mend) => {
    const { send, steward } = await cutApp();
    const answer = await send(PAGE, { do: 'grew-again', ...fields });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(mend);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('is told only once the cut is marked done: its page says so, and leads to the cut', async () => {
    const { get, send, steward } = await sampleApp();
    const page = taskPath('mill-row', 'cover-regrowth/stand:vetch-middle/check:1');
    const shown = withoutWhys(await (await get(page)).text());
    expect(shown).not.toContain('value="grew-again"');
    expect(shown).toContain('It can be told here once its cut is marked done');
    expect(shown).toContain(`href="${taskPath('mill-row', 'cover-cut/stand:vetch-middle')}"`);
    const answer = await send(page, { do: 'grew-again', on: TODAY, answer: 'cut' });
    expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining('was not cut yet')]);
    await steward.markDone('mill-row', ['cover-cut/stand:vetch-middle'], TODAY, 'a test');
    expect(withoutWhys(await (await get(page)).text())).toContain('value="grew-again"');
  });

  it('is not asked of a cover that is only suggested', async () => {
    const { get, send, steward } = await sampleApp();
    const { garden, plan } = await steward.view('mill-row');
    const told = new Set(garden.stands.map(({ id }) => id));
    const look = plan.tasks.find(({ kind, subject }) => kind === 'check-regrowth' && !told.has(subject.id ?? ''));
    const page = taskPath('mill-row', look?.key ?? '');
    expect(withoutWhys(await (await get(page)).text())).toContain('It can be told here once its cut is marked done');
    const answer = await send(page, { do: 'grew-again', on: TODAY, answer: 'cut' });
    expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining('Mark that done first.')]);
  });

  it('is no answer on the page of other work', async () => {
    const { send } = await cutApp();
    const page = taskPath('mill-row', 'cover-cut/stand:vetch-middle');
    const answer = await send(page, { do: 'grew-again', on: TODAY, answer: 'cut' });
    expect([answer.status, await answer.text()]).toEqual([422, expect.stringContaining('looks at no cover')]);
  });
});
