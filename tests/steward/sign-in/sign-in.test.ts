import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { COST, passwordHash } from '../../../src/steward/sign-in/password-hash.ts';
import { openStore } from '../../../src/store/store.ts';
import { tempFolder } from '../../store/temp-folder.ts';
import { CHEAP } from './cheap-cost.ts';

const PASSWORD = 'beet row under the old pear';
const OTHER = 'six geese on the frozen pond';
const BEGIN = '2027-04-18T15:00:00.000Z';

async function household({ file = ':memory:', passwordCost = CHEAP } = {}) {
  const store = await openStore({ file, now: BEGIN });
  const clock = { moment: BEGIN, now: () => clock.moment };
  const faults: unknown[] = [];
  const steward = createSteward({ store, clock, report: (fault) => faults.push(fault), passwordCost });
  onTestFinished(() => steward.close());
  const signIn = async (typed = PASSWORD, before?: string) => {
    const ended = await steward.signIn(typed, before);
    return ended.outcome === 'in' ? ended.token : ended.outcome;
  };
  const isIn = async (token: string) => (await steward.session(token)) !== undefined;
  const later = (days: number, hours = 0) => {
    clock.moment = new Date(Date.parse(clock.moment) + (days * 24 + hours) * 3_600_000).toISOString();
  };
  return { store, steward, clock, faults, signIn, isIn, later };
}

describe('the household’s password', () => {
  test('lets whoever knows it in, in whatever way it was typed', async () => {
    const { steward, signIn, isIn } = await household();
    expect(await steward.lock()).toBeUndefined();
    expect(await signIn()).toBe('wrong');
    await steward.setPassword('Möhren im Frühbeet');
    expect(await signIn('Möhren im Fruhbeet')).toBe('wrong');
    expect(await isIn(await signIn(' Mo\u0308hren im Fru\u0308hbeet '))).toBe(true);
  });

  test('is refused whole where it may not be, and the one before stays', async () => {
    const { steward, store } = await household();
    await steward.setPassword(PASSWORD);
    const before = await store.password();
    await expect(steward.setPassword('too short')).rejects.toThrow('has 9 characters.');
    expect(await store.password()).toEqual(before);
  });

  test('that is set anew, or taken away, signs out everywhere and signs cookies with another key', async () => {
    const { steward, signIn, isIn } = await household();
    await steward.setPassword(PASSWORD);
    const [phone, desk] = [await signIn(), await signIn()];
    const before = await steward.lock();
    expect(await steward.setPassword(OTHER)).toBe(2);
    expect([await isIn(phone), await isIn(desk), await signIn()]).toEqual([false, false, 'wrong']);
    expect((await steward.lock())?.cookieKey).not.toBe(before?.cookieKey);
    const again = await signIn(OTHER);
    expect([await steward.removePassword(), await steward.removePassword()]).toEqual([true, false]);
    expect([await isIn(again), await steward.lock(), await steward.sessions()]).toEqual([false, undefined, []]);
  });

  test('set while an old one is being looked at lets nobody in with the old one', async () => {
    const { steward } = await household();
    await steward.setPassword(PASSWORD);
    await Promise.all([steward.signIn(PASSWORD), steward.setPassword(OTHER), steward.signIn(PASSWORD)]);
    expect(await steward.sessions()).toEqual([]);
  });

  test('kept at a lower cost is kept dearer once somebody signs in, and nobody is signed out', async () => {
    const { steward, store, signIn, isIn } = await household({ passwordCost: COST });
    await steward.setPassword(PASSWORD);
    const kept = await store.password();
    if (kept === undefined) throw new Error('A password was set.');
    const desk = await signIn();
    await store.keepPassword({ ...kept, hash: await passwordHash(PASSWORD, CHEAP) });
    const phone = await signIn();
    expect(await store.password()).toMatchObject({
      cookieKey: kept.cookieKey,
      hash: expect.stringMatching(/ln=15,r=8,p=3/),
    });
    expect([await isIn(desk), await isIn(phone)]).toEqual([true, true]);
  });
});

/** OWASP ASVS 5.0, 7.2 to 7.4. */
describe('a session', () => {
  test('is kept by its hash alone', async () => {
    const { steward, store, signIn } = await household();
    await steward.setPassword(PASSWORD);
    const token = await signIn();
    expect(Buffer.from(token, 'base64url')).toHaveLength(32);
    expect(JSON.stringify([await store.sessions(), await store.password()])).not.toContain(token);
    expect(JSON.stringify([await store.sessions(), await store.password()])).not.toContain(PASSWORD);
  });

  test('of before is worth nothing once the device signs in again', async () => {
    const { steward, signIn, isIn } = await household();
    await steward.setPassword(PASSWORD);
    const before = await signIn();
    const after = await signIn(PASSWORD, before);
    expect([await isIn(before), await isIn(after), (await steward.sessions()).length]).toEqual([false, true, 1]);
    expect(await signIn('a wrong word or five', after)).toBe('wrong');
    expect(await isIn(after)).toBe(true);
  });

  test('ends after fourteen days without a visit, and after thirty however many there are', async () => {
    const { steward, signIn, isIn, later, clock } = await household();
    await steward.setPassword(PASSWORD);
    const [left, used] = [await signIn(), await signIn()];
    for (let day = 1; day < 14; day += 1) {
      later(1);
      expect(await isIn(used)).toBe(true);
    }
    later(1);
    expect([await isIn(left), await isIn(used)]).toEqual([false, true]);
    clock.moment = '2027-05-10T15:00:00.000Z';
    expect(await isIn(used)).toBe(true);
    clock.moment = '2027-05-18T14:59:59.000Z';
    expect(await isIn(used)).toBe(true);
    later(0, 1);
    expect(await isIn(used)).toBe(false);
  });

  test('begun while the clock stood years ahead does not last years', async () => {
    const { steward, signIn, isIn, clock } = await household();
    await steward.setPassword(PASSWORD);
    clock.moment = '2040-01-01T00:00:00.000Z';
    const token = await signIn();
    clock.moment = BEGIN;
    expect(await isIn(token)).toBe(false);
  });

  test('is noted as used once an hour at most', async () => {
    const { steward, store, signIn, isIn, later } = await household();
    await steward.setPassword(PASSWORD);
    const token = await signIn();
    const mark = store.changeMark();
    later(0, 1);
    expect([await isIn(token), store.changeMark()]).toEqual([true, mark]);
    later(0, 1);
    expect(await isIn(token)).toBe(true);
    expect(store.changeMark()).not.toBe(mark);
  });

  test('that cannot be noted, as on a full disk, keeps nobody from reading', async () => {
    const file = join(tempFolder(), 'loamtide.db');
    const { steward, signIn, isIn, later, faults } = await household({ file });
    await steward.setPassword(PASSWORD);
    const token = await signIn();
    const other = new SqliteFile(file);
    onTestFinished(() => void other.close());
    other.exec("create trigger full before update on sessions begin select raise(abort, 'no room'); end");
    later(1);
    expect(await isIn(token)).toBe(true);
    expect(faults.map(String)).toEqual([expect.stringContaining('no room')]);
  });

  test('ends where its device signs out, and everywhere at once', async () => {
    const { steward, signIn, isIn } = await household();
    await steward.setPassword(PASSWORD);
    const [phone, desk] = [await signIn(), await signIn()];
    await steward.signOut(phone);
    expect([await isIn(phone), await isIn(desk)]).toEqual([false, true]);
    expect(await steward.signOutEverywhere()).toBe(1);
    expect(await isIn(desk)).toBe(false);
  });

  test('is one of a hundred at most: the first is signed out for the next', async () => {
    const { steward, store, signIn, isIn } = await household();
    await steward.setPassword(PASSWORD);
    for (let count = 0; count < 100; count += 1) {
      const at = `2027-04-18T14:00:${String(count % 60).padStart(2, '0')}.${100 + count}Z`;
      await store.addSession({ tokenHash: `device ${count}`, beganAt: at, usedAt: at });
    }
    const token = await signIn();
    expect([await isIn(token), (await store.sessions()).length]).toEqual([true, 100]);
    expect(await store.session('device 0')).toBeUndefined();
  });
});
