/**
 * A bed told, changed and taken out from its form.
 */
import { describe, expect, test } from 'vitest';
import { GARDEN, type SampleApp, sampleApp, sampleFile } from '../sample-garden.ts';
import { formIn } from '../sent-form.ts';
import { gardenNow, opened, wordsOf } from './opened-form.ts';

const NORTH = `${GARDEN}/edit/beds/north`;
const METRIC = { Cookie: 'reading=metric' };
const FROM_A_PAGE = { 'Sec-Fetch-Site': 'same-origin' };

async function rowOf({ steward }: SampleApp): Promise<object> {
  return (await steward.fileNow('mill-row')).beds[0] ?? {};
}

describe('a bed', () => {
  test('renamed and made longer keeps its tasks, and says what it moved and how to take it back', async () => {
    const app = await sampleApp();
    const keysBefore = (await app.steward.view('mill-row')).plan.tasks.map(({ key }) => key);
    const fields = await opened(app, NORTH);
    expect(fields).toMatchObject({ name: 'North bed', lengthM: '9.84', widthM: '3.94', raised: 'yes' });
    const kept = await app.send(NORTH, { ...fields, name: 'Far bed', lengthM: '12' });
    expect(kept.status).toBe(303);
    const led = kept.headers.get('location') ?? '';
    expect(led).toBe('/gardens/mill-row/beds/north?kept=2');
    const { garden, plan } = await app.steward.view('mill-row');
    // 12 ft are 3.6576 m by definition; the width nobody touched stays what it was.
    expect(garden.beds[0]).toMatchObject({ id: 'north', name: 'Far bed', lengthM: 3.6576, widthM: 1.2 });
    expect(plan.tasks.map(({ key }) => key)).toEqual(keysBefore);
    const html = await (await app.get(led)).text();
    expect(wordsOf(html)).toMatch(
      /Kept\. .*in North bed .* is now: .*in Far bed.* \d+ tasks? asks? for other amounts\. Take it back/,
    );
    expect(html).toContain('href="/gardens/mill-row/undo?entry=2"');
  });

  test('kept long ago says that it is kept, and no longer what it moved', async () => {
    const app = await sampleApp();
    await app.steward.mend(
      'mill-row',
      [{ list: 'beds', id: 'north', row: { ...(await rowOf(app)), watered: true } }],
      'test',
    );
    const html = await (await app.get(`${GARDEN}/beds/north?kept=2`)).text();
    expect(wordsOf(html)).toContain('Kept. Take it back');
    expect(wordsOf(await (await app.get(`${GARDEN}/beds/north?kept=1`)).text())).not.toContain('Kept.');
    await app.steward.undo('mill-row', 2, 'test');
    expect(wordsOf(await (await app.get(`${GARDEN}/beds/north?kept=2`)).text())).not.toContain('Kept.');
  });

  test('looked at first shows the change in the reader’s feet, and nothing is kept', async () => {
    const app = await sampleApp();
    const fields = await opened(app, NORTH);
    const answer = await app.send(NORTH, { ...fields, lengthM: '12', watered: 'yes', do: 'look' });
    const html = await answer.text();
    const text = wordsOf(html);
    expect(answer.status).toBe(200);
    expect(text).toContain('Nothing is kept yet.');
    expect(text).toContain('Length: from 9.84 ft to 12 ft');
    expect(text).toContain('A hose or a drip line waters it: from no to yes');
    expect(text).not.toContain('Width: from');
    expect(text).toMatch(/What wants other amounts .*instead of/);
    expect(formIn(html).fields).toMatchObject({ lengthM: '12', watered: 'yes' });
    expect((await app.steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test('sent back as it was says that nothing is changed, and nothing is written down', async () => {
    const app = await sampleApp();
    const answer = await app.send(NORTH, await opened(app, NORTH));
    expect(wordsOf(await answer.text())).toContain('Nothing is changed: what stands here is what is kept already');
    expect((await app.steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test('is told of everything that is wrong at once, and the form comes back as it was filled in', async () => {
    const app = await sampleApp();
    const fields = await opened(app, NORTH);
    const wrong = {
      ...fields,
      name: '',
      lengthM: '900',
      widthM: 'wide',
      plannedFor: '2027-02-29',
      soilTexture: 'peat',
    };
    const answer = await app.send(NORTH, wrong);
    const html = await answer.text();
    const text = wordsOf(html);
    expect(answer.status).toBe(422);
    expect(text).toContain('Name: It is empty.');
    expect(text).toContain('Length: "900" cannot be. Give a length from 0.66 to 656.16 ft, such as 8.');
    expect(text).toContain('Width: "wide" is not a length.');
    expect(text).toContain('"2027-02-29" is not a date: that month has 28 days.');
    expect(text).toContain('"peat" is not one of those that can be chosen.');
    expect(html).toContain('aria-invalid="true"');
    expect(formIn(html).fields).toMatchObject({ name: '', lengthM: '900', widthM: 'wide' });
    expect((await gardenNow(app)).beds[0]?.name).toBe('North bed');
  });

  test('cannot be called as another, which is told at its name beside whatever else is wrong', async () => {
    const app = await sampleApp();
    const fields = await opened(app, NORTH);
    const answer = await app.send(NORTH, { ...fields, name: 'Wall bed', depthM: 'deep' });
    const text = wordsOf(await answer.text());
    expect(answer.status).toBe(422);
    expect(text).toContain('Name: "Wall bed" is the name of two. Give each its own name.');
    expect(text).toContain('Depth of its soil: "deep" is not a depth.');
    expect(text).not.toMatch(/beds\[|depthM|lengthM/);
  });

  test('still to be made is asked for its depth in the words of the form', async () => {
    const app = await sampleApp();
    const fields = await opened(app, `${GARDEN}/edit/beds/new`);
    const sent = { ...fields, name: 'Hill bed', lengthM: '8', widthM: '4', plannedFor: '2027-06-01' };
    const text = wordsOf(await (await app.send(`${GARDEN}/edit/beds/new`, sent)).text());
    expect(text).toContain(
      'Depth of its soil: It is empty. Give the depth it is to have: a bed still to be made is reckoned by it.',
    );
    expect(text).not.toContain('plannedFor');
    const kept = await app.send(`${GARDEN}/edit/beds/new`, { ...sent, depthM: '12' });
    expect(kept.headers.get('location')).toBe('/gardens/mill-row/beds?kept=2');
    expect((await gardenNow(app)).beds.at(-1)).toMatchObject({
      id: 'hill-bed',
      plannedFor: '2027-06-01',
      depthM: 0.3048,
    });
  });

  test('made too small for what grows there says which crop, and not where in a file', async () => {
    const file = sampleFile({
      plantings: [{ bed: 'north', crop: 'carrot', sow: '2027-06-15', lastHarvest: '2027-09-20', areaM2: 3 }],
    });
    const app = await sampleApp(file);
    const answer = await app.send(NORTH, { ...(await opened(app, NORTH)), lengthM: '5' });
    const text = wordsOf(await answer.text());
    expect(answer.status).toBe(422);
    expect(text).toContain(
      'Carrot, to be sown in North bed, June 15, 2027, Its share of the bed: 32 sq ft is more than North bed has: 20 sq ft',
    );
    expect(text).not.toContain('plantings[');
  });

  test('is read in metres where its reader chose them, in a form that knows which it was shown in', async () => {
    const app = await sampleApp();
    const metric = await opened(app, NORTH, METRIC);
    expect(metric).toMatchObject({ lengthM: '3', widthM: '1.2', _units: 'metric' });
    await app.send(NORTH, { ...metric, lengthM: '3.5' });
    expect((await gardenNow(app)).beds[0]?.lengthM).toBe(3.5);
    const feet = await opened(app, NORTH);
    await app.send(NORTH, { ...feet, lengthM: '10' }, { ...METRIC, ...FROM_A_PAGE });
    expect((await gardenNow(app)).beds[0]?.lengthM).toBe(3.048);
  });

  test('that is not there has no form, nor has what no garden has', async () => {
    const { get } = await sampleApp();
    expect((await get(`${GARDEN}/edit/beds/east`)).status).toBe(404);
    expect((await get(`${GARDEN}/edit/gnomes/new`)).status).toBe(404);
    expect((await get('/gardens/no-such/edit/beds/north')).status).toBe(404);
  });
});

describe('a bed taken out', () => {
  test('says first what goes with it and what leaves the plan; taken back, all of it is there again', async () => {
    const app = await sampleApp();
    const before = await app.steward.view('mill-row');
    const asks = await (await app.get(`${NORTH}/delete`)).text();
    expect(wordsOf(asks)).toContain('Take out: North bed');
    expect(wordsOf(asks)).toContain('snap bean in North bed');
    expect(wordsOf(asks)).toContain('winter rye in North bed');
    expect(wordsOf(asks)).toContain('What goes off the plan');
    expect((await gardenNow(app)).beds).toHaveLength(4);
    const gone = await app.send(`${NORTH}/delete`, formIn(asks).fields);
    expect(gone.headers.get('location')).toBe('/gardens/mill-row/beds?kept=2');
    const after = await gardenNow(app);
    expect(after.beds.map(({ id }) => id)).toEqual(['middle', 'south', 'wall']);
    expect([...after.plantings, ...after.stands].some(({ bedId }) => bedId === 'north')).toBe(false);
    await app.steward.undo('mill-row', 2, 'test');
    const back = await app.steward.view('mill-row');
    expect(back.garden.beds).toEqual(before.garden.beds);
    expect(back.garden.plantings).toEqual(before.garden.plantings);
    expect(back.garden.stands).toEqual(before.garden.stands);
    expect(back.plan.tasks.map(({ key, day }) => [key, day])).toEqual(
      before.plan.tasks.map(({ key, day }) => [key, day]),
    );
  });

  test('is not the last one, because a garden has at least one', async () => {
    const one = sampleFile({
      beds: [{ id: 'north', name: 'North bed', lengthM: 3, widthM: 1.2 }],
      plantings: [],
      coverStands: [],
    });
    const { get } = await sampleApp(one);
    const answer = await get(`${NORTH}/delete`);
    expect(answer.status).toBe(422);
    expect(wordsOf(await answer.text())).toContain('Give at least one bed.');
  });

  test('is asked about anew where it changed since the page was opened', async () => {
    const app = await sampleApp();
    const asks = formIn(await (await app.get(`${NORTH}/delete`)).text()).fields;
    await app.send(NORTH, { ...(await opened(app, NORTH)), name: 'Far bed' });
    const answer = await app.send(`${NORTH}/delete`, asks);
    expect(answer.status).toBe(409);
    expect(wordsOf(await answer.text())).toContain('It was changed meanwhile');
    expect((await gardenNow(app)).beds).toHaveLength(4);
  });
});

describe('beds alike', () => {
  const ALIKE = `${GARDEN}/edit/beds-alike/new`;

  test('are made twelve at once, numbered, as one entry that is taken back as one', async () => {
    const app = await sampleApp();
    const fields = await opened(app, ALIKE);
    await app.send(ALIKE, { ...fields, count: '12', lengthM: '8', widthM: '4', depthM: '12' });
    const { beds } = await gardenNow(app);
    expect(beds).toHaveLength(16);
    expect(beds[4]).toMatchObject({ id: 'bed-1', name: 'Bed 1', lengthM: 2.4384, widthM: 1.2192, raised: true });
    expect(beds[15]?.name).toBe('Bed 12');
    expect((await opened(app, ALIKE)).first).toBe('13');
    await app.steward.undo('mill-row', undefined, 'test');
    expect((await gardenNow(app)).beds).toHaveLength(4);
  });

  test('are only added: each is changed by itself', async () => {
    const { get } = await sampleApp();
    for (const path of ['north', 'north/delete'])
      expect((await get(`${GARDEN}/edit/beds-alike/${path}`)).status).toBe(404);
  });

  test('are refused with all that is wrong: too many, no length, a name that is there', async () => {
    const app = await sampleApp();
    const fields = await opened(app, ALIKE);
    const many = wordsOf(await (await app.send(ALIKE, { ...fields, count: '500', widthM: '4' })).text());
    expect(many).toContain('How many: 500 cannot be. Give a whole number from 1 to 50, such as 12.');
    expect(many).toContain('Length: It is empty.');
    await app.send(ALIKE, { ...fields, count: '2', lengthM: '8', widthM: '4' });
    const again = await app.send(ALIKE, { ...fields, count: '3', lengthM: '8', widthM: '4' });
    expect(again.status).toBe(422);
    expect(wordsOf(await again.text())).toContain('"Bed 1" is the name of two.');
    expect((await gardenNow(app)).beds).toHaveLength(6);
  });
});

describe('two browsers', () => {
  test('change one bed: the second is told what the first changed, and loses nothing it typed', async () => {
    const app = await sampleApp();
    const [first, second] = [await opened(app, NORTH), await opened(app, NORTH)];
    await app.send(NORTH, { ...first, name: 'Far bed' });
    const answer = await app.send(NORTH, { ...second, lengthM: '12' });
    const html = await answer.text();
    expect(answer.status).toBe(409);
    expect(wordsOf(html)).toContain('It was changed meanwhile');
    expect(wordsOf(html)).toContain('Name: from North bed to Far bed');
    const { fields } = formIn(html);
    expect(fields).toMatchObject({ name: 'Far bed', lengthM: '12' });
    expect((await gardenNow(app)).beds[0]).toMatchObject({ name: 'Far bed', lengthM: 3 });
    expect((await app.send(NORTH, fields)).status).toBe(303);
    expect((await gardenNow(app)).beds[0]).toMatchObject({ name: 'Far bed', lengthM: 3.6576 });
  });

  test('one takes the bed out: the other is told so, and what it typed can be kept as a new one', async () => {
    const app = await sampleApp();
    const second = await opened(app, NORTH);
    await app.send(`${NORTH}/delete`, formIn(await (await app.get(`${NORTH}/delete`)).text()).fields);
    const answer = await app.send(NORTH, { ...second, name: 'Far bed' });
    const form = formIn(await answer.text());
    expect(answer.status).toBe(409);
    expect(form.action).toBe(`${GARDEN}/edit/beds/new`);
    expect((await app.send(form.action, form.fields)).status).toBe(303);
    expect((await gardenNow(app)).beds.at(-1)).toMatchObject({ name: 'Far bed', lengthM: 3 });
  });
});

describe('a button pressed twice', () => {
  const FED = `${GARDEN}/edit/compost-bought/new`;
  const bought = async ({ steward }: SampleApp) => (await steward.fileNow('mill-row')).compostBought ?? [];

  test('keeps what is new once, at once or one after the other, and leads to the same line', async () => {
    const app = await sampleApp();
    const fields = { ...(await opened(app, FED)), on: '2027-04-18', litres: '10' };
    const answers = await Promise.all([app.send(FED, fields), app.send(FED, fields)]);
    answers.push(await app.send(FED, fields));
    const led = answers.map((answer) => answer.headers.get('location'));
    expect(new Set(led).size).toBe(1);
    expect(led[0]).toContain('kept=2');
    expect(await bought(app)).toHaveLength(1);
    await app.send(FED, { ...fields, litres: '20' });
    expect(await bought(app)).toHaveLength(2);
  });

  test('keeps it anew where it was taken back in between', async () => {
    const app = await sampleApp();
    const fields = { ...(await opened(app, FED)), on: '2027-04-18', litres: '10' };
    await app.send(FED, fields);
    await app.steward.undo('mill-row', 2, 'test');
    expect((await app.send(FED, fields)).headers.get('location')).toContain('kept=4');
    expect(await bought(app)).toHaveLength(1);
  });

  test('takes out once, and leads to the same line', async () => {
    const app = await sampleApp();
    const { action, fields } = formIn(await (await app.get(`${GARDEN}/edit/bins/right/delete`)).text());
    const first = await app.send(action, fields);
    const second = await app.send(action, fields);
    expect(second.status).toBe(303);
    expect(second.headers.get('location')).toBe(first.headers.get('location'));
  });
});

describe('the line of a change', () => {
  test('takes back its own entry and tells what that moved, though another was made between', async () => {
    const app = await sampleApp();
    const { steward } = app;
    const [one, other] = await Promise.all([
      steward.mend('mill-row', [{ list: 'beds', id: 'north', row: { ...(await rowOf(app)), name: 'Far bed' } }], 'ada'),
      steward.report('mill-row', { kind: 'away-told', from: '2027-05-03', to: '2027-05-09' }, 'ben'),
    ]);
    const { ledger } = await steward.view('mill-row');
    expect(ledger.find(({ entry }) => entry === one.own?.entry)?.fact.kind).toBe('garden-mended');
    expect(ledger.find(({ entry }) => entry === other.own?.entry)?.fact.kind).toBe('away-told');
    // A new name moves no day; days away name nothing anew.
    expect(one.own?.moves.length).toBeGreaterThan(0);
    expect(one.own?.moves.filter(({ from, to }) => from !== to)).toEqual([]);
    expect(other.own?.moves.length).toBeGreaterThan(0);
    expect(other.own?.moves.filter(({ otherwise }) => otherwise?.title !== undefined)).toEqual([]);
  });
});
