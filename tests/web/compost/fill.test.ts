import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const PATH = `${GARDEN}/compost/fill`;
const BED = '?length=8+ft&width=4+ft&depth=12+in&paths=20+sq+ft&compost=&phosphorus=';
const newBed = { id: 'new', name: 'New bed', lengthM: 2.4, widthM: 1.2, depthM: 0.3, plannedFor: '2027-06-05' };
const withBed = (bed: object = newBed, more: object = {}) => {
  const file = sampleFile();
  return sampleFile({ beds: [...file.beds, bed], ...more });
};

describe('the page that fills a new bed', () => {
  it('asks first, and is named in the yard', async () => {
    const { get } = await sampleApp();
    expect(withoutWhys(await (await get(`${GARDEN}/compost`)).text())).toContain(`href="${PATH}"`);
    const text = withoutWhys(await (await get(PATH)).text());
    expect(text).toContain('Depth of soil');
    expect(text).not.toContain('How that is reckoned');
  });

  it('answers in the garden’s units, and keeps what was typed', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(await (await get(PATH + BED)).text());
    expect(text).toContain('32 sq ft filled 12 in deep hold 32 cu ft.');
    expect(text).toContain('value="20 sq ft"');
    expect(text).not.toMatch(/⟦|\d mm\b/);
  });

  it('says all that cannot be used at once, with 422', async () => {
    const { get } = await sampleApp();
    const answer = await get(`${PATH}?length=8&width=wide&depth=`);
    const text = await answer.text();
    expect(answer.status).toBe(422);
    for (const part of ['Length', 'Width', 'Depth', 'such as 2.4m or 8ft']) expect(text).toContain(part);
    expect(text).toContain('value="wide"');
  });
});

it('the page of a clay bed has the case for compost, in the garden’s units', async () => {
  const file = sampleFile();
  const { get } = await sampleApp({ ...file, garden: { ...file.garden, soilTexture: 'clay' } });
  const text = withoutWhys(await (await get(`${GARDEN}/beds/north`)).text());
  expect(text).toContain('Its soil');
  expect(text).toContain('Up to 1 in a year builds it up');
  expect(text).toContain('Sand is no cure for clay');
  const { get: loam } = await sampleApp();
  expect(await (await loam(`${GARDEN}/beds/north`)).text()).not.toContain('Its soil');
});

describe('the page of a planned bed', () => {
  it('has its tasks with their days, its sum, and no unknown past', async () => {
    const { get } = await sampleApp(withBed());
    const text = withoutWhys(await (await get(`${GARDEN}/beds/new`)).text());
    expect(text).toContain('Still to be made');
    for (const title of ['Order the mix for New bed', 'Mark out New bed and cover the ground', 'Fill New bed'])
      expect(text).toMatch(new RegExp(`\\w+ \\d+, 2027: <a href="[^"]+">${title}`));
    expect(text).toContain('New bed is to be there by June 5, 2027');
    expect(text).toMatch(/has no past, so that no crop family has to wait/);
    expect(text).not.toContain('⟦');
  });

  it('among the other beds it is “not there yet” before its season, and never unknown', async () => {
    const { get } = await sampleApp(withBed({ ...newBed, plannedFor: '2028-06-05' }));
    const table = withoutWhys(await (await get(`${GARDEN}/beds`)).text());
    const row = table.slice(table.indexOf('New bed'), table.indexOf('</tr>', table.indexOf('New bed')));
    // Three seasons behind, and the running one; no more columns than without it.
    expect(row.match(/not there yet/g)).toHaveLength(4);
    expect(row).not.toContain('not known');
    const { get: without } = await sampleApp();
    const columns = (text: string) => text.match(/<th scope="col"/g)?.length;
    expect(columns(table)).toBe(columns(await (await without(`${GARDEN}/beds`)).text()));
  });

  it('once filled is a page like any other', async () => {
    const { get } = await sampleApp(withBed({ ...newBed, plannedFor: '2027-04-10', filledOn: '2027-04-09' }));
    expect(withoutWhys(await (await get(`${GARDEN}/beds/new`)).text())).not.toContain('Still to be made');
  });

  it('marking the filling done makes the bed', async () => {
    const { get, send } = await sampleApp(withBed());
    const answer = await send(`${GARDEN}/tasks/bed-fill/bed:new`, {
      do: 'done',
      on: TODAY,
      key: 'bed-fill/bed:new',
    });
    expect(answer.status).toBe(303);
    expect(withoutWhys(await (await get(`${GARDEN}/beds/new`)).text())).not.toContain('Still to be made');
  });
});
