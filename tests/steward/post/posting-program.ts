/**
 * A program of its own that sends what is due in the database named on its command line, at the port and the moment named
 * there, and says how each list ended.
 */
import { createSteward } from '../../../src/steward/create-steward.ts';
import { openStore } from '../../../src/store/store.ts';

const [file = '', port = '', moment = ''] = process.argv.slice(2);
const store = await openStore({ file });
const steward = createSteward({
  store,
  clock: { now: () => moment },
  post: {
    server: { host: '127.0.0.1', port: Number(port), secretFromStart: false },
    outbox: 'outbox',
    from: 'garden@example.org',
  },
});
// Two that are started together begin together: each has opened its data before either sends.
process.stdout.write('ready\n');
for await (const _ of process.stdin);
for (const { state } of await steward.sendDue()) process.stdout.write(`${state}\n`);
await steward.close();
