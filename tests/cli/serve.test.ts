import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { connect, createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, onTestFinished, test, vi } from 'vitest';
import type { Surroundings } from '../../src/cli/command-line/surroundings.ts';
import { openedIn } from './household.ts';
import { loamtideIn, NOW, withGarden } from './loamtide.ts';

const PAGE = /^Loamtide is at (http:\/\/127\.0\.0\.1:\d+\/)$/m;
const FEED = /^Calendar feed of [\w-]+: (http\S+\.ics)$/m;

/** A server in this process: what it has written so far, and a way to stop it. */
function served(folder: string, argv: readonly string[] = [], other: Partial<Surroundings> = {}) {
  const written = { text: '' };
  let stop = (): void => undefined;
  const stopped = new Promise<void>((resolve) => {
    stop = resolve;
  });
  const ended = loamtideIn(folder, {
    stdout: { write: (text) => (written.text += text), isTTY: true },
    untilStopped: () => stopped,
    ...other,
  })('serve', '--port', '0', ...argv);
  const started = vi.waitFor(() => expect(written.text).toContain('Stop it with Ctrl-C.'), { timeout: 15_000 });
  const stopAndEnd = () => {
    stop();
    return ended;
  };
  return { started, text: () => written.text, stop: stopAndEnd };
}

const status = async (address = '') => (await fetch(address)).status;

describe('serve', () => {
  test('shows the pages and the feed at the addresses it prints, until it is stopped', async () => {
    const { folder, loamtide } = await withGarden();
    await loamtide('feed', 'add');
    const server = served(folder);
    await server.started;
    const [page, feed] = [PAGE.exec(server.text())?.[1], FEED.exec(server.text())?.[1]];
    expect(await status(page)).toBe(200);
    const body = await (await fetch(feed ?? '')).text();
    expect(body).toContain('SUMMARY:Turn the pile in Left bay');
    const { code, err } = await server.stop();
    expect(code).toBe(0);
    const told = err
      .trim()
      .split('\n')
      .map((line) => line.split(' ').slice(2, 4).join(' ').trim())
      // The day's copy is made meanwhile, sooner or later.
      .filter((event) => event !== 'copied');
    // The first daily copy is made whenever it is made.
    expect(told.filter((event) => event !== 'copied')).toEqual([
      'started',
      'request',
      'request',
      'stopping',
      'stopped',
    ]);
    await expect(fetch(page ?? '')).rejects.toThrow();
  });

  test('prints the public address of a feed where there is one, and says where there is no feed', async () => {
    const { folder, loamtide } = await withGarden();
    const none = served(folder);
    await none.started;
    expect(none.text()).toContain('Calendar feed of hollow-lane: none yet; make one with "loamtide feed add"');
    await none.stop();
    await loamtide('feed', 'add');
    const open = served(folder, [], { env: { LOAMTIDE_PUBLIC_URL: 'https://garden.example.org' } });
    await open.started;
    expect(FEED.exec(open.text())?.[1]).toMatch(/^https:\/\/garden\.example\.org\/feed\//);
    await open.stop();
  });

  test('plans anew when the garden’s own midnight has passed', async () => {
    const { folder } = await withGarden();
    vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
    onTestFinished(() => void vi.useRealTimers());
    const clock = { now: NOW };
    const server = served(folder, [], { now: () => clock.now });
    await server.started;
    const planned = () => openedIn(folder, async ({ store }) => (await store.plan('hollow-lane'))?.today);
    expect(await planned()).toBe('2027-04-18');
    clock.now = '2027-04-19T05:00:30.000Z';
    await vi.advanceTimersByTimeAsync(60_000);
    await vi.waitFor(async () => expect(await planned()).toBe('2027-04-19'), { timeout: 15_000 });
    await server.stop();
  });

  test('standing on another day signs nobody out and keeps nobody in', async () => {
    const { folder } = await withGarden();
    const password = 'beet row under the old pear';
    const signedIn = () =>
      openedIn(folder, async ({ steward }) => (await steward.sessions()).map(({ beganAt }) => beganAt));
    await openedIn(folder, async ({ steward }) => {
      await steward.setPassword(password);
      await steward.signIn(password);
    });
    const clock = { now: NOW };
    const server = served(folder, ['--today', '2031-01-10'], { now: () => clock.now });
    await server.started;
    const page = PAGE.exec(server.text())?.[1] ?? '';
    const answer = await fetch(`${page}sign-in`, {
      method: 'POST',
      redirect: 'manual',
      headers: { 'Sec-Fetch-Site': 'same-origin' },
      body: new URLSearchParams({ password }),
    });
    const cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? '';
    const seen = async () => (await fetch(`${page}who-gets-in`, { headers: { cookie }, redirect: 'manual' })).status;
    expect([await signedIn(), await seen()]).toEqual([[NOW, NOW], 200]);
    clock.now = '2027-05-19T14:30:00.000Z';
    expect(await seen()).toBe(303);
    await server.stop();
  });

  test('a garden that cannot be planned is told, and the rest is served', async () => {
    const { folder } = await withGarden();
    await openedIn(folder, async ({ store }) => {
      await store.createGarden({ id: 'empty', name: 'Empty', createdAt: NOW });
    });
    const err: string[] = [];
    const server = served(folder, [], { stderr: { write: (text) => err.push(text) } });
    await server.started;
    expect(err.join('')).toContain('empty: has no garden file.');
    expect(await status(`${PAGE.exec(server.text())?.[1]}gardens/hollow-lane`)).toBe(200);
    await server.stop();
  });
});

describe('serve is refused', () => {
  test('where others could come in', async () => {
    const { folder } = await withGarden();
    const { code, err } = await loamtideIn(folder)('serve', '--host', '0.0.0.0');
    expect(code).toBe(2);
    expect(err).toContain('--host: "0.0.0.0" cannot be used. Cannot listen on "0.0.0.0"');
  });

  test('on a port that is in use, naming another', async () => {
    const { folder } = await withGarden();
    const other = createServer().listen(0, '127.0.0.1');
    onTestFinished(() => void other.close());
    await once(other, 'listening');
    const address = other.address();
    const port = typeof address === 'object' && address ? address.port : 0;
    const { code, err } = await loamtideIn(folder)('serve', '--port', String(port));
    expect(code).toBe(2);
    expect(err).toContain(`--port: Port ${port} is in use.`);
    expect(err).toContain(`such as --port ${port + 1}.`);
  });
});

/** Longest a start may take where many tests share the machine. */
const STARTING_MS = 60_000;

const main = fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url));

/** The program as a newcomer starts it, in a process of its own. */
function started(folder: string): { program: ChildProcess; out: () => string } {
  const env = { PATH: process.env.PATH, LOAMTIDE_DATA: join(folder, 'data') };
  const program = spawn(process.execPath, ['--import', 'tsx', main, 'serve', '--port', '0'], { env });
  onTestFinished(() => void program.kill('SIGKILL'));
  const written: string[] = [];
  program.stdout.on('data', (chunk) => written.push(String(chunk)));
  program.stderr.on('data', (chunk) => written.push(String(chunk)));
  return { program, out: () => written.join('') };
}

/** Where the first lays the demo garden, and the second finds it. */
const folder = mkdtempSync(join(tmpdir(), 'loamtide-served-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test(
  'on an empty folder it lays the demo garden, answers, and ends in good order on SIGTERM',
  async () => {
    const { program, out } = started(folder);
    await vi.waitFor(() => expect(out()).toContain('Stop it with Ctrl-C.'), { timeout: STARTING_MS, interval: 100 });
    expect(out()).toContain('The garden shown is an invented one');
    expect(await status(PAGE.exec(out())?.[1])).toBe(200);
    const token = await openedIn(folder, async ({ steward }) => (await steward.feeds('quillet-lane'))[0]?.token ?? '');
    const feed = await fetch(`${PAGE.exec(out())?.[1]}feed/${token}.ics`);
    expect(feed.status).toBe(200);
    expect(feed.headers.get('content-type')).toContain('text/calendar');
    expect(out()).not.toContain(token);
    const exit = once(program, 'exit');
    program.kill('SIGTERM');
    expect(await exit).toEqual([0, null]);
    expect(out()).toMatch(/ info {2}stopping\n.* info {2}stopped\n$/);
    // SQLite takes its log into the database when the last who uses it closes it.
    expect(existsSync(join(folder, 'data', 'loamtide.db-wal'))).toBe(false);
  },
  2 * STARTING_MS,
);

test(
  'asked to stop it waits for a request under way and takes no other; a second signal ends it at once',
  async () => {
    const { program, out } = started(folder);
    await vi.waitFor(() => expect(out()).toContain('Stop it with Ctrl-C.'), { timeout: STARTING_MS, interval: 100 });
    const page = new URL(PAGE.exec(out())?.[1] ?? '');
    const line = connect(Number(page.port), page.hostname);
    onTestFinished(() => void line.destroy());
    line.on('error', () => undefined);
    line.write(`POST /reading HTTP/1.1\r\nHost: ${page.host}\r\nContent-Length: 12\r\n\r\nunits`);
    await vi.waitFor(async () => expect(await status(`${page.href}health`)).toBe(200));
    const exit = once(program, 'exit');
    program.kill('SIGTERM');
    await vi.waitFor(() => expect(out()).toContain(' info  stopping\n'));
    await vi.waitFor(() => expect(fetch(page)).rejects.toThrow());
    expect(program.exitCode).toBeNull();
    program.kill('SIGTERM');
    expect(await exit).toEqual([null, 'SIGTERM']);
  },
  2 * STARTING_MS,
);
