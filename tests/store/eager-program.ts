/**
 * A program of its own that opens the database named on its command line, says so, waits for its input to end and
 * then adds a hundred entries, reading the version again whenever another program was faster.
 */
import { openStore } from '../../src/store/store.ts';
import { NOON, skipping } from './entries.ts';

const [file = '', name = ''] = process.argv.slice(2);
const store = await openStore({ file });
await store.createGarden({ id: 'plot', name, createdAt: NOON }).catch(() => undefined);
process.stdout.write('ready');
for await (const _ of process.stdin);
for (let added = 0; added < 100; ) {
  const version = await store.factsVersion('plot');
  const { outcome } = await store.append('plot', version, [skipping(`${name}-${added}`)]);
  if (outcome === 'added') added += 1;
}
await store.close();
