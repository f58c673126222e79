import { doubtsOf } from '../../steward/doubts.ts';
import { command } from '../command.ts';
import { doubtLines } from '../doubt-lines.ts';
import { gardenSummary, readGarden, readRecord, tryGarden } from '../garden-source.ts';
import { clockOf } from '../household.ts';
import { everywhere, formatOption } from '../options.ts';
import { writeJson, writeLines } from '../output.ts';

export const gardenCheck = command({
  name: 'check',
  about: 'Says everything that is wrong or unlikely in a garden file and its weather record; changes nothing.',
  argument: { flags: '<file>', about: 'a garden file, YAML or JSON' },
  options: { ...everywhere, format: formatOption('text', 'json') },
  run: async ({ at, options, argument: name = '' }) => {
    const file = await readGarden(at.cwd, name);
    const record = await readRecord(at.cwd, name, file);
    const garden = { file, prefer: 'file' as const, ...(record === undefined ? {} : { record }) };
    const view = await tryGarden(garden, clockOf(at, options.today));
    const doubts = doubtsOf(file, view);
    const { units } = view.garden.place;
    if (options.format === 'json') return writeJson(at.stdout, { garden: view.garden.id, doubts }, units);
    const opening = doubts.length === 0 ? 'Nothing is wrong with it.' : 'It can be used as it stands.';
    writeLines(at.stdout, [opening, gardenSummary(view), ...doubtLines(doubts, units, view.plan.today)]);
  },
});
