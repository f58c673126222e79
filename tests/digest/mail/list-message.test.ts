import { simpleParser } from 'mailparser';
import { describe, expect, test } from 'vitest';
import { type ListMail, listMessage } from '../../../src/digest/mail/list-message.ts';
import { weekList } from '../../../src/digest/week-list.ts';
import { weekListText } from '../../../src/digest/week-text.ts';
import { encoded } from '../../../src/steward/post/encoded.ts';
import { messageIdOf } from '../../../src/steward/post/message-id.ts';
import { hollowLane, planOf } from '../example.ts';

const list = weekList(
  planOf('2027-04-18', [{ key: 'sow/north', window: ['2027-04-19', '2027-04-21', '2027-04-25'], effortMinutes: 95 }]),
  hollowLane,
  '2027-04-19',
);

const mail: ListMail = {
  list,
  units: 'metric',
  text: weekListText(list, 'metric'),
  html: '<p>Bärlauch & a line by itself:</p>\r\n.\r\n',
  from: 'garden@example.org',
  to: { name: 'Ida', address: 'ida@example.com' },
  messageId: '<0f@example.org>',
  date: '2027-04-18T07:00:00.000Z',
};

const STOP = 'https://garden.example.org/stop/abc';

async function arrives(other: Partial<ListMail> = {}) {
  const source = await encoded(listMessage({ ...mail, ...other }));
  return { source: source.toString('utf8'), parsed: await simpleParser(source) };
}

/** The names of the headers before the first empty line. */
function headerNames(source: string): string[] {
  const head = source.slice(0, source.indexOf('\r\n\r\n'));
  return [...head.matchAll(/^([\w-]+):/gm)].map(([, name = '']) => name.toLowerCase());
}

describe('a list as a message', () => {
  test('names the garden, the week and its hours in the subject', async () => {
    const { parsed } = await arrives();
    expect(parsed.subject).toBe('Hollow Lane: 19 to 25 April 2027, 1 h 35 min to do');
    const nothing = listMessage({ ...mail, list: weekList(planOf('2027-04-18', []), hollowLane, '2027-04-19') });
    expect(nothing.subject).toBe('Hollow Lane: 19 to 25 April 2027, nothing to do');
  });

  test('comes from the garden, to the member, on its day', async () => {
    const { parsed } = await arrives();
    expect(parsed.from?.value).toEqual([{ name: 'Hollow Lane', address: 'garden@example.org' }]);
    expect(parsed.to).toMatchObject({ value: [{ name: 'Ida', address: 'ida@example.com' }] });
    expect(parsed.date?.toISOString()).toBe(mail.date);
    expect(parsed.messageId).toBe('<0f@example.org>');
  });

  test('holds the same list twice: as text and as HTML, word for word', async () => {
    const { source, parsed } = await arrives();
    expect(source).toContain('Content-Type: multipart/alternative');
    expect(parsed.text?.trimEnd()).toBe(mail.text.trimEnd());
    expect(parsed.html).toContain('<p>Bärlauch & a line by itself:</p>');
    expect(parsed.attachments).toEqual([]);
  });

  test('carries the headers a list wants and no others', async () => {
    const { source } = await arrives({ stop: STOP });
    expect(headerNames(source).sort()).toEqual(
      [
        'auto-submitted',
        'content-type',
        'date',
        'from',
        'list-id',
        'list-unsubscribe',
        'list-unsubscribe-post',
        'message-id',
        'mime-version',
        'subject',
        'to',
      ].sort(),
    );
  });

  test('no line of it is longer than 998 octets, however long a paragraph is (RFC 5322, 2.1.1)', async () => {
    const { source, parsed } = await arrives({ html: `<p>${'compost '.repeat(400)}</p>`, text: 'leaf'.repeat(600) });
    expect(Math.max(...source.split('\r\n').map((line) => Buffer.byteLength(line)))).toBeLessThanOrEqual(998);
    expect(parsed.text).toContain('leaf'.repeat(600));
  });
});

describe('its headers', () => {
  test('say that nobody wrote it by hand (RFC 3834, 5)', async () => {
    const { parsed } = await arrives();
    expect(parsed.headers.get('auto-submitted')).toBe('auto-generated');
  });

  test('name the list (RFC 2919, 3)', async () => {
    const { source } = await arrives();
    expect(source).toMatch(/^List-I[dD]: <hollow-lane\.week\.example\.org>\r$/m);
  });

  test('stop it with one press where its address is a secret line (RFC 2369, 3.2; RFC 8058, 3.1)', async () => {
    const { source } = await arrives({ stop: STOP });
    expect(source).toContain(`List-Unsubscribe: <${STOP}>\r\n`);
    expect(source).toContain('List-Unsubscribe-Post: List-Unsubscribe=One-Click\r\n');
  });

  test('promise no press over a line that is not secret, and no address where there is none', async () => {
    const open = headerNames((await arrives({ stop: 'http://192.168.1.20:8080/stop/abc' })).source);
    expect(open).toContain('list-unsubscribe');
    expect(open).not.toContain('list-unsubscribe-post');
    expect(headerNames((await arrives()).source)).not.toContain('list-unsubscribe');
  });

  test('cannot be added to by a name with a line break in it', async () => {
    const garden = { ...list, gardenName: 'Hollow\r\nBcc: thief@example.net\r\n\r\nLane' };
    const to = { name: 'Ida\nCc: thief@example.net', address: 'ida@example.com' };
    const { source, parsed } = await arrives({ list: garden, to });
    expect(headerNames(source)).not.toContain('bcc');
    expect([parsed.cc, parsed.bcc]).toEqual([undefined, undefined]);
    expect(parsed.from?.value[0]?.name).toBe('Hollow Bcc: thief@example.net Lane');
    expect(parsed.to).toMatchObject({ value: [{ name: 'Ida Cc: thief@example.net', address: 'ida@example.com' }] });
  });
});

describe('the name of a message', () => {
  const name = {
    gardenId: 'hollow-lane',
    member: 'Ida',
    monday: '2027-04-19',
    from: 'garden@Example.org',
    to: 'ida@example.com',
  };

  test('is the same at every try, and another for another week, member, garden or address', () => {
    const others = [{ gardenId: 'b' }, { member: 'Bo' }, { monday: '2027-04-26' }, { to: 'bo@example.com' }];
    const ids = [{}, ...others].map((other) => messageIdOf({ ...name, ...other }));
    expect(messageIdOf({ ...name })).toBe(ids[0]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('is one word under the sender’s domain that names nobody (RFC 5322, 3.6.4)', () => {
    expect(messageIdOf(name)).toMatch(/^<[0-9a-f]{36}@example\.org>$/);
  });
});
