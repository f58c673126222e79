/**
 * GET /health: for whoever watches over the program. It tells nothing of gardens, for it is answered to everybody.
 */
import { randomUUID } from 'node:crypto';
import type { Handler } from 'hono';
import type { Steward } from '../../steward/doings/steward.ts';

/**
 * 200 where the program does its work; 503 with a word on what fails where it does not. The number of this run
 * is told with it, so that somebody who asks a public address can tell whose answer came.
 */
export function healthOf(steward: Pick<Steward, 'whatFails'>): Handler {
  const run = randomUUID();
  return async (c) => {
    const failing = await steward.whatFails();
    c.header('Cache-Control', 'no-store');
    return failing === undefined
      ? c.json({ status: 'ok', run })
      : c.json({ status: 'failing', what: failing, run }, 503);
  };
}
