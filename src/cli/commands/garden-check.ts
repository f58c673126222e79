import { doubtsOf } from '../../steward/doubts/doubts.ts';
import { command } from '../command-line/command.ts';
import { clockOf } from '../command-line/household.ts';
import { everywhere, formatOption } from '../command-line/options.ts';
import { gardenSummary, readGarden, readRecord, tryGarden } from '../files/garden-source.ts';
import { doubtLines } from '../text/doubt-lines.ts';
import { writeJson, writeLines } from '../text/output.ts';

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
