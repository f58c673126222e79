import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { PLAIN_SHAPE } from '../../src/calendar/feed-shape.ts';
import { openedIn } from './household.ts';
import { loamtideIn, SMALL_GARDEN, withGarden } from './loamtide.ts';

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
    expect((await loamtide('feed', 'add', '--label', 'x'.repeat(61))).err).toContain('up to 60 characters');
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
    expect(lines[1]).toMatch(
      /^feed-2 {2}Kitchen phone {2}http:\/\/127\.0\.0\.1:8137\/feed\/[\w-]{43}\.ics {2}all work; 366 days ahead; 30 days back$/,
    );
  });

  test('says the same as JSON', async () => {
    const { loamtide } = await withGarden();
    await loamtide('feed', 'add');
    await loamtide('feed', 'revoke', 'feed-1');
    const { garden, feeds } = JSON.parse((await loamtide('feed', 'list', '--format', 'json')).out);
    expect(garden).toBe('hollow-lane');
    expect(feeds).toEqual([
      {
        id: 'feed-1',
        label: 'Everything',
        createdAt: expect.any(String),
        revokedAt: expect.any(String),
        shape: PLAIN_SHAPE,
      },
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

describe('the shape of a feed', () => {
  const shapeOf = (folder: string) =>
    openedIn(folder, async ({ steward }) => (await steward.feeds('hollow-lane'))[0]?.shape);

  test('is given when it is made', async () => {
    const { folder, loamtide } = await withGarden();
    const line = '--practices composting,mulching --alarm morning --alarm-hour 6 --ahead 90 --back 7 --by day --todos';
    const { code, out } = await loamtide('feed', 'add', '--label', 'Crew', ...line.split(' '), '--without-done');
    expect(code).toBe(0);
    expect(out).toContain('feed-1: Crew (only Compost, Mulch; 90 days ahead;');
    expect(await shapeOf(folder)).toEqual({
      practices: ['composting', 'mulching'],
      beds: [],
      alarm: { when: 'morning', hour: 6 },
      daysAhead: 90,
      daysBack: 7,
      by: 'day',
      todos: true,
      done: false,
    });
  });

  test('that cannot be is refused with every trouble at once, and no feed is made', async () => {
    const { folder, loamtide } = await withGarden();
    const line = '--practices compost --beds shed --alarm noon --ahead 0 --by week';
    const { code, err } = await loamtide('feed', 'add', '--label', 'x'.repeat(61), ...line.split(' '));
    expect(code).toBe(2);
    for (const where of ['--label', '--practices', '--beds', '--alarm', '--ahead', '--by']) {
      expect(err).toContain(`  ${where}: `);
    }
    expect(await shapeOf(folder)).toBeUndefined();
  });

  test('is changed where something is named, and stays elsewhere', async () => {
    const { folder, loamtide } = await withGarden();
    await loamtide('feed', 'add', '--todos', '--without-done', '--practices', 'composting', '--ahead', '30');
    expect((await loamtide('feed', 'change', 'feed-1', '--practices', 'all', '--events', '--with-done')).code).toBe(0);
    expect(await shapeOf(folder)).toEqual({ ...PLAIN_SHAPE, daysAhead: 30 });
  });

  test('is not changed by a line that names nothing, contradicts itself, or names no open feed', async () => {
    const { folder, loamtide } = await withGarden();
    await loamtide('feed', 'add');
    expect((await loamtide('feed', 'change', 'feed-1')).err).toContain('No option says what to change.');
    const both = await loamtide('feed', 'change', 'feed-1', '--todos', '--events', '--without-done', '--with-done');
    expect(both.code).toBe(2);
    expect(both.err).toMatch(/--todos: stands beside --events[\s\S]*--without-done: stands beside --with-done/);
    expect((await loamtide('feed', 'change', 'feed-7', '--todos')).err).toContain('Open feeds: feed-1.');
    expect(await shapeOf(folder)).toEqual(PLAIN_SHAPE);
  });
});

describe('feed rename and feed rotate', () => {
  test('change the label and the address, each alone', async () => {
    const { loamtide } = await withGarden();
    const before = ADDRESS.exec((await loamtide('feed', 'add')).out)?.[0] ?? '';
    expect((await loamtide('feed', 'rename', 'feed-1', '--label', 'Shed')).out).toBe('feed-1 is called Shed now.\n');
    const named = (await loamtide('feed', 'list')).out;
    expect(named).toContain('feed-1  Shed');
    expect(named).toContain(before);
    const after = ADDRESS.exec((await loamtide('feed', 'rotate', 'feed-1')).out)?.[0] ?? '';
    const rotated = (await loamtide('feed', 'list')).out;
    expect(rotated).toContain(`feed-1  Shed  ${after}`);
    expect(rotated).not.toContain(before);
  });

  test('refuse a label too long, and a feed that is not open', async () => {
    const { loamtide } = await withGarden();
    await loamtide('feed', 'add');
    expect((await loamtide('feed', 'rename', 'feed-1', '--label', 'x'.repeat(61))).code).toBe(2);
    expect((await loamtide('feed', 'rename', 'feed-2', '--label', 'Shed')).err).toContain('Open feeds: feed-1.');
    expect((await loamtide('feed', 'rotate', 'feed-2')).code).toBe(2);
  });
});

test('a public address too long for a calendar service stops every command', async () => {
  const { folder } = await withGarden();
  const named = (letters: number) => {
    const LOAMTIDE_PUBLIC_URL = `https://${'a.'.repeat(letters / 2)}org`;
    return loamtideIn(folder, { env: { LOAMTIDE_PUBLIC_URL } })('feed', 'add');
  };
  const fits = await named(192);
  expect(/^https:.*$/m.exec(fits.out)?.[0]).toHaveLength(256);
  const tooLong = await named(194);
  expect([tooLong.code, tooLong.err.includes('Give a shorter name')]).toEqual([2, true]);
});

describe('the feed of a person', () => {
  const household = 'household: { people: 2, members: [{ name: Ida, practices: [composting] }, { name: Jonas }] }\n';

  const withMembers = () => withGarden(SMALL_GARDEN + household);

  const titlesIn = (folder: string) =>
    openedIn(folder, async ({ steward }) => {
      const [feed] = await steward.feeds('hollow-lane');
      const body = (await steward.feedBody(feed?.token ?? ''))?.body ?? '';
      return body.match(/^(SUMMARY|CATEGORIES):.*$/gm)?.map((line) => line.trim()) ?? [];
    });

  test('shows what falls to them, and everything again when asked', async () => {
    const { folder, loamtide } = await withMembers();
    expect((await loamtide('feed', 'add', '--person', 'Ida')).out).toContain('(only what falls to Ida; 366 days ahead');
    const hers = (await titlesIn(folder)).filter((line) => line.startsWith('CATEGORIES:'));
    expect(hers.length).toBeGreaterThan(0);
    expect(new Set(hers)).toEqual(new Set(['CATEGORIES:Compost']));
    expect((await loamtide('feed', 'list')).out).toContain('only what falls to Ida');
    expect((await loamtide('feed', 'change', 'feed-1', '--person', 'all')).out).toContain('(all work;');
    expect((await titlesIn(folder)).length).toBeGreaterThan(2 * hers.length);
  });

  test('who is not of the household is refused, with the names nearest to it', async () => {
    const { loamtide } = await withMembers();
    const { code, err } = await loamtide('feed', 'add', '--person', 'Jonah');
    expect(code).toBe(2);
    expect(err).toContain('--person: "Jonah" is not of this household. Did you mean Jonas?');
  });

  test('who has left is one notice, and their work is back when they are', async () => {
    const { folder, loamtide } = await withMembers();
    await loamtide('feed', 'add', '--person', 'Ida');
    const before = await titlesIn(folder);
    writeFileSync(join(folder, 'garden.yaml'), SMALL_GARDEN);
    expect((await loamtide('garden', 'import', 'garden.yaml', '--apply')).code).toBe(0);
    expect(await titlesIn(folder)).toEqual(['SUMMARY:Hollow Lane: Ida is no longer in the household']);
    expect((await loamtide('feed', 'list')).out).toContain('Ida (no longer in the household)');
    expect((await loamtide('undo', '--apply')).code).toBe(0);
    expect(await titlesIn(folder)).toEqual(before);
  });
});
