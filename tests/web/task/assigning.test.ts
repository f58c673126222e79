import { describe, expect, test } from 'vitest';
import { weekList } from '../../../src/digest/week-list.ts';
import { weekListText } from '../../../src/digest/week-text.ts';
import { historyPath, taskPath } from '../../../src/web/addresses/addresses.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const RYE = 'cover-cut/stand:rye-north';
const VETCH = 'cover-cut/stand:vetch-middle';
const page = taskPath('mill-row', RYE);
const household = {
  people: 2,
  members: [{ name: 'Ida', practices: ['composting'] }, { name: 'Jonas' }],
};

describe('a task is given to somebody', () => {
  test('on its page, which says to whom it falls until then', async () => {
    const { get, send, steward } = await sampleApp(sampleFile({ household }));
    expect(await (await get(page)).text()).toContain('It falls to Jonas, by what they see to.');
    expect((await send(page, { do: 'assign', give: RYE, to: 'Ida' })).headers.get('location')).toBe(page);
    expect((await steward.view('mill-row')).garden.assigned).toEqual({ [RYE]: 'Ida' });
    const given = await (await get(page)).text();
    expect(given).toContain('<p class="mates">For Ida.</p>');
    expect(given).toContain('<option value="Ida" selected');
  });

  test('with the other beds of its entry, or some of them: it stays one entry, and both see it', async () => {
    const { get, send, steward } = await sampleApp(sampleFile({ household }));
    const asked = await (await get(page)).text();
    expect(asked).toContain('Which are meant?');
    expect(asked.match(/name="give" value="[^"]*" checked/g)).toHaveLength(2);
    await send(page, { do: 'assign', give: VETCH, to: 'Ida' });
    const { plan, garden } = await steward.view('mill-row');
    const holding = plan.entries.filter(({ keys }) => keys.includes(RYE) || keys.includes(VETCH));
    expect(holding).toHaveLength(1);
    const [entry] = holding;
    for (const person of ['Ida', 'Jonas']) {
      const { days } = weekList(plan, garden, entry?.day ?? TODAY, { person });
      expect(days.flatMap(({ entries }) => entries.map((row) => row.entry.lotId))).toContain(entry?.lotId);
    }
    await send(page, { do: 'assign', give: [RYE, VETCH], to: 'Ida' });
    const now = await steward.view('mill-row');
    const jonas = weekList(now.plan, now.garden, entry?.day ?? TODAY, { person: 'Jonas' });
    expect(jonas.days.flatMap(({ entries }) => entries.map((row) => row.entry.lotId))).not.toContain(entry?.lotId);
  });

  test('is told on This week and in the weekly list', async () => {
    const { get, send, steward } = await sampleApp(sampleFile({ household }));
    await send(page, { do: 'assign', give: [RYE, VETCH], to: 'Ida' });
    const { plan, garden } = await steward.view('mill-row');
    const { day = TODAY } = plan.entries.find(({ keys }) => keys.includes(RYE)) ?? {};
    expect(await (await get(`${GARDEN}?week=${day}`)).text()).toContain('<p class="leeway">For Ida.</p>');
    expect(weekListText(weekList(plan, garden, day), 'us')).toContain('\n      For Ida.\n');
  });

  test('in one act, which history tells and one taking-back undoes', async () => {
    const { get, send, steward } = await sampleApp(sampleFile({ household }));
    await send(page, { do: 'assign', give: [RYE, VETCH], to: 'Ida' });
    expect(await (await get(historyPath('mill-row'))).text()).toContain('Given to Ida: ');
    await steward.undo('mill-row', undefined, 'test');
    expect((await steward.view('mill-row')).garden.assigned).toEqual({});
  });

  test('and to nobody in particular again; what is so already is no entry of history', async () => {
    const { send, steward } = await sampleApp(sampleFile({ household }));
    await send(page, { do: 'assign', give: RYE, to: 'Jonas' });
    await send(page, { do: 'assign', give: RYE, to: 'Jonas' });
    await send(page, { do: 'assign', give: RYE, to: '' });
    const { garden, ledger } = await steward.view('mill-row');
    expect(garden.assigned).toEqual({});
    expect(ledger.map(({ fact }) => fact.kind)).toEqual(['garden-imported', 'task-assigned', 'task-assigned']);
  });

  test('but not with nothing ticked, nor to somebody nobody knows; what was chosen is still there', async () => {
    const { send, steward } = await sampleApp(sampleFile({ household }));
    const nothing = await send(page, { do: 'assign', to: 'Ida' });
    expect(nothing.status).toBe(422);
    expect(await nothing.text()).toContain('<strong>Which are meant:</strong> None is ticked.');
    const stranger = await send(page, { do: 'assign', give: RYE, to: 'Idda' });
    const text = await stranger.text();
    expect([stranger.status, text.includes('“Idda”') || text.includes('&quot;Idda&quot;')]).toEqual([422, true]);
    expect(text).toContain('Did you mean Ida?');
    expect((await steward.view('mill-row')).garden.assigned).toEqual({});
  });

  test('is not asked where the garden names nobody', async () => {
    const { get } = await sampleApp();
    expect(await (await get(page)).text()).not.toContain('Whose it is');
  });
});
