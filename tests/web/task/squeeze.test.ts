import { describe, expect, test } from 'vitest';
import { taskPath } from '../../../src/web/addresses/addresses.ts';
import { sampleApp, TODAY } from '../sample-garden.ts';

const SECOND = 'squeeze-test/soil:loam/2027/2';
const THIRD = 'squeeze-test/soil:loam/2027/3';
const smeared = (on: string) => ({ on, soilTexture: 'loam' as const, answer: 'smears' as const });

/** The garden after a handful smeared some days ago: the second is open. */
async function smearedApp() {
  const app = await sampleApp();
  await app.steward.report('mill-row', { kind: 'soil-squeezed', ...smeared('2027-04-16') }, 'a test');
  return app;
}

const at = (key: string) => taskPath('mill-row', key);

describe('the page of a squeeze test', () => {
  test('has a second button for a handful that smears, which opens the next test', async () => {
    const { get, send, steward } = await smearedApp();
    expect(await (await get(at(SECOND))).text()).toContain('>It smears</button>');
    const answer = await send(at(SECOND), { do: 'smears', on: TODAY });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(`${at(THIRD)}?kept=${(await steward.view('mill-row')).ledger.length}`);
    expect((await steward.view('mill-row')).garden.soilSqueezes).toEqual([smeared('2027-04-16'), smeared(TODAY)]);
  });

  test('marked done says that it crumbled', async () => {
    const { send, steward } = await smearedApp();
    await send(at(SECOND), { do: 'done', on: TODAY, key: SECOND });
    const { garden, plan } = await steward.view('mill-row');
    expect(garden.soilSqueezes).toEqual([
      smeared('2027-04-16'),
      { on: TODAY, soilTexture: 'loam', answer: 'crumbles' },
    ]);
    expect(plan.tasks.some(({ key }) => key === THIRD)).toBe(false);
  });

  test('refuses a day that is none, and an answer to a task that squeezes nothing', async () => {
    const { send } = await smearedApp();
    expect((await send(at(SECOND), { do: 'smears', on: 'soon' })).status).toBe(422);
    const other = await send(at('pile-turn/pile:spring-pile/turn:2'), { do: 'smears', on: TODAY });
    expect(other.status).toBe(422);
    expect(await other.text()).toContain('This task squeezes no soil.');
  });
});
