/**
 * GET /health: for whoever watches over the program. It tells nothing of gardens, for it is answered to everybody.
 */
import type { Handler } from 'hono';
import type { Steward } from '../steward/steward.ts';

/** 200 where the program does its work; 503 with a word on what fails where it does not. */
export function healthOf(steward: Pick<Steward, 'whatFails'>): Handler {
  return async (c) => {
    const failing = await steward.whatFails();
    c.header('Cache-Control', 'no-store');
    return failing === undefined ? c.json({ status: 'ok' }) : c.json({ status: 'failing', what: failing }, 503);
  };
}
