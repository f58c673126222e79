import { command } from '../command.ts';
import { gardenSummary, readGarden, readRecord, tryGarden } from '../garden-source.ts';
import { clockOf } from '../household.ts';
import { everywhere } from '../options.ts';
import { writeLines } from '../output.ts';

export const gardenCheck = command({
  name: 'check',
  about: 'Says everything that is wrong with a garden file and its weather record; changes nothing.',
  argument: { flags: '<file>', about: 'a garden file, YAML or JSON' },
  options: everywhere,
  run: async ({ at, options, argument: name = '' }) => {
    const file = await readGarden(at.cwd, name);
    const record = await readRecord(at.cwd, name, file);
    const garden = { file, prefer: 'file' as const, ...(record === undefined ? {} : { record }) };
    const view = await tryGarden(garden, clockOf(at, options.today));
    writeLines(at.stdout, ['Nothing is wrong with it.', gardenSummary(view)]);
  },
});
