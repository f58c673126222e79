import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { readingRoutes } from '../../../src/web/keys/readings-route.ts';
import { ToldReadings, WrongTokens } from '../../../src/web/requests/wrong-tokens.ts';
import { knowCaller } from '../../../src/web/sign-in/caller.ts';
import { HOST, sampleApp, TODAY } from '../sample-garden.ts';

const PATH = '/api/piles/spring-pile/readings';

async function withKey() {
  const { app, steward } = await sampleApp();
  const { kept, key } = await steward.addReadingKey('mill-row', 'probe');
  const post = (body: unknown, { path = PATH, as = key, host = HOST } = {}) =>
    app.request(path, {
      method: 'POST',
      headers: { Host: host, Authorization: `Bearer ${as}`, 'Content-Type': 'application/json' },
      body: typeof body === 'string' ? body : JSON.stringify(body),
    });
  const readings = async () => (await steward.view('mill-row')).garden.piles[0]?.readings ?? [];
  return { post, steward, readings, kept, key };
}

/** The route by itself, behind what says who asks. */
function readingsAlone(routes: Hono): Hono {
  return new Hono().use(knowCaller({ port: 8137, hostNames: [] })).route('/', routes);
}

describe('a reading told by a script', () => {
  it('is kept as an entry of the ledger, and the next turn follows from it', async () => {
    const { post, readings, steward } = await withKey();
    const answer = await post({ tempC: 67 });
    expect(answer.status).toBe(201);
    expect(await answer.json()).toEqual({ kept: true, pile: 'spring-pile', on: TODAY, tempC: 67 });
    expect((await readings()).at(-1)).toEqual({ on: TODAY, tempC: 67 });
    const { plan, ledger } = await steward.view('mill-row');
    expect(plan.tasks.some(({ title }) => title === 'Turn the pile in Left bay: it is running too hot')).toBe(true);
    expect(ledger.at(-1)?.by).toBe('a script');
  });

  it('takes Fahrenheit, what it feels and smells like, pests and slumping', async () => {
    const { post, readings } = await withKey();
    await post({ on: '2027-04-19', tempF: 131, moisture: 'wet', smell: 'sour', pests: true, slumped: false });
    expect((await readings()).at(-1)).toEqual({
      on: '2027-04-19',
      tempC: 55,
      moisture: 'wet',
      smell: 'sour',
      pests: true,
    });
  });

  it('counts once though it is sent twice', async () => {
    const { post, steward } = await withKey();
    await post({ tempC: 58 });
    const before = (await steward.view('mill-row')).ledger.length;
    const again = await post({ tempC: 58 });
    expect([again.status, await again.json()]).toEqual([
      200,
      { kept: false, pile: 'spring-pile', on: TODAY, tempC: 58 },
    ]);
    expect((await steward.view('mill-row')).ledger).toHaveLength(before);
  });

  it('may say its hour: the same heat at another hour of the day is another reading', async () => {
    const { post, readings } = await withKey();
    const statuses = [];
    for (const at of ['06:00', '06:00', '18:00', '24:10']) statuses.push((await post({ tempC: 58, at })).status);
    expect(statuses).toEqual([201, 200, 201, 422]);
    expect((await readings()).slice(-2).map(({ at }) => at)).toEqual(['06:00', '18:00']);
  });

  it('counts once though it is sent twice at the same moment', async () => {
    const { post, steward } = await withKey();
    const answers = await Promise.all([post({ tempC: 58 }), post({ tempC: 58 }), post({ tempC: 59 })]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 201, 201]);
    const told = (await steward.view('mill-row')).ledger.filter(({ fact }) => fact.kind === 'pile-read');
    expect(told).toHaveLength(2);
  });

  it('names everything that is amiss at once, also between the fields', async () => {
    const { post } = await withKey();
    const answer = await post({ tempC: 500, tempF: 136, smell: 'nice', on: '2020-01-01', colour: 'brown' });
    const { problems } = (await answer.json()) as { problems: { where: string }[] };
    expect(problems.map(({ where }) => where).sort()).toEqual([
      'colour',
      'smell',
      'tempC',
      'tempF',
      'the day it was looked at',
    ]);
  });

  it('too long to be one is refused in JSON like the rest', async () => {
    const { post } = await withKey();
    const answer = await post({ smell: 'x'.repeat(70_000) });
    expect(answer.status).toBe(413);
    expect(await answer.json()).toEqual({
      problems: [{ where: 'the body', what: 'It is longer than 64 KiB.', mend: 'Send one reading at a time.' }],
    });
  });

  it('is answered under the public name too, where only feeds are otherwise', async () => {
    const { app, steward } = await sampleApp();
    const { key } = await steward.addReadingKey('mill-row', 'probe');
    const proxied = await app.request(PATH, {
      method: 'POST',
      headers: { Host: HOST, 'X-Forwarded-For': '10.0.0.7', Authorization: `Bearer ${key}` },
      body: '{"tempC": 50}',
    });
    expect(proxied.status).toBe(201);
  });

  it.each([
    [{}, 'Say something of the pile'],
    ['{"tempC":', 'Send a JSON object'],
    [[1], 'Send a JSON object'],
    [{ tempC: 500 }, 'Give degrees from -30 to 95'],
    [{ tempC: '58' }, 'as a number'],
    [{ tempC: 58, tempF: 136 }, 'not both'],
    [{ tempC: 58, on: '2027-02-29' }, 'Give a real date'],
    [{ tempC: 58, on: '2027-04-21' }, 'Give a day up to today'],
    [{ tempC: 58, on: '2020-01-01' }, 'is before the pile was built, on 2027-04-06'],
    [{ smell: 'nice' }, 'Give earthy, ammonia or sour.'],
    [{ temp: 58 }, 'Leave it out.'],
  ])('is refused with the mend and keeps nothing: %j', async (body, mend) => {
    const { post, steward } = await withKey();
    const answer = await post(body);
    expect(answer.status).toBe(422);
    expect(JSON.stringify(await answer.json())).toContain(mend);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  it('knows only piles of the garden the key is for', async () => {
    const { post } = await withKey();
    const answer = await post({ tempC: 58 }, { path: '/api/piles/none/readings' });
    expect(answer.status).toBe(404);
    expect(JSON.stringify(await answer.json())).toContain('Piles: spring-pile');
  });
});

describe('a key', () => {
  it('is asked for, and a wrong or revoked one is refused', async () => {
    const { post, steward, kept } = await withKey();
    const wrong = await post({ tempC: 58 }, { as: 'x'.repeat(43) });
    expect([wrong.status, wrong.headers.get('WWW-Authenticate')]).toEqual([401, 'Bearer realm="loamtide readings"']);
    expect(await steward.revokeReadingKey('mill-row', kept.id)).toBe(true);
    expect((await post({ tempC: 58 })).status).toBe(401);
    expect(await steward.revokeReadingKey('mill-row', kept.id)).toBe(false);
  });

  it('opens nothing but its own garden, and is kept as a hash', async () => {
    const { steward, key } = await withKey();
    expect(await steward.gardenOfKey(key)).toBe('mill-row');
    expect(JSON.stringify(await steward.readingKeys('mill-row'))).not.toContain(key);
  });

  it('guessed too often makes the guesser wait', async () => {
    const { steward } = await sampleApp();
    const app = readingsAlone(readingRoutes(steward, new WrongTokens(() => 0)));
    const guess = () => app.request(PATH, { method: 'POST', headers: { Authorization: 'Bearer guess' } });
    for (let tried = 0; tried < 30; tried += 1) expect((await guess()).status).toBe(401);
    const last = await guess();
    expect([last.status, last.headers.get('Retry-After')]).toEqual([429, '600']);
  });

  it('may tell 120 readings a minute, and is then asked to wait', async () => {
    const { steward } = await sampleApp();
    const { key } = await steward.addReadingKey('mill-row', 'probe');
    const told = new ToldReadings(() => 0);
    for (let sent = 0; sent < 119; sent += 1) told.count('mill-row');
    const app = readingRoutes(steward, new WrongTokens(() => 0), told);
    const send = () =>
      app.request(PATH, { method: 'POST', headers: { Authorization: `Bearer ${key}` }, body: '{"tempC": 50}' });
    expect((await send()).status).toBe(201);
    const last = await send();
    expect([last.status, last.headers.get('Retry-After')]).toEqual([429, '60']);
  });

  it('is made beside another at the same moment, each with a name of its own', async () => {
    const { steward } = await sampleApp();
    const made = await Promise.all(['probe', 'shed', 'gate'].map((label) => steward.addReadingKey('mill-row', label)));
    expect(made.map(({ kept }) => kept.id).sort()).toEqual(['key-1', 'key-2', 'key-3']);
  });
});
