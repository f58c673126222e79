import { describe, expect, test } from 'vitest';
import { GARDEN, sampleApp, sampleFile } from './sample-garden.ts';

const FEEDS = `${GARDEN}/feeds`;

describe('the feeds page', () => {
  test('makes a feed and shows its address, which answers', async () => {
    const { get, send } = await sampleApp();
    const made = await send(FEEDS, { label: '  Ada’s phone ' });
    expect([made.status, made.headers.get('location')]).toEqual([303, FEEDS]);
    const text = await (await get(FEEDS)).text();
    expect(text).toContain('<dt>Ada’s phone</dt>');
    const address = /http:\/\/127\.0\.0\.1:8137(\/feed\/[\w-]{43}\.ics)/.exec(text)?.[1] ?? '';
    expect((await get(address)).status).toBe(200);
  });

  test('says that its addresses reach no phone until there is a public one, and links none', async () => {
    const { get, steward } = await sampleApp();
    await steward.addFeed('mill-row', 'phone');
    const text = await (await get(FEEDS)).text();
    expect(text).toContain('work on this computer only');
    expect(text).not.toMatch(/href="[^"]*\/feed\/|webcal/);
  });

  test('begins its addresses with the public one where there is one', async () => {
    const publicUrl = new URL('https://garden.example.org');
    const { get, steward } = await sampleApp(sampleFile(), { port: 8137, hostNames: [], publicUrl });
    const { token } = await steward.addFeed('mill-row', 'phone');
    const text = await (await get(FEEDS)).text();
    expect(text).toContain(`https://garden.example.org/feed/${token}.ics`);
    expect(text).not.toContain('work on this computer only');
  });

  test.each(['', '   ', 'x'.repeat(61)])('refuses the name "%s" and makes nothing', async (label) => {
    const { send, steward } = await sampleApp();
    const answer = await send(FEEDS, { label });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Give a name of up to 60 characters');
    expect(await steward.feeds('mill-row')).toEqual([]);
  });
});

describe('revoking', () => {
  test('asks first, then closes the one feed and leaves the others', async () => {
    const { get, send, steward } = await sampleApp();
    const first = await steward.addFeed('mill-row', 'lost phone');
    const second = await steward.addFeed('mill-row', 'tablet');
    const asked = await get(`${FEEDS}/${first.id}/revoke`);
    expect(await asked.text()).toContain('Revoke “lost phone”?');
    expect((await get(`/feed/${first.token}.ics`)).status).toBe(200);
    expect((await send(`${FEEDS}/${first.id}/revoke`, {})).status).toBe(303);
    expect(await (await get(`/feed/${first.token}.ics`)).text()).toContain('This calendar is no longer kept');
    expect((await get(`/feed/${second.token}.ics`)).status).toBe(200);
    const text = await (await get(FEEDS)).text();
    expect(text).not.toContain('lost phone');
    expect(text).toContain('tablet');
  });

  test('of a feed that is closed, or never was, is 404', async () => {
    const { get, send, steward } = await sampleApp();
    const { id } = await steward.addFeed('mill-row', 'phone');
    await steward.revokeFeed('mill-row', id);
    expect((await get(`${FEEDS}/${id}/revoke`)).status).toBe(404);
    expect((await send(`${FEEDS}/${id}/revoke`, {})).status).toBe(404);
    expect((await send(`${FEEDS}/feed-99/revoke`, {})).status).toBe(404);
  });
});
