import { resolve } from 'node:path';
import { command } from '../command-line/command.ts';
import { withHousehold } from '../command-line/household.ts';
import { everywhere } from '../command-line/options.ts';
import { codeOf, unwritable } from '../files/files.ts';
import { writeLines } from '../text/output.ts';

export const backup = command({
  name: 'backup',
  about: 'Copies the database, also while the server runs, into a new file, and checks the copy.',
  argument: { flags: '<file>', about: 'the copy: a file that does not exist yet' },
  options: everywhere,
  run: (call) =>
    withHousehold(call, {}, async ({ store }) => {
      const { at, argument: file = '' } = call;
      try {
        await store.backup(resolve(at.cwd, file));
      } catch (error) {
        throw unwritable(file, codeOf(error)) ?? error;
      }
      writeLines(at.stdout, [
        `Copied to ${file}, and found sound.`,
        'Keep it private: it holds the secrets of your feeds and mail. Put it back with "loamtide restore".',
      ]);
    }),
});
