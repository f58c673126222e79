import { getEventListeners } from 'node:events';
import { createServer } from 'node:net';
import { expect, onTestFinished, test } from 'vitest';
import { handIn } from '../../../src/steward/post/hand-in.ts';
import { mailCatcher } from './mail-catcher.ts';

const post = {
  from: 'garden@example.org',
  to: 'ida@example.com',
  message: Buffer.from('Subject: a list\r\n\r\nWork.\r\n'),
};

function at(port: number) {
  return { host: '127.0.0.1', port, secretFromStart: false };
}

/** Short enough to be waited for, long enough for a server on this computer. */
const WAITS = { beforeMs: 2_000, answerMs: 2_000 };

const mayBegin = async (): Promise<boolean> => true;

/** A port that takes a line and never says a word. */
async function silentPort(): Promise<number> {
  const server = createServer((line) => void line.on('error', () => undefined));
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', () => resolve()));
  onTestFinished(() => void server.close());
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}

test('a server that says nothing is left after a while, and the list is put off', async () => {
  const port = await silentPort();
  const handed = await handIn(at(port), post, { mayBegin, waits: { ...WAITS, beforeMs: 50 } });
  expect(handed).toMatchObject({
    state: 'delayed',
    problem: expect.stringContaining(`The mail server 127.0.0.1:${port} took too long to answer.`),
  });
  expect(handed).not.toHaveProperty('isOurStop');
});

test('one that falls silent with the message in hand leaves it unknown', async () => {
  const { port } = await mailCatcher({ onData: (stream) => void stream.resume() });
  const handed = await handIn(at(port), post, { mayBegin, waits: { ...WAITS, answerMs: 50 } });
  expect(handed).toMatchObject({ state: 'unknown', problem: expect.stringContaining('may have arrived or not') });
});

test('the wait for its answer begins with the message, however long it took until then', async () => {
  const { port, caught } = await mailCatcher({
    onRcptTo: (_address, _session, callback) => void setTimeout(callback, 300),
  });
  const waits = { beforeMs: 5_000, answerMs: 5_000 };
  expect(await handIn(at(port), post, { mayBegin, waits })).toEqual({ state: 'sent' });
  expect(caught).toHaveLength(1);
});

test('stopped while the log is asked, nothing goes out', async () => {
  const stopped = new AbortController();
  const { port, caught } = await mailCatcher();
  const stopAndAgree = async (): Promise<boolean> => {
    stopped.abort();
    return true;
  };
  const handed = await handIn(at(port), post, { mayBegin: stopAndAgree, signal: stopped.signal, waits: WAITS });
  expect(handed).toMatchObject({ state: 'delayed', isOurStop: true });
  expect(caught).toEqual([]);
  expect(getEventListeners(stopped.signal, 'abort')).toEqual([]);
});

test('stopped before it began, no line is opened', async () => {
  let lines = 0;
  const { port } = await mailCatcher({
    onConnect: (_session, callback) => {
      lines += 1;
      callback();
    },
  });
  const handed = await handIn(at(port), post, { mayBegin, signal: AbortSignal.abort(), waits: WAITS });
  expect([handed.isOurStop, lines]).toEqual([true, 0]);
});
