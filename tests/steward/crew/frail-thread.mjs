/**
 * A thread that speaks as the crew's own do, and breaks as its work is named: "end", "hang"; "wait" asks for the ground and
 * ends where that is the first it is given. Anything else is done at once.
 */
import { parentPort } from 'node:worker_threads';

parentPort.on('message', ({ asked, ground }) => {
  if (ground?.record === 'end') process.exit(3);
  if (ground !== undefined || !['end', 'hang', 'wait'].includes(asked.climateName))
    return parentPort.postMessage({ done: {} });
  if (asked.climateName === 'end') process.exit(3);
  if (asked.climateName === 'wait') parentPort.postMessage({ wants: 'ground' });
});
