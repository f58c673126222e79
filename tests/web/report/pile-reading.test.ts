import { describe, expect, it } from 'vitest';
import { GARDEN, sampleApp, TODAY } from '../sample-garden.ts';

const PATH = `${GARDEN}/report/pile`;
const LOOK = { pile: 'spring-pile', on: TODAY, temp: '140', moisture: 'damp', smell: '' };

describe('a look at a pile', () => {
  it('has a form with the piles that work, and the last looks', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/report`)).text()).toContain(`href="${PATH}"`);
    const text = await (await get(PATH)).text();
    expect(text).toContain('Left bay, built April 6');
    expect(text).toContain('136.4 °F'.replace('.4', ''));
  });

  it('is kept as one entry, in the units of the garden', async () => {
    const { get, send, steward } = await sampleApp();
    const answer = await send(PATH, { ...LOOK, pests: 'yes' });
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, `${PATH}?kept=2`]);
    const html = await (await get(`${PATH}?kept=2`)).text();
    expect(html).toMatch(
      /role="status">Kept\. .*Turn the pile in Left bay from .* to .*<a href="[^"]*undo\?entry=2">Take it back/,
    );
    const { garden, ledger } = await steward.view('mill-row');
    expect(garden.piles[0]?.readings.at(-1)).toEqual({ on: TODAY, tempC: 60, moisture: 'damp', pests: true });
    expect(ledger).toHaveLength(2);
  });

  it('is kept with its hour where one is given beside the heat', async () => {
    const { send, steward } = await sampleApp();
    expect((await send(PATH, { ...LOOK, at: '14:30' })).status).toBe(303);
    expect((await steward.view('mill-row')).garden.piles[0]?.readings.at(-1)).toMatchObject({ at: '14:30', tempC: 60 });
  });

  it.each([
    ['nothing seen', { ...LOOK, temp: '', moisture: '' }, 'Say at least one thing of the pile.'],
    ['a core no pile has', { ...LOOK, temp: '900' }, 'is no core of a pile'],
    ['an hour no day has', { ...LOOK, at: '25:00' }, 'Give an hour such as 14:30'],
    ['a day to come', { ...LOOK, on: '2027-04-21' }, 'Give a day up to today'],
    ['another pile', { ...LOOK, pile: 'none' }, 'is not a pile of this garden'],
  ])('is refused with the mend: %s', async (_, fields, mend) => {
    const { send, steward } = await sampleApp();
    const answer = await send(PATH, fields);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(mend);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});
