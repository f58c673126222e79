import { describe, expect, test } from 'vitest';
import { plain, read } from '../plain-text.ts';
import { GARDEN, HOST, sampleApp } from '../sample-garden.ts';

const KEYS = `${GARDEN}/keys`;

const keyIn = (html: string): string => /<code class="address">([\w-]{43})<\/code>/.exec(html)?.[1] ?? '';

describe('keys for scripts', () => {
  test('are reached from the feeds, and none is there at first', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/feeds`)).text()).toContain(`href="${KEYS}"`);
    expect(await read(get(KEYS))).toContain('There is no key.');
  });

  test('one is made, shown this once, and tells a reading', async () => {
    const { app, get, send, steward } = await sampleApp();
    const made = await send(KEYS, { label: 'pile probe' });
    const html = await made.text();
    const key = keyIn(html);
    expect([made.status, made.headers.get('cache-control')]).toEqual([200, 'no-store']);
    expect(key).toHaveLength(43);
    expect(plain(html)).toContain('/api/piles/spring-pile/readings');
    const sent = await app.request('/api/piles/spring-pile/readings', {
      method: 'POST',
      headers: { Host: HOST, Authorization: `Bearer ${key}`, 'Content-Type': 'application/json' },
      body: JSON.stringify({ tempC: 61 }),
    });
    expect(sent.ok).toBe(true);
    const [pile] = (await steward.view('mill-row')).garden.piles;
    expect(pile?.readings.at(-1)).toMatchObject({ tempC: 61 });
    const listed = await (await get(KEYS)).text();
    expect(plain(listed)).toContain('pile probe made on April 20, 2027');
    expect(listed).not.toContain(key);
  });

  test('one is revoked after asking, and is refused from then on', async () => {
    const { app, get, send } = await sampleApp();
    const key = keyIn(await (await send(KEYS, { label: 'pile probe' })).text());
    const path = /href="([^"]+\/revoke)"/.exec(await (await get(KEYS)).text())?.[1] ?? '';
    expect(await read(get(path))).toContain('Revoke the key “pile probe”? What a script sends with it is refused');
    expect((await send(path, {})).status).toBe(303);
    const sent = await app.request('/api/piles/spring-pile/readings', {
      method: 'POST',
      headers: { Host: HOST, Authorization: `Bearer ${key}`, 'Content-Type': 'application/json' },
      body: JSON.stringify({ tempC: 61 }),
    });
    expect(sent.status).toBe(401);
    expect(await read(get(KEYS))).toMatch(/pile probe made on .*; revoked on /);
    expect([(await get(path)).status, (await send(path, {})).status]).toEqual([404, 404]);
  });

  test.each(['', 'x'.repeat(61)])('none is made for "%s", and what was typed comes back', async (label) => {
    const { send, steward } = await sampleApp();
    const answer = await send(KEYS, { label });
    const html = await answer.text();
    expect([answer.status, plain(html)]).toEqual([422, expect.stringContaining('What it is for:')]);
    expect(html).toContain(`value="${label}"`);
    expect(await steward.readingKeys('mill-row')).toEqual([]);
  });
});
