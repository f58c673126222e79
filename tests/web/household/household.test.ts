import { describe, expect, test } from 'vitest';
import { factInWords } from '../../../src/web/words/ledger-words.ts';
import { plain } from '../plain-text.ts';
import { GARDEN, sampleApp, sampleFile, TODAY } from '../sample-garden.ts';

const HOUSEHOLD = `${GARDEN}/household`;
const CHANGE = `${HOUSEHOLD}/member/change?name=Ida`;
const LEAVE = `${HOUSEHOLD}/member/leave?name=Ida`;
const RYE = 'cover-cut/stand:rye-north';
const peopled = sampleFile({
  household: {
    people: 2,
    members: [
      { name: 'Ida', practices: ['composting', 'mulching'], beds: ['north', 'wall'] },
      { name: 'Jonas', practices: ['planting', 'cover-cropping'] },
    ],
  },
});

/** A form as the page sends it for somebody who sees to everything and gets no mail. */
const bare = { name: 'Runa', mailTo: '', mailFrom: '', weekday: '5', hour: '18', tasks: 'own' };
const mailed = { ...bare, mailTo: 'runa@example.org', mailFrom: 'garden@example.org', weekday: '7', tasks: 'all' };

describe('the Household page', () => {
  test('says how to begin where nobody is named', async () => {
    const { get } = await sampleApp();
    const text = plain(await (await get(HOUSEHOLD)).text());
    expect(text).toContain("Nobody is named yet: all the work is everybody's.");
  });

  test('lists who sees to what, and names what falls to nobody', async () => {
    const { get } = await sampleApp(peopled);
    const text = plain(await (await get(HOUSEHOLD)).text());
    expect(text).toContain('sees to compost, mulch, on North bed, Wall bed');
    expect(text).toContain('gets no mail');
    expect(text).toContain("some work is nobody's: soil; topdressing; ");
    expect(text).toContain('mulch on Middle bed, South bed. ');
  });

  test('leads to the week and the sheet of each', async () => {
    const { get } = await sampleApp(peopled);
    const text = await (await get(HOUSEHOLD)).text();
    expect(text).toContain(`href="${GARDEN}?person=Ida"`);
    expect(text).toContain(`href="${GARDEN}/week-sheet?person=Ida"`);
    expect(text).toContain('aria-current="page">Household');
  });

  test('is kept in no browser’s cache, since it shows secret addresses', async () => {
    const { get } = await sampleApp(peopled);
    expect((await get(HOUSEHOLD)).headers.get('Cache-Control')).toBe('no-store');
  });
});

describe('somebody new', () => {
  test('is added with their mail, and taken back as one entry', async () => {
    const { get, send, steward } = await sampleApp(peopled);
    expect((await send(HOUSEHOLD, mailed)).headers.get('location')).toBe(`${HOUSEHOLD}?told=added&name=Runa`);
    const { garden } = await steward.view('mill-row');
    expect(garden.household?.members?.at(-1)).toEqual({
      id: 'runa',
      name: 'Runa',
      mail: { to: 'runa@example.org', from: 'garden@example.org', weekday: 7, hour: 18, tasks: 'all' },
    });
    const text = plain(await (await get(HOUSEHOLD)).text());
    expect(text).toContain(
      'gets a list of all the work by mail to runa@example.org, on Sundays at 6 pm, from garden@example.org',
    );
    await steward.undo('mill-row', undefined, 'test');
    expect((await steward.view('mill-row')).garden.household?.members).toHaveLength(2);
  });

  test('may be the first of the household', async () => {
    const { send, steward } = await sampleApp();
    await send(HOUSEHOLD, { ...bare, practices: ['mulching', 'composting'], beds: 'north' });
    expect((await steward.view('mill-row')).garden.household).toEqual({
      members: [{ id: 'runa', name: 'Runa', practices: ['composting', 'mulching'], beds: ['north'] }],
    });
  });

  test('for whom all is ticked sees to all of it, whatever comes to be later', async () => {
    const { send, steward } = await sampleApp();
    await send(HOUSEHOLD, { ...bare, beds: ['north', 'middle', 'south', 'wall'] });
    expect((await steward.view('mill-row')).garden.household?.members).toEqual([{ id: 'runa', name: 'Runa' }]);
  });

  test('is told of everything that is wrong at once, and nothing is kept', async () => {
    const { send, steward } = await sampleApp(peopled);
    const wrong = { name: 'ida', practices: 'compost', beds: 'west', mailTo: 'runa', mailFrom: 'a b@c', hour: '25' };
    const answer = await send(HOUSEHOLD, { ...bare, ...wrong, weekday: '', tasks: 'some' });
    const text = plain(await answer.text());
    expect(answer.status).toBe(422);
    expect(text).toContain('Name: "Ida" is in the household already. Give each a name of their own.');
    expect(text).toContain('Which work they see to: "compost" is not known here. Did you mean composting?');
    expect(text).toContain('On which beds: "west" is not known here.');
    expect(text).toContain('Weekly list by mail to: "runa" is not a mail address.');
    expect(text).toContain('From another address than usual: "a b@c" is not a mail address.');
    expect(text).toContain('Sent on: It is empty. Choose a day of the week.');
    expect(text).toContain('Hour: "25" cannot be used. Choose a whole hour, 0 to 23.');
    expect(text).toContain('It holds: Nothing is chosen.');
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test.each([
    [{ name: '' }, 'Name: It is empty.'],
    [{ name: 'all' }, 'Name: "all" stands for everybody.'],
    [{ name: 'Runa\r\nBcc: all@example.org' }, 'Name: It is more than one line.'],
    [{ name: 'R'.repeat(41) }, 'Name: It has 41 characters.'],
    [{ mailTo: 'runa@example.org\r\nBcc: all@example.org' }, 'is not a mail address.'],
    [{ mailTo: 'Runa <runa@example.org>' }, 'is not a mail address.'],
    [{ mailTo: `${'r'.repeat(250)}@example.org` }, 'is not a mail address.'],
    [{ mailFrom: 'garden@example.org' }, 'From another address than usual: There is no address to send to.'],
  ])('is refused as %j', async (fields, complaint) => {
    const { send } = await sampleApp();
    const answer = await send(HOUSEHOLD, { ...bare, ...fields });
    expect([answer.status, plain(await answer.text()).includes(complaint)]).toEqual([422, true]);
  });
});

describe('somebody of the household', () => {
  test('is changed, and keeps feed and tasks under another name', async () => {
    const { get, send, steward } = await sampleApp(peopled);
    await send(`${HOUSEHOLD}/feed`, { member: 'Ida', tasks: 'own' });
    await steward.report('mill-row', { kind: 'task-assigned', tasks: [{ key: RYE, title: 'Cut' }], to: 'Ida' }, 'test');
    const form = await (await get(CHANGE)).text();
    expect(form).toContain('value="composting" checked');
    expect(form).toContain('value="wall" checked');
    await send(CHANGE, { ...mailed, name: 'Ida Holm', practices: 'composting' });
    const { garden, ledger } = await steward.view('mill-row');
    expect(garden.assigned).toEqual({ [RYE]: 'Ida Holm' });
    expect((await steward.feeds('mill-row'))[0]?.shape.person).toBe('Ida Holm');
    const last = ledger.at(-1);
    expect(last && factInWords(last.fact, garden, TODAY)).toContain(
      'In the household: Ida Holm, called Ida before, who sees to compost; a list of all the work by mail to',
    );
  });

  test('who is kept as they were is no entry of history', async () => {
    const { send, steward } = await sampleApp(peopled);
    const same = { ...bare, name: 'Ida', practices: ['composting', 'mulching'], beds: ['north', 'wall'] };
    expect((await send(CHANGE, same)).status).toBe(303);
    expect((await steward.view('mill-row')).ledger).toHaveLength(1);
  });

  test('gets a feed of their own work or of all of it in one press, and it is listed with them', async () => {
    const { get, send, steward } = await sampleApp(peopled);
    for (const tasks of ['own', 'all']) {
      expect((await send(`${HOUSEHOLD}/feed`, { member: 'Ida', tasks })).status).toBe(303);
    }
    const [own, all] = await steward.feeds('mill-row');
    expect(own).toMatchObject({ label: 'Ida: own work', shape: { person: 'Ida' } });
    expect(all).toMatchObject({ label: 'Ida: all the work', shape: { reader: 'Ida' } });
    expect(all?.shape).not.toHaveProperty('person');
    const everything = await steward.addFeed('mill-row', 'Everything');
    const bodyOf = async (token = '') => (await get(`/feed/${token}.ics`)).text();
    expect(await bodyOf(all?.token)).toBe(await bodyOf(everything.token));
    const text = plain(await (await get(HOUSEHOLD)).text());
    expect(text).toContain(`Feed of their own work, “Ida: own work” http://127.0.0.1:8137/feed/${own?.token}.ics`);
    expect(text).toContain(`Feed of all the work, “Ida: all the work” http://127.0.0.1:8137/feed/${all?.token}.ics`);
  });

  test('pressed again makes no second feed, and leads to the one there is', async () => {
    const { get, send, steward } = await sampleApp(peopled);
    const press = async () =>
      (await send(`${HOUSEHOLD}/feed`, { member: 'Ida', tasks: 'own' })).headers.get('location');
    expect(plain(await (await get((await press()) ?? '')).text())).toContain('A feed for Ida is made.');
    expect(plain(await (await get((await press()) ?? '')).text())).toContain('There is such a feed for Ida already');
    expect(await steward.feeds('mill-row')).toHaveLength(1);
  });

  test('who is not known here is 404, to change, to see off or to make a feed for', async () => {
    const { get, send } = await sampleApp(peopled);
    expect((await get(`${HOUSEHOLD}/member/change?name=Jana`)).status).toBe(404);
    expect((await get(`${HOUSEHOLD}/member/leave?name=Jana`)).status).toBe(404);
    expect((await send(`${HOUSEHOLD}/feed`, { member: 'Jana', tasks: 'own' })).status).toBe(404);
  });
});

describe('somebody who leaves', () => {
  async function withAll() {
    const app = await sampleApp(peopled);
    const { send, steward } = app;
    await send(CHANGE, { ...mailed, name: 'Ida', practices: 'composting' });
    await send(`${HOUSEHOLD}/feed`, { member: 'Ida', tasks: 'own' });
    const task = (await steward.view('mill-row')).plan.tasks.find(({ key }) => key === RYE);
    const title = task?.title ?? '';
    await steward.report('mill-row', { kind: 'task-assigned', tasks: [{ key: RYE, title }], to: 'Ida' }, 'test');
    return app;
  }

  test('is asked about first, with what goes with them', async () => {
    const { get, steward } = await withAll();
    const text = plain(await (await get(LEAVE)).text());
    expect(text).toContain("Nobody's in particular again: Cut");
    expect(text).toContain('No more lists by mail go to runa@example.org.');
    expect(text).toContain("By what the others see to, some work is nobody's then: soil; compost; ");
    expect(text).toContain('The feed “Ida: own work” shows a single entry that says they are no longer');
    expect((await steward.view('mill-row')).garden.household?.members).toHaveLength(2);
  });

  test('leaves their work to nobody in particular, and has it again when that is taken back', async () => {
    const { send, steward } = await withAll();
    expect((await send(LEAVE, {})).headers.get('location')).toBe(HOUSEHOLD);
    const { garden } = await steward.view('mill-row');
    expect([garden.assigned, garden.household?.members?.map(({ name }) => name)]).toEqual([{}, ['Jonas']]);
    const [feed] = await steward.feeds('mill-row');
    expect((await steward.feedBody(feed?.token ?? ''))?.body).toContain('Ida is no longer in the household');
    await steward.undo('mill-row', undefined, 'test');
    expect((await steward.view('mill-row')).garden.assigned).toEqual({ [RYE]: 'Ida' });
    expect((await steward.feedBody(feed?.token ?? ''))?.body).not.toContain('no longer in the household');
  });

  test('may have their feeds revoked with it', async () => {
    const { send, steward } = await withAll();
    await send(LEAVE, { revoke: 'yes' });
    expect((await steward.feeds('mill-row'))[0]?.revokedAt).toBeDefined();
  });
});

describe('how many eat from the garden', () => {
  test('is told on the page', async () => {
    const { send, steward } = await sampleApp();
    expect((await send(`${HOUSEHOLD}/people`, { people: '5' })).status).toBe(303);
    expect((await steward.view('mill-row')).garden.household).toEqual({ people: 5 });
  });

  test.each(['', '0', '2.5', 'four', '201'])('is refused as "%s"', async (people) => {
    const { send } = await sampleApp();
    const answer = await send(`${HOUSEHOLD}/people`, { people });
    expect([answer.status, plain(await answer.text()).includes('People who eat:')]).toEqual([422, true]);
  });
});
