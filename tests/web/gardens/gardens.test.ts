import { describe, expect, test } from 'vitest';
import { read } from '../plain-text.ts';
import { GARDEN, sampleApp } from '../sample-garden.ts';

describe('the page of gardens', () => {
  test('of an empty home leads to a set-up and to the demo', async () => {
    const { get } = await sampleApp(null);
    const text = await read(get('/'));
    expect(text).toContain('Set up a garden');
    expect(text).toContain('Look around in a demo garden');
  });

  test('is reached from the head of every page of a garden', async () => {
    const { get } = await sampleApp();
    expect(await (await get(`${GARDEN}/year`)).text()).toContain('href="/gardens"');
    expect(await read(get('/gardens'))).toContain('Mill Row 4 beds');
  });
});

describe('the demo garden', () => {
  test('is laid once by two presses, offers a garden of one’s own, and stays beside it', async () => {
    const { get, send, steward } = await sampleApp();
    const [laid] = await Promise.all([send('/demo', {}), send('/demo', {})]);
    const path = laid.headers.get('location') ?? '';
    const led = path.startsWith('/gardens/') ? path : '/gardens/quillet-lane';
    for (let tried = 0; tried < 40 && (await get(led)).status !== 200; tried += 1)
      await new Promise((resolve) => setTimeout(resolve, 500));
    expect(await read(get(led))).toContain('Start your own garden');
    expect(await read(get(GARDEN))).not.toContain('Start your own garden');
    const gardens = await read(get('/gardens'));
    expect(gardens).toContain('the demo garden, invented to look around in');
    expect(gardens).not.toContain('Look around in a demo garden');
    expect(await steward.gardenIds()).toHaveLength(2);
  }, 40_000);
});

describe('putting a garden away', () => {
  test('asks first, then hides it everywhere, and gives it back as it was', async () => {
    const { get, send, steward } = await sampleApp();
    const before = await read(get(GARDEN));
    await steward.addFeed('mill-row', 'Phone');
    expect(await read(get(`${GARDEN}/put-away`))).toContain('Its feed tells calendars so for a month');
    expect(await steward.gardenIds()).toEqual(['mill-row']);
    expect((await send(`${GARDEN}/put-away`, {})).headers.get('location')).toBe('/gardens');
    const gone = await get(`${GARDEN}/beds`);
    expect([gone.status, await read(gone)]).toEqual([404, expect.stringContaining('This garden was put away')]);
    expect(await read(get('/'))).toContain('Put away Mill Row since 20 April 2027');
    expect((await send(`${GARDEN}/give-back`, {})).headers.get('location')).toBe(GARDEN);
    expect(await read(get(GARDEN))).toBe(before);
  });

  test('of what is no garden is not there', async () => {
    const { send, get } = await sampleApp();
    expect([(await send('/gardens/none/give-back', {})).status, (await get('/gardens/none/put-away')).status]).toEqual([
      404, 404,
    ]);
  });

  test('a script is told so', async () => {
    const { app, steward } = await sampleApp();
    const { key } = await steward.addReadingKey('mill-row', 'probe');
    await steward.putAwayGarden('mill-row');
    const answer = await app.request('/api/piles/spring-pile/readings', {
      method: 'POST',
      headers: { Host: '127.0.0.1:8137', Authorization: `Bearer ${key}` },
      body: JSON.stringify({ tempC: 50 }),
    });
    expect([answer.status, await answer.text()]).toEqual([409, expect.stringContaining('was put away')]);
  });
});
