import { Hono } from 'hono';
import { expect, test } from 'vitest';
import { type Caller, knowCaller } from '../../../src/web/sign-in/caller.ts';

/** Who is taken to ask, through a proxy on this computer that is trusted. */
async function askedThrough(headers: Record<string, string>) {
  const settings = { port: 8137, hostNames: [], trustedProxies: ['127.0.0.1', '10.0.0.0/8'] };
  const app = new Hono().use(knowCaller(settings)).get('/', (c) => c.json(c.get('caller')));
  const { address, isAtHome, isHere } = (await (await app.request('/', { headers })).json()) as Caller;
  return [address, isAtHome, isHere];
}

test.each<[string, Record<string, string>, unknown[]]>([
  ['nobody behind it', {}, ['127.0.0.1', true, true]],
  ['a stranger', { 'X-Forwarded-For': '203.0.113.7' }, ['203.0.113.7', false, false]],
  ['one at home', { 'X-Forwarded-For': '192.168.1.30' }, ['192.168.1.30', true, false]],
  ['this computer itself', { 'X-Forwarded-For': '127.0.0.1' }, ['127.0.0.1', true, false]],
  [
    'a stranger who forged a station',
    { 'X-Forwarded-For': '192.168.1.30, 203.0.113.7' },
    ['203.0.113.7', false, false],
  ],
  ['a stranger behind two', { 'X-Forwarded-For': '203.0.113.7, 10.0.0.9' }, ['203.0.113.7', false, false]],
  ['an address with a port', { 'X-Forwarded-For': '203.0.113.7:40112' }, ['127.0.0.1', false, false]],
  ['no address', { 'X-Forwarded-For': 'unknown' }, ['127.0.0.1', false, false]],
  [
    'what cannot be read before a trusted station',
    { 'X-Forwarded-For': 'unknown, 10.0.0.9' },
    ['127.0.0.1', false, false],
  ],
  ['another header than the believed', { Forwarded: 'for=203.0.113.7' }, ['127.0.0.1', false, false]],
])('through a trusted proxy, %s', async (_, headers, seen) => {
  expect(await askedThrough(headers)).toEqual(seen);
});
