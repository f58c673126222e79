import { describe, expect, it } from 'vitest';
import { plain, read, withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const BEDS = `${GARDEN}/beds`;

/** Sprouts in the north bed last year, nothing known to be planned; median freezes 6 May and 4 October. */
const file = (change: Record<string, unknown> = {}) =>
  sampleFile({
    plantings: [{ bed: 'north', crop: 'brussels-sprouts', setOut: '2026-06-01', lastHarvest: '2026-11-10' }],
    coverStands: [],
    ...change,
  });

const choose = (fields: Record<string, string>, bed = 'south') =>
  `${BEDS}/${bed}/season/crop?${new URLSearchParams({ season: '2027', ...fields })}`;

describe('the day of a crop that is chosen', () => {
  const snow = { crop: 'tomato', on: '2028-02-03', how: 'set-out', season: '2028' };

  it('is refused far outside its season, with the window and the mend, and is not planned', async () => {
    const { get, send, steward } = await sampleApp(file());
    const answer = await get(choose(snow));
    const text = await read(answer);
    expect(answer.status).toBe(422);
    expect(text).toMatch(/Tomato, planned for February 3, 2028, goes in here from May \d+, 2028 to \w+ \d+, 2028/);
    expect(text).toMatch(/Give a day from May \d+, 2028 to \w+ \d+, 2028, or choose another crop\./);
    expect(text).not.toContain('Plan it');
    expect((await send(`${BEDS}/south/season/crop`, snow)).status).toBe(422);
    expect((await steward.view('mill-row')).garden.plantings).toHaveLength(1);
  });

  it('is warned of a little outside, and a mark stays in the table of the beds', async () => {
    const { get, send } = await sampleApp(file());
    const cold = { crop: 'tomato', on: '2027-04-28', how: 'set-out' };
    const text = await read(get(choose(cold)));
    expect(text).toMatch(/outside its season here; the nearest day in it is May \d+, 2027/);
    expect(text).toContain('It will most likely freeze: from April 28, 2027 on, a night of 32 °F');
    expect((await send(`${BEDS}/south/season/crop`, { season: '2027', ...cold })).status).toBe(303);
    expect(await read(get(BEDS))).toMatch(
      /Tomato tomatoes and potatoes; planned; set out April 28, 2027 kin before it not known the day does not fit Your plan has the tomato/,
    );
  });

  it('is warned of by no freeze where it only comes late, nor at all inside its season', async () => {
    const { get } = await sampleApp(file());
    const late = await read(get(choose({ crop: 'tomato', on: '2027-07-20', how: 'set-out' })));
    expect(late).toContain('outside its season here');
    expect(late).not.toContain('freeze:');
    const good = await read(get(choose({ crop: 'tomato', on: '2027-05-28', how: 'set-out' })));
    expect(good).not.toContain('Look at the day again');
    expect(good).toContain('Plan it');
  });

  it('has a word for a way of putting in that the crop is not grown by', async () => {
    const { get } = await sampleApp(file());
    expect(await read(get(choose({ crop: 'carrot', on: '2027-05-10', how: 'set-out' })))).toContain(
      'Carrot is put straight into its bed, and not raised and set out as plants.',
    );
    const sown = await read(get(choose({ crop: 'tomato', on: '2027-05-28', how: 'sow' })));
    expect(sown).toMatch(/Set it out as plants, from May \d+, 2027|Tomato is raised ahead and set out as plants/);
  });

  it('can be chosen for a crop that has none proposed: it is a link all the same', async () => {
    const { get } = await sampleApp(file());
    const list = withoutWhys(await (await get(`${BEDS}/south/season?season=2027`)).text());
    expect(list.slice(list.indexOf('No good day any more'))).toMatch(/<a href="[^"]*crop=garlic[^"]*">Garlic<\/a>/);
  });

  it.each([
    ['how', { how: 'bogus' }, '"bogus" is no way of putting a crop in.'],
    ['date', { on: '2027-02-30' }, '"2027-02-30" is not a date.'],
    ['crop', { crop: 'wombat' }, '"wombat" is not a known crop.'],
  ])('is refused with a %s that means nothing, and what was typed stays', async (_, fields, told) => {
    const { get } = await sampleApp(file());
    const answer = await get(choose({ crop: 'carrot', on: '2027-05-10', ...fields }));
    const html = await answer.text();
    expect([answer.status, plain(html)]).toEqual([422, expect.stringContaining(told)]);
    expect(plain(html)).not.toContain('Did you mean');
    if ('on' in fields) expect(html).toContain('value="2027-02-30"');
  });

  it('is planned as the boxes stand: both buttons belong to one form', async () => {
    const { get } = await sampleApp(file());
    const html = withoutWhys(await (await get(choose({ crop: 'carrot', on: '2027-05-10' }))).text());
    const [form = ''] = html.match(/<form method="post"[\s\S]*?<\/form>/) ?? [];
    expect(form).toMatch(/type="date" name="on" value="2027-05-10"/);
    expect(form).toMatch(/formmethod="get"[^>]*>\s*Show it so/);
    expect(form).toMatch(/<button type="submit">Plan it/);
    expect(/<main[\s\S]*<\/main>/.exec(html)?.[0].match(/<form/g)).toHaveLength(1);
  });
});

describe('the crops a bed could have', () => {
  const list = async (change: Record<string, unknown>, bed: string, season = '2027') => {
    const { get } = await sampleApp(file(change));
    return read(get(`${BEDS}/${bed}/season?season=${season}`));
  };
  const group = (text: string, name: string): string =>
    text.split(name)[1]?.split(/Gives way somewhere|Breaks a rule that may not break|No good day/)[0] ?? '';

  it('count from the day the bed is there, and none before', async () => {
    const made = { id: 'new', name: 'New bed', lengthM: 3, widthM: 1.2, depthM: 0.3, plannedFor: '2028-05-10' };
    const change = { beds: [...sampleFile().beds, made] };
    const before = await list(change, 'new');
    expect(before).toContain('New bed is not there before May 10, 2028: nothing can go in for 2027.');
    expect(before).not.toMatch(/Breaks nothing|sown \w+ \d+, 202\d/);
    const { get } = await sampleApp(file(change));
    const page = `${BEDS}/new/season/crop?season=2028&crop=carrot`;
    expect(await read(get(page))).toContain('Here it is sown from May 10, 2028');
  });

  it('are held against what grows there for legumes ahead of hungry ones, as they are once planned', async () => {
    const plantings = [{ bed: 'north', crop: 'brussels-sprouts', setOut: '2027-06-10' }];
    const { get } = await sampleApp(file({ plantings }));
    const text = await read(get(`${BEDS}/north/season?season=2028`));
    expect(group(text, 'Breaks nothing')).not.toMatch(/Tomato|Sweet corn/);
    expect(group(text, 'Gives way somewhere')).toMatch(/Tomato set out \w+ \d+, 2028 Tomato is hungry and follows/);
  });

  it('go in on their best day: cool kinds not into summer, and a cover that is cut short for them is told', async () => {
    const rye = [{ id: 'rye', bed: 'south', cover: 'cereal_rye', sow: '2026-09-20' }];
    const text = await list({ coverStands: rye }, 'south');
    expect(text).toMatch(/Spinach sown August \d+, 2027/);
    const planned = await list({ coverStands: [{ ...rye[0], sow: '2027-09-01' }] }, 'south');
    expect(group(planned, 'Gives way somewhere')).toMatch(
      /Leek set out \w+ \d+, 2027 Costs the winter rye: it could not be sown\./,
    );
    expect(group(planned, 'Breaks nothing')).toMatch(/Snap bean/);
  });
});
