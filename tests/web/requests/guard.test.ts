import { describe, expect, test } from 'vitest';
import { GARDEN, HOST, sampleApp, sampleFile } from '../sample-garden.ts';

const PUBLIC = { port: 8137, hostNames: ['Hollow.local'], publicUrl: new URL('https://garden.example.org') };

describe('the Host header', () => {
  test.each([
    ['127.0.0.1:8137', 200],
    ['localhost:8137', 200],
    ['LOCALHOST:8137', 200],
    ['[::1]:8137', 200],
    ['127.0.0.1', 421],
    ['127.0.0.1:80', 421],
    ['garden.attacker.example:8137', 421],
    ['127.0.0.1:8137.attacker.example', 421],
    ['garden.example.org', 421],
    ['', 400],
  ])('%s is answered with %i', async (host, status) => {
    const { get } = await sampleApp();
    expect((await get(GARDEN, { Host: host })).status).toBe(status);
  });

  test('may name this computer as the settings do', async () => {
    const { get } = await sampleApp(sampleFile(), PUBLIC);
    expect((await get(GARDEN, { Host: 'hollow.local:8137' })).status).toBe(200);
  });

  test('may leave the port out where it is the usual one', async () => {
    const { get } = await sampleApp(sampleFile(), { port: 80, hostNames: [] });
    expect((await get(GARDEN, { Host: 'localhost' })).status).toBe(200);
    expect((await get(GARDEN, { Host: 'localhost:80' })).status).toBe(200);
  });

  test('is shown back escaped, and cut short', async () => {
    const { get } = await sampleApp();
    const text = await (await get(GARDEN, { Host: `"><script>x</script>${'y'.repeat(300)}` })).text();
    expect(text).not.toContain('<script>');
    expect(text).not.toContain('y'.repeat(101));
  });
});

describe('from outside this computer', () => {
  const outside = { Host: 'garden.example.org' };

  test('feeds are answered under the public name', async () => {
    const { get, steward } = await sampleApp(sampleFile(), PUBLIC);
    const { token } = await steward.addFeed('mill-row', 'phone');
    expect((await get(`/feed/${token}.ics`, outside)).status).toBe(200);
    expect((await get('/robots.txt', outside)).status).toBe(200);
    expect((await get('/health', outside)).status).toBe(200);
  });

  test.each(['/', GARDEN, `${GARDEN}/feeds`, `${GARDEN}/history`, '/feed/x/../..'])('%s is not', async (path) => {
    const { get } = await sampleApp(sampleFile(), PUBLIC);
    const answer = await get(path, outside);
    expect(answer.status).toBe(403);
    expect(await answer.text()).not.toContain('Mill Row');
  });

  test.each([
    'Forwarded',
    'Via',
    'X-Forwarded-For',
    'X-Forwarded-Host',
    'X-Forwarded-Proto',
    'X-Forwarded-Port',
    'X-Forwarded-Server',
    'X-Real-IP',
    'CF-Connecting-IP',
    'True-Client-IP',
  ])('a page is not given to what a proxy passes on with %s, whatever its Host says', async (name) => {
    const { get } = await sampleApp();
    expect((await get(GARDEN, { [name]: 'for=203.0.113.7' })).status).toBe(403);
  });

  test('nothing can be changed under the public name', async () => {
    const { send, steward } = await sampleApp(sampleFile(), PUBLIC);
    const answer = await send(`${GARDEN}/feeds`, { label: 'mine' }, { ...outside, 'Sec-Fetch-Site': 'same-origin' });
    expect(answer.status).toBe(403);
    expect(await steward.feeds('mill-row')).toEqual([]);
  });
});

describe('a form', () => {
  const own = `http://${HOST}`;

  test.each([
    ['of the same origin', { 'Sec-Fetch-Site': 'same-origin' }, 303],
    ['sent again by the gardener', { 'Sec-Fetch-Site': 'none' }, 303],
    ['of an older browser on this page', { Origin: own }, 303],
    ['of another site', { 'Sec-Fetch-Site': 'cross-site' }, 403],
    ['of a neighbouring site', { 'Sec-Fetch-Site': 'same-site' }, 403],
    ['of another site that claims our origin', { 'Sec-Fetch-Site': 'cross-site', Origin: own }, 403],
    ['of an older browser on another site', { Origin: 'https://attacker.example' }, 403],
    ['of another port here', { Origin: 'http://127.0.0.1:9000' }, 403],
    ['of another scheme here', { Origin: own.replace('http:', 'https:') }, 403],
    ['of a page without an origin', { Origin: 'null' }, 403],
    ['that says nothing of where it comes from', {}, 403],
  ])('%s is answered with %s %i', async (_, headers, status) => {
    const { send, steward } = await sampleApp();
    expect((await send(`${GARDEN}/feeds`, { label: 'phone' }, headers as Record<string, string>)).status).toBe(status);
    expect(await steward.feeds('mill-row')).toHaveLength(status === 303 ? 1 : 0);
  });

  test.each(['PUT', 'PATCH', 'DELETE', 'OPTIONS'])('check also holds for %s', async (method) => {
    const { app } = await sampleApp();
    expect((await app.request(`${GARDEN}/feeds`, { method, headers: { Host: HOST } })).status).toBe(403);
  });

  test('longer than 64 KiB is refused, whether it says so or not', async () => {
    const { app, send, steward } = await sampleApp();
    const label = 'x'.repeat(64 * 1024);
    expect((await send(`${GARDEN}/feeds`, { label })).status).toBe(413);
    const body = new Blob([`label=${label}`]).stream();
    const headers = { Host: HOST, 'Sec-Fetch-Site': 'same-origin', 'Transfer-Encoding': 'chunked' };
    const request = new Request(`http://${HOST}${GARDEN}/feeds`, { method: 'POST', headers, body, duplex: 'half' });
    expect((await app.request(request)).status).toBe(413);
    expect(await steward.feeds('mill-row')).toEqual([]);
  });

  test('that arrives broken is refused with the mend', async () => {
    const { app } = await sampleApp();
    const headers = {
      Host: HOST,
      'Sec-Fetch-Site': 'same-origin',
      'Content-Type': 'multipart/form-data; boundary=absent',
    };
    const answer = await app.request(`${GARDEN}/feeds`, { method: 'POST', headers, body: 'nothing of the kind' });
    expect(answer.status).toBe(400);
    expect(await answer.text()).toContain('send it again');
  });
});

describe('safety headers', () => {
  test.each([
    ['a page', GARDEN, {}],
    ['a page that is not there', '/nowhere', {}],
    ['a refused name', GARDEN, { Host: 'attacker.example' }],
    ['the stylesheet', '/style.css', {}],
  ])('are on %s', async (_, path, headers) => {
    const { get } = await sampleApp();
    const answer = await get(path, headers);
    expect(answer.headers.get('content-security-policy')).toBe(
      "default-src 'none'; style-src 'self'; img-src 'self' data:; form-action 'self'; frame-ancestors 'none'; base-uri 'none'",
    );
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(answer.headers.get('referrer-policy')).toBe('same-origin');
    expect(answer.headers.get('x-robots-tag')).toBe('noindex, nofollow');
    expect(answer.headers.get('cache-control')).toMatch(/^(private, no-cache|public, max-age=31536000, immutable)$/);
  });

  test('find nothing on the pages that they would forbid', async () => {
    const { get } = await sampleApp();
    const html = await (await get(GARDEN)).text();
    expect(html).not.toMatch(/<script|\sstyle=|<style|\son[a-z]+=|javascript:/);
  });
});
