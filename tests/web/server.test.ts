import { once } from 'node:events';
import { request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { assertBindable, serveApp } from '../../src/web/server.ts';
import { sampleApp } from './sample-garden.ts';

test.each(['127.0.0.1', '127.0.0.2', '::1', 'localhost'])('listens on %s', (hostname) => {
  expect(() => assertBindable(hostname)).not.toThrow();
});

test.each(['0.0.0.0', '::', '192.168.1.20', '127.evil.example', 'hollow.local', ''])(
  'refuses to listen on "%s", and says what to do',
  (hostname) => {
    expect(() => assertBindable(hostname)).toThrow(/password.*127\.0\.0\.1.*LOAMTIDE_PUBLIC_URL/s);
  },
);

test('refuses before it listens', async () => {
  const { app } = await sampleApp();
  await expect(serveApp(app, { hostname: '0.0.0.0', port: 0 })).rejects.toThrow('0.0.0.0');
});

test('answers over a socket, and hears the Host header the client sent', async () => {
  const port = await listening();
  expect(await statusOf(port, '127.0.0.1:8137')).toBe(200);
  expect(await statusOf(port, 'attacker.example')).toBe(421);
});

test('says when the port is taken', async () => {
  const port = await listening();
  const { app } = await sampleApp();
  await expect(serveApp(app, { hostname: '127.0.0.1', port })).rejects.toThrow('EADDRINUSE');
});

async function listening(): Promise<number> {
  const { app } = await sampleApp();
  const server = await serveApp(app, { hostname: '127.0.0.1', port: 0 });
  onTestFinished(() => void server.close());
  return (server.address() as AddressInfo).port;
}

async function statusOf(port: number, host: string): Promise<number | undefined> {
  const asked = request({ host: '127.0.0.1', port, path: '/health', headers: { Host: host }, agent: false });
  asked.end();
  const [answer] = await once(asked, 'response');
  answer.resume();
  return answer.statusCode;
}
