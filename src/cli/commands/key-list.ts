import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { columns, writeLines } from '../text/output.ts';

export const keyList = command({
  name: 'list',
  about: 'Lists the keys for scripts that tell of piles; the keys themselves cannot be shown.',
  options: { ...ofOneGarden },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const keys = await steward.readingKeys(await chosenGarden(steward, options.garden));
      if (keys.length === 0) writeLines(at.stdout, ['There is no key yet. Make one with: loamtide key new']);
      else {
        const rows = keys.map(({ id, label, createdAt, revokedAt }) => [
          id,
          label,
          `made ${createdAt.slice(0, 10)}`,
          revokedAt === undefined ? 'open' : `revoked ${revokedAt.slice(0, 10)}`,
        ]);
        writeLines(at.stdout, columns(rows));
      }
    }),
});
