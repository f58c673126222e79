import { resolve } from 'node:path';
import { databaseIn, restoreStore } from '../../store/store.ts';
import { command } from '../command-line/command.ts';
import { dataFolder } from '../command-line/household.ts';
import { everywhere } from '../command-line/options.ts';
import { writeLines } from '../text/output.ts';

export const restore = command({
  name: 'restore',
  about: 'Puts a copy in place of the database, once it is checked; keeps what was there. Stop the server first.',
  argument: { flags: '<file>', about: 'a copy: made by backup, by the day, or before an upgrade' },
  options: everywhere,
  async run(call) {
    const { at, argument: name = '' } = call;
    const file = databaseIn(dataFolder(call));
    const { gardens, version, newest, aside } = await restoreStore({
      file,
      copy: resolve(at.cwd, name),
      now: at.now(),
    });
    const held = gardens.map(({ id, name: called, entries, lastChange }) => {
      const last = lastChange === undefined ? '' : `, the last of ${lastChange.slice(0, 10)}`;
      return `  ${called} (${id}): ${entries} changes${last}`;
    });
    writeLines(at.stdout, [
      `Put back ${name}, which was found sound:`,
      ...(held.length === 0 ? ['  no garden yet'] : held),
      ...(version < newest
        ? [`It is of version ${version}: the next start copies it and brings it to version ${newest}.`]
        : []),
      aside === undefined ? 'There was no database here before.' : `What was here before is kept as ${aside}`,
      'Now start the server.',
    ]);
  },
});
