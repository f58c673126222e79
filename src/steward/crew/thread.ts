/**
 * A thread of the crew: it computes, one work at a time, and hands back data.
 */
import { once } from 'node:events';
import { parentPort } from 'node:worker_threads';
import { errorOf, type FromThread, faultOf, type ToThread } from './messages.ts';
import { type Asked, type Ground, noClimates, workOut } from './work.ts';

const climates = noClimates();
const port = parentPort;
if (port === null) throw new Error('This file is begun as a thread by the program, never by itself.');

const say = (message: FromThread): void => port.postMessage(message);

async function ground(): Promise<Ground> {
  say({ wants: 'ground' });
  const [message] = (await once(port as NonNullable<typeof port>, 'message')) as [ToThread];
  if ('ground' in message) return message.ground;
  throw 'noGround' in message ? errorOf(message.noGround) : new Error('A work came while another was going on.');
}

async function work(asked: Asked): Promise<void> {
  try {
    say({ done: await workOut(asked, { climates, ground }) });
  } catch (error) {
    say({ failed: faultOf(error) });
  }
}

port.on('message', (message: ToThread) => {
  if ('asked' in message) void work(message.asked);
});
