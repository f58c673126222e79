import { once } from 'node:events';
import { type IncomingHttpHeaders, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { describe, expect, onTestFinished, test } from 'vitest';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { COST, type ScryptCost } from '../../../src/steward/sign-in/password-hash.ts';
import { openStore } from '../../../src/store/store.ts';
import { createApp } from '../../../src/web/app.tsx';
import { serveApp } from '../../../src/web/server.ts';
import { freePort } from '../../journeys/served-garden.ts';
import { CHEAP } from '../../steward/sign-in/cheap-cost.ts';
import { NOW } from '../sample-garden.ts';

const PASSWORD = 'beet row under the old pear';
const FORGED = {
  'X-Forwarded-For': '203.0.113.7',
  'X-Forwarded-Host': 'garden.example.org',
  'X-Forwarded-Proto': 'https',
  Forwarded: 'for=203.0.113.7;proto=https;host=garden.example.org',
};

interface Asking {
  /** The address of this computer that the request comes from. */
  from?: string;
  headers?: Record<string, string>;
  body?: string;
}

/** The program on a port, and a way to ask it from any loopback address. */
async function listening(opened: Opened = {}) {
  const { trusted = [], hostname = '127.0.0.1', password = PASSWORD, passwordCost = CHEAP } = opened;
  const store = await openStore({ file: ':memory:', now: NOW });
  const steward = createSteward({ store, clock: { now: () => NOW }, passwordCost });
  if (password !== '') await steward.setPassword(password);
  const port = await freePort();
  const isOpenToNetwork = hostname === '0.0.0.0';
  const settings = { port, hostNames: [], trustedProxies: trusted, isOpenToNetwork };
  const server = await serveApp(createApp({ steward, settings }), { hostname, port, hasPassword: password !== '' });
  onTestFinished(async () => {
    server.close();
    await steward.close();
  });
  expect((server.address() as AddressInfo).address).toBe(hostname);
  const ask = async (path: string, { from = '127.0.0.1', headers = {}, body }: Asking = {}) => {
    const asked = request({
      host: '127.0.0.1',
      port,
      path,
      localAddress: from,
      agent: false,
      method: body === undefined ? 'GET' : 'POST',
      headers: {
        'Sec-Fetch-Site': 'same-origin',
        ...(body === undefined ? {} : { 'Content-Type': 'application/x-www-form-urlencoded' }),
        ...headers,
      },
    });
    asked.end(body);
    const [answer] = await once(asked, 'response');
    let text = '';
    for await (const chunk of answer) text += String(chunk);
    return { status: answer.statusCode as number, headers: answer.headers as IncomingHttpHeaders, text };
  };
  const tryWrong = (asking: Asking) => ask('/sign-in', { ...asking, body: 'password=a+wrong+word+or+five' });
  /** Tries wrong passwords until it is told to wait; each wait is twice the one before. */
  const untilHeldUp = async (askingFor: (count: number) => Asking) => {
    let last = 401;
    for (let count = 0; count < 20 && last === 401; count += 1) last = (await tryWrong(askingFor(count))).status;
    expect(last).toBe(429);
  };
  return { ask, tryWrong, untilHeldUp, port, steward };
}

interface Opened {
  trusted?: readonly string[];
  hostname?: string;
  password?: string;
  /** What a look at a password costs. */
  passwordCost?: ScryptCost;
}

describe('what a proxy says of whoever it asks for', () => {
  test('changes nothing where no proxy is trusted: neither who is counted, nor the cookie, nor https', async () => {
    const { ask, tryWrong, untilHeldUp } = await listening();
    await untilHeldUp((count) => ({ headers: { ...FORGED, 'X-Forwarded-For': `203.0.113.${count}` } }));
    const { headers } = await ask('/sign-in', { headers: FORGED });
    expect(headers['strict-transport-security']).toBeUndefined();
    const other = await tryWrong({ from: '127.0.0.5', headers: FORGED });
    expect([other.status, other.headers['set-cookie']]).toEqual([401, undefined]);
  });

  test('is believed of a trusted one alone, and of what stood in its header before only as far as trusted ones wrote it', async () => {
    const { ask, tryWrong, untilHeldUp } = await listening({ trusted: ['127.0.0.1', '10.0.0.0/8'] });
    const through = (chain: string) => ({ headers: { 'X-Forwarded-For': chain, 'X-Forwarded-Proto': 'https' } });
    await untilHeldUp((count) => through(`198.51.100.${count}, 203.0.113.7, 10.0.0.9`));
    expect((await tryWrong(through('203.0.113.8'))).status).toBe(401);
    expect((await ask('/sign-in', through('203.0.113.8'))).headers['strict-transport-security']).toBe(
      'max-age=63072000',
    );
    const cookie = await ask('/sign-in', {
      ...through('203.0.113.9'),
      body: `password=${encodeURIComponent(PASSWORD)}`,
    });
    expect(cookie.headers['set-cookie']?.[0]).toMatch(/^__Host-loamtide=.*; Secure/);
    const stranger = await ask('/sign-in', { ...through('203.0.113.8'), from: '127.0.0.2' });
    expect(stranger.headers['strict-transport-security']).toBeUndefined();
  });

  test('cannot make whoever sits at this computer wait', async () => {
    const { ask, untilHeldUp } = await listening();
    await untilHeldUp(() => ({ headers: FORGED }));
    const here = await ask('/sign-in', { body: `password=${encodeURIComponent(PASSWORD)}` });
    expect([here.status, here.headers.location]).toEqual([303, '/']);
  });

  test('opens no page, with whatever it says, where there is no password', async () => {
    const { ask } = await listening({ trusted: ['127.0.0.1'], password: '' });
    for (const [name, value] of Object.entries(FORGED)) {
      expect([name, (await ask('/', { headers: { [name]: value } })).status]).toEqual([name, 403]);
    }
    expect((await ask('/')).status).toBe(200);
  });
});

describe('on an address that others can reach', () => {
  test('the pages ask for the password, under any address in numbers and under no strange name', async () => {
    const { ask, port } = await listening({ hostname: '0.0.0.0' });
    const status = async (host: string) => (await ask('/gardens', { headers: { Host: host } })).status;
    expect(await status(`127.0.0.1:${port}`)).toBe(303);
    expect(await status(`192.168.1.20:${port}`)).toBe(303);
    expect(await status(`[fd00::20]:${port}`)).toBe(303);
    expect(await status(`attacker.example:${port}`)).toBe(421);
    expect(await status(`192.168.1.20.attacker.example:${port}`)).toBe(421);
    // No address at all: what reads requests refuses it before this program does.
    expect(await status(`[attacker]:${port}`)).toBe(400);
  });

  test('are shut to everybody else at once when the password is taken away', async () => {
    const { steward, port } = await listening({ hostname: '0.0.0.0' });
    await steward.removePassword();
    const settings = { port, hostNames: [], isOpenToNetwork: true };
    const app = createApp({ steward, settings });
    const from = async (remoteAddress: string) => {
      const env = { incoming: { socket: { remoteAddress }, headers: { host: `192.168.1.20:${port}` } } };
      const asked = new Request('http://x/gardens', { headers: { Host: `192.168.1.20:${port}` } });
      return (await app.fetch(asked, env)).status;
    };
    expect([await from('192.168.1.77'), await from('::ffff:192.168.1.77'), await from('127.0.0.1')]).toEqual([
      403, 403, 200,
    ]);
  });
});

test('guessing from many sides at once holds up no page and no feed for long', async () => {
  const { ask } = await listening({ trusted: ['127.0.0.1'], passwordCost: COST });
  const guesses = Array.from({ length: 25 }, (_, count) =>
    ask('/sign-in', { headers: { 'X-Forwarded-For': `203.0.113.${count}` }, body: 'password=a+wrong+word+or+five' }),
  );
  const first = await Promise.race([ask('/health').then(() => 'health'), Promise.all(guesses).then(() => 'guesses')]);
  const statuses = (await Promise.all(guesses)).map(({ status }) => status);
  expect(first).toBe('health');
  // Nine are looked at one after the other; the rest is told to come again.
  expect(statuses.filter((status) => status === 401).length).toBeGreaterThanOrEqual(9);
  expect(new Set(statuses)).toEqual(new Set([401, 503]));
});
