import { describe, expect, test } from 'vitest';
import { sourceLine } from '../../../src/schedule/explain.ts';
import { taskPath } from '../../../src/web/addresses/addresses.ts';
import { taskPage } from '../../../src/web/task/task.tsx';
import { taskView } from '../../../src/web/task/task-view.ts';
import { withoutWhys } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';
import { samplePlan, sampleTask } from '../sample-plan.ts';

const RYE = 'cover-cut/stand:rye-north';
const VETCH = 'cover-cut/stand:vetch-middle';
const TURN = 'pile-turn/pile:spring-pile/turn:2';
const at = (key: string) => taskPath('mill-row', key);

describe('a task’s page', () => {
  const task = sampleTask('cover-cut/stand:oats', '2027-04-25', {
    title: 'Cut the oats in ⟦3.6 m2⟧',
    steps: ['Cut at the soil line.', 'Leave ⟦50 mm⟧ standing.'],
    cautions: ['Gloves.'],
    supplies: [{ what: 'sheet', amount: { value: 47, unit: 'L' }, also: '1 barrow load' }],
    window: { earliest: '2027-04-17', preferred: '2027-04-25', latest: '2027-05-01' },
    needs: ['dry-day', 'calm-day'],
    confidence: 'modelled',
    odds: { median: '2027-05-10', shareOfYears: 1, years: 30 },
    reasons: [
      {
        rule: 'topdress.own-depth',
        saw: { depthMm: 13, season: 'spring' },
        source: 'veg:V12',
      },
    ],
    after: [{ key: 'cover-sow', minDays: 1 }],
  });

  async function pageOf(units: 'us' | 'metric') {
    const { steward } = await sampleApp();
    const { garden, ...rest } = await steward.view('mill-row');
    const plan = samplePlan([task, sampleTask('cover-sow', '2027-04-21')]);
    const view = { ...rest, plan, garden: { ...garden, place: { ...garden.place, units } } };
    const found = taskView(view, task.key);
    return withoutWhys(found === undefined ? '' : String(await taskPage({ view, found, today: TODAY })));
  }

  test('tells what, when, how, with what and why, each reason beside its source', async () => {
    const text = await pageOf('metric');
    expect(text).toContain('<h1>Cut the oats in 3.6 m²</h1>');
    expect(text).toContain('<span class="number">25 April</span>');
    expect(text).toContain(
      'Any day from 17 April to 1 May 2027 will do. About <a href="/handbook/how-a-day-is-chosen#how-long-work-takes">' +
        '30 min</a>. Wants a dry day, a calm day.',
    );
    expect(text).toMatch(/<a href="\/handbook\/cover-cropping#[a-z-]+">How these amounts are worked out<\/a>/);
    expect(text).toContain('<li>Leave 50 mm standing.</li>');
    expect(text).toMatch(/<th scope="row">sheet<\/th><td>47 L<span class="small"> 1 barrow load/);
    expect(text).toContain('<li>Gloves.</li>');
    const source = sourceLine('veg:V12');
    expect(text).toContain('The household gives every bed 13 mm of compost in spring.<span class="under">');
    expect(text).toContain(`<a href="/handbook/sources#veg:V12">${source}</a>`);
    expect(text).toContain('<a href="/handbook/topdressing#topdress.own-depth">the rule</a>');
    expect(text).toContain('<section class="why" id="why">');
    expect(text).toContain(`It comes at least 1 day after <a href="${at('cover-sow')}">Do cover-sow</a>.`);
    expect(text).toContain('Modelled: worked out by a published rule');
    expect(text).toContain('in half the years by 10 May');
  });

  test('writes amounts and days as its reader reads them, with no mark left over', async () => {
    const text = await pageOf('us');
    expect(text).toContain('1.7 cu ft');
    expect(text).toContain('April 25');
    expect(text).not.toMatch(/[⟦⟧]/);
  });

  test('names the other beds of its day, and asks which were done', async () => {
    const { get } = await sampleApp();
    const text = await (await get(at(RYE))).text();
    expect(text).toContain(`href="${at(VETCH)}"`);
    expect(text.match(/type="checkbox"/g)).toHaveLength(2);
    expect(await (await get(at(TURN))).text()).not.toContain('type="checkbox"');
  });

  test('keeps the slashes and colons of a key and takes anything else escaped', async () => {
    expect(at('a/b:c d?e#f%g')).toBe('/gardens/mill-row/tasks/a/b:c%20d%3Fe%23f%25g');
    const { get } = await sampleApp();
    for (const path of [at(TURN), `${GARDEN}/tasks/${encodeURIComponent(TURN)}`]) {
      expect((await get(path)).status).toBe(200);
    }
  });

  test.each([at('cover-cut/stand:nowhere'), '/gardens/elsewhere/tasks/x', `${GARDEN}/tasks/%E0%A4%A`])(
    '%s is 404 and says where to go on',
    async (path) => {
      const { get, reported } = await sampleApp();
      const answer = await get(path);
      expect(answer.status).toBe(404);
      expect(await answer.text()).toContain('Begin again at This week');
      expect(reported).toEqual([]);
    },
  );
});

describe('marking done', () => {
  test('leads back to the task, now done, with the way back', async () => {
    const { get, send, steward } = await sampleApp();
    const answer = await send(at(TURN), { do: 'done', on: '2027-04-19', key: TURN });
    expect(answer.status).toBe(303);
    expect(answer.headers.get('location')).toBe(at(TURN));
    const text = await (await get(at(TURN))).text();
    expect(text).toContain('It is done.');
    expect(text).toContain(`href="${GARDEN}/undo?entry=2"`);
    const { garden } = await steward.view('mill-row');
    expect(garden.piles[0]?.turns).toEqual(['2027-04-13', '2027-04-19']);
  });

  test('ticks the opened bed only, and asks how much where compost is used', async () => {
    const { get, send, steward } = await sampleApp();
    const text = await (await get(at(RYE))).text();
    expect(text.match(/checked=""/g)).toHaveLength(1);
    const layer = (await steward.view('mill-row')).plan.tasks.find(
      ({ kind, state }) => kind === 'topdress' && state === 'open',
    );
    const key = layer?.key ?? '';
    expect(await (await get(at(key))).text()).toContain(`name="litres:${key}"`);
    const wrong = await send(at(key), { do: 'done', on: TODAY, key, [`litres:${key}`]: 'a lot' });
    expect(wrong.status).toBe(422);
    expect(await wrong.text()).toContain('&quot;a lot&quot; is not an amount.');
    expect((await send(at(key), { do: 'done', on: TODAY, key, [`litres:${key}`]: '1' })).status).toBe(303);
    // The garden reads US units: a cubic foot.
    const { garden } = await steward.view('mill-row');
    expect(garden.topdressed.at(-1)?.litres).toBeCloseTo(28.3, 1);
  });

  test('takes only the beds that are ticked', async () => {
    const { send, steward } = await sampleApp();
    const answer = await send(at(RYE), { do: 'done', on: TODAY, key: VETCH });
    expect(answer.headers.get('location')).toBe(at(VETCH));
    const { plan } = await steward.view('mill-row');
    const states = [RYE, VETCH].map((key) => plan.tasks.find((task) => task.key === key)?.state);
    expect(states).toEqual(['open', 'done']);
  });

  test('tells everything that is wrong at once, keeps what was entered and changes nothing', async () => {
    const { send, steward } = await sampleApp();
    const answer = await send(at(RYE), { do: 'done', on: 'yesterday <b>' });
    expect(answer.status).toBe(422);
    const text = await answer.text();
    expect(text).toContain('Nothing was changed');
    expect(text).toContain('&quot;yesterday &lt;b&gt;&quot; is not a date.');
    expect(text).toContain('None is ticked.');
    expect(text).toContain('value="yesterday &lt;b&gt;"');
    expect(text).not.toContain('checked=""');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test.each([
    ['a day still to come', { on: '2027-04-21', key: [TURN] }],
    ['a day that is none', { on: '2027-02-29', key: [TURN] }],
    ['a task that is not in the plan', { on: TODAY, key: [TURN, 'pile-turn/pile:other'] }],
  ])('refuses %s, whole', async (_, fields) => {
    const { send, steward } = await sampleApp();
    expect((await send(at(TURN), { do: 'done', ...fields })).status).toBe(422);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test('refuses a second time', async () => {
    const { send } = await sampleApp();
    const fields = { do: 'done', on: TODAY, key: TURN };
    await send(at(TURN), fields);
    const again = await send(at(TURN), fields);
    expect(again.status).toBe(422);
    const said = await again.text();
    expect(said).toContain('is done already.');
    expect(said).not.toContain('<strong>pile-turn/');
  });
});

describe('pinning', () => {
  test('keeps the task on its day until it is let go', async () => {
    const { get, send, steward } = await sampleApp();
    const dayOf = async () => (await steward.view('mill-row')).plan.tasks.find(({ key }) => key === RYE)?.day;
    const planned = await dayOf();
    expect((await send(at(RYE), { do: 'pin', day: '2027-04-29' })).status).toBe(303);
    expect(await dayOf()).toBe('2027-04-29');
    const pinned = await (await get(at(RYE))).text();
    expect(pinned).toContain('<span class="standing">pinned</span>');
    expect((await send(at(RYE), { do: 'unpin' })).status).toBe(303);
    expect(await dayOf()).toBe(planned);
    expect(await (await get(at(RYE))).text()).not.toContain('Let it move again');
  });

  test('outside the window is kept, and said', async () => {
    const { get, send } = await sampleApp();
    expect((await send(at(RYE), { do: 'pin', day: '2027-06-20' })).status).toBe(303);
    expect(withoutWhys(await (await get(at(RYE))).text())).toContain(
      'Pinned outside its window, which runs from April',
    );
  });

  test.each(['2027-04-19', '', 'soon'])('refuses "%s"', async (day) => {
    const { send, steward } = await sampleApp();
    expect((await send(at(RYE), { do: 'pin', day })).status).toBe(422);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });
});

describe('not yet', () => {
  test('puts the task off to a later day, says why, and leaves the bed beside it', async () => {
    const { get, send, steward } = await sampleApp();
    const taskOf = async (key: string) => (await steward.view('mill-row')).plan.tasks.find((row) => row.key === key);
    const [rye, vetch] = [await taskOf(RYE), await taskOf(VETCH)];
    const page = await (await get(at(RYE))).text();
    expect(page).toContain('<button type="submit">Not yet</button>');
    const past = /name="past" value="([^"]+)"/.exec(page)?.[1] ?? '';
    expect((await send(at(RYE), { do: 'put-off', past })).status).toBe(303);
    expect((await taskOf(RYE))?.day.localeCompare(rye?.day ?? '')).toBe(1);
    expect((await taskOf(VETCH))?.day).toBe(vetch?.day);
    expect(await (await get(at(RYE))).text()).toContain('It was put off past April');
    expect(await (await get(`${GARDEN}/history`)).text()).toMatch(/Put off past April \d+, 2027: Cut the/);
  });

  test('on the last day there is no such button: the page says what is lost', async () => {
    const { get, send, steward } = await sampleApp();
    const rye = (await steward.view('mill-row')).plan.tasks.find(({ key }) => key === RYE);
    await send(at(RYE), { do: 'pin', day: rye?.window.latest ?? '' });
    const page = await (await get(at(RYE))).text();
    expect(page).toContain('It cannot wait: its last day is');
    expect(page).not.toContain('<button type="submit">Not yet</button>');
    const refused = await send(at(RYE), { do: 'put-off', past: rye?.window.latest ?? '' });
    expect(refused.status).toBe(422);
    expect(await refused.text()).toContain('Say that it is done, or skip it.');
  });
});

describe('skipping', () => {
  test('takes one task out of the week, and says so on its page', async () => {
    const { get, send } = await sampleApp();
    expect((await send(at(RYE), { do: 'skip' })).status).toBe(303);
    expect(await (await get(at(RYE))).text()).toContain('It was skipped');
    const week = await (await get(GARDEN)).text();
    expect(week).not.toContain('North bed before it flowers');
    expect(week).toContain('Middle bed before it flowers');
  });
});

test('a form that asks for nothing known is refused', async () => {
  const { send, steward } = await sampleApp();
  expect((await send(at(RYE), { do: 'delete' })).status).toBe(422);
  expect((await send(at(RYE), {})).status).toBe(422);
  expect((await steward.view('mill-row')).ledger).toHaveLength(1);
});

test('names are shown as text, whatever is in them', async () => {
  const hostile = `<script>alert(1)</script> "'>& <img src=x onerror=alert(2)>`;
  const file = sampleFile();
  const beds = file.beds.map((bed) => (bed.id === 'north' ? { ...bed, name: hostile } : bed));
  const { get, send, steward } = await sampleApp({ ...file, garden: { ...file.garden, name: hostile }, beds });
  await steward.addFeed('mill-row', hostile);
  await send(at(RYE), { do: 'pin', day: '2027-04-29' });
  const paths = [GARDEN, at(RYE), at(VETCH), `${GARDEN}/feeds`, `${GARDEN}/history`, `${GARDEN}/undo`];
  for (const path of [...paths, `${GARDEN}/feeds/feed-1/revoke`]) {
    const answer = await get(path);
    expect(answer.status).toBe(200);
    const text = await answer.text();
    expect(text).toContain('&lt;script&gt;alert(1)');
    expect(text).not.toMatch(/<script|<img/);
  }
});
