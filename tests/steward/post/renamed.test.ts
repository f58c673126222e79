import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Member } from '../../../src/garden/household.ts';
import { InputRefused } from '../../../src/garden/problem.ts';
import { createSteward } from '../../../src/steward/create-steward.ts';
import { mailCatcher } from './mail-catcher.ts';
import { FIRST_MONDAY, FIRST_SUNDAY, minutesAfter, type Posting, postingHousehold } from './posting.ts';

const mailTo = (to: string, hour = 18): Member['mail'] => ({ to, weekday: 7, hour, tasks: 'own' });
const WEEK_MINUTES = 7 * 24 * 60;

async function renaming(posting: Posting = {}) {
  const house = await postingHousehold(posting);
  const { steward, garden } = house;
  const called = (name: string, formerName: string) =>
    steward.report(
      garden,
      { kind: 'member-kept', member: { id: 'ida', name, mail: mailTo('ida@example.com') }, formerName },
      'web page',
    );
  return { ...house, called, letters: () => readdirSync(house.outbox) };
}

describe('somebody whose old name is another’s now', () => {
  test('gets their list every week, and so does the other', async () => {
    const { steward, garden, sendAt, called } = await renaming();
    await sendAt(FIRST_SUNDAY);
    await called('Ida Berg', 'Ida');
    const other = { id: 'ida-2', name: 'Ida', mail: mailTo('little@example.com', 17) };
    await steward.report(garden, { kind: 'member-kept', member: other }, 'web page');
    for (const week of [1, 2]) {
      const hour = minutesAfter(FIRST_SUNDAY, week * WEEK_MINUTES);
      expect(await sendAt(minutesAfter(hour, -60))).toMatchObject([{ to: 'little@example.com', state: 'sent' }]);
      expect(await sendAt(hour)).toMatchObject([{ to: 'ida@example.com', state: 'sent' }]);
    }
  });

  test('keeps what was sent to them, and the other begins with nothing', async () => {
    const { steward, garden, sendAt, called } = await renaming();
    await sendAt(FIRST_SUNDAY);
    await called('Ida Berg', 'Ida');
    const other = { id: 'ida-2', name: 'Ida', mail: mailTo('little@example.com') };
    await steward.report(garden, { kind: 'member-kept', member: other }, 'web page');
    const standings = await steward.mailStandings(garden);
    expect(standings.map(({ member, sent }) => [member, sent?.monday])).toEqual([
      ['Ida Berg', FIRST_MONDAY],
      ['Ida', undefined],
    ]);
  });
});

describe('a list is not sent twice', () => {
  test('where its member had another name for an hour', async () => {
    const { steward, garden, clock, sendAt, called, letters } = await renaming();
    clock.moment = minutesAfter(FIRST_SUNDAY, -60);
    await called('Ida Berg', 'Ida');
    expect(await sendAt(FIRST_SUNDAY)).toHaveLength(1);
    await steward.undo(garden, undefined, 'web page');
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, 30))).toEqual([]);
    expect(letters()).toHaveLength(1);
  });

  test('where it is asked for again after its member got another name', async () => {
    const { steward, garden, sendAt, called, letters } = await renaming();
    await sendAt(FIRST_SUNDAY);
    await called('Ida Berg', 'Ida');
    await expect(steward.sendAgain(garden, 'Ida Berg')).rejects.toThrow(InputRefused);
    expect(letters()).toHaveLength(1);
  });
});

test('a list that arrived under another name than it was first tried under counts as sent', async () => {
  const { steward, store, garden, clock, sendAt, called } = await renaming({ port: 1 });
  expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'delayed' }]);
  await called('Ida Berg', 'Ida');
  const { port, caught } = await mailCatcher();
  const server = { host: '127.0.0.1', port, secretFromStart: false };
  const mended = createSteward({ store, clock, post: { from: 'garden@example.org', server } });
  clock.moment = minutesAfter(FIRST_SUNDAY, 14 * 60);
  expect(await mended.sendDue()).toMatchObject([{ member: 'ida', state: 'sent' }]);
  expect(caught[0]?.mail.to).toMatchObject({ value: [{ name: 'Ida Berg', address: 'ida@example.com' }] });
  const [standing] = await steward.mailStandings(garden);
  expect([standing?.sent?.monday, standing?.wrong, standing?.canSendAgain]).toEqual([FIRST_MONDAY, undefined, false]);
});
