import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { addDays } from '../../../src/measures/days.ts';
import { readableIn } from '../../../src/measures/quantity.ts';
import { mailed, OUTSIDE, PRESSED } from '../mail/mailed.ts';
import { plain } from '../plain-text.ts';
import { appOver, NOW, TODAY } from '../sample-garden.ts';

const RYE = 'cover-cut/stand:rye-north';
const VETCH = 'cover-cut/stand:vetch-middle';
const TURN = 'pile-turn/pile:spring-pile/turn:2';

const pageOf = async (answer: Response | Promise<Response>) => (await answer).text();
const told = async (answer: Response | Promise<Response>) => plain(await pageOf(answer));
const entryIn = (page: string) => /name="entry" value="(\d+)"/.exec(page)?.[1] ?? '';

describe('opening a link', () => {
  test('shows the entry, the answer pressed for foremost, and the other two below', async () => {
    const { get, answer } = await mailed();
    for (const [as, order] of [
      ['done', ['done', 'not-yet', 'skip']],
      ['not-yet', ['not-yet', 'done', 'skip']],
      ['skip', ['skip', 'done', 'not-yet']],
    ] as const) {
      const page = await pageOf(get(answer(TURN, as), OUTSIDE));
      expect([...page.matchAll(/name="answer" value="([\w-]+)"/g)].map((match) => match[1])).toEqual(order);
      expect(page).toMatch(
        new RegExp(`<section class="asked"><h2>${{ done: 'Done', 'not-yet': 'Not yet', skip: 'Skip' }[as]}</h2>`),
      );
    }
  });

  test('tells the day, what will do, and cautions where the work can hurt', async () => {
    const { get, answer, view } = await mailed();
    const careful = (await view()).plan.tasks.find(({ cautions, state }) => cautions.length > 0 && state === 'open');
    const text = await told(get(answer(careful?.key ?? ''), OUTSIDE));
    expect(text).toContain('Take care');
    expect(text).toContain('Opening this page has changed nothing');
    expect(await told(get(answer(RYE), OUTSIDE))).toMatch(
      /Sunday, April 25, 2027\. Any day from April \d+ to \w+ \d+, 2027 will do\./,
    );
  });

  test('tells how the work is done and what to have at hand, what beds share once', async () => {
    const { get, send, answer, view } = await mailed();
    const { plan, garden } = await view();
    const keys = plan.entries.find((entry) => entry.keys.includes(RYE))?.keys ?? [];
    const tasks = plan.tasks.filter(({ key }) => keys.includes(key));
    const { units } = garden.place;
    const text = await told(get(answer(RYE), OUTSIDE));
    const steps = new Set(tasks.flatMap((task) => task.steps).map((step) => readableIn(units, step, TODAY)));
    expect(steps.size).toBeGreaterThan(2);
    for (const step of steps) expect(text).toContain(step);
    const shared = tasks[0]?.steps.find((step) =>
      tasks.every((task) => task.weight === 'check' || task.steps.includes(step)),
    );
    expect(text.split(readableIn(units, shared ?? '-', TODAY))).toHaveLength(2);
    const layer = plan.tasks.find(({ kind, state }) => kind === 'topdress' && state === 'open');
    expect(await told(get(answer(layer?.key ?? ''), OUTSIDE))).toMatch(/To hand: finished compost [\d.]+ cu ft/);
    const fields = { answer: 'done', on: TODAY, key: TURN };
    expect(await told(send(answer(TURN), fields, PRESSED))).not.toContain('How ');
  });

  test('changes nothing, however often a scanner does, and by whichever method', async () => {
    const { app, answer, stop, view } = await mailed();
    const before = await view();
    const paths = (['done', 'not-yet', 'skip'] as const).flatMap((as) => [answer(TURN, as), answer(RYE, as)]);
    for (let round = 0; round < 20; round += 1)
      for (const path of [...paths, stop()])
        for (const method of ['GET', 'HEAD'])
          expect((await app.request(path, { method, headers: OUTSIDE })).status).toBe(200);
    for (const method of ['OPTIONS', 'PUT', 'PATCH', 'DELETE'])
      for (const path of [...paths, stop()])
        expect((await app.request(path, { method, headers: PRESSED })).status).toBeGreaterThanOrEqual(400);
    const after = await view();
    expect(after.ledger).toEqual(before.ledger);
    expect(after.plan).toEqual(before.plan);
  });

  test('is kept by nobody, listed nowhere, and tells its address to nobody', async () => {
    const { get, answer, stop } = await mailed();
    for (const path of [answer(TURN), stop(), '/answer/nothing']) {
      const { headers } = await get(path, OUTSIDE);
      expect(headers.get('cache-control')).toBe('no-store');
      expect(headers.get('referrer-policy')).toBe('strict-origin');
      expect(headers.get('x-robots-tag')).toBe('noindex, nofollow');
      expect(headers.get('content-security-policy')).toContain("form-action 'self'");
    }
  });

  test('finds a page that leads nowhere else, styled, with no part of the link in it', async () => {
    const { get, answer, stop } = await mailed();
    for (const path of [answer(RYE), stop()]) {
      const page = await pageOf(get(path, OUTSIDE));
      expect(page).not.toContain('<a ');
      expect(page).not.toMatch(/[A-Za-z0-9_-]{43,}/);
      const style = /href="(\/style\.css[^"]*)"/.exec(page)?.[1] ?? '';
      expect((await get(style, OUTSIDE)).headers.get('content-type')).toContain('text/css');
    }
  });
});

describe('Done', () => {
  test('marks what is ticked done on its day, by whoever the mail went to, and says what it moved', async () => {
    const { send, answer, view } = await mailed();
    const reply = await send(answer(TURN), { answer: 'done', on: '2027-04-19', key: TURN }, PRESSED);
    expect(reply.status).toBe(200);
    const text = await told(reply);
    expect(text).toContain('Thank you, it is written down.');
    expect(text).toContain('Done on April 19: Turn the pile in Left bay');
    expect(text).toMatch(/What it moved Turn the pile in Left bay: new, on \w+ \d+/);
    expect(text).not.toContain('The same work, still to do');
    const { garden, ledger } = await view();
    expect(garden.piles[0]?.turns).toEqual(['2027-04-13', '2027-04-19']);
    expect(ledger.at(-1)?.by).toBe('Ada');
  });

  test('of one bed of several leaves the others open, and the link still answers for them', async () => {
    const { get, send, answer, taskOf } = await mailed();
    expect((await pageOf(get(answer(RYE), OUTSIDE))).match(/type="checkbox"/g)).toHaveLength(6);
    await send(answer(RYE), { answer: 'done', on: TODAY, key: RYE }, PRESSED);
    expect([(await taskOf(RYE)).state, (await taskOf(VETCH)).state]).toEqual(['done', 'open']);
    expect(await told(get(answer(RYE), OUTSIDE))).toContain('The same work, still to do');
    await send(answer(RYE), { answer: 'done', on: TODAY, key: VETCH }, PRESSED);
    expect((await taskOf(VETCH)).state).toBe('done');
  });

  test('does not reach the same work of somebody else, where the list held the reader’s own', async () => {
    const { get, send, answer, steward } = await mailed();
    const mail = { to: 'ada@example.org', weekday: 1, hour: 7, tasks: 'own' } as const;
    const member = { id: 'ada', name: 'Ada', beds: ['north'], mail };
    await steward.report('mill-row', { kind: 'member-kept', formerName: 'Ada', member }, 'web page');
    await steward.markDone('mill-row', [RYE], TODAY, 'Ada');
    expect(await told(get(answer(RYE), OUTSIDE))).not.toContain('The same work, still to do');
    const other = await send(answer(RYE), { answer: 'done', on: TODAY, key: VETCH }, PRESSED);
    expect([other.status, await told(other)]).toEqual([422, expect.stringContaining('not what this link is about')]);
  });

  test('asks for the amount where one counts, in the units of the garden', async () => {
    const { get, send, answer, view } = await mailed();
    const layer = (await view()).plan.tasks.find(({ kind, state }) => kind === 'topdress' && state === 'open');
    const key = layer?.key ?? '';
    expect(await pageOf(get(answer(key), OUTSIDE))).toContain(`name="litres:${key}"`);
    const fields = { answer: 'done', on: TODAY, key };
    const wrong = await send(answer(key), { ...fields, [`litres:${key}`]: 'some' }, PRESSED);
    expect(wrong.status).toBe(422);
    expect(await pageOf(wrong)).toContain('value="some"');
    await send(answer(key), { ...fields, [`litres:${key}`]: '1' }, PRESSED);
    // The garden reads US units: a cubic foot.
    expect((await view()).garden.topdressed.at(-1)?.litres).toBeCloseTo(28.3, 1);
  });

  test('is refused for a day to come, for nothing ticked, and for work the link is not about, all told at once', async () => {
    const { send, answer, view } = await mailed();
    const late = await send(answer(TURN), { answer: 'done', on: addDays(TODAY, 1), key: TURN }, PRESSED);
    expect(late.status).toBe(422);
    const none = await send(answer(TURN), { answer: 'done', on: 'soon' }, PRESSED);
    expect(await told(none)).toMatch(/"soon" is not a date\.|None is ticked\./);
    expect(await told(await send(answer(TURN), { answer: 'done', on: 'soon' }, PRESSED))).toContain('None is ticked.');
    const other = await send(answer(TURN), { answer: 'done', on: TODAY, key: RYE }, PRESSED);
    expect([other.status, await told(other)]).toEqual([422, expect.stringContaining('not what this link is about')]);
    expect((await send(answer(TURN), { answer: 'perhaps', key: TURN }, PRESSED)).status).toBe(422);
    expect((await view()).ledger).toHaveLength(1);
  });

  test('given twice says what is true already', async () => {
    const { send, answer, view } = await mailed();
    const fields = { answer: 'done', on: TODAY, key: TURN };
    await send(answer(TURN), fields, PRESSED);
    const again = await send(answer(TURN, 'done', 'Bo'), fields, PRESSED);
    expect([again.status, await told(again)]).toEqual([200, expect.stringContaining('That was said already')]);
    expect((await view()).ledger).toHaveLength(2);
  });

  test('of a look says what that means', async () => {
    const { get, answer, view } = await mailed();
    const squeeze = (await view()).plan.tasks.find(({ kind, state }) => kind === 'squeeze-soil' && state === 'open');
    if (squeeze === undefined) throw new Error((await view()).plan.tasks.map(({ kind }) => kind).join(' '));
    expect(await told(get(answer(squeeze.key), OUTSIDE))).toContain('Done says of it: It crumbles');
  });
});

describe('Not yet', () => {
  const putOff = (key: string, past: string) => ({ answer: 'not-yet', key, past });

  test('puts the work off past the day it stands on, and says where it went', async () => {
    const { send, answer, taskOf, view } = await mailed();
    const before = await taskOf(RYE);
    const text = await told(send(answer(RYE, 'not-yet'), { ...putOff(RYE, before.day) }, PRESSED));
    expect(text).toContain('Put off past April 25, 2027: Cut the winter rye');
    expect(text).toMatch(/Cut the winter rye in North bed before it flowers: from April 25 to \w+ \d+/);
    expect((await taskOf(RYE)).day > before.day).toBe(true);
    expect((await view()).ledger.at(-1)).toMatchObject({ by: 'Ada', fact: { kind: 'put-off', on: before.day } });
  });

  test('pressed twice puts it off once', async () => {
    const { send, answer, taskOf, view } = await mailed();
    const { day } = await taskOf(RYE);
    await send(answer(RYE), putOff(RYE, day), PRESSED);
    const { day: moved } = await taskOf(RYE);
    expect(await told(send(answer(RYE), putOff(RYE, day), PRESSED))).toContain('That was said already');
    expect((await taskOf(RYE)).day).toBe(moved);
    expect((await view()).ledger).toHaveLength(2);
  });

  test('on the last day says that it cannot wait and what is lost, and asks for done or skip', async () => {
    const { get, send, answer, taskOf, clock } = await mailed();
    const { window } = await taskOf(RYE);
    clock.moment = `${window.latest}T15:00:00.000Z`;
    const link = answer(RYE, 'not-yet');
    const late = addDays('2027-04-19', 14) < window.latest;
    if (late) throw new Error('The sample garden has moved on; choose another task.');
    const page = await pageOf(get(link, OUTSIDE));
    expect(plain(page)).toContain('It cannot wait: its last day is');
    expect(page).not.toMatch(/<button type="submit">Not yet</);
    const refused = await send(link, putOff(RYE, window.latest), PRESSED);
    expect(refused.status).toBe(422);
    expect(await told(refused)).toContain('Say that it is done, or skip it.');
  });
});

describe('Skip', () => {
  test('takes it out of the plan, once it has said what that means', async () => {
    const { get, send, answer, taskOf } = await mailed();
    const { missedNote } = await taskOf(TURN);
    const text = await told(get(answer(TURN, 'skip'), OUTSIDE));
    expect(text).toContain('Only this turn falls out');
    expect(text).toContain(missedNote.split('⟦')[0]?.trim() ?? '-');
    expect((await send(answer(TURN, 'skip'), { answer: 'skip', key: TURN }, PRESSED)).status).toBe(200);
    expect((await taskOf(TURN)).state).toBe('skipped');
  });
});

describe('taking it back', () => {
  test('works from the same page, once, and brings everything back', async () => {
    const { get, send, answer, view, taskOf } = await mailed();
    const before = await view();
    const page = await pageOf(send(answer(TURN), { answer: 'done', on: TODAY, key: TURN }, PRESSED));
    const fields = { answer: 'take-back', entry: entryIn(page) };
    expect(await told(send(answer(TURN), fields, PRESSED))).toContain('It is taken back.');
    expect((await view()).garden).toEqual(before.garden);
    expect((await taskOf(TURN)).state).toBe('open');
    expect(await told(send(answer(TURN), fields, PRESSED))).toContain('It was taken back already');
    expect(entryIn(await pageOf(get(answer(TURN), OUTSIDE)))).toBe('');
    expect((await view()).ledger).toHaveLength(3);
  });

  test('works later too, from the link itself, for whoever said it and nobody else', async () => {
    const { get, send, answer, view } = await mailed();
    const said = entryIn(await pageOf(send(answer(TURN), { answer: 'skip', key: TURN }, PRESSED)));
    expect(entryIn(await pageOf(get(answer(TURN), OUTSIDE)))).toBe(said);
    const theirs = answer(TURN, 'done', 'Bo');
    expect(entryIn(await pageOf(get(theirs, OUTSIDE)))).toBe('');
    expect((await send(theirs, { answer: 'take-back', entry: said }, PRESSED)).status).toBe(422);
    expect((await view()).ledger).toHaveLength(2);
  });

  test('is over once something else was said of it', async () => {
    const { send, answer, view, steward } = await mailed();
    const said = entryIn(await pageOf(send(answer(TURN), { answer: 'done', on: TODAY, key: TURN }, PRESSED)));
    await steward.readPile('mill-row', { pileId: 'spring-pile', on: TODAY, tempC: 60 }, 'web page');
    expect((await send(answer(TURN), { answer: 'take-back', entry: said }, PRESSED)).status).toBe(422);
    expect((await view()).ledger).toHaveLength(3);
  });

  test('is not offered of the same work on another bed that was done before the list can have gone out', async () => {
    const { get, send, answer, steward } = await mailed({ monday: '2027-04-26' });
    await steward.markDone('mill-row', [VETCH], TODAY, 'Ada');
    const page = await pageOf(get(answer(RYE), OUTSIDE));
    expect(plain(page)).not.toContain('Done on April');
    expect(entryIn(page)).toBe('');
    expect((await send(answer(RYE), { answer: 'take-back', entry: '2' }, PRESSED)).status).toBe(422);
  });

  test('is not offered of an entry that tells of other work too', async () => {
    const { get, send, answer, steward, taskOf } = await mailed();
    await steward.markDone('mill-row', [RYE, TURN], TODAY, 'Ada');
    const page = await pageOf(get(answer(RYE), OUTSIDE));
    expect(plain(page)).toContain('Done on April 20');
    expect(entryIn(page)).toBe('');
    expect((await send(answer(RYE), { answer: 'take-back', entry: '2' }, PRESSED)).status).toBe(422);
    expect((await taskOf(TURN)).state).toBe('done');
  });

  test.each(['1', '99', '', 'all'])('takes back nothing it was not given for: %s', async (entry) => {
    const { send, answer, view } = await mailed();
    expect((await send(answer(TURN), { answer: 'take-back', entry }, PRESSED)).status).toBe(422);
    expect((await view()).ledger).toHaveLength(1);
  });
});

describe('a link that no longer leads on', () => {
  test('works until the fourteenth day after its Monday has ended on the garden’s clock, and then says so', async () => {
    const { get, send, answer, clock, view } = await mailed();
    const link = answer(TURN);
    // 23:59 in Chicago on Monday 3 May 2027 is 04:59 UTC the day after (tz database: central daylight time, UTC-5).
    clock.moment = '2027-05-04T04:59:00.000Z';
    expect((await get(link, OUTSIDE)).status).not.toBe(410);
    clock.moment = '2027-05-04T05:01:00.000Z';
    const late = await get(link, OUTSIDE);
    expect([late.status, await told(late)]).toEqual([410, expect.stringContaining('It worked until May 3, 2027.')]);
    expect((await send(link, { answer: 'skip', key: TURN }, PRESSED)).status).toBe(410);
    expect((await view()).ledger).toHaveLength(1);
  });

  test('went to somebody who is gone, and is not passed on to another of that name', async () => {
    const { get, send, answer, steward, view } = await mailed();
    const link = answer(TURN);
    await steward.report('mill-row', { kind: 'member-gone', id: 'ada', name: 'Ada' }, 'web page');
    await steward.report('mill-row', { kind: 'member-kept', member: { id: 'ada-2', name: 'Ada' } }, 'web page');
    const { length } = (await view()).ledger;
    const opened = await get(link, OUTSIDE);
    expect([opened.status, await told(opened)]).toEqual([403, expect.stringContaining('no longer of the household')]);
    expect((await send(link, { answer: 'skip', key: TURN }, PRESSED)).status).toBe(403);
    expect((await view()).ledger).toHaveLength(length);
  });

  test('is about work that has left the plan', async () => {
    const { get, answer } = await mailed();
    const gone = await get(answer('cover-cut/stand:nowhere'), OUTSIDE);
    expect([gone.status, await told(gone)]).toEqual([410, expect.stringContaining('has left the plan')]);
  });

  test('was never sent: every kind of wrong is answered alike, and many of them with a wait', async () => {
    const { get, answer, stop } = await mailed();
    const other = await mailed();
    const right = answer(TURN).replace('/answer/', '').replace(/\?.*/, '');
    const wrong = [
      'x',
      right.slice(0, -1),
      `${right}A`,
      right.replace(/^./, 'B'),
      stop().replace('/stop/', ''),
      other.answer(TURN).replace('/answer/', '').replace(/\?.*/, ''),
      'A'.repeat(3_000),
    ];
    const seen = new Set<string>();
    for (const token of wrong) {
      const reply = await get(`/answer/${token}`, OUTSIDE);
      // Each request has a number of its own, which the page names.
      seen.add(`${reply.status} ${(await reply.text()).replaceAll(reply.headers.get('x-request-id') ?? '-', '')}`);
    }
    expect([...seen]).toEqual([expect.stringContaining('404 ')]);
    expect((await get(`/stop/${right}`, OUTSIDE)).status).toBe(404);
    for (let tried = 0; tried < 30; tried += 1) await get('/answer/x', OUTSIDE);
    const held = await get('/stop/x', OUTSIDE);
    expect(held.status).toBe(429);
    expect(Number(held.headers.get('retry-after'))).toBeGreaterThan(0);
    expect((await get(answer(TURN), OUTSIDE)).status).toBe(200);
    expect((await get('/answer/x', { ...OUTSIDE, 'X-Forwarded-For': '203.0.113.8' })).status).toBe(404);
  });
});

describe('who may press', () => {
  const fields = { answer: 'skip', key: TURN };

  test.each([
    ['another site', { ...OUTSIDE, 'Sec-Fetch-Site': 'cross-site' }],
    ['another site in an older browser', { ...OUTSIDE, Origin: 'https://attacker.example' }],
    ['a page without an origin', { ...OUTSIDE, Origin: 'null' }],
    ['a program that says nothing of where it comes from', OUTSIDE],
    ['a name that is not ours', { Host: 'attacker.example', 'Sec-Fetch-Site': 'same-origin' }],
  ])('not %s', async (_, headers) => {
    const { send, answer, view } = await mailed();
    expect((await send(answer(TURN), fields, headers)).status).toBeGreaterThanOrEqual(400);
    expect((await view()).ledger).toHaveLength(1);
  });

  test('the page itself, in an older browser and over plain http too', async () => {
    const { send, answer, view } = await mailed();
    expect((await send(answer(TURN), fields, { ...OUTSIDE, Origin: 'https://garden.example.org' })).status).toBe(200);
    expect((await view()).ledger).toHaveLength(2);
  });

  test.each([
    ['application/json', '{"answer":"skip"}'],
    ['text/plain', `answer=skip&key=${TURN}`],
    ['multipart/form-data; boundary=absent', 'nothing of the kind'],
    ['application/x-www-form-urlencoded', ''],
  ])('%s that is no form changes nothing', async (type, body) => {
    const { app, answer, view } = await mailed();
    const headers = { ...PRESSED, 'Content-Type': type };
    expect((await app.request(answer(TURN), { method: 'POST', headers, body })).status).toBeGreaterThanOrEqual(400);
    expect((await view()).ledger).toHaveLength(1);
  });
});

/** Every address in the sources of the pages that a form may be sent to, of the sample garden. */
function changingPaths(): string[] {
  const folder = new URL('../../../src/web/', import.meta.url);
  const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    /route\.tsx?$/.test(name),
  );
  const paths = sources.flatMap((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const named = new Map(
      [...text.matchAll(/const (\w+) = '(\/[^']+)'/g)].map(([, constant, path]) => [constant, path]),
    );
    const posts = [...text.matchAll(/\.post\(\s*(?:'([^']+)'|(\w+))/g)];
    return posts.map(([, path, constant]) => path ?? named.get(constant) ?? '');
  });
  return paths.map((path) =>
    path
      .replace(':gardenId', 'mill-row')
      .replace(/:(?!key)\w+/g, 'x')
      .replace(/:key\{[^}]+\}/, TURN),
  );
}

describe('feed links carry no power', () => {
  test('a feed’s token is refused wherever something can be changed, and a feed holds no link of an answer', async () => {
    const { app, get, send, steward, view } = await mailed();
    const changing = changingPaths();
    expect(changing.length).toBeGreaterThan(15);
    const { token } = await steward.addFeed('mill-row', 'phone');
    const text = await pageOf(get(`/feed/${token}.ics`, OUTSIDE));
    expect(text).toContain('BEGIN:VCALENDAR');
    expect(text.replaceAll('\r\n ', '')).not.toMatch(/\/answer\/|\/stop\//);
    const before = (await view()).ledger;
    for (const path of [`/answer/${token}`, `/stop/${token}`, `/feed/${token}.ics`, ...changing]) {
      for (const headers of [PRESSED, { ...OUTSIDE, Authorization: `Bearer ${token}` }]) {
        const reply = await send(path, { answer: 'skip', key: TURN, 'List-Unsubscribe': 'One-Click' }, headers);
        expect([path, reply.status >= 400]).toEqual([path, true]);
      }
    }
    const reading = { method: 'POST', headers: { ...OUTSIDE, Authorization: `Bearer ${token}` }, body: '{"tempC":60}' };
    expect((await app.request('/api/piles/spring-pile/readings', reading)).status).toBe(401);
    expect((await send('/gardens/mill-row/tasks/x', { do: 'skip', token }, PRESSED)).status).toBe(403);
    expect((await view()).ledger).toEqual(before);
  });
});

describe('what a link leaves behind', () => {
  test('is nothing in the ledger, on any page, or in what the program prints when it fails', async () => {
    const { get, send, answer, stop, steward, view } = await mailed();
    const token = answer(TURN).replace('/answer/', '').replace(/\?.*/, '');
    const page = await pageOf(send(answer(TURN), { answer: 'done', on: TODAY, key: TURN }, PRESSED));
    const history = await pageOf(get('/gardens/mill-row/history'));
    for (const text of [page, history, JSON.stringify(await view())]) expect(text).not.toContain(token);

    const failing = appOver(
      {
        ...steward,
        followAnswer: async (asked) => {
          throw new Error(`no such column at /answer/${asked.slice(0, 20)}%20${asked.slice(20)}?as=done, ${asked}`);
        },
        followStop: async (asked) => {
          throw new Error(`no such column at https://garden.example.org/stop/${asked}`);
        },
      },
      { port: 8137, hostNames: [], publicUrl: new URL('https://garden.example.org') },
    );
    for (const path of [answer(TURN), stop()]) {
      const reply = await failing.get(path, OUTSIDE);
      expect(reply.status).toBe(500);
      expect(await reply.text()).not.toContain(token.slice(0, 20));
    }
    expect(failing.reported).toHaveLength(2);
    expect(failing.reported.join()).toContain('no such column at /answer/[secret]?as=done, [secret]');
    expect(failing.reported.join()).not.toContain(token.slice(0, 20));
    expect(NOW).toContain(TODAY);
  });
});
