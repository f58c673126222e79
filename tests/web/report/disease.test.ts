import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const PATH = `${GARDEN}/report/disease`;

/** Spinach stands in the wall bed; chard is planned to follow it. */
const file = sampleFile({
  plantings: [
    { bed: 'wall', crop: 'spinach', sow: '2026-09-01', lastHarvest: '2027-05-24' },
    { bed: 'wall', crop: 'swiss-chard', sow: '2028-05-10' },
    { bed: 'north', crop: 'snap-bean', sow: '2027-06-01' },
  ],
});

const ASKED = { bed: 'wall', crop: 'spinach', disease: 'leaf spot', on: TODAY };
const query = (fields: Record<string, string>) => `${PATH}?${new URLSearchParams(fields)}`;

describe('the journey of a disease', () => {
  it('begins with the crops that stand or stood lately in each bed', async () => {
    const { get } = await sampleApp(file);
    expect(withoutWhys(await (await get(`${GARDEN}/report`)).text())).toContain(`href="${PATH}"`);
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain(`href="${PATH}?bed=wall&amp;crop=spinach"`);
    expect(text).not.toContain('crop=swiss-chard');
    expect(text).toContain(`href="${PATH}?bed=north"`);
  });

  it('asks for a name, with those the handbook knows of the crop, and for the day', async () => {
    const { get } = await sampleApp(file);
    const text = withoutWhys(await (await get(query({ bed: 'wall', crop: 'spinach' }))).text());
    expect(text).toContain('<option value="cercospora leaf spot"');
    expect(text).toContain(`value="${TODAY}"`);
    expect(withoutWhys(await (await get(query({ bed: 'wall' }))).text())).toContain(
      '<option value="garlic">Garlic</option>',
    );
  });

  it('shows everything that would come of it, and keeps nothing', async () => {
    const { get, steward } = await sampleApp(file);
    const text = withoutWhys(await (await get(query(ASKED))).text());
    expect(text).toContain('What the bed is closed to');
    expect(text).toContain('out of this bed for 3 years from April 20: until April 20, 2030.');
    expect(text).toContain('Swiss chard, planned for May 10, 2028');
    expect(text).toContain('Take the sick spinach out of Wall bed, not to the compost: April 20, 2027');
    expect(text).toContain('Hold back the compost in Left bay');
    expect(text).toContain('roots and all, nothing to the compost');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('takes it in as one entry, which History takes back', async () => {
    const { get, send, steward } = await sampleApp(file);
    const before = (await steward.view('mill-row')).plan.tasks.map(({ key, day, title }) => [key, day, title]);
    const answer = await send(PATH, ASKED);
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, `${GARDEN}/history?kept=2`]);
    expect(withoutWhys(await (await get(`${GARDEN}/history`)).text())).toContain(
      'Found leaf spot on the Spinach in Wall bed',
    );
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect((await steward.view('mill-row')).plan.tasks.map(({ key, day, title }) => [key, day, title])).toEqual(before);
  });

  it.each<[string, Record<string, string>, string]>([
    ['no name', { ...ASKED, disease: ' ' }, 'Give its name'],
    ['a day to come', { ...ASKED, on: '2027-04-21' }, 'Give a day from'],
    ['no day', { ...ASKED, on: 'lately' }, '&quot;lately&quot; is not a date'],
    ['a crop nobody knows', { ...ASKED, crop: 'triffid' }, 'Choose the crop it was found on.'],
  ])('refuses %s on both ways, with the mend', async (_, fields, mend) => {
    const { get, send, steward } = await sampleApp(file);
    for (const answer of [await get(query(fields)), await send(PATH, fields)]) {
      expect(answer.status).toBe(422);
      expect(await answer.text()).toContain(mend);
    }
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('shows what was typed as text and never as a page', async () => {
    const { get } = await sampleApp(file);
    expect(withoutWhys(await (await get(query({ ...ASKED, disease: '<b>spots' }))).text())).toContain('&lt;b&gt;spots');
  });
});
