/**
 * Bodies that are no form, sent to every address that takes one; and requests that are hardly HTTP, sent over a socket.
 */
import { connect } from 'node:net';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { servedGarden } from '../journeys/served-garden.ts';
import { GARDEN } from '../web/sample-garden.ts';
import { amissIn } from './amiss.ts';
import { Fuzzed } from './fuzzed.ts';
import { type Laid, sharedHousehold } from './household.ts';
import { sharedWays, type WaysIn } from './ways-in.ts';

let laid: Laid;
let ways: WaysIn;
let fuzzed: Fuzzed;
beforeAll(async () => {
  laid = await sharedHousehold();
  ways = await sharedWays();
  fuzzed = new Fuzzed(laid);
}, 300_000);
afterAll(() => fuzzed.close());

const FORM = 'application/x-www-form-urlencoded';
const PART = '--cut\r\nContent-Disposition: form-data; name="';

/** Bodies by what is wrong with them: the type they claim, and what they are. */
const BODIES: Readonly<Record<string, readonly [string | undefined, string | Uint8Array<ArrayBuffer>]>> = {
  'no type': [undefined, 'a=b'],
  'another type': ['application/json', '{"name":"x"}'],
  'a type that is none': ['form; ; =', 'a=b'],
  'parts without a boundary': ['multipart/form-data', 'a=b'],
  'parts whose boundary is not there': ['multipart/form-data; boundary=other', `${PART}name"\r\n\r\nx\r\n--cut--\r\n`],
  'parts cut off': ['multipart/form-data; boundary=cut', `${PART}name"\r\n\r\nhalf`],
  'parts cut off in their head': ['multipart/form-data; boundary=cut', `${PART}na`],
  'parts named like prototypes': ['multipart/form-data; boundary=cut', `${PART}__proto__"\r\n\r\nx\r\n--cut--\r\n`],
  'percents that mean nothing': [FORM, '%zz=%ff&%=%&=&&__proto__=1&constructor=2&a=%00'],
  'another charset': [`${FORM}; charset=utf-16`, new Uint8Array([0xff, 0xfe, 0x61, 0, 0x3d, 0, 0x62, 0])],
  'octets of no text': [FORM, new Uint8Array([0xc3, 0x28, 0x3d, 0xf0, 0x28, 0x8c, 0xbc])],
  'ten thousand fields': [FORM, Array.from({ length: 10_000 }, (_, at) => `f${at}=`).join('&')],
};

/** Of the bodies each address gets some: another one after each, so that all come to be sent to some. */
const EACH = 2;

test('a body that is no form is refused or found empty wherever it is sent', async () => {
  const kinds = Object.entries(BODIES);
  const actions = new Map(
    ways.forms.filter(({ route }) => route.startsWith('POST')).map((way) => [way.route, way.form]),
  );
  for (const [at, [route, { action }]] of [...actions].entries()) {
    for (const [what, [type, body]] of kinds.filter((_, kind) => (kind + at * 5) % kinds.length < EACH)) {
      const headers = type === undefined ? {} : { 'Content-Type': type };
      await fuzzed.sent(`${route} ${what}`, String(body), ({ ask }) => ask(action, { method: 'POST', headers, body }));
    }
  }
  expect(fuzzed.tally.amiss).toEqual([]);
}, 300_000);

/** Most octets a form may send. */
const FORM_BYTES = 64 * 1024;

test('a form that is too long is refused wherever one is sent, before it is read', async () => {
  await fuzzed.anew();
  const isLong = /\/edit\/|garden-file|bring-in|weather\/days$|weather\/record$/;
  const actions = new Map(
    ways.forms.filter(({ route }) => route.startsWith('POST')).map((way) => [way.route, way.form]),
  );
  const refused: [string, number][] = [];
  for (const [route, { action }] of actions) {
    if (isLong.test(route)) continue;
    const { status } = await fuzzed.sent(`${route} too long`, '', ({ ask }) =>
      ask(action, { method: 'POST', headers: { 'Content-Type': FORM }, body: `a=${'x'.repeat(FORM_BYTES)}` }),
    );
    refused.push([route, status]);
  }
  expect(refused.length).toBeGreaterThan(30);
  // A step of the mail is asked for by anybody who has its link: its own limit answers.
  expect(refused.filter(([, status]) => status !== 413)).toEqual([]);
  expect(fuzzed.tally.amiss).toEqual([]);
}, 60_000);

/** What a server says to a few lines sent as they are. */
function answerTo(port: number, lines: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1');
    let answer = '';
    const stop = setTimeout(() => socket.destroy(), 3_000);
    socket.on('data', (chunk) => {
      answer += chunk.toString('latin1');
      if (answer.includes('\r\n\r\n')) socket.end();
    });
    socket.on('close', () => {
      clearTimeout(stop);
      resolve(answer);
    });
    socket.on('error', (error: NodeJS.ErrnoException) => error.code !== 'ECONNRESET' && reject(error));
    socket.write(lines, 'latin1');
  });
}

test('requests that are hardly HTTP are refused, and the next one is answered', async () => {
  const { origin } = await servedGarden();
  const port = Number(new URL(origin).port);
  const host = `Host: 127.0.0.1:${port}\r\n`;
  const asked = (line: string, head = '') => `${line}\r\n${host}${head}Connection: close\r\n\r\n`;
  const requests = [
    asked('GET /../../../etc/passwd HTTP/1.1'),
    asked('GET /style.css/../../../package.json HTTP/1.1'),
    asked('GET /handbook/images/..%2f..%2f..%2fpackage.json HTTP/1.1'),
    asked('GET /handbook/images/%2e%2e/%2e%2e/package.json HTTP/1.1'),
    asked('GET /handbook/..%5c..%5cpackage HTTP/1.1'),
    asked('GET /%00 HTTP/1.1'),
    asked('GET /% HTTP/1.1'),
    asked('GET //evil.example.org/ HTTP/1.1'),
    asked('GET http://evil.example.org/ HTTP/1.1'),
    asked('GET * HTTP/1.1'),
    asked('GET /?%ff=%ff&&&=&[]=1 HTTP/1.1'),
    asked(`GET /${'a'.repeat(10_000)} HTTP/1.1`),
    asked(`GET /?${'a'.repeat(60_000)} HTTP/1.1`),
    asked('GET /\u00ff\u00fe HTTP/1.1'),
    asked('BREW / HTTP/1.1'),
    asked('TRACE / HTTP/1.1'),
    asked('OPTIONS * HTTP/1.1'),
    asked(`PROPFIND ${GARDEN} HTTP/1.1`),
    asked(`DELETE ${GARDEN} HTTP/1.1`),
    asked('GET / HTTP/1.1', 'Host: other.example.org\r\n'),
    asked('GET / HTTP/1.1', `X-Long: ${'x'.repeat(40_000)}\r\n`),
    asked('GET / HTTP/1.1', 'Cookie: __proto__=1; a=%ff; =; ;;;\r\n'),
    asked('GET / HTTP/1.1', 'Accept-Language: \u00ff;q=NaN,en-US;q=1e999\r\n'),
    asked('GET / HTTP/1.1', 'If-None-Match: """""\r\nIf-Modified-Since: Feb 30 2027\r\nRange: bytes=-1--9\r\n'),
    asked(`POST ${GARDEN}/feeds HTTP/1.1`, 'Sec-Fetch-Site: same-origin\r\nContent-Length: -1\r\n'),
    `${asked(`POST ${GARDEN}/feeds HTTP/1.1`, 'Sec-Fetch-Site: same-origin\r\nTransfer-Encoding: chunked\r\n')}zz\r\n`,
    asked(`POST ${GARDEN}/feeds HTTP/1.1`, 'Sec-Fetch-Site: same-origin\r\nTransfer-Encoding: gzip\r\n'),
    'GET / HTTP/1.1\r\nConnection: close\r\n\r\n',
    'GET / HTTP/9.9\r\n\r\n',
    'GET /\r\n\r\n',
    '\u0016\u0003\u0001\u0002\u0000\u0001\r\n\r\n',
  ];
  for (const request of requests) {
    const answer = await answerTo(port, request);
    const status = Number(/^HTTP\/1\.1 (\d{3})/.exec(answer)?.[1] ?? 0);
    const [line = ''] = request.split('\r\n');
    expect([line.slice(0, 80), status < 500]).toEqual([line.slice(0, 80), true]);
    expect(answer).not.toContain('"dependencies"');
    expect(answer).not.toContain('root:');
    const seen = { status: 200, body: answer, isPage: false, location: undefined };
    expect([line.slice(0, 80), ...amissIn(seen, request)]).toEqual([line.slice(0, 80)]);
  }
  expect(await answerTo(port, asked('GET /health HTTP/1.1'))).toContain('200 OK');
}, 60_000);
