import { describe, expect, it } from 'vitest';
import { heldProposals } from '../../../src/web/beds/held-proposals.ts';
import { plain, read, withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const BEDS = `${GARDEN}/beds`;
const NORTH = `${BEDS}/north/season`;

/** Four beds: kale in the north bed last year, tomatoes in the middle bed this year; the wall bed's past is not told. */
const file = (change: Record<string, unknown> = {}) =>
  sampleFile({
    plantings: [
      { id: 'old-kale', bed: 'north', crop: 'kale', setOut: '2026-05-01', lastHarvest: '2026-10-01' },
      { id: 'old-carrots', bed: 'middle', crop: 'carrot', sow: '2026-05-01', lastHarvest: '2026-09-01' },
      { id: 'old-peas', bed: 'south', crop: 'pea', sow: '2026-04-15', lastHarvest: '2026-07-01' },
      { id: 'tomatoes', bed: 'middle', crop: 'tomato', setOut: '2027-05-28' },
    ],
    coverStands: [{ id: 'rye-north', bed: 'north', cover: 'cereal_rye', sow: '2026-10-05' }],
    ...change,
  });

const WISHES = {
  wishes: [
    { crop: 'cabbage', beds: 1 },
    { crop: 'carrot', areaM2: 2 },
  ],
};

const planned = async (steward: Awaited<ReturnType<typeof sampleApp>>['steward']): Promise<string[]> =>
  (await steward.view('mill-row')).garden.plantings
    .filter(({ start }) => !start.happened)
    .map(({ bedId, cropId, start, areaM2 = 'whole' }) => `${bedId} ${cropId} ${start.day} ${areaM2}`);

describe('the beds by seasons', () => {
  it('shows history behind, this season and the next, with families told in words and by a drawing', async () => {
    const { get } = await sampleApp(file());
    const html = withoutWhys(await (await get(BEDS)).text());
    const text = plain(html);
    expect(text).toContain('Bed 2024 2025 2026 2027 this season 2028 2029 North bed');
    expect(text).toContain('Kale cabbage family');
    expect(text).toContain('Tomato tomatoes and potatoes; planned; set out May 28, 2027');
    expect(html).toContain('url(#family-cabbage)');
    expect(text).toContain('then winter rye');
    expect(html).not.toMatch(/⟦|undefined|NaN|<script/);
  });

  it('is in the navigation of every page', async () => {
    const { get } = await sampleApp(file());
    expect(withoutWhys(await (await get(GARDEN)).text())).toContain(`href="${BEDS}"`);
  });

  it('tells a broken rule in the cell where it breaks, with its reason and source, in the past as well', async () => {
    const again = { id: 'again', bed: 'north', crop: 'cabbage', setOut: '2027-05-01' };
    const before = { id: 'before', bed: 'north', crop: 'radish', sow: '2025-05-01', lastHarvest: '2025-06-01' };
    const { get } = await sampleApp(file({ plantings: [...(file().plantings as object[]), again, before] }));
    const html = withoutWhys(await (await get(BEDS)).text());
    const [cell = ''] = html.match(/<td[^>]*>(?:(?!<\/td>).)*Cabbage comes back.*?<\/td>/s) ?? [];
    expect(plain(cell)).toContain('breaks a rule');
    expect(plain(cell)).toContain('Cabbage comes back 1 year after kale of 2026; 3 years is the rule.');
    expect(plain(cell)).toMatch(/A rule that may not break; .*Extension/);
    expect(plain(html)).toContain('broke a rule');
    expect(plain(html)).toContain('Kale comes back 1 year after radish of 2025');
  });

  it('tells of a crop planned in ground that is sick, with and without a proposal in front', async () => {
    const wilt = { bed: 'middle', crop: 'tomato', disease: 'verticillium wilt', found: '2026-08-01' };
    const { get } = await sampleApp(file({ diseases: [wilt], ...WISHES }));
    for (const path of [BEDS, `${BEDS}?years=1`]) {
      expect(await read(get(path))).toMatch(/Verticillium wilt, found here on August 1, 2026, keeps tomato out/);
    }
  });

  it('names what is not known of a bed', async () => {
    const { get } = await sampleApp(file());
    const text = await read(get(BEDS));
    expect(text).toMatch(/Wall bed 39 sq ft (\d{4} (this season )?not known( ?: tell)? ){4}/);
    expect(text).toContain('kin before it not known');
  });

  it('answers for a garden on the other side of the world, with its seasons over the New Year', async () => {
    const south = file({
      garden: {
        ...sampleFile().garden,
        latitude: -43.5,
        longitude: 172.6,
        timeZone: 'Pacific/Auckland',
        units: 'metric',
      },
      climate: { frostDates: { lastSpring: '10-15', firstAutumn: '04-20' } },
    });
    const { get } = await sampleApp(south);
    const text = await read(get(BEDS));
    expect(text).toContain('2026/27 this season');
    expect(text).toContain('3.6 m²');
  });
});

describe('choosing a crop for a bed and season', () => {
  it('lists those that break nothing first, and says what the others would break', async () => {
    const { get } = await sampleApp(file());
    const text = await read(get(`${NORTH}?season=2027`));
    const [nothing, broken] = [text.indexOf('Breaks nothing'), text.indexOf('Breaks a rule that may not break')];
    expect(nothing).toBeGreaterThan(0);
    expect(text.indexOf('Snap bean sown')).toBeLessThan(broken);
    expect(text.indexOf('Broccoli comes back 1 year after kale of 2026; 3 years is the rule.')).toBeGreaterThan(broken);
  });

  it('shows first what it would do, with the day and the rules, and keeps nothing', async () => {
    const { get, steward } = await sampleApp(file());
    const before = await planned(steward);
    const text = await read(get(`${NORTH}/crop?season=2027&crop=snap-bean`));
    expect(text).toMatch(/What would be planned Snap bean in North bed, sown about (May|June) \d+, 2027/);
    expect(text).toContain('What is added');
    expect(text).toMatch(/Here it is sown from May \d+, 2027 to/);
    const sick = await read(get(`${NORTH}/crop?season=2027&crop=cabbage`));
    expect(sick).toContain('It breaks a rule');
    expect(await planned(steward)).toEqual(before);
  });

  it('is one entry of History, taken back as one', async () => {
    const { get, send, steward } = await sampleApp(file());
    const before = await planned(steward);
    const fields = { season: '2027', crop: 'snap-bean', on: '2027-06-01', how: 'sow', share: '20' };
    const answer = await send(`${NORTH}/crop`, fields);
    expect([answer.status, answer.headers.get('location')]).toEqual([303, `${BEDS}?kept=2`]);
    expect(await read(get(`${BEDS}?kept=2`))).toMatch(/Kept\. .*Take it back/);
    expect(await planned(steward)).toEqual([...before, 'north snap-bean 2027-06-01 1.858']);
    expect(await read(get(`${GARDEN}/history`))).toContain(
      'Planned: snap bean in North bed on 20 sq ft, sown about June 1, 2027',
    );
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect(await planned(steward)).toEqual(before);
  });

  it('takes the place of what is planned there, unless that is kept beside it with shares that fit', async () => {
    const { get, send, steward } = await sampleApp(file());
    const MIDDLE = `${BEDS}/middle/season/crop`;
    const beans = { season: '2027', crop: 'snap-bean', on: '2027-06-01', how: 'sow' };
    expect(await read(get(`${MIDDLE}?${new URLSearchParams(beans)}`))).toContain(
      'What would be taken out of the plan Tomato in Middle bed',
    );
    const beside = await send(MIDDLE, { ...beans, keep: 'tomatoes', share: '15' });
    expect(beside.status).toBe(422);
    expect(await read(beside)).toContain('Together they want 54 sq ft, and the bed has 39 sq ft.');
    await send(MIDDLE, { season: '2027', crop: 'tomato', on: '2027-05-28', how: 'set-out', share: '24' });
    const [tomato = ''] = (await steward.view('mill-row')).garden.plantings.flatMap(({ id, cropId }) =>
      cropId === 'tomato' ? [id] : [],
    );
    expect((await send(MIDDLE, { ...beans, keep: tomato, share: '14' })).status).toBe(303);
    expect(await planned(steward)).toEqual(['middle tomato 2027-05-28 2.23', 'middle snap-bean 2027-06-01 1.301']);
  });

  it.each([
    ['a crop nobody knows', { crop: 'tomatoe' }, 'Did you mean tomato'],
    ['a day that is none', { crop: 'kale', on: 'soon' }, '"soon" is not a date.'],
    ['a day that is past', { crop: 'kale', on: '2027-04-01' }, 'Give a day from 2027-04-20 to 2033-04-20.'],
    ['a day of another season', { crop: 'kale', on: '2028-05-01' }, 'counts to 2028, and this is 2027'],
    ['a share that is none', { crop: 'kale', share: 'half' }, '"half" is not an area.'],
    ['more than the bed has', { crop: 'kale', share: '5 m2' }, 'more than North bed has'],
    ['a season far off', { crop: 'kale', season: '2099' }, 'It is none that can be planned.'],
  ])('refuses %s, and says the mend', async (_, fields, told) => {
    const { get, send, steward } = await sampleApp(file());
    const before = await planned(steward);
    const asked: Record<string, string> = { season: '2027', ...fields };
    const answer = await get(`${NORTH}/crop?${new URLSearchParams(asked)}`);
    expect(answer.status).toBe(422);
    expect(await read(answer)).toContain(told);
    expect((await send(`${NORTH}/crop`, asked)).status).toBe(422);
    expect(await planned(steward)).toEqual(before);
  });

  it('tells all that is wrong at once', async () => {
    const { get } = await sampleApp(file());
    const text = await read(get(`${NORTH}/crop?season=2027&crop=kale&on=soon&share=half`));
    expect(text).toContain('is not a date');
    expect(text).toContain('is not an area');
  });

  it('says what a crop taken out would mend, and what a plan taken would break', async () => {
    const again = { id: 'again', bed: 'north', crop: 'cabbage', setOut: '2027-05-01' };
    const { get } = await sampleApp(file({ plantings: [...(file().plantings as object[]), again] }));
    const out = await read(get(`${NORTH}/drop?planting=again`));
    expect(out).toMatch(/What it mends North bed: Cabbage comes back 1 year after kale of 2026/);
    const only = {
      beds: [{ id: 'south', name: 'South bed', lengthM: 3, widthM: 1.2 }],
      plantings: [{ bed: 'south', crop: 'tomato', setOut: '2026-05-28', lastHarvest: '2026-09-20' }],
      coverStands: [],
      wishes: [{ crop: 'okra', beds: 1 }],
    };
    const taken = await read((await sampleApp(file(only))).get(`${GARDEN}/take-plan?years=1`));
    expect(taken).toMatch(/What breaks or gives way with it .*South bed: Okra follows tomato of 2026: both carry/);
  });

  it('waits for a bed that is still to be made', async () => {
    const made = { id: 'new', name: 'New bed', lengthM: 3, widthM: 1.2, depthM: 0.3, plannedFor: '2027-07-01' };
    const { get } = await sampleApp(file({ beds: [...sampleFile().beds, made] }));
    const at = (fields: Record<string, string>) =>
      read(get(`${BEDS}/new/season/crop?${new URLSearchParams({ season: '2027', crop: 'snap-bean', ...fields })}`));
    expect(await at({})).toMatch(/What would be planned Snap bean in New bed, sown about July \d+, 2027/);
    expect(await at({ on: '2027-06-01' })).toContain('New bed is not there before July 1, 2027.');
    expect(await read(get(BEDS))).toMatch(
      /New bed 39 sq ft (\d{4} (this season )?not there yet ){3}\d{4} (this season )?open change/,
    );
  });

  it('takes a planned crop out, and never what is in the ground', async () => {
    const { get, send, steward } = await sampleApp(file());
    const drop = `${BEDS}/middle/season/drop`;
    expect(await read(get(`${drop}?planting=tomatoes`))).toContain('What goes off the plan');
    expect((await send(drop, { planting: 'tomatoes' })).status).toBe(303);
    expect(await planned(steward)).toEqual([]);
    const grown = await send(drop, { planting: 'old-carrots' });
    expect([grown.status, await read(grown)]).toEqual([422, expect.stringContaining('It is in the ground')]);
    expect((await get(`${BEDS}/nowhere/season?season=2027`)).status).toBe(404);
  });
});

describe('wishes', () => {
  const wish = { do: 'add', crop: 'cabbage', amount: '2', in: 'beds', season: '2028' };

  it('are told by a form, one in the place of the last for the same crop and season, and taken back', async () => {
    const { get, send, steward } = await sampleApp(file());
    expect((await send(`${GARDEN}/wishes`, wish)).headers.get('location')).toBe(BEDS);
    await send(`${GARDEN}/wishes`, { ...wish, amount: '1' });
    await send(`${GARDEN}/wishes`, { do: 'add', crop: 'carrot', amount: '21.5', in: 'area', season: '' });
    const { garden } = await steward.view('mill-row');
    expect(garden.wishes).toEqual([
      { cropId: 'cabbage', amount: { beds: 1 }, season: 2028 },
      { cropId: 'carrot', amount: { areaM2: 1.997 } },
    ]);
    expect(await read(get(BEDS))).toContain('Carrot: 21 sq ft, every season');
    expect(await read(get(`${GARDEN}/history`))).toMatch(
      /Wished for: carrot, 21 sq ft, in every season.*Wished for: cabbage, 1 bed in 2028/,
    );
    await send(`${GARDEN}/wishes`, { do: 'drop', wish: 'cabbage 2028' });
    expect((await steward.view('mill-row')).garden.wishes).toHaveLength(1);
  });

  it.each([
    ['no crop', { crop: '' }, 'None is chosen.'],
    ['an unknown one', { crop: 'cabage' }, 'Did you mean cabbage'],
    ['a lasting one', { crop: 'asparagus' }, 'stays where it is planted'],
    ['no amount', { amount: '' }, 'It is empty.'],
    ['half a bed', { amount: '0.5' }, 'no count of whole beds'],
    ['a season that is over', { season: '2020' }, 'That season cannot be planned.'],
  ])('of %s are refused, and what was typed stays', async (_, change, told) => {
    const { send, steward } = await sampleApp(file());
    const answer = await send(`${GARDEN}/wishes`, { ...wish, ...change });
    expect(answer.status).toBe(422);
    expect(await read(answer)).toContain(told);
    expect((await steward.view('mill-row')).garden.wishes).toEqual([]);
  });
});

describe('a wish that is odd', () => {
  it.each([
    ['more square feet than there are', { crop: 'kale', areaM2: 14.5 }, 'more than all beds together have: 155 sq ft.'],
    ['more beds than there are', { crop: 'kale', beds: 5 }, 'more than all beds together have: 4 beds.'],
    ['a season that is past', { crop: 'kale', beds: 1, year: 2026 }, 'Plans begin with 2027: nothing is placed'],
  ])('is doubted: %s', async (_, wish, told) => {
    const { get } = await sampleApp(file({ wishes: [wish] }));
    expect(await read(get(BEDS))).toContain(told);
  });

  it('is not doubted where all beds together are just enough', async () => {
    const { get } = await sampleApp(file({ wishes: [{ crop: 'kale', areaM2: 14.4, year: 2027 }] }));
    expect(await read(get(BEDS))).not.toMatch(/more than all beds|Plans begin/);
  });

  it('is taken back on its own, the older one too', async () => {
    const { send, steward } = await sampleApp(file());
    for (const crop of ['kale', 'pea'])
      await send(`${GARDEN}/wishes`, { do: 'add', crop, amount: '1', in: 'beds', season: '2028' });
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect((await steward.view('mill-row')).garden.wishes.map(({ cropId }) => cropId)).toEqual(['pea']);
  });
});

describe('a plan that is proposed', () => {
  it('stands in front of what is planned, and can be linked to', async () => {
    const { get, steward } = await sampleApp(file(WISHES));
    const before = await planned(steward);
    const text = await read(get(`${BEDS}?years=1`));
    expect(text).toContain('Proposed for 2027');
    expect(text).toMatch(/Cabbage cabbage family; proposed; set out \w+ \d+, 2027/);
    expect(text).not.toMatch(/North bed 39 sq ft (?:(?!Middle bed).)*Cabbage/);
    expect(await planned(steward)).toEqual(before);
  });

  it('is shown with what it would do, taken as one fact, and taken back as one', async () => {
    const { get, send, steward } = await sampleApp(file(WISHES));
    const before = await planned(steward);
    const html = withoutWhys(await (await get(`${GARDEN}/take-plan?years=1`)).text());
    expect(plain(html)).toContain('What is added');
    const [, mark = ''] = html.match(/name="plan" value="([^"]+)"/) ?? [];
    expect((await send(`${GARDEN}/take-plan`, { years: '1', anew: '', plan: mark })).status).toBe(303);
    const after = await planned(steward);
    expect(after.map((row) => row.split(' ')[1]).sort()).toEqual(['cabbage', 'carrot', 'tomato']);
    const again = await get(`${GARDEN}/take-plan?years=1`);
    expect([again.status, await read(again)]).toEqual([422, expect.stringContaining('It would plan nothing.')]);
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect(await planned(steward)).toEqual(before);
  });

  it('is not taken where the garden has changed since it was shown', async () => {
    const { get, send, steward } = await sampleApp(file(WISHES));
    const html = withoutWhys(await (await get(`${GARDEN}/take-plan?years=1`)).text());
    const [, mark = ''] = html.match(/name="plan" value="([^"]+)"/) ?? [];
    await send(`${GARDEN}/wishes`, { do: 'drop', wish: 'carrot' });
    const answer = await send(`${GARDEN}/take-plan`, { years: '1', anew: '', plan: mark });
    expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining('The garden has changed')]);
    expect(await planned(steward)).toHaveLength(1);
  });

  it('made anew takes the place of what is only planned, and says what would go', async () => {
    const { get, send, steward } = await sampleApp(file({ wishes: [{ crop: 'potato', beds: 4 }] }));
    const text = await read(get(`${BEDS}?years=1&anew=yes`));
    expect(text).toContain('planned, would go');
    const html = withoutWhys(await (await get(`${GARDEN}/take-plan?years=1&anew=yes`)).text());
    const [, mark = ''] = html.match(/name="plan" value="([^"]+)"/) ?? [];
    await send(`${GARDEN}/take-plan`, { years: '1', anew: 'yes', plan: mark });
    expect((await planned(steward)).every((row) => row.includes('potato'))).toBe(true);
  });

  it('says which season it would leave empty, and up to which day work is worked out', async () => {
    const { get } = await sampleApp(file({ wishes: [{ crop: 'potato', beds: 1, year: 2028 }] }));
    for (const path of [`${BEDS}?years=2&anew=yes`, `${GARDEN}/take-plan?years=2&anew=yes`])
      expect(await read(get(path))).toContain(
        '2027 would be left empty: all that was planned for it goes, and nothing is wished for it.',
      );
    expect(await read(get(`${GARDEN}/take-plan?years=2&anew=yes`))).toContain('Work is worked out up to May 20, 2028');
    expect(await read(get(`${GARDEN}/take-plan?years=2`))).not.toContain('left empty');
  });

  it('lists all it would plan and all it would take out', async () => {
    const crops = ['kale', 'pea', 'carrot', 'garlic', 'radish', 'spinach', 'beet', 'leek'];
    const wishes = crops.map((crop) => ({ crop, areaM2: 0.4 }));
    const { get } = await sampleApp(file({ plantings: [], coverStands: [], wishes }));
    const text = await read(get(`${GARDEN}/take-plan?years=1`));
    expect(text.match(/ in \w+ bed on 4.3 sq ft, (sown|set out) about/g)?.length).toBeGreaterThan(6);
    expect(text).not.toMatch(/; \d+ more/);
  });

  it('plans no crop whose bed is not free in time', async () => {
    const late = {
      beds: ['south', 'wall'].map((id) => ({ id, name: `${id} bed`, lengthM: 3, widthM: 1.2 })),
      plantings: ['south', 'wall'].map((bed) => ({
        bed,
        crop: 'carrot',
        sow: '2027-06-15',
        lastHarvest: '2027-12-10',
      })),
      coverStands: [],
      wishes: [
        { crop: 'garlic', beds: 1, year: 2028 },
        { crop: 'pea', beds: 1, year: 2028 },
      ],
    };
    const { get } = await sampleApp(file(late));
    const text = await read(get(`${GARDEN}/take-plan?years=2`));
    expect(text).toMatch(
      /Nothing is kept yet\. .*What would be planned Garden pea in \w+ bed, sown about \w+ \d+, 2028 /,
    );
    expect(text).not.toMatch(/Garlic in \w+ bed/);
    const alone = await sampleApp(file({ ...late, wishes: [{ crop: 'garlic', beds: 1, year: 2028 }] }));
    expect(await read(alone.get(`${GARDEN}/take-plan?years=2`))).toContain('It would plan nothing.');
  });

  it('says why a wish fails, with the least to give', async () => {
    const { get } = await sampleApp(file({ wishes: [{ crop: 'cabbage', beds: 4 }] }));
    const text = await read(get(`${BEDS}?years=1`));
    expect(text).toContain('Not met 4 beds of cabbage in 2027');
    expect(text).toMatch(/These cannot all be kept\. The least to give: /);
  });

  it.each(['0', '5', 'x', '1.5'])('is refused for %s seasons', async (years) => {
    const { get } = await sampleApp(file(WISHES));
    const answer = await get(`${BEDS}?years=${years}`);
    expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining('Choose 1 to 4.')]);
  });

  it('reaches as far as the wishes do, unless asked otherwise', async () => {
    const { get } = await sampleApp(file({ wishes: [{ crop: 'cabbage', beds: 1, year: 2029 }] }));
    expect(withoutWhys(await (await get(BEDS)).text())).toMatch(/<option value="3" selected(="")?>the next 3/);
    expect(await read(get(`${BEDS}?years=1`))).toContain('Nothing is left to place: no wish is open in these seasons.');
    expect(await read(get(`${BEDS}?years=1&anew=yes`))).toContain('would only take out what is planned');
  });

  it('asks for wishes first', async () => {
    const { get } = await sampleApp(file());
    const answer = await get(`${BEDS}?years=1`);
    expect([answer.status, await read(answer)]).toEqual([422, expect.stringContaining('Nothing is wished for.')]);
  });

  it('lets other pages be answered while it is worked out, and says the same again', async () => {
    const { get } = await sampleApp(file(WISHES));
    let first = 'the proposal';
    const slow = get(`${BEDS}?years=2`).then((answer) => answer.text());
    await Promise.race([slow, get('/health').then(() => (first = 'another page'))]);
    expect(first).toBe('another page');
    expect(await (await get(`${BEDS}?years=2`)).text()).toBe(await slow);
  });

  it('is worked out once for all who ask for it while the garden stands as it is', async () => {
    const { steward } = await sampleApp(file(WISHES));
    const proposals = heldProposals();
    const view = await steward.view('mill-row');
    const [one, again] = [proposals(view, { years: 1, anew: false }), proposals(view, { years: 1, anew: false })];
    expect(again).toBe(one);
    await one;
    expect(proposals(view, { years: 1, anew: false })).toBe(one);
  });
});
