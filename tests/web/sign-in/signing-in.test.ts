import { describe, expect, test } from 'vitest';
import { GARDEN, HOST } from '../sample-garden.ts';
import { cookieOf, lockedApp, OWN, PASSWORD, signedInApp } from './locked.ts';

const HTTPS = { port: 8137, hostNames: [], publicUrl: new URL('https://garden.example.org') };

describe('the cookie', () => {
  /** RFC 6265bis, 4.1.2 and 4.1.3.2; OWASP ASVS 5.0, 3.3.1 to 3.3.4. */
  test('over https has every attribute that keeps it in, and the prefix that proves them', async () => {
    const { answer } = await signedInApp(HTTPS, 'garden.example.org');
    const [cookie = '', ...others] = answer.headers.getSetCookie();
    const [pair, ...attributes] = cookie.split('; ');
    expect(others).toEqual([]);
    expect(pair).toMatch(/^__Host-loamtide=[\w-]{43}\.[\w%]+$/);
    expect(attributes.sort()).toEqual(['HttpOnly', 'Max-Age=2592000', 'Path=/', 'SameSite=Lax', 'Secure']);
  });

  test('over plain http on this computer has what can be had there', async () => {
    const { answer } = await signedInApp();
    const [pair, ...attributes] = answer.headers.getSetCookie()[0]?.split('; ') ?? [];
    expect(pair).toMatch(/^loamtide=/);
    expect(attributes.sort()).toEqual(['HttpOnly', 'Max-Age=2592000', 'Path=/', 'SameSite=Lax']);
  });

  test('that was not signed here, or whose name or mark was changed, is none', async () => {
    const { get, Cookie } = await signedInApp();
    const [token = '', mark = ''] = decodeURIComponent(Cookie.slice('loamtide='.length)).split('.');
    const status = async (value: string) => (await get(GARDEN, { Cookie: value })).status;
    const forged = [
      `loamtide=${token}`,
      `loamtide=${token}.`,
      `loamtide=${token}.${encodeURIComponent(mark.replace(/^./, (first) => (first === 'A' ? 'B' : 'A')))}`,
      `loamtide=${'A'.repeat(43)}.${encodeURIComponent(mark)}`,
      `other=${token}.${encodeURIComponent(mark)}`,
      `loamtide=${'%'.repeat(50)}`,
    ];
    for (const one of forged) expect([one, await status(one)]).toEqual([one, 303]);
    expect(await status(Cookie)).toBe(200);
  });

  test('is another after each sign-in, and the one before is worth nothing', async () => {
    const { get, signIn, Cookie } = await signedInApp();
    const next = cookieOf(await signIn({ password: PASSWORD }, { Cookie }));
    expect(next).not.toBe(Cookie);
    expect([(await get(GARDEN, { Cookie })).status, (await get(GARDEN, { Cookie: next })).status]).toEqual([303, 200]);
  });
});

describe('after signing in', () => {
  /** OWASP ASVS 5.0, 3.7.2: never to an address elsewhere, however it is written. */
  test('one is led to a page of this program, whatever is asked for', async () => {
    const { get, Cookie } = await signedInApp();
    const leads = async (to: string) =>
      (await get(`/sign-in?${new URLSearchParams({ to })}`, { Cookie })).headers.get('location');
    const own = `${GARDEN}/weather?day=2027-04-18`;
    expect(await leads(own)).toBe(own);
    const elsewhere = [
      '',
      '//elsewhere.example',
      '/\\elsewhere.example',
      '\\\\elsewhere.example',
      '/\t/elsewhere.example',
      'https://elsewhere.example/',
      'javascript:alert(1)',
      '/gardens/..//elsewhere.example',
      '/.//elsewhere.example',
    ];
    for (const to of elsewhere) expect([to, await leads(to)]).toEqual([to, '/']);
    expect(await leads('https:elsewhere.example')).toMatch(/^\/(?!\/)/);
  });

  test('one stands on the page one wanted, with what was asked of it', async () => {
    const { get, signIn } = await lockedApp();
    const wanted = `${GARDEN}/weather?day=2027-04-18`;
    const door = (await get(wanted)).headers.get('location') ?? '';
    const html = await (await get(door)).text();
    const to = /name="to" value="([^"]*)"/.exec(html)?.[1]?.replaceAll('&amp;', '&') ?? '';
    expect((await signIn({ password: PASSWORD, to })).headers.get('location')).toBe(wanted);
    expect((await signIn({ password: PASSWORD, to: 'https://elsewhere.example' })).headers.get('location')).toBe('/');
  });

  test('a form that came too late says so, and leads back to its page', async () => {
    const { send } = await lockedApp();
    const Referer = `http://127.0.0.1:8137${GARDEN}/feeds`;
    const html = await (await send(`${GARDEN}/feeds`, { label: 'x' }, { ...OWN, Referer })).text();
    expect(html).toContain('This device is not signed in');
    expect(html).toContain(`name="to" value="${GARDEN}/feeds"`);
    const foreign = await send(`${GARDEN}/feeds`, {}, { ...OWN, Referer: 'https://elsewhere.example/x' });
    expect(await foreign.text()).toContain('name="to" value="/"');
  });
});

describe('a wrong password', () => {
  test('is answered with 401 and without it; too many with 429 and a time to wait', async () => {
    const { signIn } = await lockedApp();
    const password = 'a wrong word or five';
    const first = await signIn({ password });
    const html = await first.text();
    expect(first.status).toBe(401);
    expect(html).toContain('That is not the household’s password.');
    expect(html).not.toContain(password);
    expect(first.headers.getSetCookie()).toEqual([]);
    // How many more are let pass hangs on how fast the machine is: each wait is twice the one before.
    let last = first;
    for (let count = 0; count < 20 && last.status === 401; count += 1) last = await signIn({ password });
    expect(last.status).toBe(429);
    expect(Number(last.headers.get('retry-after'))).toBeGreaterThan(0);
    expect(await last.text()).toMatch(/Wait (a second|\d+ seconds), then try again\./);
  });

  test('from another site is not even looked at', async () => {
    const { send, steward } = await lockedApp();
    const answer = await send('/sign-in', { password: PASSWORD }, { 'Sec-Fetch-Site': 'cross-site' });
    expect([answer.status, await steward.sessions()]).toEqual([403, []]);
  });
});

test('what is sent to the sign-in is never a fault of the program, whatever it is', async () => {
  const { app, steward, reported } = await lockedApp();
  const form = 'application/x-www-form-urlencoded';
  const sent: [type: string, body: string, status: number][] = [
    [form, '', 401],
    ['application/json', '{"password":"x"}', 400],
    ['multipart/form-data; boundary=absent', 'nothing of the kind', 400],
    [form, `password=${'x'.repeat(70_000)}`, 413],
    [form, 'to=%2F', 401],
    [form, 'password=%00%ff%d800&password=two&to=%00', 401],
    [form, `password=${'%EF%B7%BA'.repeat(6_000)}&to=${'/'.repeat(5_000)}`, 401],
    [form, `password[]=${PASSWORD}&password=__proto__`, 401],
  ];
  for (const [type, body, status] of sent) {
    const headers = { Host: HOST, 'Content-Type': type, ...OWN };
    const answer = await app.request('/sign-in', { method: 'POST', headers, body });
    expect([body.slice(0, 40), answer.status]).toEqual([body.slice(0, 40), status]);
  }
  expect([reported.filter((line) => line.includes('fault')), await steward.sessions()]).toEqual([[], []]);
});

describe('signing out', () => {
  test('ends the session of this device, everywhere ends all', async () => {
    const { app, get, send, signIn, Cookie, formToken } = await signedInApp();
    const other = cookieOf(await signIn());
    const told = await (await get('/who-gets-in', { Cookie })).text();
    expect(told).toContain('2 devices are signed in, this one among them, the first since April 20, 2027.');
    const out = await send('/sign-out', { 'form-token': formToken }, { ...OWN, Cookie });
    expect([out.status, out.headers.get('location')]).toEqual([303, '/sign-in']);
    expect(out.headers.getSetCookie()).toEqual(['loamtide=; Max-Age=0; Path=/; HttpOnly; SameSite=Lax']);
    expect(out.headers.get('clear-site-data')).toBe('"cache"');
    const status = async (cookie: string) => (await get(GARDEN, { Cookie: cookie })).status;
    expect([await status(Cookie), await status(other)]).toEqual([303, 200]);
    const html = await (
      await app.request('/who-gets-in', { headers: { Host: '127.0.0.1:8137', Cookie: other } })
    ).text();
    const token = /name="form-token" value="([^"]+)"/.exec(html)?.[1] ?? '';
    await signIn();
    await send('/sign-out/everywhere', { 'form-token': token }, { ...OWN, Cookie: other });
    expect(await status(other)).toBe(303);
  });
});

describe('secrets', () => {
  test('are in no log and on no error page: password, cookie, token of a form, token of a feed', async () => {
    const { get, send, steward, reported, Cookie, formToken } = await signedInApp();
    const { token } = await steward.addFeed('mill-row', 'phone');
    // The database is gone from under the program: every page is now a fault inside it.
    await steward.close();
    const answers = [
      await get(`${GARDEN}?x=${token}`, { Cookie }),
      await get(`/feed/${token}.ics`),
      await send('/sign-in', { password: PASSWORD }, { ...OWN, Cookie }),
      await send(`${GARDEN}/feeds`, { label: PASSWORD, 'form-token': formToken }, { ...OWN, Cookie }),
    ];
    expect(answers.map(({ status }) => status)).toEqual([500, 404, 500, 500]);
    const told = [...reported, ...(await Promise.all(answers.map((answer) => answer.text())))].join('\n');
    expect(reported.length).toBeGreaterThan(2);
    const secrets = [
      PASSWORD,
      Cookie.slice('loamtide='.length),
      decodeURIComponent(Cookie).slice(9, 52),
      formToken,
      token,
    ];
    for (const secret of secrets) {
      expect(secret.length).toBeGreaterThan(20);
      expect(told).not.toContain(secret);
    }
  });
});

/** OWASP HTTP Headers Cheat Sheet; RFC 6797; OWASP ASVS 5.0, 3.4. */
describe('headers', () => {
  test('want https from now on where it is spoken, and nowhere else', async () => {
    const { get } = await lockedApp(HTTPS);
    const over = await get('/sign-in', { Host: 'garden.example.org' });
    expect(over.headers.get('strict-transport-security')).toBe('max-age=63072000');
    expect((await get('/sign-in')).headers.get('strict-transport-security')).toBeNull();
  });

  /** OWASP ASVS 5.0, 14.3: browsers heed Clear-Site-Data over https alone. */
  test('have no browser show a page again after the sign-out, over plain http either', async () => {
    const plain = await signedInApp();
    const kept = async (path: string, headers: Record<string, string>, { get } = plain) =>
      (await get(path, headers)).headers.get('cache-control');
    for (const path of [GARDEN, '/who-gets-in', `${GARDEN}/garden-file.yaml`, '/nowhere'])
      expect([path, await kept(path, { Cookie: plain.Cookie })]).toEqual([path, 'no-store']);
    expect(await kept('/style.css', { Cookie: plain.Cookie })).toContain('immutable');
    const over = await signedInApp(HTTPS, 'garden.example.org');
    expect(await kept(GARDEN, { Cookie: over.Cookie, Host: 'garden.example.org' }, over)).toBe('private, no-cache');
  });

  test('over https want a form of an older browser to come over https too', async () => {
    const { send, Cookie, formToken } = await signedInApp(HTTPS, 'garden.example.org');
    const status = async (Origin: string) =>
      (await send('/sign-out', { 'form-token': formToken }, { Host: 'garden.example.org', Cookie, Origin })).status;
    expect(await status('http://garden.example.org')).toBe(403);
    expect(await status('https://garden.example.org')).toBe(303);
  });

  test('of the sign-in have no browser keep it, and let no script at what a device can do', async () => {
    const { get } = await lockedApp();
    const { headers } = await get('/sign-in');
    expect(headers.get('cache-control')).toBe('no-store');
    expect(headers.get('permissions-policy')).toContain('camera=()');
    expect(headers.get('cross-origin-embedder-policy')).toBe('require-corp');
    expect(headers.get('x-permitted-cross-domain-policies')).toBe('none');
  });
});
