/**
 * Two gardens of one household: whatever is asked or sent under the one's address, nothing of the other is shown or changed,
 * though every id in it is the other's.
 */

import { beforeAll, expect, test } from 'vitest';
import { oneOfEachRoute } from '../journeys/pages-walked.ts';
import { crossForms, crossing, formsWithIds, handedOver, routesOf, shownOf, withIds } from './crossed.ts';
import { type Laid, sharedHousehold } from './household.ts';
import { HITHER, ID_MARK, NAME_MARK, YONDER } from './two-gardens.ts';
import { sharedWays, type WaysIn } from './ways-in.ts';

let laid: Laid;
let ways: WaysIn;
beforeAll(async () => {
  laid = await sharedHousehold();
  ways = await sharedWays();
}, 300_000);

test('no page of a garden shows anything of another, though asked by its ids', async () => {
  const at = await crossing(laid);
  const { household, before, crossed } = at;
  const shown: string[] = [];
  const turned = new Set<string>();
  const own = ways.pages.filter(({ route }) => route.includes('/gardens/:gardenId'));
  const named = own.filter(({ path }) => crossed(path) !== path);
  for (const { route, path } of new Set([...oneOfEachRoute(own), ...named])) {
    const asked = crossed(path);
    if (asked !== path) turned.add(route);
    const answer = await household.ask(asked);
    shown.push(...shownOf(answer, asked).map((words) => `${asked}: ${words}`));
    if (answer.status >= 500) shown.push(`${asked}: ${answer.status}`);
  }
  const kept = await handedOver(at, household.ask);
  for (const route of routesOf(laid, kept)) turned.add(route);
  expect(kept).toEqual(kept.map(({ path }) => ({ path, status: 404, shown: [] })));
  expect(shown).toEqual([]);
  expect(household.digest(YONDER)).toBe(before);
  expect(withIds(laid, 'GET').filter((route) => !turned.has(route))).toEqual([]);
  await household.close();
}, 300_000);

/** One form of each route; tests/long sends them all. */
test('no form of a garden changes anything of another, though sent with its ids', async () => {
  const { wrong, turned } = await crossForms(laid, oneOfEachRoute(await formsWithIds(laid, ways.forms)));
  expect(wrong).toEqual([]);
  const at = await crossing(laid);
  const kept = await handedOver(at, (path) => at.household.send(path, []));
  for (const route of routesOf(laid, kept, 'POST')) turned.add(route);
  expect(kept).toEqual(kept.map(({ path }) => ({ path, status: 404, shown: [] })));
  expect(at.household.digest(YONDER)).toBe(at.before);
  expect(withIds(laid, 'POST').filter((route) => !turned.has(route))).toEqual([]);
  await at.household.close();
}, 240_000);

test('a key, a feed and a link in mail are of the garden they were made for alone', async () => {
  const { household, before } = await crossing(laid);
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
  const { household } = await crossing(laid);
  const before = household.digest();
  const { body } = await household.ask(`/gardens/${YONDER}/garden-file.yaml`);
  for (const path of [`/gardens/${HITHER}/garden-file`, '/bring-in']) {
    const answer = await household.send(path, [['text', body]]);
    expect([path, answer.status]).toEqual([path, 422]);
  }
  expect(household.digest()).toBe(before);
  await household.close();
});
