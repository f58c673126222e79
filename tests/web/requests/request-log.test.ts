import { describe, expect, test } from 'vitest';
import { createLog } from '../../../src/log/log.ts';
import { createApp } from '../../../src/web/app.tsx';
import { NOW, sampleApp } from '../sample-garden.ts';

const HOST = { Host: '127.0.0.1:8137' };

/** The pages of a garden with a log of everything, each line read back. */
async function loggedApp(level: 'debug' | 'info' = 'debug', trustedProxies: string[] = []) {
  const { steward } = await sampleApp();
  const lines: string[] = [];
  const log = createLog({ shape: 'json', level, now: () => NOW, write: (line) => lines.push(line) });
  const settings = { port: 8137, hostNames: [], trustedProxies };
  const make = (change: Partial<typeof steward> = {}) =>
    createApp({ steward: { ...steward, ...change }, settings, log });
  return { steward, make, text: () => lines.join(''), told: () => lines.map((line) => JSON.parse(line)) };
}

test('each request is one line: method, route, garden, status, time and number, the last told to who asked', async () => {
  const { make, told } = await loggedApp();
  const answer = await make().request('/gardens/mill-row?from=2027-04-19', { headers: HOST });
  expect(answer.status).toBe(200);
  expect(told()).toEqual([
    {
      time: NOW,
      level: 'info',
      event: 'request',
      method: 'GET',
      route: '/gardens/:gardenId',
      garden: 'mill-row',
      status: 200,
      ms: expect.any(Number),
      id: answer.headers.get('x-request-id'),
    },
  ]);
  expect(answer.headers.get('x-request-id')).toMatch(/^[0-9a-f]{5}-[0-9a-f]{5}$/);
});

test('feeds, health and style are told only where everything is', async () => {
  const { steward, make, told } = await loggedApp();
  const { token } = await steward.addFeed('mill-row', 'Ida');
  for (const path of [`/feed/${token}.ics`, '/feed/wrong.ics', '/health', '/robots.txt', '/style.css'])
    await make().request(path, { headers: HOST });
  expect(told().map(({ level, route }) => [level, route])).toEqual([
    ['debug', '/feed/:file'],
    ['debug', '/feed/:file'],
    ['debug', '/health'],
    ['debug', '/robots.txt'],
    ['debug', '/style.css'],
  ]);
});

test('no address that holds a secret is told, known or mistyped, nor what follows a question mark', async () => {
  const { steward, make, text } = await loggedApp();
  const { token } = await steward.addFeed('mill-row', 'Ida');
  const paths = [
    `/feed/${token}.ics`,
    `/feed/${token}x.ics`,
    `/answer/${token}?as=done`,
    `/stop/${token}`,
    `/fed/${token}.ics`,
    `/${token.slice(0, 30)}`,
    `/gardens/mill-row?key=${token}`,
  ];
  for (const path of paths) await make().request(path, { headers: HOST });
  expect(text().split('\n')).toHaveLength(paths.length + 1);
  expect(text()).not.toContain(token.slice(0, 21));
  expect(text()).not.toContain('as=done');
});

test('a fault is told with the number its page shows, and the page shows nothing else of it', async () => {
  const { make, told } = await loggedApp('info');
  const app = make({
    view: async () => {
      throw new Error('no such column: colour', { cause: new Error('ida@example.org') });
    },
  });
  const answer = await app.request('/gardens/mill-row', { headers: HOST });
  const page = await answer.text();
  const [fault, request] = told();
  expect(answer.status).toBe(500);
  expect(page).toContain(`name its number: <strong>${fault.id}</strong>`);
  expect(page).not.toContain('colour');
  expect(fault).toMatchObject({
    level: 'error',
    event: 'fault',
    fault: expect.stringContaining('no such column: colour'),
  });
  expect(fault.fault).toContain('It came of: Error: [address]');
  expect(request).toMatchObject({ level: 'warn', event: 'request', status: 500, id: fault.id });
});

test('a page that is not there shows its number, too', async () => {
  const { make, told } = await loggedApp();
  const answer = await make().request('/nowhere', { headers: HOST });
  expect(await answer.text()).toContain(`<strong>${answer.headers.get('x-request-id')}</strong>`);
  expect(told()).toMatchObject([{ level: 'info', path: '/nowhere', status: 404 }]);
});

test('a number that a stranger sends is not taken', async () => {
  const { make, text } = await loggedApp();
  await make().request('/nowhere', { headers: { ...HOST, 'X-Request-Id': 'abcdefgh-12345678' } });
  expect(text()).not.toContain('abcdefgh');
});

describe('a number that a trusted proxy passes on', () => {
  test('is the one of the request, of a page as of a feed', async () => {
    const { steward, make, told } = await loggedApp('debug', ['127.0.0.1']);
    const { token } = await steward.addFeed('mill-row', 'Ida');
    const given = '7f3a0c9e51d24b6f8a0e9b1c2d3f4a5b';
    const headers = { ...HOST, 'X-Request-Id': given, 'X-Forwarded-For': '203.0.113.7' };
    const answer = await make().request('/robots.txt', { headers });
    await make().request(`/feed/${token}.ics`, { headers });
    expect(answer.headers.get('x-request-id')).toBe(given);
    expect(told().map(({ route, id }) => [route, id])).toEqual([
      ['/robots.txt', given],
      ['/feed/:file', given],
    ]);
  });

  test.each(['short', 'x'.repeat(41), 'two words here', 'a1b2c3d4;id=x', '-a1b2c3d4'])(
    'is not taken as "%s"',
    async (sent) => {
      const { make, text } = await loggedApp('debug', ['127.0.0.1']);
      const answer = await make().request('/robots.txt', { headers: { ...HOST, 'X-Request-Id': sent } });
      expect(answer.headers.get('x-request-id')).toMatch(/^[0-9a-f]{5}-[0-9a-f]{5}$/);
      expect(text()).not.toContain(sent);
    },
  );
});
