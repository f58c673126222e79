import { gardenFileOf, gardenFileText } from '../../garden/export-garden-file.ts';
import { command, switchOption } from '../command-line/command.ts';
import { chosenGarden, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { writeWhole } from '../files/files.ts';
import { writeLines } from '../text/output.ts';

/** Stands for standard output, as it does in other programs. */
const STANDARD_OUTPUT = '-';

export const gardenExport = command({
  name: 'export',
  about: 'Writes the garden as it stands into a garden file, with every id.',
  argument: { flags: '<file>', about: 'the file to write, or - for standard output' },
  options: { replace: switchOption('--replace', 'write over a file that is there'), ...ofOneGarden },
  run: (call) =>
    withHousehold(call, { onlyLook: true }, async ({ steward }) => {
      const { at, options, argument: name = '' } = call;
      const { garden } = await steward.view(await chosenGarden(steward, options.garden));
      const file = gardenFileOf(garden);
      const text = gardenFileText(file);
      if (name === STANDARD_OUTPUT) {
        at.stdout.write(text);
        return;
      }
      await writeWhole(at.cwd, name, text, options.replace ?? false);
      const { dailyRecord } = file.climate;
      writeLines(at.stdout, [
        `Written to ${name}.`,
        ...(dailyRecord === undefined
          ? []
          : [`The weather record ${dailyRecord} is not in it: keep that file beside it.`]),
      ]);
    }),
});
