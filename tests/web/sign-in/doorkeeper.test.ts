import { describe, expect, test } from 'vitest';
import { createLog } from '../../../src/log/log.ts';
import { pagesOf } from '../../../src/web/app.tsx';
import { PUBLIC_PATHS } from '../../../src/web/sign-in/doorkeeper.ts';
import { FORM_TOKEN } from '../../../src/web/sign-in/form-token.ts';
import { GARDEN, HOST, NOW, sampleApp, sampleFile } from '../sample-garden.ts';
import { lockedApp, OWN, signedInApp, tokenIn } from './locked.ts';

const SILENT = createLog({ shape: 'plain', level: 'error', now: () => NOW, write: () => undefined });

/** Every way into the program, each parameter of an address filled in. */
async function everyRoute() {
  const { steward } = await sampleApp();
  const app = pagesOf({ steward, settings: { port: 8137, hostNames: [] }, log: SILENT });
  const routes = app.routes.filter(({ method }) => method !== 'ALL');
  const filled = routes.map(({ method, path }) => ({
    method,
    path: path
      .replace(/:gardenId/g, 'mill-row')
      .replace(/:which\{[^}]*\}/g, 'now.csv')
      .replace(/:\w+(\{[^}]*\})?/g, 'x'),
  }));
  return [...new Map(filled.map((route) => [`${route.method} ${route.path}`, route])).values()];
}

const isPublic = ({ path }: { path: string }) => PUBLIC_PATHS.test(path);

/** OWASP ASVS 5.0, 8.3.1: held at one place, for every address. */
describe('with a password', () => {
  test('every address there is asks who comes, on this computer too; only those with a secret of their own do not', async () => {
    const routes = await everyRoute();
    const { app } = await lockedApp();
    expect(routes.length).toBeGreaterThan(100);
    expect(routes.filter(isPublic).map(({ method, path }) => `${method} ${path}`)).toEqual([
      'POST /api/piles/x/readings',
      'GET /stop/x',
      'POST /stop/x',
      'GET /robots.txt',
      'GET /health',
      'GET /style.css',
      'GET /feed/x',
      'GET /answer/x',
      'POST /answer/x',
    ]);
    for (const { method, path } of routes.filter((route) => !isPublic(route) && route.path !== '/sign-in')) {
      const answer = await app.request(path, { method, headers: { Host: HOST, ...OWN } });
      const leads = answer.headers.get('location');
      const seen = [method, path, answer.status, leads?.startsWith('/sign-in') ?? null];
      expect(seen).toEqual([method, path, ...(method === 'GET' ? [303, true] : [401, null])]);
    }
  });

  test('every change wants the token of the session it is made in', async () => {
    const changes = (await everyRoute()).filter((route) => route.method !== 'GET' && !isPublic(route));
    const { app, Cookie, formToken } = await signedInApp();
    expect(changes.length).toBeGreaterThan(40);
    const other = `${formToken.slice(0, -1)}${formToken.endsWith('A') ? 'E' : 'A'}`;
    const send = (path: string, fields: Record<string, string>) =>
      app.request(path, { method: 'POST', headers: { Host: HOST, Cookie, ...OWN }, body: new URLSearchParams(fields) });
    for (const { path } of changes.filter((route) => !/^\/sign-(?:in|out)/.test(route.path))) {
      const without = await app.request(path, { method: 'POST', headers: { Host: HOST, Cookie, ...OWN } });
      const wrong = await send(path, { [FORM_TOKEN]: other });
      const right = await send(path, { [FORM_TOKEN]: formToken });
      expect([path, without.status, wrong.status]).toEqual([path, 403, 403]);
      expect([path, right.status === 403 || right.status === 401]).toEqual([path, false]);
    }
    for (const path of ['/sign-out', '/sign-out/everywhere']) expect((await send(path, {})).status).toBe(403);
    expect((await app.request(GARDEN, { headers: { Host: HOST, Cookie } })).status).toBe(200);
  }, 60_000);

  test('nothing of what lies behind is told at the door', async () => {
    const { get, send, steward } = await lockedApp();
    const { token } = await steward.addFeed('mill-row', 'phone');
    const page = await get(`/sign-in?to=${encodeURIComponent(GARDEN)}`);
    const refused = await send(`${GARDEN}/feeds`, { label: 'mine' });
    for (const text of [await page.text(), await refused.text()]) expect(text).not.toMatch(/Mill Row|bed|phone/);
    expect(refused.headers.get('www-authenticate')).toMatch(/^Cookie realm=/);
    expect(await steward.feeds('mill-row')).toHaveLength(1);
    expect((await get(`/feed/${token}.ics`)).status).toBe(200);
    expect([(await get('/health')).status, (await get('/style.css')).status]).toEqual([200, 200]);
  });

  test('set or taken away while the program runs, it holds at once', async () => {
    const { get, steward } = await sampleApp();
    const status = async () => (await get(GARDEN)).status;
    const before = await status();
    await steward.setPassword('beet row under the old pear');
    const locked = await status();
    await steward.removePassword();
    expect([before, locked, await status()]).toEqual([200, 303, 200]);
  });
});

describe('under the public address', () => {
  const PUBLIC = { port: 8137, hostNames: [], publicUrl: new URL('https://garden.example.org') };
  const outside = { Host: 'garden.example.org', 'X-Forwarded-For': '203.0.113.7' };

  test('pages are served once there is a password, and only then', async () => {
    const { get, steward } = await sampleApp(sampleFile(), PUBLIC);
    expect((await get(GARDEN, outside)).status).toBe(403);
    expect((await get('/sign-in', outside)).status).toBe(403);
    await steward.setPassword('beet row under the old pear');
    expect((await get(GARDEN, outside)).headers.get('location')).toBe(`/sign-in?to=${encodeURIComponent(GARDEN)}`);
    const { get: look, Cookie } = await signedInApp(PUBLIC, 'garden.example.org');
    expect((await look(GARDEN, { ...outside, Cookie })).status).toBe(200);
  });

  test('a device that is signed in there is not so under another name, and the other way round', async () => {
    const { get, Cookie } = await signedInApp(PUBLIC, 'garden.example.org');
    expect(Cookie).toMatch(/^__Host-loamtide=/);
    expect((await get(GARDEN, { Cookie })).status).toBe(303);
    const plain = Cookie.replace('__Host-', '');
    expect((await get(GARDEN, { Host: 'garden.example.org', Cookie: plain })).status).toBe(303);
  });
});

/** OWASP Cross-Site Request Forgery Prevention Cheat Sheet; OWASP ASVS 5.0, 3.5.1. */
describe('the token of forms', () => {
  test('is in every form that changes something, in none that asks, and in none of who is not signed in', async () => {
    const { get, Cookie, formToken } = await signedInApp();
    for (const path of [
      GARDEN,
      `${GARDEN}/feeds`,
      `${GARDEN}/weather`,
      `${GARDEN}/household`,
      '/bring-in',
      '/nowhere',
    ]) {
      const html = await (await get(path, { Cookie })).text();
      const forms = [...html.matchAll(/<form\b[\s\S]*?<\/form>/g)].map(([form]) => form);
      expect([path, forms.length > 0]).toEqual([path, true]);
      for (const form of forms) expect(tokenIn(form)).toBe(/method="post"/.test(form) ? formToken : '');
    }
    const open = await sampleApp();
    expect(tokenIn(await (await open.get(`${GARDEN}/feeds`)).text())).toBe('');
  });

  test('lets a form through that would change something, of which the form itself sees nothing', async () => {
    const { send, steward, Cookie, formToken } = await signedInApp();
    const fields = { label: 'phone', [FORM_TOKEN]: formToken };
    expect((await send(`${GARDEN}/feeds`, fields, { ...OWN, Cookie })).status).toBe(303);
    expect(await steward.feeds('mill-row')).toHaveLength(1);
    const elsewhere = await send(`${GARDEN}/feeds`, fields, { 'Sec-Fetch-Site': 'cross-site', Cookie });
    expect(elsewhere.status).toBe(403);
    expect(await steward.feeds('mill-row')).toHaveLength(1);
  });

  test('lets a form with a file through, and refuses one that is too long before reading it', async () => {
    const { app, Cookie, formToken } = await signedInApp();
    const hand = async (path: string, content: string) => {
      const body = new FormData();
      body.set(FORM_TOKEN, formToken);
      body.set('file', new File([content], 'log.csv'));
      return app.request(path, { method: 'POST', headers: { Host: HOST, Cookie, ...OWN }, body });
    };
    const log = 'date,tmin_c,tmax_c\n2027-04-18,2,12\n';
    expect([303, 200]).toContain((await hand(`${GARDEN}/weather/days`, log)).status);
    expect((await hand(`${GARDEN}/garden-file`, 'x'.repeat(1024 * 1024 + 1))).status).toBe(413);
    expect((await hand(`${GARDEN}/feeds`, 'x'.repeat(64 * 1024 + 1))).status).toBe(413);
  });

  test('of one session is worth nothing in another', async () => {
    const { signIn, send, formToken } = await signedInApp();
    const other = (await signIn()).headers.getSetCookie().at(-1)?.split(';')[0] ?? '';
    const fields = { label: 'phone', [FORM_TOKEN]: formToken };
    expect((await send(`${GARDEN}/feeds`, fields, { ...OWN, Cookie: other })).status).toBe(403);
  });
});
