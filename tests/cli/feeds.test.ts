import { describe, expect, test } from 'vitest';
import { openedIn } from './household.ts';
import { loamtideIn, withGarden } from './loamtide.ts';

const ADDRESS = /^http:\/\/127\.0\.0\.1:8137\/feed\/([A-Za-z0-9_-]{43})\.ics$/m;

describe('feed add', () => {
  test('makes a feed whose printed address holds its plan', async () => {
    const { folder, loamtide } = await withGarden();
    const { code, out } = await loamtide('feed', 'add', '--label', 'Kitchen phone');
    expect(code).toBe(0);
    expect(out).toContain('feed-1: Kitchen phone');
    const token = ADDRESS.exec(out)?.[1] ?? '';
    const body = await openedIn(folder, async ({ steward }) => (await steward.feedBody(token))?.body);
    expect(body).toContain('SUMMARY:Turn the pile in Left bay');
  });

  test('prints the public address where there is one, else the port in use and that only this computer reaches it', async () => {
    const { folder } = await withGarden();
    const open = loamtideIn(folder, { env: { LOAMTIDE_PUBLIC_URL: 'https://garden.example.org' } });
    expect((await open('feed', 'add')).out).toMatch(/^https:\/\/garden\.example\.org\/feed\/[\w-]{43}\.ics$/m);
    const ported = await loamtideIn(folder, { env: { LOAMTIDE_PORT: '9000' } })('feed', 'add');
    expect(ported.out).toContain('http://127.0.0.1:9000/feed/');
    expect(ported.out).toContain('Only this computer reaches it');
  });

  test('refuses a label that is blank or too long', async () => {
    const { loamtide } = await withGarden();
    expect((await loamtide('feed', 'add', '--label', ' ')).code).toBe(2);
    expect((await loamtide('feed', 'add', '--label', 'x'.repeat(81))).err).toContain('Shorten it to 80 characters.');
  });
});

describe('feed list', () => {
  test('shows every feed with its address, and a revoked one without', async () => {
    const { loamtide } = await withGarden();
    expect((await loamtide('feed', 'list')).out).toBe('There is no feed. Make one with: loamtide feed add\n');
    await loamtide('feed', 'add');
    await loamtide('feed', 'add', '--label', 'Kitchen phone');
    await loamtide('feed', 'revoke', 'feed-1');
    const lines = (await loamtide('feed', 'list')).out.trimEnd().split('\n');
    expect(lines[0]).toBe('feed-1  Everything     revoked');
    expect(lines[1]).toMatch(/^feed-2 {2}Kitchen phone {2}http:\/\/127\.0\.0\.1:8137\/feed\/[\w-]{43}\.ics$/);
  });

  test('says the same as JSON', async () => {
    const { loamtide } = await withGarden();
    await loamtide('feed', 'add');
    await loamtide('feed', 'revoke', 'feed-1');
    const { garden, feeds } = JSON.parse((await loamtide('feed', 'list', '--format', 'json')).out);
    expect(garden).toBe('hollow-lane');
    expect(feeds).toEqual([
      { id: 'feed-1', label: 'Everything', createdAt: expect.any(String), revokedAt: expect.any(String) },
    ]);
  });
});

describe('feed revoke', () => {
  test('leaves nothing but a notice at the address', async () => {
    const { folder, loamtide } = await withGarden();
    const token = ADDRESS.exec((await loamtide('feed', 'add')).out)?.[1] ?? '';
    expect((await loamtide('feed', 'revoke', 'feed-1')).code).toBe(0);
    const body = await openedIn(folder, async ({ steward }) => (await steward.feedBody(token))?.body);
    expect(body?.match(/^SUMMARY:.*$/gm)?.map((line) => line.trim())).toEqual([
      'SUMMARY:This calendar is no longer kept',
    ]);
  });

  test('of a feed that is not open is refused, naming those that are', async () => {
    const { loamtide } = await withGarden();
    await loamtide('feed', 'add');
    const { code, err } = await loamtide('feed', 'revoke', 'feed-7');
    expect(code).toBe(2);
    expect(err).toContain('ID: "feed-7" is not an open feed of this garden. Open feeds: feed-1.');
    await loamtide('feed', 'revoke', 'feed-1');
    expect((await loamtide('feed', 'revoke', 'feed-1')).err).toContain('There is no open feed.');
  });
});
