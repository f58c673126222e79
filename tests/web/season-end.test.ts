import { describe, expect, it } from 'vitest';
import { GARDEN, sampleApp, sampleFile } from './sample-garden.ts';

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
    const text = await (await get(`${GARDEN}/season-end`)).text();
    for (const bed of ['north', 'middle', 'south', 'wall']) expect(text).toContain(`href="${GARDEN}/beds/${bed}"`);
    expect(text).toContain('After snap bean, from August 29, until tomato goes in on May 28, 2028');
    expect(text).toContain('<span class="verdict">fits well</span>');
    expect(text).toContain('For it');
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
    expect(await (await get(WALL)).text()).toContain('No cover can serve here: mulch it.');
  });

  it('adds up the seed of what is chosen', async () => {
    const { get, send } = await sampleApp(file);
    expect(await (await get(`${GARDEN}/season-end`)).text()).toContain('No cover is planned that still wants its seed');
    await send(`${WALL}/choose`, asked('oats'));
    const text = await (await get(`${GARDEN}/season-end`)).text();
    expect(text).toMatch(/oats<\/th><td>\d+ g \([\d.]+ oz\)/);
  });
});

describe('choosing on a bed’s page', () => {
  it('shows first what it would do, and keeps nothing', async () => {
    const { get, steward } = await sampleApp(file);
    const text = await (await get(choose(asked('oats')))).text();
    expect(text).toContain('Chosen for Wall bed: oats, sown about');
    expect(text).toContain('What is added');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('lets another day be tried', async () => {
    const { get } = await sampleApp(file);
    const text = await (await get(choose(asked('oats', { on: '2027-09-02' })))).text();
    expect(text).toContain('oats, sown about September 2, 2027');
    const late = await get(choose(asked('oats', { on: '2027-08-01' })));
    expect(late.status).toBe(422);
    expect(await late.text()).toContain('Snap bean grows there from May 25, 2027 until about August 28, 2027');
  });

  it('says what it takes the place of, and what speaks against it, before it is accepted', async () => {
    const { get, send } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    const rye = await (await get(choose(asked('cereal_rye')))).text();
    expect(rye).toMatch(/It takes the place of the oats planned for \w+ \d+/);
    const late = await (await get(choose(asked('cereal_rye', { on: '2027-10-01' })))).text();
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
    expect([answer.status, answer.headers.get('Location')]).toEqual([303, WALL]);
    expect(await (await get(WALL)).text()).toContain('Planned: oats, sown about');
    const { ledger, garden } = await steward.view('mill-row');
    expect(ledger).toHaveLength(2);
    const stand = garden.stands[0]?.id ?? '';
    expect(await (await get(`${WALL}/drop?stand=${stand}`)).text()).toContain(
      'Taken out of the plan: oats in Wall bed',
    );
    await send(`${WALL}/drop`, { stand });
    expect((await steward.view('mill-row')).garden.stands).toEqual([]);
  });

  it('puts a mulch in a cover’s place, and a cover in a mulch’s', async () => {
    const { get, send, steward } = await sampleApp(file);
    await send(`${WALL}/choose`, asked('oats'));
    await send(`${WALL}/choose`, asked('mulch-leaves'));
    expect(await (await get(WALL)).text()).toContain('Chosen: a mulch of leaves.');
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
    const text = await (await get(`${GARDEN}/year`)).text();
    expect(text).toMatch(
      /aria-label="Wall bed: snap bean from May 25 to August 28; oats from [^"]+; tomato from May 28, 2028/,
    );
    expect(text).toContain('class="held-planned"');
    expect(text).toContain('oats, planned');
    expect(text).toMatch(/<a href="[^"]+sow[^"]+">sow oats<\/a>/);
    expect(text).not.toMatch(/⟦|undefined|NaN/);
  });
});
