import { describe, expect, it } from 'vitest';
import { taskPath } from '../../../src/web/addresses/addresses.ts';
import { sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const KEY = 'pile-maturity/pile:spring-pile';
const PAGE = taskPath('mill-row', KEY);

/** A pile that has cured for four weeks. */
async function curedApp() {
  const { piles } = sampleFile();
  return sampleApp(
    sampleFile({
      piles: piles.map((pile) => ({
        ...pile,
        built: '2026-10-01',
        readings: [],
        turns: ['2026-10-09'],
        curingSince: '2027-03-22',
      })),
    }),
  );
}

describe('the look whether compost is ready', () => {
  it('can be answered with what is amiss; the next look is two weeks on', async () => {
    const { get, send, steward } = await curedApp();
    expect(await (await get(PAGE)).text()).toContain('It is not ready yet');
    const answer = await send(PAGE, { do: 'not-ready', on: TODAY, failed: ['smells', 'coarse'] });
    expect(answer.status).toBe(303);
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.piles[0]?.notReady).toEqual([{ on: TODAY, failed: ['smells', 'coarse'] }]);
    expect(plan.tasks.find(({ key }) => key === KEY)?.window.earliest).toBe('2027-05-04');
    expect(await (await get('/gardens/mill-row/history')).text()).toContain(
      'The compost in Left bay was not ready on April 20: it smells sharp or sour in the bag, what went in can still be told apart',
    );
  });

  it('sends a pile that heats again back to work, and all of it is taken back by one undo', async () => {
    const { send, steward } = await curedApp();
    const before = (await steward.view('mill-row')).plan.tasks.map(({ key, day }) => [key, day]);
    await send(PAGE, { do: 'not-ready', on: TODAY, failed: 'heats' });
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.piles[0]?.curingSince).toBeUndefined();
    expect(plan.tasks.some(({ key }) => key.startsWith('pile-turn/pile:spring-pile'))).toBe(true);
    await steward.undo('mill-row', undefined, 'a test');
    expect((await steward.view('mill-row')).plan.tasks.map(({ key, day }) => [key, day])).toEqual(before);
  });

  it('asks what is amiss', async () => {
    const { send, steward } = await curedApp();
    const answer = await send(PAGE, { do: 'not-ready', on: TODAY });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Tick at least one, or mark it done.');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});
