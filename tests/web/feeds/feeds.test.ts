import { describe, expect, test } from 'vitest';
import { PLAIN_SHAPE } from '../../../src/calendar/feed-shape.ts';
import { plain, read } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

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
    expect(plain(text)).toMatch(/\.ics This address works on this computer only.*a phone cannot/);
    expect(text).toContain('href="/handbook/running#settings"');
    expect(text).not.toMatch(/href="[^"]*\/feed\/|webcal/);
  });

  test('begins its addresses with the public one where there is one', async () => {
    const publicUrl = new URL('https://garden.example.org');
    const { get, steward } = await sampleApp(sampleFile(), { port: 8137, hostNames: [], publicUrl });
    const { token } = await steward.addFeed('mill-row', 'phone');
    const text = await (await get(FEEDS)).text();
    expect(text).toContain(`https://garden.example.org/feed/${token}.ics`);
    expect(text).not.toMatch(/works? on this computer only/);
  });

  test('without a feed says what to do next, also where all were revoked', async () => {
    const { get, steward } = await sampleApp();
    expect(await read(get(FEEDS))).toContain('There is no feed yet. Make one below: it needs no more than a name');
    const { id } = await steward.addFeed('mill-row', 'phone');
    await steward.revokeFeed('mill-row', id);
    expect(await read(get(FEEDS))).toContain('No feed is open. Make one below');
  });

  test.each(['', '   ', 'x'.repeat(61)])('refuses the name "%s" and makes nothing', async (label) => {
    const { send, steward } = await sampleApp();
    const answer = await send(FEEDS, { label });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Give a name of up to 60 characters');
    expect(await steward.feeds('mill-row')).toEqual([]);
  });
});

const titlesIn = (feed: string): string[] => feed.match(/^SUMMARY:.*$/gm) ?? [];

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
    const [open = '', revoked = ''] = (await (await get(FEEDS)).text()).split('<h2>Revoked</h2>');
    expect(open).not.toContain('lost phone');
    expect(open).toContain('tablet');
    expect(plain(revoked)).toMatch(/lost phone .*revoked on April 20, 2027/);
    expect(revoked).not.toContain(first.token);
  });

  test('says what goes, and which calendar loses it', async () => {
    const { get, steward } = await sampleApp();
    const shape = { ...PLAIN_SHAPE, beds: ['north'], daysAhead: 14 };
    const { id, token } = await steward.addFeed('mill-row', 'Shed wall', shape);
    const path = `${FEEDS}/${id}/revoke`;
    expect(await read(get(path))).toContain('No calendar has read it yet.');
    await get(`/feed/${token}.ics`, { 'User-Agent': 'Evolution/3.46.4' });
    const text = await read(get(path));
    expect(text).toMatch(/What goes from the calendars that read it: only work on North bed; 14 days ahead/);
    expect(text).toContain('It was last read on April 20, 2027 by Evolution, which would lose it');
    expect(text).toContain('It can be opened again, at the same address');
  });

  test('is taken back: the feed is opened again at its address, with what it showed', async () => {
    const { get, send, steward, clock } = await sampleApp();
    const { id, token } = await steward.addFeed('mill-row', 'tablet', { ...PLAIN_SHAPE, daysAhead: 14 });
    const before = await (await get(`/feed/${token}.ics`)).text();
    clock.moment = '2027-04-20T13:00:00.000Z';
    await send(`${FEEDS}/${id}/revoke`, {});
    const closed = await get(`/feed/${token}.ics`);
    const path = /href="([^"]+\/open-again)"/.exec(await (await get(FEEDS)).text())?.[1] ?? '';
    expect(await read(get(path))).toMatch(
      /Open “tablet” again\? .*14 days ahead.*Whoever had the address can read it again/,
    );
    expect((await send(`${FEEDS}/${id}/change`, { label: 'x' })).status).toBe(404);
    clock.moment = '2027-08-20T13:00:00.000Z';
    expect((await get(`/feed/${token}.ics`)).status).toBe(404);
    expect((await send(path, {})).status).toBe(303);
    const again = await get(`/feed/${token}.ics`);
    expect(titlesIn(await again.text())).toEqual(titlesIn(before));
    const readSince = { 'If-Modified-Since': closed.headers.get('last-modified') ?? '' };
    expect((await get(`/feed/${token}.ics`, readSince)).status).toBe(200);
    expect([(await get(path)).status, (await send(path, {})).status]).toEqual([404, 404]);
    expect(await (await get(FEEDS)).text()).not.toContain('Revoked');
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

const PUBLIC = { port: 8137, hostNames: [], publicUrl: new URL('https://garden.example.org') };

describe('the shape of a feed', () => {
  const shaped = {
    label: 'Compost crew',
    practices: ['composting', 'topdressing'],
    beds: [] as string[],
    alarm: 'evening',
    eveningHour: '18',
    morningHour: '7',
    ahead: '90',
    back: '7',
    by: 'day',
    as: 'to-dos',
    withoutDone: 'yes',
  };

  test('is taken from the form and told in words', async () => {
    const { get, send, steward } = await sampleApp();
    expect((await send(FEEDS, shaped)).status).toBe(303);
    const [feed] = await steward.feeds('mill-row');
    expect(feed?.shape).toEqual({
      practices: ['composting', 'topdressing'],
      beds: [],
      alarm: { when: 'evening', hour: 18 },
      daysAhead: 90,
      daysBack: 7,
      by: 'day',
      todos: true,
      done: false,
    });
    const text = await (await get(FEEDS)).text();
    expect(text).toContain('only Compost, Topdressing; 90 days ahead; finished work left out; one entry a work day;');
    expect(text).toContain('a reminder at 6 pm the evening before');
  });

  test('with only a name given is that of a plain feed', async () => {
    const { send, steward } = await sampleApp();
    await send(FEEDS, { label: 'Tablet' });
    expect((await steward.feeds('mill-row'))[0]?.shape).toEqual(PLAIN_SHAPE);
  });

  test('that cannot be is refused with every trouble at once, and the form keeps what was typed', async () => {
    const { send, steward } = await sampleApp();
    const wrong = { ...shaped, label: '', ahead: '900', back: '', beds: ['shed'], eveningHour: '3' };
    const answer = await send(FEEDS, wrong);
    expect(answer.status).toBe(422);
    const text = await answer.text();
    for (const where of [
      'Whose, or where it is read',
      'Days ahead',
      'Days back',
      'Which beds',
      'Hour of the reminder',
    ]) {
      expect(text).toContain(`<strong>${where}:</strong>`);
    }
    expect(text).toContain('name="ahead" value="900"');
    expect(text).toContain('value="composting" checked');
    expect(await steward.feeds('mill-row')).toEqual([]);
  });

  test('is changed at the same address, with the name', async () => {
    const { get, send, steward } = await sampleApp();
    const feed = await steward.addFeed('mill-row', 'Tablet', { ...PLAIN_SHAPE, beds: ['north'], daysAhead: 14 });
    const form = await (await get(`${FEEDS}/${feed.id}/change`)).text();
    expect(form).toContain('value="north" checked');
    expect(form).toContain('name="ahead" value="14"');
    const fields = { ...shaped, label: 'Wall', beds: ['south'], as: 'events', withoutDone: [] };
    expect((await send(`${FEEDS}/${feed.id}/change`, fields)).status).toBe(303);
    const [changed] = await steward.feeds('mill-row');
    expect(changed).toMatchObject({ token: feed.token, label: 'Wall', shapeRevision: 1 });
    expect(changed?.shape).toMatchObject({ beds: ['south'], todos: false, done: true });
  });

  const inHousehold = (...members: object[]) => sampleFile({ household: { people: 2, members } });

  test('may be what falls to one person, who is chosen from the household', async () => {
    const { get, send, steward } = await sampleApp(inHousehold({ name: 'Ida', beds: ['north'] }, { name: 'Jonas' }));
    const form = await (await get(FEEDS)).text();
    expect(form).toContain('Whose work');
    expect(form).toMatch(/name="person" value="" checked/);
    expect((await send(FEEDS, { ...shaped, person: 'Ida' })).status).toBe(303);
    const [feed] = await steward.feeds('mill-row');
    expect(feed?.shape.person).toBe('Ida');
    expect(await (await get(FEEDS)).text()).toContain('only what falls to Ida;');
    expect(await (await get(`${FEEDS}/feed-1/change`)).text()).toContain('value="Ida" checked');
    expect((await send(`${FEEDS}/feed-1/change`, { ...shaped, person: '' })).status).toBe(303);
    expect((await steward.feeds('mill-row'))[0]?.shape).not.toHaveProperty('person');
  });

  test('of somebody nobody knows is refused, with the names nearest to it', async () => {
    const { send } = await sampleApp(inHousehold({ name: 'Jonas' }));
    const answer = await send(FEEDS, { ...shaped, person: 'Jonah' });
    const text = await answer.text();
    expect(answer.status).toBe(422);
    expect(text).toContain('<strong>Whose work:</strong>');
    expect(text).toContain('Did you mean Jonas?');
  });

  test('of somebody who has left says so, and other things about it can be changed', async () => {
    const { get, send, steward } = await sampleApp();
    await steward.addFeed('mill-row', 'Runa', { ...PLAIN_SHAPE, person: 'Runa' });
    expect(await (await get(FEEDS)).text()).toContain('Runa (no longer in the household)');
    expect(await (await get(`${FEEDS}/feed-1/change`)).text()).toContain('value="Runa" checked');
    expect((await send(`${FEEDS}/feed-1/change`, { ...shaped, person: 'Runa' })).status).toBe(303);
    expect((await steward.feeds('mill-row'))[0]?.shape).toMatchObject({ person: 'Runa', daysAhead: 90 });
  });

  test('does not ask whose work where the garden file names nobody', async () => {
    const { get } = await sampleApp();
    expect(await (await get(FEEDS)).text()).not.toContain('Whose work');
  });

  test('is not changed by a form with something wrong in it', async () => {
    const { send, steward } = await sampleApp();
    const feed = await steward.addFeed('mill-row', 'Tablet');
    const answer = await send(`${FEEDS}/${feed.id}/change`, { ...shaped, ahead: '0' });
    expect([answer.status, (await answer.text()).includes('Days ahead')]).toEqual([422, true]);
    expect(await steward.feeds('mill-row')).toEqual([feed]);
  });
});

describe('another address', () => {
  test('is given after asking; the feed stays and the old address says that it is closed', async () => {
    const { get, send, steward } = await sampleApp();
    const feed = await steward.addFeed('mill-row', 'Tablet');
    const path = `${FEEDS}/${feed.id}/new-address`;
    expect(await (await get(path)).text()).toContain('A new address for “Tablet”?');
    expect((await steward.feeds('mill-row'))[0]?.token).toBe(feed.token);
    expect((await send(path, {})).status).toBe(303);
    const text = await (await get(FEEDS)).text();
    expect(text).not.toContain(feed.token);
    const [rotated] = await steward.feeds('mill-row');
    expect(await (await get(`/feed/${rotated?.token}.ics`)).text()).toContain('SUMMARY:Turn the pile');
    expect(await (await get(`/feed/${feed.token}.ics`)).text()).toContain('This calendar is no longer kept');
  });

  test.each(['change', 'new-address'])('and every other doing (%s) is 404 for a feed that is closed', async (doing) => {
    const { get, send, steward } = await sampleApp();
    const { id } = await steward.addFeed('mill-row', 'phone');
    await steward.revokeFeed('mill-row', id);
    expect((await get(`${FEEDS}/${id}/${doing}`)).status).toBe(404);
    expect((await send(`${FEEDS}/${id}/${doing}`, { label: 'x' })).status).toBe(404);
  });
});

describe('the addresses of a feed', () => {
  test('are https and webcal where there is a public one', async () => {
    const { get, steward } = await sampleApp(sampleFile(), PUBLIC);
    const { token } = await steward.addFeed('mill-row', 'phone');
    const text = await (await get(FEEDS)).text();
    expect(text).toContain(`https://garden.example.org/feed/${token}.ics`);
    expect(text).toContain(`href="webcal://garden.example.org/feed/${token}.ics"`);
  });

  test('without one come with the way to reach them from a phone on the same network', async () => {
    const { get, steward } = await sampleApp();
    await steward.addFeed('mill-row', 'phone');
    const text = await (await get(FEEDS)).text();
    expect(text).toContain('LOAMTIDE_PUBLIC_URL=http://192.168.1.20:8080');
    expect(text).toContain('http://127.0.0.1:8137');
  });

  test('were last read on a day of the garden’s own calendar, late in its evening too', async () => {
    const { get, steward, clock } = await sampleApp();
    const { token } = await steward.addFeed('mill-row', 'phone');
    clock.moment = '2027-04-21T03:30:00.000Z';
    await get(`/feed/${token}.ics`, { 'User-Agent': 'Evolution/3.46.4' });
    expect(await (await get(FEEDS)).text()).toContain('last read on April 20, 2027 by Evolution');
  });

  test('are shown on a page that says when they were last read', async () => {
    const { get, steward } = await sampleApp();
    const { token } = await steward.addFeed('mill-row', 'phone');
    expect(await (await get(FEEDS)).text()).toContain('not read yet');
    await steward.feedBody(token, 'Evolution');
    expect(await (await get(FEEDS)).text()).toContain('last read on April 20, 2027 by Evolution');
  });
});
