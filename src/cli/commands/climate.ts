import { command } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { climateJson, climateLines } from '../text/climate-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

export const climate = command({
  name: 'climate',
  about: 'Shows the odds of a freeze, the hardiness zone, and where both come from.',
  options: { ...ofOneGarden, format: formatOption('text', 'json') },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options } = call;
      const view = await steward.view(await chosenGarden(steward, options.garden));
      if (options.format === 'json') writeJson(at.stdout, climateJson(view), view.garden.place.units);
      else writeLines(at.stdout, climateLines(view));
    }),
});
