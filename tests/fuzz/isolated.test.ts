/**
 * Two gardens of one household: whatever is asked or sent under the one's address, nothing of the other is shown or changed,
 * though every id in it is the other's.
 */
import { beforeAll, expect, test } from 'vitest';
import { routeOf } from '../journeys/followed-links.ts';
import { type Answered, type Household, type Laid, sharedHousehold } from './household.ts';
import { HITHER, hitherIds, ID_MARK, NAME_MARK, YONDER } from './two-gardens.ts';
import { afterAForm, formNow, sharedWays, type WaysIn } from './ways-in.ts';

let laid: Laid;
let ways: WaysIn;
beforeAll(async () => {
  laid = await sharedHousehold();
  ways = await sharedWays();
}, 300_000);

const IDS = hitherIds().filter((id) => id !== HITHER);
const ANY_ID = new RegExp(`(?<![\\w.-])(${IDS.join('|')})(?![\\w-])`, 'g');

/** A text with the second garden's ids in place of the first one's, the garden's own address left as it is. */
function crossed(text: string): string {
  const { hither, yonder } = laid.handles;
  return text
    .replace(ANY_ID, `${ID_MARK}$1`)
    .replace(/feed-[123]\b/g, yonder.feeds.at(-1)?.id ?? '')
    .replace(new RegExp(`${hither.key.id}\\b`, 'g'), yonder.key.id)
    .replace(/(?<=\bname=|\bperson=)(Ida|Tove)/g, `${NAME_MARK}+$1`)
    .replace(/(?<=\bentry=|\bbrought=|\bbefore=)\d+/g, String(lastEntry));
}

/** The number of an entry that only the second garden's ledger has. */
let lastEntry = 0;

/** A household, with the digest of the second garden as it was laid. */
async function opened(): Promise<{ household: Household; before: string }> {
  const household = await laid.open();
  lastEntry = (await household.steward.view(YONDER)).ledger.length;
  return { household, before: household.digest(YONDER) };
}

/** What of the second garden an answer shows, besides what was asked for by its name. */
function shownOf({ body }: Answered, said: string): string[] {
  const at = body.indexOf(NAME_MARK);
  return at === -1 || said.includes(NAME_MARK) ? [] : [body.slice(Math.max(0, at - 60), at + 60)];
}

test('no page of a garden shows anything of another, though asked by its ids', async () => {
  const { household, before } = await opened();
  const shown: string[] = [];
  const turned = new Set<string>();
  for (const { route, path } of ways.pages) {
    if (!route.includes('/gardens/:gardenId')) continue;
    const asked = crossed(path);
    if (asked !== path) turned.add(route);
    const answer = await household.ask(asked);
    shown.push(...shownOf(answer, asked).map((words) => `${asked}: ${words}`));
    if (answer.status >= 500) shown.push(`${asked}: ${answer.status}`);
  }
  for (const reach of afterAForm(`/gardens/${YONDER}`)) {
    const path = (await reach(household)).replace(YONDER, HITHER);
    turned.add(routeOf(path, laid.routes) ?? path);
    const answer = await household.ask(path);
    expect([path, answer.status, shownOf(answer, path)]).toEqual([path, 404, []]);
  }
  expect(shown).toEqual([]);
  expect(household.digest(YONDER)).toBe(before);
  expect(withIds('GET').filter((route) => !turned.has(route))).toEqual([]);
  await household.close();
}, 300_000);

/** Routes whose addresses name something of a garden besides the garden. */
function withIds(method: string): string[] {
  const pattern = /^\w+ \/gardens\/:gardenId\/.*\/:(?!list|which)/;
  return laid.routes.filter((route) => route.startsWith(method) && pattern.test(route));
}

test('no form of a garden changes anything of another, though sent with its ids', async () => {
  let { household, before } = await opened();
  const wrong: string[] = [];
  const turned = new Set<string>();
  for (const way of ways.forms) {
    if (!/^POST \/(?:gardens\/:gardenId|answer|stop)/.test(way.route)) continue;
    // A form that names nothing of its garden has nothing to name of another.
    if (
      JSON.stringify(way.form.fields) === crossed(JSON.stringify(way.form.fields)) &&
      crossed(way.form.action) === way.form.action
    )
      continue;
    const form = await formNow(household, way, laid.routes).catch(async () => {
      await household.close();
      ({ household, before } = await opened());
      return formNow(household, way, laid.routes);
    });
    const fields = form.fields.map(([name, value]): [string, string] => [crossed(name), crossed(value)]);
    for (const [action, sent] of [
      [crossed(form.action), fields],
      [form.action, fields],
      [crossed(form.action), form.fields],
    ] as const) {
      if (action === form.action && JSON.stringify(sent) === JSON.stringify(form.fields)) continue;
      if (action !== form.action) turned.add(way.route);
      const answer = await household.send(action, sent);
      const said = JSON.stringify([action, sent]);
      wrong.push(...shownOf(answer, said).map((words) => `${way.name} ${action}: ${words}`));
      if (answer.status >= 500) wrong.push(`${way.name} ${action}: ${answer.status}`);
      if (household.digest(YONDER) !== before) wrong.push(`${way.name} ${action}: changed the other garden`);
    }
  }
  expect(wrong).toEqual([]);
  for (const reach of afterAForm(`/gardens/${YONDER}`)) {
    const path = (await reach(household)).replace(YONDER, HITHER);
    turned.add(routeOf(path, laid.routes, 'POST') ?? path);
    const answer = await household.send(path, []);
    expect([path, answer.status, shownOf(answer, path)]).toEqual([path, 404, []]);
  }
  expect(household.digest(YONDER)).toBe(before);
  expect(withIds('POST').filter((route) => !turned.has(route))).toEqual([]);
  await household.close();
}, 240_000);

test('a key, a feed and a link in mail are of the garden they were made for alone', async () => {
  const { household, before } = await opened();
  const { hither, yonder } = laid.handles;
  const reading = await household.ask(`/api/piles/${ID_MARK}spring-pile/readings`, {
    method: 'POST',
    headers: { Authorization: `Bearer ${hither.key.key}`, 'Content-Type': 'application/json' },
    body: JSON.stringify({ tempC: 40 }),
  });
  expect([reading.status, reading.body.includes(NAME_MARK)]).toEqual([404, false]);
  const feed = await household.ask(`/feed/${hither.feeds[0]?.token}.ics`);
  expect([feed.status, feed.body.includes(NAME_MARK)]).toEqual([200, false]);
  for (const link of ['answer', 'stop'] as const) {
    const forged = mixed(hither[link], yonder[link]);
    expect((await household.ask(forged)).status).toBe(404);
    expect((await household.send(forged, [['answer', 'done']])).status).toBe(404);
  }
  expect(household.digest(YONDER)).toBe(before);
  await household.close();
});

/** The second path's token with the signature of the first one's: what is said begins with a bracket. */
function mixed(signed: string, said: string): string {
  const octets = (path: string) => Buffer.from(path.split('?')[0]?.split('/').at(-1) ?? '', 'base64url');
  const [from, to] = [octets(signed), octets(said)];
  const token = Buffer.concat([from.subarray(0, from.indexOf('[')), to.subarray(to.indexOf('['))]);
  return `${said.slice(0, said.lastIndexOf('/'))}/${token.toString('base64url')}`;
}

test('a garden file with the id of another garden changes neither', async () => {
  const { household } = await opened();
  const before = household.digest();
  const { body } = await household.ask(`/gardens/${YONDER}/garden-file.yaml`);
  for (const path of [`/gardens/${HITHER}/garden-file`, '/bring-in']) {
    const answer = await household.send(path, [['text', body]]);
    expect([path, answer.status]).toEqual([path, 422]);
  }
  expect(household.digest()).toBe(before);
  await household.close();
});
