import { describe, expect, test } from 'vitest';
import { mailed, OUTSIDE, PRESSED } from '../mail/mailed.ts';
import { plain } from '../plain-text.ts';

type Mailed = Awaited<ReturnType<typeof mailed>>;

async function mailOf({ view }: Mailed, member: string) {
  return (await view()).garden.household?.members?.find(({ name }) => name === member)?.mail?.to;
}

/** What RFC 8058, 3.2 says a mail program sends: this body, and no cookies, no Origin, nothing of a browser. */
function oneClick(
  { app }: Mailed,
  path: string,
  body: string | FormData = 'List-Unsubscribe=One-Click',
  type = 'application/x-www-form-urlencoded',
) {
  const headers = { ...OUTSIDE, ...(type === '' ? {} : { 'Content-Type': type }) };
  return app.request(path, { method: 'POST', headers, body });
}

/** The log as it stands once Ada's list of the links' week has gone out to an address. */
async function listSent({ store }: Mailed, to: string) {
  const name = { gardenId: 'mill-row', member: 'ada', monday: '2027-04-19' };
  const letter = { messageId: '<1@example.org>', way: 'server', from: 'garden@example.org', to } as const;
  const claim = { by: 'test', at: '2027-04-19T12:00:00.000Z', until: '2027-04-19T12:05:00.000Z' };
  await store.claimDelivery(name, { letter, claim, again: false });
  await store.settleDelivery(name, claim.by, { state: 'sent', at: claim.at });
}

describe('the link that stops the mail', () => {
  test('opened, asks first and stops nothing', async () => {
    const opened = await mailed();
    const page = await (await opened.get(opened.stop(), OUTSIDE)).text();
    expect(plain(page)).toContain('The weekly list of Mill Row goes to Ada by mail.');
    expect(page).toContain('<button type="submit">Stop the mail</button>');
    expect(page).not.toContain('ada@example.org');
    expect(await mailOf(opened, 'Ada')).toBe('ada@example.org');
  });

  test('pressed on the page stops it, for its reader alone, and the ledger says by whom', async () => {
    const opened = await mailed();
    const reply = await opened.send(opened.stop(), { 'List-Unsubscribe': 'One-Click' }, PRESSED);
    expect([reply.status, plain(await reply.text())]).toEqual([
      200,
      expect.stringContaining('No list of Mill Row goes to Ada'),
    ]);
    expect(await mailOf(opened, 'Ada')).toBeUndefined();
    expect(await mailOf(opened, 'Bo')).toBe('bo@example.org');
    const fact = { kind: 'mail-stopped', id: 'ada', name: 'Ada', week: '2027-04-19' };
    expect((await opened.view()).ledger.at(-1)).toMatchObject({ by: 'Ada', fact });
  });

  test('takes the one-click request of a mail program, as a form of either kind', async () => {
    const opened = await mailed();
    expect((await oneClick(opened, opened.stop())).status).toBe(200);
    const parts = new FormData();
    parts.set('List-Unsubscribe', 'One-Click');
    expect((await oneClick(opened, opened.stop('Bo'), parts, '')).status).toBe(200);
    expect([await mailOf(opened, 'Ada'), await mailOf(opened, 'Bo')]).toEqual([undefined, undefined]);
  });

  test('sent again is well, and changes nothing more', async () => {
    const opened = await mailed();
    await oneClick(opened, opened.stop());
    const { length } = (await opened.view()).ledger;
    expect((await oneClick(opened, opened.stop())).status).toBe(200);
    expect((await opened.get(opened.stop(), OUTSIDE)).status).toBe(200);
    expect((await opened.view()).ledger).toHaveLength(length);
  });

  test.each([
    ['another word', 'List-Unsubscribe=Yes', 'application/x-www-form-urlencoded', 422],
    ['nothing', '', 'application/x-www-form-urlencoded', 422],
    ['JSON', '{"List-Unsubscribe":"One-Click"}', 'application/json', 400],
  ])('sent with %s stops nothing', async (_, body, type, status) => {
    const opened = await mailed();
    expect((await oneClick(opened, opened.stop(), body, type)).status).toBe(status);
    expect(await mailOf(opened, 'Ada')).toBe('ada@example.org');
  });

  test('cannot answer, and the link of an answer cannot stop', async () => {
    const opened = await mailed();
    const KEY = 'pile-turn/pile:spring-pile/turn:2';
    const stop = opened.stop().replace('/stop/', '/answer/');
    expect((await opened.send(stop, { answer: 'skip', key: KEY }, PRESSED)).status).toBe(404);
    const answer = opened.answer(KEY).replace('/answer/', '/stop/').replace(/\?.*/, '');
    expect((await oneClick(opened, answer)).status).toBe(404);
    expect((await opened.view()).ledger).toHaveLength(1);
  });

  test('of somebody who has left says that no mail goes to them', async () => {
    const opened = await mailed();
    await opened.steward.report('mill-row', { kind: 'member-gone', id: 'ada', name: 'Ada' }, 'web page');
    expect((await oneClick(opened, opened.stop())).status).toBe(200);
    expect(plain(await (await opened.get(opened.stop(), OUTSIDE)).text())).toContain(
      'No list of Mill Row goes to whoever',
    );
  });

  test('of somebody who has another name now stops their mail, and never that of whoever took the name', async () => {
    const opened = await mailed();
    const { steward } = opened;
    const mail = { to: 'ada@example.org', weekday: 1, hour: 7, tasks: 'all' } as const;
    const named = { id: 'ada', name: 'Ada Lind', mail };
    await steward.report('mill-row', { kind: 'member-kept', member: named, formerName: 'Ada' }, 'web page');
    const other = { id: 'ada-2', name: 'Ada', mail: { ...mail, to: 'little@example.org' } };
    await steward.report('mill-row', { kind: 'member-kept', member: other }, 'web page');
    const reply = await oneClick(opened, opened.stop());
    expect([reply.status, plain(await reply.text())]).toEqual([
      200,
      expect.stringContaining('goes to Ada Lind by mail'),
    ]);
    expect([await mailOf(opened, 'Ada Lind'), await mailOf(opened, 'Ada')]).toEqual([undefined, 'little@example.org']);
    expect((await opened.view()).ledger.at(-1)).toMatchObject({
      by: 'Ada Lind',
      fact: { id: 'ada', name: 'Ada Lind' },
    });
  });

  test('says that nothing stopped where somebody else has theirs sent to the same address', async () => {
    const opened = await mailed();
    const { steward } = opened;
    await listSent(opened, 'ada@example.org');
    await steward.report('mill-row', { kind: 'member-gone', id: 'ada', name: 'Ada' }, 'web page');
    const mail = { to: 'Ada@example.org', weekday: 1, hour: 7, tasks: 'all' } as const;
    await steward.report('mill-row', { kind: 'member-kept', member: { id: 'ada-2', name: 'Ada', mail } }, 'web page');
    const reply = await oneClick(opened, opened.stop());
    const text = plain(await reply.text());
    expect([reply.status, text]).toEqual([409, expect.stringContaining('still gets it')]);
    expect(text).not.toContain('has stopped');
    expect(await mailOf(opened, 'Ada')).toBe('Ada@example.org');
  });

  test('works for sixty days, and then leads to where mail is set', async () => {
    const opened = await mailed();
    opened.clock.moment = '2027-06-18T15:00:00.000Z';
    expect((await opened.get(opened.stop(), OUTSIDE)).status).toBe(200);
    opened.clock.moment = '2027-06-19T15:00:00.000Z';
    const late = await oneClick(opened, opened.stop());
    expect([late.status, plain(await late.text())]).toEqual([
      410,
      expect.stringContaining('It worked until June 18, 2027.'),
    ]);
  });

  test('longer than a form may be is refused', async () => {
    const opened = await mailed();
    expect((await oneClick(opened, opened.stop(), `List-Unsubscribe=One-Click&x=${'x'.repeat(70_000)}`)).status).toBe(
      413,
    );
    expect(await mailOf(opened, 'Ada')).toBe('ada@example.org');
  });
});
