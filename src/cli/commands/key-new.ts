import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { writeLines } from '../text/output.ts';

export const keyNew = command({
  name: 'new',
  about: 'Makes a key for a script that tells of piles, and shows it this once.',
  options: {
    label: {
      flags: '--label <text>',
      about: 'what it is for (default: thermometer)',
      value: textValue('Give a label, such as "pile probe".').optional(),
    },
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options, settings } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const { kept, key } = await steward.addReadingKey(gardenId, options.label ?? 'thermometer');
      const { garden } = await steward.view(gardenId);
      const pile = garden.piles.at(-1)?.id ?? 'PILE';
      writeLines(at.stdout, [
        `${kept.id} (${kept.label}): ${key}`,
        'It is not kept in a form that can be shown again. A reading is sent with:',
        `  curl -X POST http://127.0.0.1:${settings.port}/api/piles/${pile}/readings -H "Authorization: Bearer ${key}" -H "Content-Type: application/json" -d '{"tempC": 58}'`,
      ]);
    }),
});
