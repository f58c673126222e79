import { describe, expect, test } from 'vitest';
import { GARDEN, sampleApp } from '../sample-garden.ts';
import { signedInApp } from '../sign-in/locked.ts';

const ownForm = { 'Sec-Fetch-Site': 'same-origin' };

describe('a reader', () => {
  test('sees dates and amounts in the order and units they chose, whatever the garden was told in', async () => {
    const { get } = await sampleApp();
    const own = await (await get(GARDEN)).text();
    const metric = await (await get(GARDEN, { Cookie: 'reading=metric' })).text();
    expect(own).toMatch(/April \d+ to \d+, 2027/);
    expect(metric).toMatch(/\d+ to \d+ April 2027/);
  });

  test('keeps their choice in their own browser and goes back to the page they were on', async () => {
    const { send } = await sampleApp();
    const answer = await send('/reading', { units: 'metric', back: `${GARDEN}/beds?years=2` }, ownForm);
    expect(answer.status).toBe(303);
    expect(answer.headers.get('Location')).toBe(`${GARDEN}/beds?years=2`);
    expect(answer.headers.get('Set-Cookie')).toMatch(/^reading=metric; Max-Age=\d+; Path=\/; HttpOnly; SameSite=Lax$/);
  });

  /** OWASP ASVS 5.0, 3.3.1. */
  test('sends it back over https alone, where they chose it over https', async () => {
    const settings = { port: 8137, hostNames: [], publicUrl: new URL('https://garden.example.org') };
    const { send, Cookie, formToken } = await signedInApp(settings, 'garden.example.org');
    const headers = { ...ownForm, Cookie, Host: 'garden.example.org' };
    const answer = await send('/reading', { units: 'metric', back: '/', 'form-token': formToken }, headers);
    expect(answer.headers.get('Set-Cookie')).toMatch(
      /^reading=metric; Max-Age=\d+; Path=\/; HttpOnly; Secure; SameSite=Lax$/,
    );
  });

  test('changes nothing about the garden', async () => {
    const { send, steward } = await sampleApp();
    await send('/reading', { units: 'metric', back: '/' }, ownForm);
    expect((await steward.view('mill-row')).garden.place.units).toBe('us');
  });

  test.each(['https://elsewhere.example/x', '//elsewhere.example/x', '\\\\elsewhere.example', '/.//elsewhere.example'])(
    'is never led elsewhere: %s',
    async (back) => {
      const { send } = await sampleApp();
      const location = (await send('/reading', { units: 'us', back }, ownForm)).headers.get('Location') ?? '';
      expect(location.startsWith('/')).toBe(true);
      expect(location.startsWith('//')).toBe(false);
      expect(location).not.toContain('elsewhere.example');
    },
  );

  test('who chooses no known units is told which there are', async () => {
    const { send } = await sampleApp();
    const answer = await send('/reading', { units: 'furlongs', back: '/' }, ownForm);
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('Choose us or metric.');
  });
});
