/**
 * What a script sends of a pile, sent wrong.
 */
import fc from 'fast-check';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { Fuzzed } from './fuzzed.ts';
import { type Laid, sharedHousehold } from './household.ts';
import { ODD_TEXTS } from './odd-values.ts';

let laid: Laid;
let fuzzed: Fuzzed;
beforeAll(async () => {
  laid = await sharedHousehold();
  fuzzed = new Fuzzed(laid);
}, 300_000);
afterAll(() => fuzzed.close());

const PATH = '/api/piles/spring-pile/readings';

function told(body: string | Uint8Array<ArrayBuffer>, headers: Record<string, string> = {}, path = PATH) {
  const { key } = laid.handles.hither.key;
  const said = typeof body === 'string' ? body : '';
  return fuzzed.sent(`POST ${path.slice(0, 100)} ${said.slice(0, 200)}`, said, ({ ask }) =>
    ask(path, {
      method: 'POST',
      headers: { Authorization: `Bearer ${key}`, 'Content-Type': 'application/json', ...headers },
      body,
    }),
  );
}

const WRONG: readonly (string | Uint8Array<ArrayBuffer>)[] = [
  '',
  'null',
  '7',
  '"tempC"',
  '[]',
  '{',
  '{}',
  '{"tempC":NaN}',
  '{"tempC":1e999}',
  '{"tempC":-0}',
  '{"tempC":"55"}',
  '{"tempC":[55]}',
  '{"tempC":1234567890123456789012345678901234567890}',
  '{"tempC":55,"tempF":131}',
  '{"tempC":55,"on":"2027-02-29"}',
  '{"tempC":55,"on":"+275760-09-13"}',
  '{"tempC":55,"on":"9999-12-31"}',
  '{"tempC":55,"on":20270420}',
  '{"tempC":55,"at":"25:00"}',
  '{"tempC":55,"__proto__":{"x":1}}',
  '{"constructor":{"prototype":1},"tempC":55}',
  '{"tempC":55,"\u0000":1}',
  `{"tempC":${'['.repeat(30_000)}${']'.repeat(30_000)}}`,
  `${'{"a":'.repeat(10_000)}1${'}'.repeat(10_000)}`,
  `{"smell":"${'x'.repeat(60_000)}"}`,
  new Uint8Array([0xff, 0xfe, 0x7b, 0x00, 0x7d, 0x00]),
  new Uint8Array([0xef, 0xbb, 0xbf, 0x7b, 0x80, 0x7d]),
];

test('a body that is no reading is refused in JSON, and changes nothing', async () => {
  for (const body of WRONG) {
    const { status } = await told(body);
    const shown = typeof body === 'string' ? body.slice(0, 60) : 'octets';
    // A minus before nought is nought: the one of them that can be meant.
    expect([shown, status]).toEqual([shown, shown === '{"tempC":-0}' ? 201 : 422]);
  }
  expect((await told(`"${'x'.repeat(64 * 1024)}"`)).status).toBe(413);
  expect((await told('['.repeat(100_000))).status).toBe(413);
  expect(fuzzed.tally.amiss).toEqual([]);
});

test('any JSON is answered with less than a fault', async () => {
  const values = fc.oneof(fc.jsonValue(), fc.constantFrom(...ODD_TEXTS), fc.double());
  const fields = fc.constantFrom(
    'on',
    'at',
    'tempC',
    'tempF',
    'moisture',
    'smell',
    'pests',
    'slumped',
    '__proto__',
    'x',
  );
  const bodies = fc.array(fc.tuple(fields, values), { minLength: 1, maxLength: 4 });
  for (const pairs of fc.sample(bodies, { seed: 20270420, numRuns: 40 })) {
    await fuzzed.anew();
    await told(`{${pairs.map(([name, value]) => `${JSON.stringify(name)}:${JSON.stringify(value)}`).join(',')}}`);
  }
  expect(fuzzed.tally.amiss).toEqual([]);
}, 120_000);

test('keys and piles that are none are refused', async () => {
  await fuzzed.anew();
  const good = '{"tempC":50}';
  for (const key of ['', 'Bearer', 'Bearer ', `Bearer ${'x'.repeat(5000)}`, 'Basic eDp5', 'Bearer __proto__']) {
    expect((await told(good, { Authorization: key })).status).toBe(401);
  }
  for (const pile of ['__proto__', 'constructor', '%00', '%ff', '..', 'x'.repeat(5000), '%F0%9F%91%A9']) {
    expect((await told(good, {}, `/api/piles/${pile}/readings`)).status).toBeGreaterThanOrEqual(400);
  }
  expect(fuzzed.tally.amiss).toEqual([]);
});
