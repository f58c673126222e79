import { describe, expect, it } from 'vitest';
import { plain } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const FORM = `${GARDEN}/report/cold-night`;

async function toldTo({ steward }: Awaited<ReturnType<typeof sampleApp>>) {
  return (await steward.view('mill-row')).garden.coldNights;
}

describe('the list of reports', () => {
  it('is linked from every page and leads to the form of each', async () => {
    const { get } = await sampleApp();
    expect(await (await get(GARDEN)).text()).toContain(`href="${GARDEN}/report"`);
    expect(await (await get(`${GARDEN}/report`)).text()).toContain(`href="${FORM}"`);
  });

  it('is no page of a garden that is not kept', async () => {
    const { get } = await sampleApp();
    expect((await get('/gardens/nowhere/report')).status).toBe(404);
    expect((await get('/gardens/nowhere/report/cold-night')).status).toBe(404);
  });
});

describe('the form for a cold night', () => {
  it('asks in the units of the garden, for tonight unless told otherwise', async () => {
    const us = await (await (await sampleApp()).get(FORM)).text();
    expect(us).toContain('The low of the night, °F');
    expect(us).toContain(`value="${TODAY}"`);
    const { garden } = sampleFile();
    const metric = await sampleApp(sampleFile({ garden: { ...garden, units: 'metric' } }));
    expect(await (await metric.get(FORM)).text()).toContain('The low of the night, °C');
  });

  it('takes the low in and leads to the week of that evening', async () => {
    const sample = await sampleApp();
    const answer = await sample.send(FORM, { evening: TODAY, low: '28', how: 'expected' });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('Location')).toBe(`${GARDEN}?week=${TODAY}&kept=2`);
    const [night] = await toldTo(sample);
    expect(night).toMatchObject({ evening: TODAY, how: 'expected' });
    expect(night?.lowC).toBeCloseTo(-2.222, 3);
  });

  it('stands in the history in the gardener’s units', async () => {
    const sample = await sampleApp();
    await sample.send(FORM, { evening: '2027-04-19', low: '-1 C', how: 'measured' });
    expect(await (await sample.get(`${GARDEN}/history`)).text()).toContain(
      'Low measured for the night of April 19, 2027: 30 °F',
    );
  });

  it('says everything that is wrong at once, keeps what was typed, and changes nothing', async () => {
    const sample = await sampleApp();
    const answer = await sample.send(FORM, { evening: 'tonight', low: 'chilly <b>', how: 'expected' });
    expect(answer.status).toBe(422);
    const text = await answer.text();
    expect(text).toContain('&quot;tonight&quot; is not a date. Give a date as year-month-day, such as 2027-04-20.');
    expect(text).toContain('is not a night&#39;s low. Give degrees, such as 30.');
    expect(text).toContain('value="chilly &lt;b&gt;"');
    expect(await toldTo(sample)).toEqual([]);
  });

  it.each([
    [
      'a forecast beyond ten days',
      { evening: '2027-05-01', low: '28', how: 'expected' },
      'from 2027-04-20 to 2027-04-30',
    ],
    ['a forecast for a night gone by', { evening: '2027-04-19', low: '28', how: 'expected' }, 'from 2027-04-20'],
    ['a measured low of a night to come', { evening: '2027-04-21', low: '28', how: 'measured' }, 'to 2027-04-20'],
    ['neither expected nor measured', { evening: TODAY, low: '28', how: '' }, 'Choose one of the two.'],
  ])('refuses %s and says the mend', async (_, fields, mend) => {
    const sample = await sampleApp();
    const answer = await sample.send(FORM, fields);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(mend);
    expect(await toldTo(sample)).toEqual([]);
  });
});

describe('after a cold night was reported', () => {
  /** Lettuce stands out in April. A forecast of 24 °F is below what it stands. */
  const withLettuce = sampleFile({
    plantings: [{ bed: 'middle', crop: 'lettuce-leaf', setOut: '2027-04-10' }],
    coverStands: [],
    gear: [{ what: 'fabric-and-film', areaM2: 10 }],
  });

  it('the week has tonight’s work with its hour on the garden’s own clock, and the morning after', async () => {
    const sample = await sampleApp(withLettuce);
    const answer = await sample.send(FORM, { evening: TODAY, low: '24', how: 'expected' });
    const week = await (await sample.get(answer.headers.get('Location') ?? '')).text();
    // Sunset at 43.1 N 89.4 W on 20 April: 7:44 pm by the sun's equations, so covers are on by a quarter past seven.
    expect(week).toMatch(/before 7:1[05] pm/);
    expect(week).toContain('Frost tonight, 24 °F: cover Middle bed');
    expect(week).toContain('Take the covers off Middle bed');
    expect(week).toMatch(/from 7:[0-5][05] am/);
  });

  it('the page of the task says the hour too', async () => {
    const sample = await sampleApp(withLettuce);
    await sample.send(FORM, { evening: TODAY, low: '24', how: 'expected' });
    const task = plain(await (await sample.get(`${GARDEN}/tasks/frost-cover/night:${TODAY}`)).text());
    expect(task).toMatch(/Only on April 20, before 7:1[05] pm\./);
  });

  it('a low told anew is the same task, its entry revised', async () => {
    const { send, steward } = await sampleApp(withLettuce);
    const entryNow = async () =>
      (await steward.view('mill-row')).plan.entries.find(({ keys }) => keys.includes(`frost-cover/night:${TODAY}`));
    await send(FORM, { evening: TODAY, low: '24', how: 'expected' });
    const before = await entryNow();
    await send(FORM, { evening: TODAY, low: '22', how: 'expected' });
    const after = await entryNow();
    expect(after?.lotId).toBe(before?.lotId);
    expect(after?.sequence).toBe((before?.sequence ?? 0) + 1);
    expect(after?.title).toContain('⟦-5.6 tempC⟧');
  });
});
