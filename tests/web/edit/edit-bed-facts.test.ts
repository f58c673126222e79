/**
 * Covers with their logs, and what was done to a bed and found of it.
 */
import { describe, expect, test } from 'vitest';
import { GARDEN, type SampleApp, sampleApp, sampleFile } from '../sample-garden.ts';
import { formIn } from '../sent-form.ts';
import { filled, gardenNow, opened, wordsOf } from './opened-form.ts';

const RYE = `${GARDEN}/edit/cover-stands/rye-north`;
const NEW_COVER = `${GARDEN}/edit/cover-stands/new`;

async function standOf(app: SampleApp, id: string) {
  return (await gardenNow(app)).stands.find((stand) => stand.id === id);
}

/** One bed with one crop in it. */
const WALL_ALONE = sampleFile({
  beds: [{ id: 'wall', name: 'Wall bed', lengthM: 3, widthM: 1.2 }],
  plantings: [{ bed: 'wall', crop: 'asparagus', setOut: '2024-04-20' }],
  coverStands: [],
});

/** The first form a bed's page leads to whose address begins so. */
async function wayTo(app: SampleApp, bed: string, list: string): Promise<string> {
  const html = await (await app.get(`${GARDEN}/beds/${bed}`)).text();
  return new RegExp(`href="(${GARDEN}/edit/${list}/(?!new)[^"]+)"`).exec(html)?.[1] ?? '';
}

describe('a cover crop', () => {
  test('is told with its cut, and then its work is over', async () => {
    const app = await sampleApp();
    const { location } = await filled(app, RYE, { cut: '2027-04-18' });
    expect(location).toBe('/gardens/mill-row/beds/north?kept=2#told');
    expect((await standOf(app, 'rye-north'))?.cutOn).toBe('2027-04-18');
    const tasks = (await app.steward.view('mill-row')).plan.tasks.map(({ key }) => key);
    expect(tasks).not.toContain('cover-cut/stand:rye-north');
  });

  test('that is a mix is one choice among covers and mixes', async () => {
    const app = await sampleApp();
    expect((await opened(app, `${GARDEN}/edit/cover-stands/vetch-middle`)).grows).toBe('mix:rye-vetch');
    await filled(app, `${GARDEN}/edit/cover-stands/vetch-middle`, { grows: 'cover:cereal_rye' });
    expect((await standOf(app, 'vetch-middle'))?.coverId).toBe('cereal_rye');
  });

  test('takes everything seen of it in one form: a look, flowers, thin places, seed, regrowth', async () => {
    const app = await sampleApp();
    const { status } = await filled(app, RYE, {
      'looked[0].on': '2026-10-10',
      'looked[0].covered': 'two-thirds',
      'looked[0].weedy': 'yes',
      'resown[0].on': '2026-10-12',
      'resown[0].grows': 'cover:cereal_rye',
      'seed[0].cover': 'cereal_rye',
      'seed[0].on': '2026-09-20',
      'seed[0].grams': '1 lb',
      'seen[0].cover': 'cereal_rye',
      'seen[0].on': '2027-04-15',
      'seen[0].stage': 'first-buds',
      cut: '2027-04-16',
      'regrowthChecked[0].on': '2027-04-18',
      'regrowth[0].on': '2027-04-19',
      'regrowth[0].what': 'grew-again',
      'regrowth[0].answer': 'sheet',
    });
    expect(status).toBe(303);
    expect(await standOf(app, 'rye-north')).toMatchObject({
      looked: [{ on: '2026-10-10', covered: 'two-thirds', weedy: true }],
      resown: [{ on: '2026-10-12', coverId: 'cereal_rye' }],
      // 1 lb is 453.59237 g by definition.
      seed: [{ coverId: 'cereal_rye', on: '2026-09-20', grams: 453.59237 }],
      seen: [{ coverId: 'cereal_rye', on: '2027-04-15', stage: 'first-buds' }],
      cutOn: '2027-04-16',
      regrowthCheckedOn: ['2027-04-18'],
      regrowth: [{ on: '2027-04-19', what: 'grew-again', answer: 'sheet' }],
    });
  });

  test('has one of several looks changed and another taken out', async () => {
    const looked = [
      { on: '2026-10-10', covered: 'hardly-any', weedy: false },
      { on: '2026-10-20', covered: 'a-third', weedy: true },
      { on: '2026-10-30', covered: 'two-thirds', weedy: false },
    ];
    const stands = [{ id: 'rye-north', bed: 'north', cover: 'cereal_rye', sow: '2026-09-20', looked }];
    const app = await sampleApp(sampleFile({ coverStands: stands }));
    const change = { 'looked[0].gone': 'yes', 'looked[2].covered': 'nearly-all' };
    const seen = await filled(app, RYE, { ...change, do: 'look' });
    expect(seen.text).toContain('Looks at it while young: October 10, 2026, hardly any, taken out');
    expect(seen.html).toMatch(/name="looked\[0\]\.gone"[^>]*checked/);
    await filled(app, RYE, change);
    expect((await standOf(app, 'rye-north'))?.looked).toEqual([
      { on: '2026-10-20', covered: 'a-third', weedy: true },
      { on: '2026-10-30', covered: 'nearly-all', weedy: false },
    ]);
  });

  test('has what is wrong in a log told at its own field, behind a fold that is then open', async () => {
    const app = await sampleApp();
    const { status, text, html } = await filled(app, RYE, {
      'looked[0].covered': 'a-third',
      'seen[0].on': '2027-04-31',
      'seen[0].cover': 'cereal_rye',
      cut: '2026-09-01',
    });
    expect(status).toBe(422);
    expect(text).toContain(
      'The day it was cut: “September 1, 2026” cannot be used. Give a day that is not before the sowing.',
    );
    expect(text).toContain('"2027-04-31" is not a date: that month has 30 days.');
    expect(text).toContain('What was seen: Nothing is chosen.');
    expect(html).toMatch(
      /id="field-looked-0-on"[^>]*aria-invalid="true"|aria-invalid="true"[^>]*id="field-looked-0-on"/,
    );
    expect(html.match(/<details class="log" open/g)).toHaveLength(2);
  });

  test('looked at before it was sown is refused at that look', async () => {
    const app = await sampleApp();
    const change = { 'looked[0].on': '2026-09-01', 'looked[0].covered': 'a-third' };
    const { status, text } = await filled(app, RYE, change);
    expect(status).toBe(422);
    expect(text).toContain('Give looks that are not before the sowing.');
  });

  test.each(['{', '[]', '{"planned":5}', '{"id":"rye-north","bed":"north","cover":"gnomes","sow":"2026-09-20"}'])(
    'sent back with a row that never was, %s, is shown as it stands and nothing is kept',
    async (row) => {
      const app = await sampleApp();
      const { status } = await filled(app, RYE, { _row: row, cut: '2027-04-18' });
      expect(status).toBe(409);
      expect((await standOf(app, 'rye-north'))?.cutOn).toBeUndefined();
    },
  );

  test('that is only planned is asked about, and is a plan', async () => {
    const app = await sampleApp();
    const sown = { bed: 'wall', grows: 'cover:oats', sow: '2027-08-20' };
    expect((await filled(app, NEW_COVER, sown)).status).toBe(303);
    const oats = (await gardenNow(app)).stands.at(-1);
    expect(oats).toMatchObject({ bedId: 'wall', coverId: 'oats', sow: { day: '2027-08-20', happened: false } });
  });
});

describe('what was done to a bed', () => {
  test.each([
    ['mulches', { mulch: 'straw', from: '2027-10-09', to: '2028-04-15' }, 'Straw'],
    ['topdressed', { on: '2026-10-20', litres: '2' }, 'Compost, 2 cu ft'],
    ['fed', { on: '2027-04-19', fertiliser: 'blood_meal', grams: '8' }, 'Blood meal, 8 oz'],
    [
      'soil-tests',
      { on: '2026-10-10', organicMatterPercent: '4,5', ph: '6.8' },
      'Soil test: 4.5 % organic matter, pH 6.8',
    ],
    ['diseases', { crop: 'cabbage', disease: 'clubroot', found: '2026-07-20' }, 'Clubroot on cabbage'],
  ])('or found of it is told under %s, listed, changed and taken out again', async (list, told, words) => {
    const app = await sampleApp(WALL_ALONE);
    const added = await filled(app, `${GARDEN}/edit/${list}/new?bed=wall`, told);
    expect([added.status, added.location]).toEqual([303, '/gardens/mill-row/beds/wall?kept=2#told']);
    const page = wordsOf(await (await app.get(`${GARDEN}/beds/wall`)).text());
    expect(page).toContain(words);
    const path = await wayTo(app, 'wall', list);
    const [day] = Object.keys(told).filter((key) => ['on', 'found', 'from'].includes(key));
    await filled(app, path, { [day ?? 'on']: '2026-06-06' });
    expect(wordsOf(await (await app.get(`${GARDEN}/beds/wall`)).text())).toContain(`June 6, 2026: ${words}`);
    const again = `${await wayTo(app, 'wall', list)}/delete`;
    await app.send(again, formIn(await (await app.get(again)).text()).fields);
    expect(await wayTo(app, 'wall', list)).toBe('');
  });

  test('is told of the soil it was squeezed from, whichever bed', async () => {
    const app = await sampleApp();
    const squeezed = { on: '2027-04-19', soilTexture: 'loam', answer: 'smears' };
    await filled(app, `${GARDEN}/edit/soil-squeezes/new`, squeezed);
    for (const bed of ['north', 'wall'])
      expect(wordsOf(await (await app.get(`${GARDEN}/beds/${bed}`)).text())).toContain('Loam squeezed: it smears');
  });

  test('is either compost or a raw material, and not both', async () => {
    const app = await sampleApp();
    const both = { on: '2026-10-20', litres: '2', piles: 'spring-pile', material: 'horse_manure_bedded' };
    const { status, text } = await filled(app, `${GARDEN}/edit/topdressed/new?bed=wall`, both);
    expect(status).toBe(422);
    expect(text).toContain('Raw, in place of compost:');
    expect(text).toContain('but not both');
  });

  test('of no weight or no volume is refused in the unit it was asked in', async () => {
    const app = await sampleApp();
    const { text } = await filled(app, `${GARDEN}/edit/fed/new?bed=wall`, {
      on: '2027-04-19',
      fertiliser: 'blood_meal',
      grams: '-3',
    });
    expect(text).toContain('How much: "-3" is not a weight. Give a weight from 0.04 to 3527.39 oz, such as 9.');
  });
});

describe('a bed’s page', () => {
  test('of which nothing is told says how to begin', async () => {
    const app = await sampleApp(sampleFile({ plantings: [], coverStands: [] }));
    const text = wordsOf(await (await app.get(`${GARDEN}/beds/wall`)).text());
    expect(text).toContain(
      'Nothing is known of this bed yet. Add what grows here, and what grew before, further below.',
    );
    expect(text).toContain('Begin with what grows here now');
    expect(text).toContain('Add a crop');
  });

  test('lists every crop of every season, each with its own way to change it', async () => {
    const app = await sampleApp();
    const html = await (await app.get(`${GARDEN}/beds/wall`)).text();
    expect(html).toContain('aria-label="change: Spinach, sown in Wall bed, September 1, 2026"');
    expect((await app.get(`${GARDEN}/edit/plantings/wall-spinach-2026-09-01`)).status).toBe(200);
  });
});
