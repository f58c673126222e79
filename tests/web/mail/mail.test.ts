import { describe, expect, test } from 'vitest';
import { mailCatcher, answer as saying } from '../../steward/post/mail-catcher.ts';
import { FIRST_SUNDAY, postingHousehold, reader } from '../../steward/post/posting.ts';
import { read } from '../plain-text.ts';
import { appOver, GARDEN, sampleApp, sampleFile } from '../sample-garden.ts';

const IDA = { name: 'Ida', mail: { to: 'ida@example.com', weekday: 'sun', hour: 18 } };
const MAIL = `${GARDEN}/household/mail`;

const withIda = () => sampleApp(sampleFile({ household: { members: [IDA, { name: 'Bo' }] } }));

describe('the page of somebody’s mail', () => {
  test('says when the next list goes out, and shows it', async () => {
    const { get } = await withIda();
    const text = await read(get(`${MAIL}?person=Ida`));
    expect(text).toContain('Next: April 25, 2027, 6:00 pm, the list of April 26 to May 2, 2027.');
    expect(text).toContain('No list has gone out yet.');
    expect(text).toContain('Week of April 26 to May 2, 2027');
    expect(text).toContain('No mail server is set with LOAMTIDE_SMTP_URL');
  });

  test('shows the HTML at an address of its own, which may be styled and do nothing', async () => {
    const { get } = await withIda();
    const answer = await get(`${MAIL}/html?person=Ida`);
    const policy = answer.headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'; style-src 'unsafe-inline'");
    expect(policy).toContain('sandbox');
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
    expect(await answer.text()).toContain('April 26');
    const plain = (await get(`${MAIL}?person=Ida`)).headers.get('content-security-policy');
    expect(plain).not.toContain('unsafe-inline');
  });

  test('is not there for somebody who gets none', async () => {
    const { get } = await withIda();
    for (const person of ['Bo', '', '<b>']) {
      const answer = await get(`${MAIL}?${new URLSearchParams({ person })}`);
      expect(answer.status).toBe(404);
      expect(await answer.text()).not.toContain('<b>');
    }
  });

  test('sends nothing again that was not due', async () => {
    const { send, steward } = await withIda();
    const answer = await send(`${MAIL}/again`, { person: 'Ida' });
    expect(answer.status).toBe(422);
    expect(await answer.text()).toContain('No list of this week has been due yet.');
    expect(await steward.deliveries('mill-row')).toEqual([]);
  });
});

describe('a list that did not go out', () => {
  async function refused() {
    let isFull = true;
    const { port, caught } = await mailCatcher({
      onRcptTo: ({ address }, _session, callback) =>
        isFull && address.startsWith('ida') ? callback(saying(550, '5.1.1 No <such> user')) : callback(),
    });
    const { steward, garden, sendAt } = await postingHousehold({ port, members: [reader('Ida'), reader('Bo')] });
    await sendAt(FIRST_SUNDAY);
    const mend = () => {
      isFull = false;
    };
    return { ...appOver(steward), home: `/gardens/${garden}`, caught, mend };
  }

  test('is told on the page with what the server said, and can be sent again there', async () => {
    const { get, send, home, caught, mend } = await refused();
    const page = `${home}/household/mail?person=Ida`;
    const html = await (await get(page)).text();
    expect(html).toContain('was refused. The mail server 127.0.0.1:');
    expect(html).toContain('No &lt;such&gt; user');
    expect(html).toContain('Send it again');
    const still = await send(`${home}/household/mail/again`, { person: 'Ida' });
    expect(still.status).toBe(303);
    expect(caught).toHaveLength(1);
    mend();
    const pressed = await send(`${home}/household/mail/again`, { person: 'Ida' });
    expect([pressed.status, pressed.headers.get('location')]).toEqual([303, page]);
    expect(caught.map(({ to }) => to[0])).toEqual(['bo@example.com', 'ida@example.com']);
    const after = await read(get(page));
    expect(after).toContain('Last: the list of April 26 to May 2, 2027, sent on April 25, 2027, 6:00 pm.');
    expect(after).not.toContain('Send it again');
  });

  test('is told on the Household page beside its member, and not beside the others', async () => {
    const { get, home } = await refused();
    const text = await read(get(`${home}/household`));
    expect(text).toContain('was refused. The mail server');
    expect(text.match(/was refused/g)).toHaveLength(1);
    expect(text).toContain('Lists are handed to the mail server 127.0.0.1:');
  });

  test('is named in one line on This week, and leads there', async () => {
    const { get, send, home, mend } = await refused();
    const week = await (await get(home)).text();
    expect(week).toContain(`<a href="${home}/household/mail?person=Ida">Ida</a>`);
    expect(week).not.toContain('mail?person=Bo');
    expect(week).toContain('The weekly list did not reach');
    mend();
    await send(`${home}/household/mail/again`, { person: 'Ida' });
    expect(await (await get(home)).text()).not.toContain('The weekly list did not reach');
  });
});
