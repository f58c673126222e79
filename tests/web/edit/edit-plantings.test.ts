/**
 * Crops told, mended and taken out: this season's, last season's, and those sown again and again.
 */
import { describe, expect, test } from 'vitest';
import type { Planting } from '../../../src/garden/garden.ts';
import { GARDEN, type SampleApp, sampleApp, sampleFile } from '../sample-garden.ts';
import { formIn } from '../sent-form.ts';
import { filled, gardenNow, opened, wordsOf } from './opened-form.ts';

const NEW = `${GARDEN}/edit/plantings/new`;
const CARROT = `${GARDEN}/edit/plantings/south-carrot-2027-06-15`;
const SPINACH = `${GARDEN}/edit/plantings/wall-spinach-2026-09-01`;
const CARROT_ID = 'south-carrot-2027-06-15';

async function plantingsOf(app: SampleApp, cropId: string): Promise<Planting[]> {
  return (await gardenNow(app)).plantings.filter((planting) => planting.cropId === cropId);
}

describe('a crop', () => {
  test('whose sowing is mended has its tasks on other days, by the same keys', async () => {
    const app = await sampleApp();
    const of = async () =>
      (await app.steward.view('mill-row')).plan.tasks.filter(({ subject }) => subject.id === CARROT_ID);
    const before = await of();
    const kept = await filled(app, CARROT, { day: '2027-06-01' });
    expect(kept.location).toBe('/gardens/mill-row/beds/south?kept=2#told');
    const after = await of();
    expect(after.map(({ key }) => key)).toEqual(before.map(({ key }) => key));
    const sown = (tasks: typeof before) => tasks.find(({ kind }) => kind.startsWith('sow'))?.day ?? '';
    expect(sown(after) < sown(before)).toBe(true);
    expect((await plantingsOf(app, 'carrot'))[0]?.start).toEqual({ how: 'sow', day: '2027-06-01', happened: false });
  });

  test('sown sooner than it was told is harvested sooner, where its last harvest is worked out', async () => {
    const app = await sampleApp();
    const path = `${GARDEN}/edit/plantings/north-snap-bean-2027-06-01`;
    const looked = await filled(app, path, { day: '2027-05-18', do: 'look' });
    expect(looked.text).toContain('The day it goes in, or went in: from June 1, 2027 to May 18, 2027');
    expect(looked.text).toContain('What moves');
    await filled(app, path, { day: '2027-05-18' });
    const bed = wordsOf(await (await app.get(`${GARDEN}/beds/north`)).text());
    expect(bed).toMatch(/Snap bean May 18, 2027 August \d+, 2027 last harvest by days to maturity/);
  });

  test('of last autumn is history that can be mended too', async () => {
    const app = await sampleApp();
    await filled(app, SPINACH, { crop: 'kale', lastHarvest: '2027-04-10', harvested: 'happened' });
    expect((await plantingsOf(app, 'kale'))[0]).toMatchObject({
      id: 'wall-spinach-2026-09-01',
      start: { how: 'sow', day: '2026-09-01', happened: true },
      lastHarvest: { day: '2027-04-10', happened: true },
    });
  });

  test('that was planned for a day now past is told to be in, on the very same day', async () => {
    const app = await sampleApp(
      sampleFile({ plantings: [{ id: 'early-peas', bed: 'wall', crop: 'pea', sow: '2027-04-10', planned: ['sow'] }] }),
    );
    const path = `${GARDEN}/edit/plantings/early-peas`;
    expect(await opened(app, path)).toMatchObject({ day: '2027-04-10', happened: 'planned' });
    await filled(app, path, { happened: 'happened' });
    expect((await plantingsOf(app, 'pea'))[0]?.start).toMatchObject({ day: '2027-04-10', happened: true });
    await filled(app, path, { happened: 'planned' });
    expect((await plantingsOf(app, 'pea'))[0]?.start).toMatchObject({ day: '2027-04-10', happened: false });
  });

  test('cannot have gone in tomorrow, and whether it went in yesterday has to be said', async () => {
    const app = await sampleApp();
    const fields = { bed: 'wall', crop: 'radish', how: 'sow' };
    const tomorrow = await filled(app, NEW, { ...fields, day: '2027-04-21', happened: 'happened' });
    expect(tomorrow.text).toContain(
      'Is it in?: That day is still to come. Choose the plan, or give a day up to today.',
    );
    const yesterday = await filled(app, NEW, { ...fields, day: '2027-04-19' });
    expect([yesterday.status, tomorrow.status]).toEqual([422, 422]);
    expect(yesterday.text).toContain('Is it in?: Nothing is chosen. Choose one of the two.');
    expect(await plantingsOf(app, 'radish')).toEqual([]);
  });

  test('that is new is asked for everything it needs at once', async () => {
    const app = await sampleApp();
    const { text, status } = await filled(app, NEW, { bed: '', lastHarvest: '2026-02-29', areaM2: 'half' });
    expect(status).toBe(422);
    for (const said of [
      'Bed: Nothing is chosen.',
      'Crop: Nothing is chosen.',
      'How it goes in: Nothing is chosen.',
      'The day it goes in, or went in: It is empty.',
      'The day of its last harvest: "2026-02-29" is not a date: that month has 28 days.',
      'Its share of the bed: "half" is not an area.',
    ])
      expect(text).toContain(said);
  });

  test('is chosen by plant family, with its bed filled in from the bed’s page', async () => {
    const app = await sampleApp();
    const bed = await (await app.get(`${GARDEN}/beds/wall`)).text();
    expect(bed).toContain(`href="${NEW}?bed=wall"`);
    const html = await (await app.get(`${NEW}?bed=wall`)).text();
    expect(formIn(html).fields.bed).toBe('wall');
    expect(html).toMatch(/<optgroup label="[^"]*beet[^"]*">/i);
  });

  test('is sown on 29 February where the year has one', async () => {
    const app = await sampleApp(sampleFile({ plantings: [] }));
    const kept = await filled(app, NEW, { bed: 'wall', crop: 'fava-bean', how: 'sow', day: '2028-02-29' });
    expect(kept.status).toBe(303);
    expect((await plantingsOf(app, 'fava-bean'))[0]?.start).toMatchObject({ day: '2028-02-29', happened: false });
  });

  test('that would share its bed with another is refused in words, with the room there is', async () => {
    const app = await sampleApp();
    const { status, text } = await filled(app, NEW, { bed: 'south', crop: 'beet', how: 'sow', day: '2027-07-01' });
    expect(status).toBe(422);
    expect(text).toContain('carrot stands there from June 15, 2027 until September 20, 2027');
    expect(text).toContain('The day it goes in, or went in: Beet');
    expect(text).not.toMatch(/areaM2|plantings\[/);
    const shares = await filled(app, NEW, { bed: 'south', crop: 'beet', how: 'sow', day: '2027-07-01', areaM2: '19' });
    expect(shares.text).toContain('Together they want');
    expect(shares.status).toBe(422);
  });

  test('whose last harvest lies before it goes in is refused in the form’s words', async () => {
    const app = await sampleApp();
    const { text } = await filled(app, CARROT, { lastHarvest: '2027-05-01' });
    expect(text).toContain(
      'The day of its last harvest: “May 1, 2027” cannot be used. Give a day that is not before the crop goes in.',
    );
  });

  test('sown every fourteen days is a crop for each sowing, kept and taken back as one', async () => {
    const app = await sampleApp(sampleFile({ plantings: [] }));
    const sown = { bed: 'wall', crop: 'lettuce-leaf', how: 'sow', day: '2027-04-24' };
    const again = { 'again.everyDays': '14', 'again.times': '3' };
    expect((await filled(app, NEW, { ...sown, ...again })).status).toBe(303);
    const days = async () => (await plantingsOf(app, 'lettuce-leaf')).map(({ start }) => start.day);
    // 24 April and three times fourteen days after it.
    expect(await days()).toEqual(['2027-04-24', '2027-05-08', '2027-05-22', '2027-06-05']);
    await app.steward.undo('mill-row', undefined, 'test');
    expect(await days()).toEqual([]);
  });

  test('sown again without saying how often is asked how often', async () => {
    const app = await sampleApp(sampleFile({ plantings: [] }));
    const sown = { bed: 'wall', crop: 'lettuce-leaf', how: 'sow', day: '2027-04-24', 'again.everyDays': '14' };
    const { status, text } = await filled(app, NEW, sown);
    expect(status).toBe(422);
    expect(text).toContain('Times it goes in again after the first: It is empty.');
  });

  test('taken out leaves the plan, and says so before', async () => {
    const app = await sampleApp();
    const asks = await (await app.get(`${CARROT}/delete`)).text();
    expect(wordsOf(asks)).toContain('Take out: Carrot, to be sown in South bed, June 15, 2027');
    const gone = await app.send(`${CARROT}/delete`, formIn(asks).fields);
    expect(gone.headers.get('location')).toBe('/gardens/mill-row/beds/south?kept=2#told');
    expect(await plantingsOf(app, 'carrot')).toEqual([]);
    const line = wordsOf(await (await app.get(`${GARDEN}/beds/south?kept=2`)).text());
    expect(line).toMatch(/Kept\. .*tasks go off the plan: .*Take it back/);
  });

  test('is reached from the page of a task about it', async () => {
    const app = await sampleApp();
    const task = (await app.steward.view('mill-row')).plan.tasks.find(({ subject }) => subject.id === CARROT_ID);
    const html = await (await app.get(`${GARDEN}/tasks/${task?.key}`)).text();
    expect(html).toContain(`href="${CARROT}"`);
  });

  test('stays what it is in a reader’s other units', async () => {
    const app = await sampleApp(
      sampleFile({ plantings: [{ id: 'c', bed: 'south', crop: 'carrot', sow: '2027-06-15', areaM2: 1.4 }] }),
    );
    const path = `${GARDEN}/edit/plantings/c`;
    expect((await opened(app, path)).areaM2).toBe('15.07');
    expect((await opened(app, path, { Cookie: 'reading=metric' })).areaM2).toBe('1.4');
    await filled(app, path, { day: '2027-06-16' });
    expect((await plantingsOf(app, 'carrot'))[0]?.areaM2).toBe(1.4);
  });
});
