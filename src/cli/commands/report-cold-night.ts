import { z } from 'zod';
import { wrapped } from '../../digest/wrapped.ts';
import { readTemperature } from '../../measures/typed-temperature.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { dayValue } from '../command-line/values.ts';
import { moveLines } from '../text/moves-text.ts';
import { writeLines } from '../text/output.ts';

const LOW_MEND = 'Give degrees with their unit, such as -1C or 30F, between -60C and 40C.';

/** A night's low with its unit written, as °C. */
const lowValue = z.string({ error: LOW_MEND }).transform((text, context) => {
  const tempC = readTemperature(text);
  if (tempC !== undefined) return tempC;
  context.addIssue({ code: 'custom', message: LOW_MEND });
  return z.NEVER;
});

export const reportColdNight = command({
  name: 'cold-night',
  about: 'Tells how cold a night is expected to be, or was, and shows the tasks that come of it.',
  options: {
    evening: { flags: '--evening <day>', about: 'the evening the night begins on', value: dayValue },
    low: { flags: '--low <degrees>', about: 'its low with the unit, such as -1C or 30F', value: lowValue },
    measured: switchOption('--measured', 'a thermometer in the garden showed it; without this it is a forecast'),
    ...ofOneGarden,
  },
  run: (call) =>
    withHousehold(call, {}, async ({ steward }) => {
      const { at, options } = call;
      const gardenId = await chosenGarden(steward, options.garden);
      const { evening, low: lowC } = options;
      const how = options.measured ? 'measured' : 'expected';
      const report = { kind: 'cold-night-told', evening, lowC, how } as const;
      const { garden, before, moves } = await steward.previewReport(gardenId, report);
      await steward.report(gardenId, report, BY);
      const tasks = moveLines('What comes of it:', moves, garden.place.units);
      writeLines(at.stdout, [
        ...wrapped(factInWords(report, garden, before.today)),
        ...(tasks.length === 0 ? ['', 'Nothing in the plan changes.'] : tasks),
      ]);
    }),
});
