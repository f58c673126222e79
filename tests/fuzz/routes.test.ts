/**
 * Every route is sent what nobody would send on purpose. Forms are taken as their pages show them, filled in, and changed in a
 * field or two, so that what lies behind the first refusal is reached too.
 */

import { afterAll, beforeAll, expect, test } from 'vitest';
import { oneOfEachRoute } from '../journeys/pages-walked.ts';
import { countsWritten, sentAlways } from './counts.ts';
import { Fuzzed, fuzzForms, fuzzPaths, fuzzQuestions } from './fuzzed.ts';
import { type Laid, sharedHousehold } from './household.ts';
import { sharedWays, type WaysIn } from './ways-in.ts';

/** Of every run: another is chosen in the long tests. */
const SEED = 20270420;

/** Routes that no page or form leads to, and where they are tried. */
const TRIED_ELSEWHERE: Readonly<Record<string, string>> = {
  'POST /api/piles/:pileId/readings': 'tests/fuzz/readings.test.ts',
  'POST /sign-in': 'tests/web/sign-in/signing-in.test.ts',
  'POST /sign-out': 'tests/web/sign-in/signing-in.test.ts',
  'POST /sign-out/everywhere': 'tests/web/sign-in/signing-in.test.ts',
};

let laid: Laid;
let ways: WaysIn;
let fuzzed: Fuzzed;
beforeAll(async () => {
  laid = await sharedHousehold();
  ways = await sharedWays();
  fuzzed = new Fuzzed(laid);
}, 600_000);
afterAll(() => fuzzed.close());

test('every route is among those that are tried', () => {
  const tried = new Set([...ways.pages, ...ways.forms].map(({ route }) => route));
  expect(laid.routes.filter((route) => !tried.has(route) && TRIED_ELSEWHERE[route] === undefined)).toEqual([]);
  expect(Object.keys(TRIED_ELSEWHERE).filter((route) => !laid.routes.includes(route))).toEqual([]);
});

test('what docs/bad-input.md counts of every run is so', () => {
  const { routes, saved } = sentAlways(laid.routes.length);
  const written = countsWritten();
  expect(written.find(([what]) => what === 'routes')?.[1]?.split(',')[0]).toBe(routes);
  expect(written).toEqual(expect.arrayContaining(saved));
});

/** One form of each route; tests/long sends them all. */
test('forms with something odd in them are answered well, and change nothing where they are refused', async () => {
  await fuzzForms(fuzzed, { ...ways, forms: oneOfEachRoute(ways.forms) }, { seed: SEED, runs: 1 });
  expect(fuzzed.tally.amiss).toEqual([]);
}, 600_000);

test('addresses with something odd in them are answered well', async () => {
  await fuzzPaths(fuzzed, ways, { seed: SEED, runs: 1 });
  expect(fuzzed.tally.amiss).toEqual([]);
}, 600_000);

test('questions with something odd in them are answered well, and change nothing', async () => {
  await fuzzQuestions(fuzzed, ways, { seed: SEED, runs: 1 });
  expect(fuzzed.tally.amiss).toEqual([]);
}, 600_000);
