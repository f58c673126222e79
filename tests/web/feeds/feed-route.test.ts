import { describe, expect, test } from 'vitest';
import { newFeedToken } from '../../../src/calendar/token.ts';
import { appOver, HOST, NOW, sampleApp, sampleFile } from '../sample-garden.ts';

async function withFeed() {
  const opened = await sampleApp(sampleFile(), { port: 8137, hostNames: [], trustedProxies: ['127.0.0.1'] });
  const { token } = await opened.steward.addFeed('mill-row', 'phone');
  return { ...opened, token, address: `/feed/${token}.ics` };
}

describe('a feed', () => {
  test('is a calendar, shown in place, kept by nobody else and listed nowhere', async () => {
    const { get, address } = await withFeed();
    const answer = await get(address);
    expect(answer.status).toBe(200);
    expect(Object.fromEntries(answer.headers)).toMatchObject({
      'content-type': 'text/calendar; charset=utf-8',
      'content-disposition': 'inline; filename="loamtide.ics"',
      'cache-control': 'private, max-age=300',
      'x-robots-tag': 'noindex, nofollow',
    });
    const text = await answer.text();
    expect(text.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
    expect(text).toContain('SUMMARY:Turn the pile in Left bay');
  });

  test('is not sent again to whoever has it', async () => {
    const { get, address } = await withFeed();
    const first = await get(address);
    const etag = first.headers.get('etag') ?? '';
    expect(etag).toMatch(/^"[\w-]{43}"$/);
    const again = await get(address, { 'If-None-Match': etag });
    expect(again.status).toBe(304);
    expect(await again.text()).toBe('');
    expect(again.headers.get('etag')).toBe(etag);
    expect(again.headers.get('cache-control')).toBe('private, max-age=300');
    const since = first.headers.get('last-modified') ?? '';
    expect((await get(address, { 'If-Modified-Since': since })).status).toBe(304);
  });

  test('is sent again once the plan has changed', async () => {
    const { get, address, steward } = await withFeed();
    const etag = (await get(address)).headers.get('etag') ?? '';
    await steward.pin('mill-row', 'cover-cut/stand:rye-north', '2027-04-30', 'test');
    const answer = await get(address, { 'If-None-Match': etag });
    expect(answer.status).toBe(200);
    expect(answer.headers.get('etag')).not.toBe(etag);
  });

  test('answers HEAD with the same headers and no body', async () => {
    const { app, get, address } = await withFeed();
    const head = await app.request(address, { method: 'HEAD', headers: { Host: HOST } });
    const full = await get(address);
    expect(head.status).toBe(200);
    expect(await head.text()).toBe('');
    for (const name of ['etag', 'last-modified', 'content-type', 'content-length', 'cache-control', 'vary']) {
      expect(head.headers.get(name)).toBe(full.headers.get(name));
    }
  });
});

describe('a feed in a coding', () => {
  test('is sent to whoever likes it, and is not sent again to whoever has it in that coding', async () => {
    const { get, address } = await withFeed();
    const plain = await get(address);
    for (const coding of ['gzip', 'br']) {
      const answer = await get(address, { 'Accept-Encoding': coding });
      expect(answer.headers.get('content-encoding')).toBe(coding);
      expect(answer.headers.get('vary')).toBe('Accept-Encoding');
      const etag = answer.headers.get('etag') ?? '';
      expect(etag).not.toBe(plain.headers.get('etag'));
      const again = await get(address, { 'Accept-Encoding': coding, 'If-None-Match': etag });
      expect([again.status, again.headers.get('etag')]).toEqual([304, etag]);
      expect((await get(address, { 'If-None-Match': etag })).status).toBe(200);
    }
  });
});

describe('too many addresses without a feed', () => {
  test('are put off with a time to wait; an address with a feed is answered all the same', async () => {
    const { get, address } = await withFeed();
    const ask = (path: string) => get(path, { 'X-Forwarded-For': '203.0.113.9, 192.0.2.7' });
    const statuses = new Set<number>();
    for (let tried = 0; tried < 30; tried += 1) statuses.add((await ask(`/feed/${newFeedToken()}.ics`)).status);
    expect([...statuses]).toEqual([404]);
    const put = await ask(`/feed/${newFeedToken()}.ics`);
    expect(put.status).toBe(429);
    expect(Number(put.headers.get('retry-after'))).toBeGreaterThan(590);
    expect((await ask(address)).status).toBe(200);
    expect((await get('/feed/x.ics', { 'X-Forwarded-For': '192.0.2.8' })).status).toBe(404);
  });
});

test('a feed is answered only under a name of this program', async () => {
  const { get, address } = await withFeed();
  expect((await get(address, { Host: 'other.example' })).status).toBe(421);
});

test('a feed is answered under an address in numbers where others on the network may come in, and only there', async () => {
  const Host = '192.168.1.20:8137';
  const open = await sampleApp(sampleFile(), { port: 8137, hostNames: [], isOpenToNetwork: true });
  const { token } = await open.steward.addFeed('mill-row', 'phone');
  expect((await open.get(`/feed/${token}.ics`, { Host })).status).toBe(200);
  const { get, address } = await withFeed();
  expect((await get(address, { Host })).status).toBe(421);
});

test('who last read a feed is kept by kind of program', async () => {
  const { get, address, steward } = await withFeed();
  await get(address, { 'User-Agent': 'Evolution/3.46.4' });
  expect((await steward.feeds('mill-row'))[0]?.lastFetch).toEqual({ at: NOW, by: 'Evolution' });
});

describe('an address without a feed', () => {
  test('is told of by one entry while it was closed lately', async () => {
    const { get, address, steward } = await withFeed();
    const [feed] = await steward.feeds('mill-row');
    await steward.revokeFeed('mill-row', feed?.id ?? '');
    const answer = await get(address);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'text/calendar; charset=utf-8']);
    expect((await answer.text()).match(/^SUMMARY:.*$/gm)).toEqual(['SUMMARY:This calendar is no longer kept']);
  });

  test('says the same whether it was revoked a month ago or never was', async () => {
    const { get, address, steward, clock } = await withFeed();
    const [feed] = await steward.feeds('mill-row');
    await steward.revokeFeed('mill-row', feed?.id ?? '');
    clock.moment = '2027-05-20T12:00:00.000Z';
    const revoked = await get(address);
    const unknown = await get(`/feed/${newFeedToken()}.ics`);
    expect([revoked.status, unknown.status]).toEqual([404, 404]);
    expect(revoked.headers.get('content-type')).toMatch(/^text\/plain/);
    expect(await revoked.text()).toBe(await unknown.text());
  });

  test.each(['/feed/', '/feed/x', '/feed/.ics', '/feed/a%2Fb.ics', '/feed/a%00.ics', '/feed/x.ics/more'])(
    '%s is 404',
    async (path) => {
      const { get } = await withFeed();
      expect((await get(path)).status).toBe(404);
    },
  );
});

describe('the secret', () => {
  test('is in no page but Feeds, and in no report', async () => {
    const { get, token, reported } = await withFeed();
    for (const path of ['/gardens/mill-row', '/gardens/mill-row/history', `/gardens/x/${token}`, `/${token}`]) {
      expect(await (await get(path)).text()).not.toContain(token);
    }
    const feeds = await get('/gardens/mill-row/feeds');
    expect(await feeds.text()).toContain(token);
    expect(feeds.headers.get('cache-control')).toBe('no-store');
    expect(reported).toEqual([]);
  });

  test('is blotted out when the program fails over it', async () => {
    const { steward, token, address } = await withFeed();
    const failing = appOver({
      ...steward,
      feedBody: async (asked) => {
        throw new Error(`No row for ${asked}.`);
      },
    });
    const answer = await failing.get(address);
    // At 500 a widespread calendar app stops reading for good; at 404 it keeps what it has.
    expect(answer.status).toBe(404);
    const page = await answer.text();
    expect(page).not.toContain(token);
    expect(page).not.toContain('No row for');
    expect(page).not.toMatch(/\.tsx?\b/);
    expect(failing.reported).toHaveLength(1);
    expect(failing.reported[0]).toContain('No row for [secret].');
  });
});

test('robots.txt is open, since a calendar service asks it before it reads a feed', async () => {
  const { get } = await sampleApp();
  expect(await (await get('/robots.txt')).text()).toBe('User-agent: *\nAllow: /\n');
});

test('health is told as JSON', async () => {
  const { get } = await sampleApp();
  expect(await (await get('/health')).json()).toMatchObject({ status: 'ok' });
});
