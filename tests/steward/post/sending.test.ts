import { getEventListeners } from 'node:events';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { simpleParser } from 'mailparser';
import { describe, expect, test } from 'vitest';
import { answer, mailCatcher } from './mail-catcher.ts';
import { FIRST_MONDAY, FIRST_SUNDAY, minutesAfter, postingHousehold, reader } from './posting.ts';

describe('a list', () => {
  test('goes out at its hour, from the garden to its member, and not before', async () => {
    const { port, caught } = await mailCatcher();
    const { sendAt } = await postingHousehold({ port });
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, -1))).toEqual([]);
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ member: 'ida', monday: FIRST_MONDAY, state: 'sent' }]);
    expect(caught).toMatchObject([{ from: 'garden@example.org', to: ['ida@example.com'] }]);
    const [{ mail } = { mail: undefined }] = caught;
    expect(mail?.subject).toMatch(/^Hollow Lane: April 26 to May 2, 2027, /);
    expect(mail?.text).toContain('Week of April 26 to May 2, 2027');
    expect(mail?.html).toContain('<html');
    expect(mail?.headers.get('auto-submitted')).toBe('auto-generated');
    expect(mail?.date?.toISOString()).toBe(FIRST_SUNDAY);
  });

  test('goes out once, however often it is looked for, and again the week after', async () => {
    const { port, caught } = await mailCatcher();
    const { sendAt } = await postingHousehold({ port });
    for (const minutes of [0, 1, 2, 60, 5 * 24 * 60]) await sendAt(minutesAfter(FIRST_SUNDAY, minutes));
    expect(caught).toHaveLength(1);
    await sendAt(minutesAfter(FIRST_SUNDAY, 7 * 24 * 60));
    expect(caught.map(({ mail }) => mail.subject?.slice(13, 40))).toEqual([
      expect.stringContaining('April 26'),
      expect.stringContaining('May 3'),
    ]);
    expect(new Set(caught.map(({ mail }) => mail.messageId)).size).toBe(2);
  });

  test('holds its reader’s own work, or everybody’s', async () => {
    const { port, caught } = await mailCatcher();
    const own = reader('Ida', { tasks: 'own' }, { practices: ['composting'] });
    const { sendAt } = await postingHousehold({ port, members: [own, reader('Bo', { tasks: 'all' })] });
    await sendAt(FIRST_SUNDAY);
    const textTo = (name: string) => caught.find(({ to }) => to[0]?.startsWith(name))?.mail.text ?? '';
    expect(textTo('ida')).toContain('pile');
    expect(textTo('ida').length).toBeLessThan(textTo('bo').length);
    expect(textTo('bo')).toContain('north bed');
    expect(textTo('ida')).not.toContain('north bed');
  });

  test('goes to each member at their own hour, from their own sender', async () => {
    const { port, caught } = await mailCatcher();
    const monday = reader('Bo', { weekday: 'mon', hour: 6, from: 'bo.garden@example.net' });
    const { sendAt } = await postingHousehold({ port, members: [reader('Ida'), monday] });
    await sendAt(FIRST_SUNDAY);
    expect(caught.map(({ to }) => to[0])).toEqual(['ida@example.com']);
    await sendAt('2027-04-26T11:00:00.000Z');
    expect(caught[1]).toMatchObject({ from: 'bo.garden@example.net', to: ['bo@example.com'] });
    expect(caught[1]?.mail.subject).toContain('April 26');
  });

  test('to somebody renamed since is not sent to them twice', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    clock.moment = minutesAfter(FIRST_SUNDAY, 10);
    const mail = { to: 'ida@example.com', weekday: 7 as const, hour: 18, tasks: 'own' as const };
    await steward.report(
      garden,
      { kind: 'member-kept', member: { id: 'ida', name: 'Ida May', mail }, formerName: 'Ida' },
      'ida',
    );
    await sendAt(minutesAfter(FIRST_SUNDAY, 20));
    expect(caught).toHaveLength(1);
    await sendAt(minutesAfter(FIRST_SUNDAY, 7 * 24 * 60));
    expect(caught).toHaveLength(2);
  });

  test('is not announced for a week that has its list, though another day is chosen', async () => {
    const { port } = await mailCatcher();
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    clock.moment = '2027-04-27T15:00:00.000Z';
    const mail = { to: 'ida@example.com', weekday: 5 as const, hour: 18, tasks: 'own' as const };
    await steward.report(garden, { kind: 'member-kept', member: { id: 'ida', name: 'Ida', mail } }, 'ida');
    expect((await steward.mailStandings(garden))[0]?.next).toEqual({
      monday: '2027-05-03',
      at: '2027-05-07T23:00:00.000Z',
    });
    expect(await sendAt('2027-04-30T23:00:00.000Z')).toEqual([]);
    expect(await sendAt('2027-05-07T23:00:00.000Z')).toMatchObject([{ monday: '2027-05-03', state: 'sent' }]);
  });

  test('is nobody’s who stopped it', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, sendAt } = await postingHousehold({ port });
    await steward.report(garden, { kind: 'mail-stopped', id: 'ida', name: 'Ida' }, 'Ida');
    expect(await sendAt(FIRST_SUNDAY)).toEqual([]);
    expect([caught, await steward.mailStandings(garden)]).toEqual([[], []]);
  });

  test('of weeks in which the mail was stopped is not missed, though the stop is taken back', async () => {
    const { port } = await mailCatcher();
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    clock.moment = '2027-04-27T13:00:00.000Z';
    await steward.report(garden, { kind: 'mail-stopped', id: 'ida', name: 'Ida' }, 'Ida');
    clock.moment = '2027-05-14T13:00:00.000Z';
    await steward.undo(garden, (await steward.view(garden)).ledger.at(-1)?.entry, 'ada');
    expect(await sendAt('2027-05-14T13:01:00.000Z')).toEqual([]);
    expect((await steward.deliveries(garden)).map(({ state }) => state)).toEqual(['sent']);
    expect((await steward.mailStandings(garden))[0]).not.toHaveProperty('wrong');
    expect(await sendAt('2027-05-16T23:00:00.000Z')).toMatchObject([{ monday: '2027-05-17', state: 'sent' }]);
  });
});

describe('with an address that others reach', () => {
  test('a list can be stopped with one press, and answered', async () => {
    const { port, caught } = await mailCatcher();
    const { sendAt } = await postingHousehold({ port, publicUrl: 'https://garden.example.org' });
    await sendAt(FIRST_SUNDAY);
    const source = caught[0]?.source ?? '';
    expect(source).toContain('List-Unsubscribe-Post: List-Unsubscribe=One-Click');
    expect(caught[0]?.mail.text).toMatch(/https:\/\/garden\.example\.org\/answer\//);
  });

  test('a look at the list shows links that answer nothing', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, sendAt } = await postingHousehold({ port, publicUrl: 'https://garden.example.org' });
    const { message } = await steward.previewMail(garden, 'Ida');
    await sendAt(FIRST_SUNDAY);
    const linksIn = (text: string) => text.match(/https:\/\/garden\.example\.org\/\w+\/[\w-]+/g) ?? [];
    const sent = new Set(linksIn(caught[0]?.mail.text ?? ''));
    expect(sent.size).toBeGreaterThan(0);
    expect(linksIn(message.text).filter((link) => sent.has(link))).toEqual([]);
  });
});

describe('after a stop', () => {
  test('a list is sent late, once, while its week lasts', async () => {
    const { port, caught } = await mailCatcher();
    const { sendAt } = await postingHousehold({ port });
    const thursday = '2027-04-29T15:00:00.000Z';
    await sendAt(thursday);
    await sendAt(minutesAfter(thursday, 1));
    expect(caught.map(({ mail }) => mail.date?.toISOString())).toEqual([thursday]);
  });

  test('weeks that are over are noted and not sent', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, sendAt } = await postingHousehold({ port });
    await sendAt('2027-05-12T15:00:00.000Z');
    expect(caught.map(({ mail }) => mail.subject)).toEqual([expect.stringContaining('May 10 to 16')]);
    expect((await steward.deliveries(garden)).map(({ monday, state }) => [monday, state])).toEqual([
      ['2027-05-10', 'sent'],
      ['2027-05-03', 'missed'],
      ['2027-04-26', 'missed'],
    ]);
  });

  test('a week noted as over while the clock was wrong is sent in its time', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    const secondSunday = minutesAfter(FIRST_SUNDAY, 7 * 24 * 60);
    await sendAt(FIRST_SUNDAY);
    // The clock jumps ahead past the next list, and is put right.
    await sendAt('2027-05-12T15:00:00.000Z');
    expect(await sendAt(secondSunday)).toMatchObject([{ monday: '2027-05-03', state: 'sent' }]);
    expect(caught.map(({ mail }) => mail.date?.toISOString())).toContain(secondSunday);
    clock.moment = '2027-05-04T15:00:00.000Z';
    expect((await steward.mailStandings(garden))[0]).not.toHaveProperty('wrong');
  });

  test('what moved is told since the last list that went out', async () => {
    const { port, caught } = await mailCatcher();
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    clock.moment = '2027-04-27T15:00:00.000Z';
    const { plan } = await steward.view(garden);
    const task = plan.tasks.find(({ state, day }) => state === 'open' && day > '2027-05-12');
    await steward.pin(garden, task?.key ?? '', '2027-05-12', 'ida');
    // Two weeks later, past the seven days that are told otherwise.
    await sendAt('2027-05-09T23:00:00.000Z');
    expect(caught[1]?.mail.text).toContain('What moved since the last list, of April 25, 2027, and why');
  });
});

describe('a mail server that says no', () => {
  test('for now is asked again, ever later, under the same name, until it says yes', async () => {
    let refusals = 3;
    const { port, caught } = await mailCatcher({
      onRcptTo: (_address, _session, callback) =>
        refusals-- > 0 ? callback(answer(451, '4.3.2 Come again later')) : callback(),
    });
    const { sendAt } = await postingHousehold({ port });
    const waits: (string | undefined)[] = [];
    for (let moment = FIRST_SUNDAY; caught.length === 0; moment = minutesAfter(moment, 1)) {
      const [delivery] = await sendAt(moment);
      if (delivery === undefined) continue;
      waits.push(delivery.state === 'delayed' ? delivery.nextTryAt : 'sent');
      expect(delivery.messageId).toMatch(/^<[0-9a-f]{36}@example\.org>$/);
    }
    const at = (minutes: number) => minutesAfter(FIRST_SUNDAY, minutes);
    expect(waits).toEqual([at(1), at(6), at(21), 'sent']);
  });

  test('for now is asked again at once by a program that has just been started', async () => {
    let isFull = true;
    const { port } = await mailCatcher({
      onRcptTo: (_address, _session, callback) => (isFull ? callback(answer(451, 'Later')) : callback()),
    });
    const { steward, clock, sendAt } = await postingHousehold({ port });
    for (const minutes of [0, 1, 6, 21]) await sendAt(minutesAfter(FIRST_SUNDAY, minutes));
    isFull = false;
    clock.moment = minutesAfter(FIRST_SUNDAY, 22);
    expect(await steward.sendDue()).toEqual([]);
    expect(await steward.sendDue({ atOnce: true })).toMatchObject([{ state: 'sent', tries: 5 }]);
    expect(await steward.sendDue({ atOnce: true })).toEqual([]);
  });

  test('for good is not asked again, though the program was started anew', async () => {
    const { port } = await mailCatcher({
      onRcptTo: (_address, _session, callback) => callback(answer(550, 'No such user here')),
    });
    const { steward, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    expect(await steward.sendDue({ atOnce: true })).toEqual([]);
  });

  test('for good is not asked again, and what it said is shown', async () => {
    let asked = 0;
    const { port, caught } = await mailCatcher({
      onRcptTo: (_address, _session, callback) => {
        asked += 1;
        callback(answer(550, '5.1.1 No such user here'));
      },
    });
    const { steward, garden, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    await sendAt(minutesAfter(FIRST_SUNDAY, 600));
    expect([asked, caught.length]).toEqual([1, 0]);
    const [{ wrong } = { wrong: undefined }] = await steward.mailStandings(garden);
    expect(wrong).toMatchObject({ state: 'refused' });
    expect(wrong?.problem).toBe(
      `The mail server 127.0.0.1:${port} takes no mail for ida@example.com; it said "550 5.1.1 No such user here". Mend the address in the member's mail settings.`,
    );
  });

  test('is asked again at once where the address has been mended', async () => {
    const { port, caught } = await mailCatcher({
      onRcptTo: ({ address }, _session, callback) =>
        address.startsWith('ida@') ? callback(answer(550, 'No')) : callback(),
    });
    const { steward, garden, clock, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    clock.moment = minutesAfter(FIRST_SUNDAY, 5);
    const mail = { to: 'new@example.com', weekday: 7 as const, hour: 18, tasks: 'own' as const };
    await steward.report(garden, { kind: 'member-kept', member: { id: 'ida', name: 'Ida', mail } }, 'ida');
    await sendAt(minutesAfter(FIRST_SUNDAY, 6));
    expect(caught.map(({ to }) => to[0])).toEqual(['new@example.com']);
    expect((await steward.mailStandings(garden))[0]).not.toHaveProperty('wrong');
  });

  test('to one member does not keep the others’ lists from them', async () => {
    const { port, caught } = await mailCatcher({
      onRcptTo: ({ address }, _session, callback) =>
        address.startsWith('ida@') ? callback(answer(450, 'Later')) : callback(),
    });
    const { sendAt } = await postingHousehold({ port, members: [reader('Ida'), reader('Bo'), reader('Cy')] });
    const ended = await sendAt(FIRST_SUNDAY);
    expect(ended.map(({ member, state }) => `${member} ${state}`).sort()).toEqual([
      'bo sent',
      'cy sent',
      'ida delayed',
    ]);
    expect(caught).toHaveLength(2);
  });

  test('to the message itself, after it has all of it, is believed', async () => {
    let refusals = 1;
    const { port } = await mailCatcher({
      onData: (stream, _session, callback) => {
        stream.resume();
        stream.on('end', () => (refusals-- > 0 ? callback(answer(452, 'Disk full')) : callback(answer(554, 'Spam'))));
      },
    });
    const { sendAt } = await postingHousehold({ port });
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'delayed' }]);
    const [second] = await sendAt(minutesAfter(FIRST_SUNDAY, 1));
    expect(second).toMatchObject({
      state: 'refused',
      problem: expect.stringContaining('did not take the list; it said "554 Spam"'),
    });
  });

  test('and does not answer at all is tried until the week is over', async () => {
    const { sendAt, steward, garden } = await postingHousehold({ port: 1 });
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'delayed', tries: 1 }]);
    const [wrong] = await sendAt('2027-04-28T12:00:00.000Z');
    expect(wrong?.problem).toContain('The mail server 127.0.0.1:1 could not be reached (ECONNREFUSED).');
    await sendAt('2027-05-03T06:00:00.000Z');
    const missed = (await steward.deliveries(garden)).find(({ monday }) => monday === FIRST_MONDAY);
    expect(missed).toMatchObject({ state: 'missed', tries: 2, problem: expect.stringContaining('ECONNREFUSED') });
  });
});

describe('a line that breaks off', () => {
  test('while the message is on its way leaves it unknown: shown, and not sent a second time by itself', async () => {
    let hangs = true;
    const catcher = await mailCatcher({
      onData: (stream, _session, callback) => {
        stream.resume();
        if (hangs) stream.once('data', () => catcher.hangUp());
        stream.on('end', () => callback());
      },
    });
    const { steward, garden, clock, sendAt } = await postingHousehold({ port: catcher.port });
    const [first] = await sendAt(FIRST_SUNDAY);
    expect(first).toMatchObject({ state: 'unknown', problem: expect.stringContaining('it may have arrived or not') });
    hangs = false;
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, 600))).toEqual([]);
    expect((await steward.mailStandings(garden))[0]?.wrong?.state).toBe('unknown');
    clock.moment = minutesAfter(FIRST_SUNDAY, 601);
    // Asked for by the gardener it goes out under the same name, by which an inbox that has it may know it.
    expect(await steward.sendAgain(garden, 'Ida')).toMatchObject({ state: 'sent', messageId: first?.messageId });
    await expect(steward.sendAgain(garden, 'Ida')).rejects.toThrow('This list is sent already, or on its way.');
  });

  test('before that is tried again by itself', async () => {
    let hangs = true;
    const catcher = await mailCatcher({
      onRcptTo: (_address, _session, callback) => (hangs ? catcher.hangUp() : callback()),
    });
    const { sendAt } = await postingHousehold({ port: catcher.port });
    const [first] = await sendAt(FIRST_SUNDAY);
    expect(first).toMatchObject({ state: 'delayed', problem: expect.stringContaining('broke the line off') });
    hangs = false;
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, 1))).toMatchObject([{ state: 'sent', tries: 2 }]);
    expect(catcher.caught).toHaveLength(1);
  });

  test('because the program stops is no try, is not blamed on the network, and goes out when it runs again', async () => {
    const stopped = new AbortController();
    const { port, caught } = await mailCatcher({
      onRcptTo: (_address, _session, callback) => (stopped.signal.aborted ? callback() : stopped.abort()),
    });
    const { steward, clock, sendAt } = await postingHousehold({ port });
    clock.moment = FIRST_SUNDAY;
    const [first] = await steward.sendDue({ signal: stopped.signal });
    expect(first).toMatchObject({ state: 'delayed', tries: 0, problem: expect.stringContaining('was stopped') });
    expect(first?.problem).not.toContain('network');
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'sent', tries: 1 }]);
    expect(caught).toHaveLength(1);
  });

  test('leaves nothing behind at the signal that might have stopped it', async () => {
    const stopped = new AbortController();
    const { port } = await mailCatcher();
    const { steward, clock } = await postingHousehold({ port, members: [reader('Ida'), reader('Bo')] });
    clock.moment = FIRST_SUNDAY;
    expect(await steward.sendDue({ signal: stopped.signal })).toHaveLength(2);
    expect(getEventListeners(stopped.signal, 'abort')).toEqual([]);
  });

  test('ends with the program also where the gardener asked for it', async () => {
    let isSilent = false;
    let asked = (): void => undefined;
    const isAsked = new Promise<void>((resolve) => (asked = resolve));
    const { port } = await mailCatcher({
      onRcptTo: (_address, _session, callback) => (isSilent ? asked() : callback(answer(450, 'Later'))),
    });
    const { steward, garden, sendAt } = await postingHousehold({ port });
    await sendAt(FIRST_SUNDAY);
    isSilent = true;
    const again = steward.sendAgain(garden, 'Ida');
    await isAsked;
    await steward.close();
    expect(await again).toMatchObject({ state: 'delayed', problem: expect.stringContaining('was stopped') });
  });
});

describe('a password', () => {
  const login = { user: 'ida', password: 'four-words-of-mine' };

  test('is what the server asks for', async () => {
    const { port, caught } = await mailCatcher({
      authOptional: false,
      onAuth: ({ username, password }, _session, callback) =>
        callback(null, { user: username === login.user && password === login.password ? username : undefined }),
    });
    const { sendAt } = await postingHousehold({ port, server: { login } });
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'sent' }]);
    expect(caught).toHaveLength(1);
  });

  test('that is not taken delays the list, and is nowhere in what is told of it, though the server says it', async () => {
    const told = Buffer.from(`\0ida\0${login.password}`).toString('base64');
    const { port } = await mailCatcher({
      authOptional: false,
      onAuth: (_auth, _session, callback) => callback(answer(535, `No: ${login.password} ${told}`)),
    });
    const { steward, garden, faults, sendAt } = await postingHousehold({ port, server: { login } });
    const [wrong] = await sendAt(FIRST_SUNDAY);
    expect(wrong).toMatchObject({
      state: 'delayed',
      problem: expect.stringContaining(
        'does not take the user and password of LOAMTIDE_SMTP_URL; it said "535 No: [secret]',
      ),
    });
    const all = JSON.stringify([wrong, await steward.deliveries(garden), steward.mailWay(), faults]);
    expect(all).not.toContain(login.password);
    expect(all).not.toContain(told);
  });

  test('and a list do not go over a network in the open: a server without STARTTLS is told nothing', async () => {
    let asked = 0;
    const { port, caught } = await mailCatcher({
      onAuth: (_auth, _session, callback) => {
        asked += 1;
        callback(null, { user: 'ida' });
      },
    });
    // An address that leads to this computer, though it does not look so.
    for (const server of [{ login, host: '127.1' }, { host: '127.1' }]) {
      const { sendAt } = await postingHousehold({ port, server });
      const [wrong] = await sendAt(FIRST_SUNDAY);
      expect(wrong).toMatchObject({ state: 'delayed', problem: expect.stringContaining('could not be made secret') });
    }
    expect([asked, caught]).toEqual([0, []]);
  });
});

describe('a list that nobody can send', () => {
  test('for want of a sender says where to name one', async () => {
    const { port, caught } = await mailCatcher();
    const { sendAt } = await postingHousehold({ port, from: '' });
    const [wrong] = await sendAt(FIRST_SUNDAY);
    expect(wrong).toMatchObject({ state: 'delayed', problem: expect.stringContaining('Set LOAMTIDE_MAIL_FROM') });
    expect(caught).toEqual([]);
  });

  test('is not sent a second time before its hour: there is nothing to send again', async () => {
    const { steward, garden } = await postingHousehold();
    await expect(steward.sendAgain(garden, 'Ida')).rejects.toThrow('No list of this week has been due yet.');
    await expect(steward.sendAgain(garden, 'Bo')).rejects.toThrow('"Bo" gets no lists by mail. Those who do: Ida.');
  });
});

describe('without a mail server', () => {
  test('a list is a file in the outbox, delivered once', async () => {
    const { outbox, sendAt } = await postingHousehold({ from: '' });
    expect(await sendAt(FIRST_SUNDAY)).toMatchObject([{ state: 'sent', way: 'outbox' }]);
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, 10))).toEqual([]);
    const files = readdirSync(outbox);
    expect(files).toEqual([expect.stringMatching(/^2027-04-26\.hollow-lane\.ida\.[0-9a-f]{8}\.eml$/)]);
    const mail = await simpleParser(readFileSync(join(outbox, files[0] ?? '')));
    expect(mail.from?.value).toEqual([{ name: 'Hollow Lane', address: 'loamtide@localhost' }]);
    expect(mail.text).toContain('Week of April 26 to May 2, 2027');
  });

  test('an outbox that cannot be written delays it, and says so', async () => {
    const { outbox, sendAt } = await postingHousehold();
    writeFileSync(outbox, 'a file in its place');
    const [wrong] = await sendAt(FIRST_SUNDAY);
    expect(wrong).toMatchObject({ state: 'delayed', problem: expect.stringContaining('LOAMTIDE_OUTBOX') });
    rmSync(outbox);
    expect(await sendAt(minutesAfter(FIRST_SUNDAY, 1))).toMatchObject([{ state: 'sent' }]);
  });
});
