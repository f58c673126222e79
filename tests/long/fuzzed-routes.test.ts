/**
 * Every route sent odd things many times over, by a seed of each run's own; and every form once just as it should be.
 */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { sentAlways, writeCounts } from '../fuzz/counts.ts';
import { everyOddText, Fuzzed, fuzzForms, fuzzPaths, fuzzQuestions, sendTwisted } from '../fuzz/fuzzed.ts';
import { sharedHousehold } from '../fuzz/household.ts';
import { twisted } from '../fuzz/odd-values.ts';
import { sharedWays, type WaysIn } from '../fuzz/ways-in.ts';

const seed = Number(process.env.LOAMTIDE_FUZZ_SEED ?? Date.now() % 1_000_000);
/** How many times as much is sent as usually. */
const times = Number(process.env.LOAMTIDE_FUZZ_TIMES ?? 1);

let ways: WaysIn;
let routes = 0;
let fuzzed: Fuzzed;
beforeAll(async () => {
  console.log(`Routes are tried by the seed ${seed}: LOAMTIDE_FUZZ_SEED=${seed}`);
  ways = await sharedWays();
  const laid = await sharedHousehold();
  routes = laid.routes.length;
  fuzzed = new Fuzzed(laid);
}, 1_800_000);
afterAll(async () => {
  const told = [...counts].map(([what, { accepted, refused }]) => `${what}: ${accepted} taken, ${refused} refused`);
  console.log(told.join('\n'));
  if (process.env.LOAMTIDE_FUZZ_COUNTS === 'write') writeCounts(countRows());
  await fuzzed.close();
});

/** What came of each kind of request. */
const counts = new Map<string, { accepted: number; refused: number; amiss: number }>();

/** Counts what was sent since the last time under a name. */
function count(what: string): void {
  const { accepted, refused, amiss } = fuzzed.tally;
  const known = counts.get(what) ?? { accepted: 0, refused: 0 };
  const sum = { accepted: known.accepted + accepted, refused: known.refused + refused };
  counts.set(what, { ...sum, amiss: amiss.length });
  fuzzed.tally.accepted = 0;
  fuzzed.tally.refused = 0;
}

function countRows(): string[][] {
  const posted = ways.forms.filter(({ route }) => route.startsWith('POST')).length;
  const always = sentAlways(routes);
  return [
    ['routes', `${always.routes}, ${posted} forms on their pages`],
    ...[...counts].map(([what, { accepted, refused, amiss }]) => [
      what,
      `${accepted} taken, ${refused} refused, ${amiss} amiss`,
    ]),
    ...always.saved,
    ['the seed of this run', String(seed)],
  ];
}

/** Forms that are refused though nothing is wrong in them, and why. */
const REFUSED_AS_THEY_ARE: readonly RegExp[] = [
  // No list failed to go out.
  /household\/mail\/again/,
];

test('every form is taken as its page shows it, filled in', async () => {
  const refused: string[] = [];
  for (const way of ways.forms.filter(({ route }) => route.startsWith('POST'))) {
    if (REFUSED_AS_THEY_ARE.some((pattern) => pattern.test(way.name))) continue;
    const form = await fuzzed.form(way);
    const { status, body } = await fuzzed.sent(way.name, JSON.stringify(form.fields), (household) =>
      sendTwisted(household, form.action, twisted(form, []), form.withFiles),
    );
    const [, said = ''] = /role="alert"[^>]*>(.*?)<\/section>/s.exec(body) ?? [];
    if (status >= 400) refused.push(`${status} ${way.name}: ${said.replace(/<[^>]*>/g, ' ')}`);
  }
  count('forms as they are');
  expect(refused).toEqual([]);
  expect(fuzzed.tally.amiss).toEqual([]);
}, 1_800_000);

test('forms with something odd in them', async () => {
  await fuzzForms(fuzzed, ways, { seed, runs: times });
  count('forms with something odd in a field or two');
  expect(fuzzed.tally.amiss).toEqual([]);
}, 1_800_000);

test('addresses with something odd in them', async () => {
  await fuzzPaths(fuzzed, ways, { seed, runs: 3 * times });
  count('addresses with something odd in them');
  expect(fuzzed.tally.amiss).toEqual([]);
}, 1_800_000);

test('questions with something odd in them', async () => {
  await fuzzQuestions(fuzzed, ways, { seed, runs: 3 * times });
  count('questions with something odd in them');
  expect(fuzzed.tally.amiss).toEqual([]);
}, 1_800_000);

test.each(['report/pile', ':step where'])(
  'every saved value in every field of %s',
  async (part) => {
    const way = ways.forms.find(({ name }) => name.startsWith('POST') && name.includes(part));
    if (way === undefined) throw new Error(`No form is called ${part}.`);
    await everyOddText(fuzzed, way);
    count('forms with each saved value in each field');
    expect(fuzzed.tally.amiss).toEqual([]);
  },
  1_800_000,
);
