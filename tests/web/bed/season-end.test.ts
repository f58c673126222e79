import { describe, expect, it } from 'vitest';
import { formatDay } from '../../../src/measures/quantity.ts';
import { plain, withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

/** Beans stand in the wall bed until the end of August; tomatoes go in there at the end of the next May. */
const file = sampleFile({
  plantings: [
    { id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-05-25', lastHarvest: '2027-08-28' },
    { id: 'tomatoes', bed: 'wall', crop: 'tomato', setOut: '2028-05-28' },
  ],
  coverStands: [],
});
const WALL = `${GARDEN}/beds/wall`;
const GAP = 'beans~tomatoes';
const asked = (choice: string, more: Record<string, string> = {}) => ({ gap: GAP, choice, ...more });
const choose = (fields: Record<string, string>) => `${WALL}/choose?${new URLSearchParams(fields)}`;

describe('season end', () => {
  it('tells of every bed, best first, with a way to its page', async () => {
    const { get } = await sampleApp(file);
    const text = withoutWhys(await (await get(`${GARDEN}/season-end`)).text());
    for (const bed of ['north', 'middle', 'south', 'wall']) expect(text).toContain(`href="${GARDEN}/beds/${bed}"`);
    expect(text).toContain('After snap bean, from August 29, until tomato goes in on May 28, 2028');
    expect(text).toContain('<span class="verdict">fits well</span>');
    expect(text).toContain('For it');
    expect(text).toMatch(/<summary><h4>[^<]+<\/h4> <span class="verdict">[^<]+<\/span><span class="under">Sow: about /);
    for (const [, id] of text.matchAll(/href="#(bed-[^"]+)"/g)) expect(text).toContain(`<section id="${id}"`);
    expect(text).toContain('href="#bed-wall"');
    expect(text).toContain('Against it');
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });

  it('says plainly that no cover can serve a bed that is free too short a time', async () => {
    const short = sampleFile({
      plantings: [
        { bed: 'wall', crop: 'spinach', sow: '2027-04-01', lastHarvest: '2027-06-10' },
        { bed: 'wall', crop: 'snap-bean', sow: '2027-06-15', lastHarvest: '2027-09-20' },
      ],
      coverStands: [],
    });
    const { get } = await sampleApp(short);
    expect(withoutWhys(await (await get(WALL)).text())).toContain('No cover can serve here: mulch it.');
  });

  it('adds up the seed of what is chosen', async () => {
    const { get, send } = await sampleApp(file);
    const before = withoutWhys(await (await get(`${GARDEN}/season-end`)).text());
    expect(before).toContain('No cover that was chosen still wants its seed');
    expect(before).toMatch(/The plan’s own proposals, where nobody has chosen[\s\S]+ in \w+ bed<\/a>, on [^<]+: \d+ g/);
    expect(before).toMatch(/Nobody has chosen here. The plan’s own proposal: <a [^>]+>[^<]+, sown on \w+ \d+/);
    expect(await (await get(`${GARDEN}/year`)).text()).toContain('the plan’s own proposal');
    await send(`${WALL}/choose`, asked('oats'));
    const text = withoutWhys(await (await get(`${GARDEN}/season-end`)).text());
    expect(text).toMatch(/oats<\/th><td>\d+ g \([\d.]+ oz\)/);
    expect(text).toMatch(/Planned: oats, sown on \w+ \d+, between \w+ \d+ and \w+ \d+/);
  });
});

describe('choosing on a bed’s page', () => {
  it('shows first what it would do, and keeps nothing', async () => {
    const { get, steward } = await sampleApp(file);
    const text = withoutWhys(await (await get(choose(asked('oats')))).text());
    expect(text).toContain('Chosen for Wall bed: oats, sown about');
    expect(text).toContain('What is added');
    expect(text).toMatch(/young oats in Wall bed: \w+ \d+, 2027/);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('tells from when to when it is cut, what closes that, and what decides', async () => {
    const { get, send } = await sampleApp(file);
    const window = /Cut from \w+ \d+ to \w+ \d+, 2028 ?\./;
    const shown = withoutWhys(await (await get(choose(asked('cereal_rye')))).text());
    expect(plain(shown)).toMatch(window);
    expect(shown).toContain('What closes these days');
    expect(shown).toContain('Of the two limits, what follows decides');
    const kept = await send(`${WALL}/choose`, asked('cereal_rye'));
    expect(plain(withoutWhys(await (await get(kept.headers.get('Location') ?? '')).text()))).toMatch(
      /Kept\. \d+ tasks (?:are added|move).* Take it back .*/,
    );
    for (const path of [WALL, `${GARDEN}/season-end`])
      expect(plain(withoutWhys(await (await get(path)).text()))).toMatch(window);
  });

  it('shows what is chosen before all others, however it fits, and says that it does', async () => {
    const { get, send } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('cereal_rye'));
    const text = withoutWhys(await (await get(`${GARDEN}/season-end`)).text());
    expect(plain(text)).toContain('What is chosen stands first');
    const wall = withoutWhys(await (await get(WALL)).text());
    const gap = wall.slice(wall.indexOf('Planned: winter rye'));
    expect(/<h4>([^<]+)<\/h4>/.exec(gap)?.[1]).toBe('Winter rye');
  });

  it('lets another day be tried', async () => {
    const { get } = await sampleApp(file);
    const text = withoutWhys(await (await get(choose(asked('oats', { on: '2027-09-02' })))).text());
    expect(text).toContain('oats, sown about September 2, 2027');
    const late = await get(choose(asked('oats', { on: '2027-08-01' })));
    expect(late.status).toBe(422);
    expect(await late.text()).toContain('Snap bean grows there from May 25, 2027 until about August 28, 2027');
  });

  it('says what it takes the place of, and what speaks against it, before it is accepted', async () => {
    const { get, send } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    const rye = withoutWhys(await (await get(choose(asked('cereal_rye')))).text());
    expect(rye).toMatch(/It takes the place of the oats planned for \w+ \d+/);
    const late = withoutWhys(await (await get(choose(asked('cereal_rye', { on: '2027-10-01' })))).text());
    expect(late).toMatch(/<h2>Winter rye (fits badly|does not fit) here<\/h2>/);
    expect(late).not.toMatch(/⟦|undefined|NaN/);
  });

  it('refuses the day before a crop is set out', async () => {
    const { get } = await sampleApp(file);
    const answer = await get(choose(asked('cereal_rye', { on: '2028-05-27' })));
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('winter rye sown on May 27, 2028 would have 1 day to grow');
  });

  it('takes it in as one entry, shows it as planned, and takes it out again', async () => {
    const { get, send, steward } = await sampleApp(file);
    const answer = await send(`${WALL}/choose`, asked('oats'));
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, `${WALL}?kept=2`]);
    expect(withoutWhys(await (await get(WALL)).text())).toMatch(/Planned: oats, sown on \w+ \d+, between/);
    const { ledger, garden } = await steward.view('mill-row');
    expect(ledger).toHaveLength(2);
    const stand = garden.stands[0]?.id ?? '';
    expect(withoutWhys(await (await get(`${WALL}/drop?stand=${stand}`)).text())).toContain(
      'Taken out of the plan: oats in Wall bed',
    );
    await send(`${WALL}/drop`, { stand });
    expect((await steward.view('mill-row')).garden.stands).toEqual([]);
  });

  it('puts a mulch in a cover’s place, and a cover in a mulch’s', async () => {
    const { get, send, steward } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    await send(`${WALL}/choose`, asked('mulch-leaves'));
    expect(withoutWhys(await (await get(WALL)).text())).toContain('Chosen: a mulch of leaves.');
    expect((await steward.view('mill-row')).garden.stands).toEqual([]);
    await send(`${WALL}/choose`, asked('oats'));
    expect((await steward.view('mill-row')).garden.mulches).toEqual([]);
  });

  it.each([
    ['a cover nobody knows', choose(asked('kudzoo')), 'Choose one of those listed for the gap.'],
    ['a gap that is gone', choose({ gap: 'x~y', choice: 'oats' }), 'It is no longer there.'],
    ['a day that is none', choose(asked('oats', { on: '2027-02-30' })), 'is not a date'],
    ['a stand that is not planned', `${WALL}/drop?stand=none`, 'It is not in the plan of this bed.'],
  ])('refuses %s with the mend', async (_, path, mend) => {
    const { get, steward } = await sampleApp(file);
    const answer = await get(path);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(mend);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('has no page for a bed that is not there', async () => {
    const { get } = await sampleApp(file);
    expect((await get(`${GARDEN}/beds/none`)).status).toBe(404);
  });
});

describe('the year', () => {
  it('draws every bed with its crops and covers, and tells the same in a table', async () => {
    const { get, send } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    const text = withoutWhys(await (await get(`${GARDEN}/year`)).text());
    expect(text).toMatch(
      /id="strip-wall-words">[^<]*[Ss]nap bean, planned, from May 25 to August 28; oats, planned, from [^<]+; tomato, planned, from May 28, 2028/,
    );
    expect(text).toContain('held-planned');
    expect(text).toContain('oats, planned');
    expect(text).toMatch(/<a href="[^"]+sow[^"]+">Sow oats in Wall bed<\/a>/);
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });
});

it('seed that should have been ordered is to be bought by the day its task says', async () => {
  const { get, steward } = await sampleApp(
    sampleFile({ coverStands: [{ bed: 'wall', cover: 'oats', sow: '2027-04-28' }] }),
  );
  const { plan } = await steward.view('mill-row');
  const by = plan.tasks.find(({ kind }) => kind === 'order-cover-seed')?.window.latest ?? 'no day';
  expect(withoutWhys(await (await get(`${GARDEN}/season-end`)).text())).toMatch(
    new RegExp(`oats</th><td>[^<]+</td><td>${formatDay(by, 'us', '2027-01-01')}</td>`),
  );
});

describe('ways between the pages', () => {
  it('lead from a cover’s task to its bed, and from the bed to the work on its covers', async () => {
    const { get, send, steward } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    const { plan } = await steward.view('mill-row');
    const sow = plan.tasks.find(
      ({ kind, subject }) => kind === 'sow-cover' && 'bedId' in subject && subject.bedId === 'wall',
    );
    const bed = withoutWhys(await (await get(WALL)).text());
    expect(bed).toContain('<h2>Work on its covers</h2>');
    expect(bed).toContain(`href="${GARDEN}/tasks/${sow?.key}"`);
    const task = withoutWhys(await (await get(`${GARDEN}/tasks/${sow?.key}`)).text());
    expect(task).toContain(`What else lies in this bed: <a href="${WALL}">Wall bed</a>.`);
  });

  it('lead from no crop’s task to a bed’s covers', async () => {
    const { get, steward } = await sampleApp(file);
    const { plan } = await steward.view('mill-row');
    const crop = plan.tasks.find(({ subject }) => subject.type === 'planting');
    expect(withoutWhys(await (await get(`${GARDEN}/tasks/${crop?.key}`)).text())).not.toContain(
      'What else lies in this bed',
    );
  });
});

describe('a page with little to tell', () => {
  it('says that no bed has a gap', async () => {
    const asparagus = sampleFile({
      plantings: ['north', 'middle', 'south', 'wall'].map((bed) => ({ bed, crop: 'asparagus', setOut: '2024-05-01' })),
      coverStands: [],
    });
    const { get } = await sampleApp(asparagus);
    const text = withoutWhys(await (await get(`${GARDEN}/season-end`)).text());
    expect(text).toContain('No bed has a gap in the next two years');
    expect(withoutWhys(await (await get(WALL)).text())).toContain('There is none: something grows here all the time.');
    expect(withoutWhys(await (await get(`${GARDEN}/year`)).text())).toContain('asparagus');
  });

  it('says nothing of covers where it never freezes, rather than that none serves', async () => {
    const tropics = sampleFile({
      climate: { monthlyNormals: Array.from({ length: 12 }, () => ({ highC: 31, lowC: 23, precipMm: 90 })) },
      coverStands: [],
    });
    const { get } = await sampleApp(tropics);
    for (const path of ['season-end', 'year', 'beds/wall']) {
      const text = withoutWhys(await (await get(`${GARDEN}/${path}`)).text());
      expect(text).not.toMatch(/No cover can serve here|⟦|undefined|NaN/);
      if (path !== 'year') expect(text).toContain('No freeze date is known for this garden');
    }
  });
});

describe('the odds of a cover that was sown', () => {
  it('stand in the table of the year: its flowers in spring, the winter while that is to come', async () => {
    const { get } = await sampleApp();
    const text = withoutWhys(await (await get(`${GARDEN}/year`)).text());
    expect(text).toMatch(/winter rye<span class="under">Flowers: [^<]+<\/span><\/th><td>September 20, 2026<\/td>/);
    expect(text).not.toMatch(/winter rye<span class="under">Winter:/);
  });
});

describe('in the south, over a leap day', () => {
  const southern = sampleFile({
    garden: {
      id: 'mill-row',
      name: 'Mill Row',
      latitude: -45.9,
      longitude: 170.3,
      timeZone: 'Pacific/Auckland',
      workDays: ['wed', 'sat'],
    },
    climate: { frostDates: { lastSpring: '11-01', firstAutumn: '04-10' } },
    plantings: [
      { id: 'beans', bed: 'wall', crop: 'snap-bean', sow: '2027-11-25', lastHarvest: '2028-02-28' },
      { id: 'tomatoes', bed: 'wall', crop: 'tomato', setOut: '2028-12-05' },
    ],
    coverStands: [],
    piles: [],
  });

  it('the gap begins on 29 February, and autumn covers are offered from then', async () => {
    const { get } = await sampleApp(southern);
    const text = withoutWhys(await (await get(WALL)).text());
    expect(text).toMatch(/After snap bean, from 29 February 2028, until tomato goes in on 5 December 2028/);
    expect(text).toMatch(/Sow<\/dt><dd>about \d+ March, at any time from 29 February to \d+ March 2028/);
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });

  it('a cover can be sown on the leap day, and the year after it draws', async () => {
    const { get, send, steward } = await sampleApp(southern);
    const leap = asked('oats', { on: '2028-02-29' });
    expect(withoutWhys(await (await get(choose(leap))).text())).toContain('oats, sown about 29 February 2028');
    await send(`${WALL}/choose`, leap);
    expect((await steward.view('mill-row')).garden.stands[0]?.sow.day).toBe('2028-02-29');
    const year = withoutWhys(await (await get(`${GARDEN}/year`)).text());
    expect(year).toMatch(/oats, planned(<span class="under">[^<]+<\/span>)?<\/th><td>29 February 2028/);
    expect(year).not.toMatch(/⟦|undefined|NaN/);
    const refused = await get(choose(asked('oats', { on: '2028-02-28' })));
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('until about 28 February 2028; 28 February 2028 lies in its time');
  });
});
