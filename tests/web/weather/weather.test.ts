import { describe, expect, it } from 'vitest';
import { told } from '../../steward/household.ts';
import { plain } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const PATH = `${GARDEN}/weather`;
const query = (fields: Record<string, string>) => `${PATH}?${new URLSearchParams(fields)}`;

/** Tomatoes stand out early, so that snow has something to hurt. */
const file = sampleFile({ plantings: [{ bed: 'middle', crop: 'tomato', setOut: '2027-04-12' }] });
const SNOW = { day: TODAY, kind: 'observed', 'snow-lying': '6' };

describe('the weather log', () => {
  it('is named beside the other pages, and says that nothing is logged yet', async () => {
    const { get } = await sampleApp();
    expect(await (await get(GARDEN)).text()).toContain(`href="${PATH}"`);
    const text = await (await get(PATH)).text();
    expect(text).toContain('Nothing has been logged these three weeks');
    expect(text).toContain('Another unit is typed with its figure, such as 12 mm or -1 C.');
  });

  it('shows three weeks, days without a row among them, and what is expected, in the units of the garden', async () => {
    const { get, steward } = await sampleApp();
    const days = [
      { day: '2027-04-18', kind: 'observed', tminC: -1.1, tmaxC: 10, rainMm: 12.7, snowDepthMm: 0 },
      { day: '2027-03-20', kind: 'observed', tminC: -9 },
      { day: '2027-04-22', kind: 'expected', newSnowMm: 76.2 },
    ] as const;
    await steward.report('mill-row', { kind: 'weather-logged', days: [...days] }, 'test');
    const text = await (await get(PATH)).text();
    const rowOf = (day: string) => text.slice(text.indexOf(`?day=${day}`)).split('</tr>')[0] ?? '';
    expect(rowOf('2027-04-18')).toContain('<td>30</td><td>50</td><td>0.5</td><td></td><td>0</td><td></td>');
    expect(rowOf('2027-04-22')).toContain('<td>3</td>');
    expect(rowOf('2027-04-01')).toContain('not logged');
    expect(text.indexOf('?day=2027-03-20')).toBeGreaterThan(text.indexOf('Earlier: one logged day'));
  });

  it('says where more than five days were not logged, and what stands in for them', async () => {
    const { get, steward } = await sampleApp();
    const logged = ['2027-04-01', '2027-04-15', '2027-04-20'].map((day) => ({
      day,
      kind: 'observed' as const,
      tminC: 1,
    }));
    await steward.report('mill-row', { kind: 'weather-logged', days: logged }, 'test');
    const text = await (await get(PATH)).text();
    expect(text.match(/No temperature was logged/g)).toHaveLength(1);
    expect(text).toContain('from April 2 to April 14, 13 days. What is usual stands in');
  });

  it('opens the form for a day that is chosen, as a forecast where it is to come', async () => {
    const { get } = await sampleApp();
    const text = await (await get(`${PATH}?day=2027-04-22`)).text();
    expect(text).toContain('name="day" value="2027-04-22"');
    expect(text).toMatch(/value="expected" checked/);
  });

  it('shows first what a day would move, with why, and keeps nothing', async () => {
    const { get, steward } = await sampleApp(file);
    const response = await get(query(SNOW));
    const text = await response.text();
    expect(response.status).toBe(200);
    expect(text).toContain('Weather of April 20, 2027: snow lying 6 in');
    expect(text).toContain('What is added');
    expect(text).toContain('Snow tonight: shelter tomato');
    expect(text).toContain('it is taken for one of 32 °F.');
    expect(text).toContain('This climate has no daily record of rain');
    expect(text).not.toMatch(/[⟦⟧]/);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('shows a figure as finely as it was typed', async () => {
    const { get } = await sampleApp(file);
    const rain = { day: '2027-04-20', kind: 'observed', rain: '0.6', low: '31.5' };
    expect(plain(await (await get(query(rain))).text())).toContain(
      'Weather of April 20, 2027: low 31.5 °F, rain 0.6 in',
    );
  });

  it('takes it in as one entry with the very tasks that were shown, and History takes it back', async () => {
    const { get, send, steward } = await sampleApp(file);
    const before = told((await steward.view('mill-row')).plan);
    const answer = await send(PATH, SNOW);
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, `${PATH}?kept=2`]);
    const { plan, ledger, garden } = await steward.view('mill-row');
    expect([ledger.length, garden.weather]).toEqual([2, [{ day: TODAY, kind: 'observed', snowDepthMm: 152.4 }]]);
    expect(plan.tasks.map(({ title }) => title)).toContain('Snow tonight: shelter tomato');
    expect(await (await get(`${GARDEN}/history`)).text()).toContain('Weather of April 20, 2027: snow lying 6 in');
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect(told((await steward.view('mill-row')).plan)).toEqual(before);
  });

  it('says what a second report of a day takes the place of', async () => {
    const { get, send } = await sampleApp(file);
    await send(PATH, { ...SNOW, low: '28' });
    const text = await (await get(query({ ...SNOW, 'snow-lying': '2' }))).text();
    expect(text).toContain('It takes the place of what was logged of that day: snow lying 6 in.');
  });

  it('reads centimetres of snow and millimetres of rain in a metric garden, and units that are written', async () => {
    const metric = sampleFile({ garden: { ...sampleFile().garden, units: 'metric' } });
    const { get, send, steward } = await sampleApp(metric);
    await send(PATH, { day: TODAY, kind: 'observed', rain: '4,6', 'new-snow': '8', 'snow-lying': '3in', low: '30 F' });
    expect((await steward.view('mill-row')).garden.weather).toEqual([
      { day: TODAY, kind: 'observed', tminC: expect.closeTo(-1.11, 2), rainMm: 4.6, newSnowMm: 80, snowDepthMm: 76.2 },
    ]);
    expect(await (await get(`${GARDEN}/history`)).text()).toContain('new snow 8 cm');
  });

  it.each<[string, Record<string, string>, string]>([
    ['a day that is none', { ...SNOW, day: 'Tuesday' }, '&quot;Tuesday&quot; is not a date'],
    ['a day to come as seen', { ...SNOW, day: '2027-04-21' }, 'Give a day from'],
    ['a forecast of too far ahead', { ...SNOW, kind: 'expected', day: '2027-05-01' }, 'Give a day from 2027-04-20'],
    ['neither seen nor expected', { ...SNOW, kind: 'dreamt' }, 'Choose one of the two.'],
    ['nothing measured', { day: TODAY, kind: 'observed' }, 'Give at least one figure.'],
    ['words', { ...SNOW, low: 'cold' }, '<strong>Low, °F:</strong> &quot;cold&quot; is no figure.'],
    ['three metres of new snow', { ...SNOW, 'new-snow': '118' }, 'Give a figure from 0 to 98, such as 3'],
    ['a high below the low', { ...SNOW, low: '50', high: '40' }, 'Swap the two'],
  ])('refuses %s, looked at or sent, with the mend and with what was typed', async (_, fields, mend) => {
    const { get, send, steward } = await sampleApp(file);
    for (const answer of [await get(query(fields)), await send(PATH, fields)]) {
      expect(answer.status).toBe(422);
      const text = await answer.text();
      expect(text).toContain(mend);
      if (fields['snow-lying']) expect(text).toContain('name="snow-lying" value="6"');
    }
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('shows what was typed as text and never as a page', async () => {
    const { get } = await sampleApp(file);
    expect(await (await get(query({ ...SNOW, low: '<b>cold' }))).text()).toContain('&lt;b&gt;cold');
  });
});
