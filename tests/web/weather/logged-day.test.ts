import { describe, expect, it } from 'vitest';
import type { LoggedDay } from '../../../src/garden/weather.ts';
import { plain, read } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';
import { formIn } from '../sent-form.ts';

const LOG = `${GARDEN}/weather`;
const DAY = `${LOG}/day`;
const APRIL_18: LoggedDay = { day: '2027-04-18', kind: 'observed', tminC: -2.2, tmaxC: 10, rainMm: 4.6 };

/** A garden with a seen day, an expected one and an old one. */
async function withLog() {
  const house = await sampleApp();
  const days: LoggedDay[] = [
    { day: '2026-11-02', kind: 'observed', tminC: -6 },
    APRIL_18,
    { day: '2027-04-22', kind: 'expected', tminC: 1 },
  ];
  await house.steward.report('mill-row', { kind: 'weather-logged', days }, 'ada');
  const logged = async (day: string) =>
    (await house.steward.view('mill-row')).garden.weather.filter((row) => row.day === day);
  return { ...house, logged };
}

const SENT = {
  day: '2027-04-18',
  kind: 'observed',
  low: '28',
  high: '50',
  rain: '0.18',
  'new-snow': '',
  'snow-lying': '',
  watering: '',
  _row: JSON.stringify(APRIL_18),
};

describe('the days that were logged', () => {
  it('are listed, seen and expected, older ones folded away, each leading to its own page', async () => {
    const { get } = await withLog();
    const html = await (await get(LOG)).text();
    const text = plain(html);
    expect(text).toMatch(/Expected .*April 22 34/);
    expect(text).toMatch(/Seen, the last three weeks .*April 18 28 50 0\.18/);
    expect(text).toMatch(/Earlier: one logged day Seen earlier .*November 2, 2026 21/);
    expect(html).toContain(`href="${DAY}?day=2027-04-18&amp;kind=observed"`);
    expect(html).toContain(`href="${LOG}?day=2027-04-17"`);
  });

  it('are changed one by one: a figure left empty is no longer measured, one nobody touched stays to the tenth', async () => {
    const { get, send, logged } = await withLog();
    const html = await (await get(`${DAY}?day=2027-04-18&kind=observed`)).text();
    expect(plain(html)).toContain('April 18, 2027, seen Logged of it: low 28 °F, high 50 °F, rain 0.18 in.');
    expect(html).toMatch(/name="low" value="28"/);
    const answer = await send(DAY, { ...SENT, rain: '', high: '52', do: 'keep' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `${LOG}?kept=3`]);
    const [row] = await logged('2027-04-18');
    expect(row).toEqual({ day: '2027-04-18', kind: 'observed', tminC: -2.2, tmaxC: expect.closeTo(11.1, 1) });
    expect(await read(get(`${LOG}?kept=3`))).toMatch(/Kept\. .* Take it back/);
  });

  it('are looked at first where that is asked for, and nothing is kept', async () => {
    const { send, logged } = await withLog();
    const answer = await send(DAY, { ...SENT, low: '10', do: 'look' });
    const html = await answer.text();
    expect([answer.status, plain(html)]).toEqual([200, expect.stringContaining('What keeping it would do')]);
    expect(html).toMatch(/name="low" value="10"/);
    expect(await logged('2027-04-18')).toEqual([APRIL_18]);
  });

  it('make no entry where nothing was changed', async () => {
    const { send, steward } = await withLog();
    const answer = await send(DAY, { ...SENT, do: 'keep' });
    expect(answer.headers.get('location')).toBe(LOG);
    expect((await steward.view('mill-row')).ledger).toHaveLength(2);
  });

  it.each([
    ['a figure that cannot be', { low: '900' }, 'Low, °F: "900" cannot be.'],
    ['a high below the low', { high: '20' }, "The day's highest"],
    ['nothing measured', { low: '', high: '', rain: '' }, 'Nothing is measured.'],
  ])('are refused with %s, and the form comes back', async (_, wrong, words) => {
    const { send, logged } = await withLog();
    for (const what of ['keep', 'look']) {
      const answer = await send(DAY, { ...SENT, ...wrong, do: what });
      expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining(words)]);
    }
    expect(await logged('2027-04-18')).toEqual([APRIL_18]);
  });

  it('are taken out after asking, the forecast of the day left, and put back by History', async () => {
    const { get, send, steward, logged } = await withLog();
    const asked = await read(get(`${DAY}/gone?day=2027-04-22&kind=expected`));
    expect(asked).toContain('Take April 22, 2027, expected, out of the log? What goes: low 34 °F.');
    expect(await logged('2027-04-22')).toHaveLength(1);
    const answer = await send(`${DAY}/gone`, { day: '2027-04-22', kind: 'expected', _row: '{"tminC":1}' });
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `${LOG}?kept=3`]);
    expect(await logged('2027-04-22')).toEqual([]);
    expect(await logged('2027-04-18')).toEqual([APRIL_18]);
    await steward.undo('mill-row', 3, 'ada');
    expect(await logged('2027-04-22')).toHaveLength(1);
  });

  it('are read in the units their form was shown in, whatever was chosen since', async () => {
    const { get, send, logged } = await withLog();
    const { action, fields } = formIn(await (await get(`${DAY}?day=2027-04-18&kind=observed`)).text());
    const own = { 'Sec-Fetch-Site': 'same-origin', Cookie: 'reading=metric' };
    await send(action, { ...fields, high: '52', do: 'keep' }, own);
    // 52 °F is 11.1 °C; 28 °F, which nobody touched, stays -2.2 °C.
    expect(await logged('2027-04-18')).toEqual([{ ...APRIL_18, tmaxC: expect.closeTo(11.1, 1) }]);
  });

  it('changed from two browsers keep what both changed, the second one being told first', async () => {
    const { get, send, logged } = await withLog();
    const { action, fields } = formIn(await (await get(`${DAY}?day=2027-04-18&kind=observed`)).text());
    await send(action, { ...fields, low: '23', do: 'keep' });
    const told = await send(action, { ...fields, rain: '1', do: 'keep' });
    const html = await told.text();
    expect([told.status, plain(html)]).toEqual([409, expect.stringContaining('It was changed meanwhile')]);
    expect((await logged('2027-04-18'))[0]).toMatchObject({ tminC: -5, rainMm: 4.6 });
    const back = formIn(html);
    expect(back.fields).toMatchObject({ low: '23', rain: '1' });
    await send(back.action, { ...back.fields, do: 'keep' });
    expect((await logged('2027-04-18'))[0]).toMatchObject({ tminC: -5, rainMm: 25.4 });
    const gone = await send(`${DAY}/gone`, { day: '2027-04-18', kind: 'observed', _row: JSON.stringify(APRIL_18) });
    expect([gone.status, (await logged('2027-04-18')).length]).toEqual([409, 1]);
  });

  it('say what taking one out would move', async () => {
    const { get, send } = await sampleApp(
      sampleFile({ plantings: [{ bed: 'middle', crop: 'tomato', setOut: '2027-04-12' }] }),
    );
    await send(LOG, { day: '2027-04-20', kind: 'observed', 'snow-lying': '6' });
    const text = await read(get(`${DAY}/gone?day=2027-04-20&kind=observed`));
    expect(text).toMatch(/What goes off the plan .*Snow tonight: shelter tomato/);
  });

  it('that are not there are 404, so that two people cannot take out the same day', async () => {
    const { get, send } = await withLog();
    const gone = { day: '2027-04-17', kind: 'observed' };
    expect((await get(`${DAY}?day=2027-04-17&kind=observed`)).status).toBe(404);
    for (const path of [DAY, `${DAY}/gone`]) expect((await send(path, gone)).status).toBe(404);
  });
});
