/**
 * A set-up told twice over: in two tabs, by two presses, in other units than it was shown in, and of a garden that moves.
 */
import { describe, expect, test } from 'vitest';
import { plain } from '../plain-text.ts';
import { formIn, type PageForm } from '../sent-form.ts';
import { ABOUT, leadsTo, toldTo } from './set-up-told.ts';

const METRIC = { 'Sec-Fetch-Site': 'same-origin', Cookie: 'reading=metric' };
const US = { 'Sec-Fetch-Site': 'same-origin', Cookie: 'reading=us' };

type Told = Awaited<ReturnType<typeof toldTo>>;

/** What is kept of a set-up. */
async function keptOf({ base, steward }: Told) {
  const kept = await steward.draft(base.split('/').at(-1) ?? '');
  if (kept === undefined) throw new Error('The set-up is gone.');
  return kept.draft;
}

/** The form of a step that adds or answers, as the page has it. */
async function formOf(told: Told, step: string, holding: string, headers = {}): Promise<PageForm> {
  const html = await (await told.get(`${told.base}/${step}`, headers)).text();
  const [form = ''] =
    html.match(/<form method="post"[^>]*>.*?<\/form>/gs)?.filter((each) => each.includes(holding)) ?? [];
  return formIn(form);
}

describe('units', () => {
  test('a form shown in feet is read in feet, whatever another tab chose meanwhile', async () => {
    const told = await toldTo('beds');
    const { action, fields } = await formOf(told, 'beds', 'name="count"', US);
    expect(fields).toMatchObject({ lengthM: '8', widthM: '4', _units: 'us' });
    await told.send(action, { ...fields, do: 'add' }, METRIC);
    const [bed] = (await keptOf(told)).beds;
    expect([bed?.lengthM, bed?.widthM]).toEqual([2.4384, 1.2192]);
  });

  test('and comes back in feet where something in it is wrong', async () => {
    const told = await toldTo('beds');
    const { action, fields } = await formOf(told, 'beds', 'name="count"', US);
    const back = formIn(await (await told.send(action, { ...fields, count: '0', do: 'add' }, METRIC)).text());
    expect(back.fields).toMatchObject({ lengthM: '8', _units: 'us' });
  });
});

describe('two tabs', () => {
  test('two crops added at once are both kept', async () => {
    const told = await toldTo('growing');
    const add = (crop: string, bed: string) =>
      told.tell('growing', { do: 'add', what: `crop:${crop}`, beds: bed, on: '2027-05-28' });
    await Promise.all([add('tomato', 'bed-1'), add('pepper', 'bed-2')]);
    expect((await keptOf(told)).plantings.map(({ crop }) => crop).sort()).toEqual(['pepper', 'tomato']);
  });

  test('beds added at once have each a name of their own', async () => {
    const told = await toldTo('beds');
    const add = (lengthM: string) => told.tell('beds', { do: 'add', count: '1', lengthM, widthM: '1.2' });
    await Promise.all([add('2'), add('3')]);
    const { beds } = await keptOf(told);
    expect([beds.map(({ name }) => name), new Set(beds.map(({ id }) => id)).size]).toEqual([['Bed 1', 'Bed 2'], 2]);
  });

  test('a page of last year shown before another tab told some of it adds its own to that', async () => {
    const told = await toldTo('last-year');
    const { action, fields } = await formOf(told, 'last-year', 'past:bed-1');
    await told.send(action, { ...fields, 'past:bed-1:2026:0': 'tomato', do: 'on' });
    await told.send(action, { ...fields, 'past:bed-2:2026:0': 'cabbage', do: 'on' });
    expect((await keptOf(told)).past.map(({ crop }) => crop).sort()).toEqual(['cabbage', 'tomato']);
    const again = await formOf(told, 'last-year', 'past:bed-1');
    await told.send(again.action, { ...again.fields, 'past:bed-1:2026:0': '', do: 'on' });
    expect((await keptOf(told)).past.map(({ crop }) => crop)).toEqual(['cabbage']);
  });
});

describe('two presses', () => {
  async function withThree() {
    const told = await toldTo('growing');
    for (const [crop, bed] of [
      ['tomato', 'bed-1'],
      ['pepper', 'bed-2'],
      ['eggplant', 'bed-3'],
    ] as const)
      await told.tell('growing', { do: 'add', what: `crop:${crop}`, beds: bed, on: '2027-05-28' });
    return told;
  }

  test('"Take out" pressed twice takes one out', async () => {
    const told = await withThree();
    const [, out = ''] = /value="(out:plantings:[^"]*)"/.exec(await told.show('growing')) ?? [];
    for (const _ of [1, 2]) expect(leadsTo(await told.tell('growing', { do: out }))).toBe('…/growing');
    expect((await keptOf(told)).plantings.map(({ crop }) => crop)).toEqual(['pepper', 'eggplant']);
  });

  test('a crop added twice by one form is added once, without a word of complaint', async () => {
    const told = await toldTo('growing');
    const { action, fields } = await formOf(told, 'growing', 'name="what"');
    const sent = { ...fields, do: 'add', what: 'crop:tomato', beds: 'bed-1', on: '2027-05-28' };
    const both = await Promise.all([told.send(action, sent), told.send(action, sent)]);
    expect(both.map(leadsTo)).toEqual(['…/growing', '…/growing']);
    expect(leadsTo(await told.send(action, { ...sent, do: 'on' }))).toBe('…/look-over');
    expect((await keptOf(told)).plantings).toHaveLength(1);
  });

  test.each([
    ['beds', 'bins', { count: '2', name: 'Long' }],
    ['bins', 'last-year', { count: '2', size: '760 L' }],
  ] as const)(
    '%s added twice by one form go in once; another form of the page adds others',
    async (step, next, typed) => {
      const told = await toldTo(step);
      const first = await formOf(told, step, 'name="count"');
      for (const _ of [1, 2]) await told.send(first.action, { ...first.fields, ...typed, do: 'add' });
      expect((await keptOf(told))[step]).toHaveLength(2);
      const second = await formOf(told, step, 'name="count"');
      for (const _ of [1, 2])
        expect(leadsTo(await told.send(second.action, { ...second.fields, ...typed, do: 'on' }))).toBe(`…/${next}`);
      expect((await keptOf(told))[step]).toHaveLength(4);
    },
  );

  test('a form gone back to in the browser and typed over adds what it says now', async () => {
    const told = await toldTo('beds');
    const { action, fields } = await formOf(told, 'beds', 'name="count"');
    await told.send(action, { ...fields, name: 'Wall', do: 'add' });
    await told.send(action, { ...fields, name: 'Gate', do: 'add' });
    expect((await keptOf(told)).beds.map(({ name }) => name)).toEqual(['Wall', 'Gate']);
  });
});

describe('another place', () => {
  const MELBOURNE = { latitude: '-37.8', longitude: '145', elevationM: '' };

  test('has its own zone and units, and asks for frost and garden anew', async () => {
    const told = await toldTo('garden');
    await told.tell('garden', { ...ABOUT, units: 'us' });
    expect(leadsTo(await told.tell('where', MELBOURNE))).toBe('…/climate');
    const { about, climate, passed } = await keptOf(told);
    expect([about?.timeZone, about?.units, climate, passed]).toEqual([
      'Australia/Melbourne',
      'metric',
      undefined,
      ['where'],
    ]);
  });

  test('keeps a zone and units that were chosen otherwise than the place has them', async () => {
    const told = await toldTo('garden');
    await told.tell('garden', { ...ABOUT, timeZone: 'Europe/Oslo', units: 'metric' });
    await told.tell('where', { latitude: '40', longitude: '-105', elevationM: '' });
    expect((await keptOf(told)).about).toMatchObject({ timeZone: 'Europe/Oslo', units: 'metric' });
  });

  test('told again as it was asks for nothing', async () => {
    const told = await toldTo('beds');
    const { passed } = await keptOf(told);
    await told.tell('where', { latitude: '43.07, -89.40', longitude: '', elevationM: '280 m' });
    expect((await keptOf(told)).passed).toEqual(passed);
  });

  test.each([
    ['0', 0],
    ['0 m', 0],
    ['-3 m', -3],
  ])('may lie %s above the sea', async (elevationM, kept) => {
    const told = await toldTo('climate');
    await told.tell('where', { latitude: '52.4, 4.8', longitude: '', elevationM });
    expect((await keptOf(told)).place?.elevationM).toBe(kept);
    expect(plain(await told.show('look-over'))).toContain(`${kept === 0 ? '0' : '-3'} m above the sea`);
  });
});
