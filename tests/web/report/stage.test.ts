import { describe, expect, it } from 'vitest';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, TODAY } from '../sample-garden.ts';

const PATH = `${GARDEN}/report/stage`;
const SEEN = { seen: 'rye-north/cereal_rye', stage: 'in-bloom', on: TODAY };
const query = (fields: Record<string, string>) => `${PATH}?${new URLSearchParams(fields)}`;

describe('flowers seen on a cover', () => {
  it('are told of one of the kinds that stand, a mix by its parts', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/report`)).text()).toContain(`href="${PATH}"`);
    const text = await (await get(PATH)).text();
    expect(text).toContain('Winter rye in North bed');
    expect(text).toContain('value="vetch-middle/hairy_vetch"');
    expect(text).not.toContain('oats-south');
  });

  it('are asked of the stand whose look for buds leads there', async () => {
    const { get } = await sampleApp();
    expect(await (await get(query({ stand: 'vetch-middle' }))).text()).toMatch(
      /value="vetch-middle\/cereal_rye" selected/,
    );
  });

  it('show first what they would move, and keep nothing', async () => {
    const { get, steward } = await sampleApp();
    const text = withoutWhys(await (await get(query(SEEN))).text());
    expect(text).toContain('Flowers on the winter rye on April 20');
    expect(text).toContain('Cut the winter rye');
    expect(text).toContain('The plant outranks the reckoning');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('are kept with the day the figures had, and taken back as one', async () => {
    const { get, send, steward } = await sampleApp();
    const before = (await steward.view('mill-row')).plan.tasks.map(({ key, day, title }) => [key, day, title]);
    expect((await send(PATH, SEEN)).status).toBe(303);
    const { garden, plan } = await steward.view('mill-row');
    const seen = garden.stands.find(({ id }) => id === 'rye-north')?.seen;
    expect(seen).toEqual([
      { coverId: 'cereal_rye', on: TODAY, stage: 'in-bloom', modelled: expect.stringMatching(/^2027-0[56]/) },
    ]);
    expect(plan.tasks.find(({ key }) => key === 'cover-cut/stand:rye-north')?.window.latest).toBe('2027-04-24');
    expect(await (await get(`${GARDEN}/history`)).text()).toContain('Flowers on the winter rye on April 20');
    await send(`${GARDEN}/undo`, { entry: '2' });
    expect((await steward.view('mill-row')).plan.tasks.map(({ key, day, title }) => [key, day, title])).toEqual(before);
  });

  it('may be told of a cover that was cut meanwhile, for a day before that: only later stands move', async () => {
    const { get, send, steward } = await sampleApp();
    const cut = 'cover-cut/stand:rye-north';
    await send(`${GARDEN}/tasks/${cut}`, { do: 'done', on: TODAY, key: cut });
    const plan = async (year: string) => {
      const { tasks } = (await steward.view('mill-row')).plan;
      return tasks.filter(({ day }) => day.startsWith(year)).map(({ key, day }) => [key, day]);
    };
    const [before, nextYear] = [await plan('2027'), await plan('2028')];
    expect(await (await get(PATH)).text()).toContain('Winter rye in North bed (until April 20, 2027)');
    expect((await send(PATH, { ...SEEN, on: '2027-04-17' })).status).toBe(303);
    expect(await plan('2027')).toEqual(before);
    expect(await plan('2028')).not.toEqual(nextYear);
    const { garden } = await steward.view('mill-row');
    expect(garden.stands.find(({ id }) => id === 'rye-north')?.seen).toHaveLength(1);
  });

  it.each([
    ['a stand that is not there', { ...SEEN, seen: 'none/oats' }, 'does not stand in this garden'],
    ['a kind that is not in it', { ...SEEN, seen: 'rye-north/oats' }, 'Give one of cereal_rye'],
    ['a day before it was sown', { ...SEEN, on: '2026-09-01' }, 'when it was sown'],
    ['a day to come', { ...SEEN, on: '2027-05-20' }, 'cannot be used'],
    ['no cover', { ...SEEN, seen: '' }, 'Choose one from the list'],
  ])('are refused with the mend: %s', async (_, fields, mend) => {
    const { send, steward } = await sampleApp();
    const answer = await send(PATH, fields);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain(mend);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});
