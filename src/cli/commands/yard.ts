import { yardSheet } from '../../digest/yard-sheet.ts';
import { compostBalance } from '../../practices/catalogue.ts';
import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { writeJson, writeLines } from '../text/output.ts';
import { yardJson, yardLines } from '../text/yard-text.ts';

export const yard = command({
  name: 'yard',
  about: 'Shows the compost there is and to come against what the beds want, month by month.',
  options: { ...ofOneGarden, format: formatOption('text', 'json') },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const view = await steward.view(await chosenGarden(steward, options.garden));
      const { garden, climate, plan } = view;
      const sheet = yardSheet(compostBalance({ garden, climate, today: plan.today }), plan.today);
      if (options.format === 'json') writeJson(at.stdout, yardJson(sheet, garden), garden.place.units);
      else writeLines(at.stdout, yardLines(sheet, garden));
    }),
});
