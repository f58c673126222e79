import { describe, expect, it } from 'vitest';
import { bedPath, taskPath } from '../../../src/web/addresses/addresses.ts';
import { withoutWhys } from '../plain-text.ts';
import { sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const KEY = 'cover-check/stand:oats-south';
const PAGE = taskPath('mill-row', KEY);

/** Oats sown in the south bed on a day, with work on them as told. */
const oats = (sow: string, more: object = {}, file: object = {}) =>
  sampleApp(sampleFile({ coverStands: [{ id: 'oats-south', bed: 'south', cover: 'oats', sow, ...more }], ...file }));

const answer = (covered: string, weedy = 'no', on = TODAY) => ({ do: 'looked', on, covered, weedy });

describe('the page of the look at a young cover', () => {
  it('asks how much of the ground is green and whether weeds are among it; the answer settles it', async () => {
    const { get, send, steward } = await oats('2027-04-03');
    const page = withoutWhys(await (await get(PAGE)).text());
    for (const words of ['hardly any', 'about a third', 'about two thirds', 'nearly all', 'Weeds among it'])
      expect(page).toContain(words);
    const told = await send(PAGE, answer('two-thirds', 'yes'));
    expect(told.status).toBe(303);
    expect(told.headers.get('location')).toBe(`${bedPath('mill-row', 'south')}?kept=2`);
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.stands[0]?.looked).toEqual([{ on: TODAY, covered: 'two-thirds', weedy: true }]);
    expect(plan.tasks.find(({ key }) => key === KEY)?.state).toBe('done');
    expect(withoutWhys(await (await get('/gardens/mill-row/history')).text())).toContain(
      'Looked at the young cover in South bed on April 20: about two thirds of the ground is green, with weeds among it',
    );
  });

  it('of a thin one leads to its bed, where the sowing of what is bare stands first, and the year shows its days', async () => {
    const { get, send } = await oats('2027-04-03', {}, { plantings: [] });
    await send(PAGE, answer('a-third'));
    const again = taskPath('mill-row', 'cover-sow-again/stand:oats-south/look:1');
    expect(withoutWhys(await (await get(bedPath('mill-row', 'south'))).text())).toContain(`href="${again}"`);
    expect(withoutWhys(await (await get('/gardens/mill-row/year')).text())).toContain(again);
    expect(withoutWhys(await (await get(again)).text())).toContain('Scatter it on the bare ground only');
  });

  it('is taken back as one, and the task is open again', async () => {
    const { get, send, steward } = await oats('2027-04-03');
    const before = (await steward.view('mill-row')).plan.tasks.map(({ key, day, state }) => [key, day, state]);
    await send(PAGE, answer('a-third', 'yes'));
    expect(withoutWhys(await (await get(PAGE)).text())).toContain('Take that back');
    await steward.undo('mill-row', undefined, 'a test');
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.stands[0]?.looked).toBeUndefined();
    expect(plan.tasks.map(({ key, day, state }) => [key, day, state])).toEqual(before);
  });

  it('can still be marked done with nothing to tell', async () => {
    const { send, steward } = await oats('2027-04-03');
    await send(PAGE, { do: 'done', on: TODAY, key: KEY });
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.stands[0]?.looked).toBeUndefined();
    expect(plan.tasks.find(({ key }) => key === KEY)?.state).toBe('done');
  });

  it.each([
    [answer('half'), 'Choose one of the four.'],
    [answer('a-third', 'perhaps'), 'Choose yes or no.'],
    [answer('a-third', 'no', '2027-02-30'), 'is not a date'],
    [answer('a-third', 'no', '2027-04-21'), 'April 21, 2027 is still to come.'],
    [answer('a-third', 'no', '2027-04-02'), 'April 2, 2027 is before it was sown, on April 3, 2027.'],
  ])('tells what cannot be, keeps what was chosen, and takes nothing in: %j', async (form, problem) => {
    const { send, steward } = await oats('2027-04-03');
    const refused = await send(PAGE, form);
    expect(refused.status).toBe(422);
    const page = await refused.text();
    expect(page).toContain(problem);
    if (form.covered === 'a-third') expect(page).toMatch(/value="a-third" checked/);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('of a cover that is still to be sown asks nothing, and tells when that is meant for', async () => {
    const { get, send } = await oats('2027-04-28', { bed: 'wall' });
    const page = withoutWhys(await (await get(PAGE)).text());
    expect(page).not.toContain('Weeds among it');
    expect(page).toContain('It can be told here once its sowing is marked done: <a');
    const refused = await send(PAGE, answer('a-third'));
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('Its oats seed is not sown yet: that is meant for April 28, 2027.');
  });
});
