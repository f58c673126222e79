import { bedNamed } from '../command-line/bed-named.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { textValue } from '../command-line/values.ts';
import { fertilityJson, fertilityLines } from '../text/fertility-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

export const fertility = command({
  name: 'fertility',
  about:
    "What each bed's crops want of nitrogen against what soil, compost and legumes give, this season and the next.",
  options: {
    bed: {
      flags: '--bed <name>',
      about: 'one bed with its arithmetic, by its name or id',
      value: textValue('Name a bed.').optional(),
    },
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const view = await steward.view(await chosenGarden(steward, options.garden));
      const { garden } = view;
      const { units } = garden.place;
      const bed = options.bed === undefined ? undefined : bedNamed(garden.beds, options.bed);
      const told = (await steward.fertility(view)).filter(({ bedId }) => bed === undefined || bedId === bed.id);
      if (options.format === 'json') writeJson(at.stdout, { garden: garden.id, ...fertilityJson(told) }, units);
      else writeLines(at.stdout, fertilityLines(view, told, bed !== undefined));
    }),
});
