import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { refusal } from '../command-line/refusal.ts';
import { writeLines } from '../text/output.ts';

export const keyRevoke = command({
  name: 'revoke',
  about: 'Closes a key for good.',
  argument: { flags: '<id>', about: 'the key, as "key list" names it' },
  options: { ...ofOneGarden },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, argument: id = '' } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      if (!(await steward.revokeReadingKey(gardenId, id))) {
        const open = (await steward.readingKeys(gardenId)).filter(({ revokedAt }) => revokedAt === undefined);
        const mend = `Open keys: ${open.map((key) => key.id).join(', ') || 'none'}.`;
        throw refusal('Nothing was done.', 'the key', `"${id}" is no open key of this garden.`, mend);
      }
      writeLines(at.stdout, [`${id} is revoked: what it sends is refused from now on.`]);
    }),
});
