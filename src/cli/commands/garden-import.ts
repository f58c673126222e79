import { wrapped } from '../../digest/wrapped.ts';
import type { FileDifference } from '../../garden/file-difference.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { doubtsOf } from '../../steward/doubts/doubts.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, clockOf, withHousehold } from '../command-line/household.ts';
import { ofOneGarden } from '../command-line/options.ts';
import { choiceValue } from '../command-line/values.ts';
import { type Incoming, incoming } from '../files/garden-incoming.ts';
import { gardenSummary, readGarden, tryGarden } from '../files/garden-source.ts';
import { counted } from '../text/counted.ts';
import { doubtLines } from '../text/doubt-lines.ts';
import { writeLines } from '../text/output.ts';

export const gardenImport = command({
  name: 'import',
  about: 'Brings a garden in. Of one that is there already it first shows what would change; --apply does it.',
  argument: { flags: '<file>', about: 'a garden file, YAML or JSON' },
  options: {
    apply: switchOption('--apply', 'bring it into the garden that is there'),
    prefer: {
      flags: '--prefer <which>',
      about: 'who wins where a reported fact stands against the file: reported, file (default: reported)',
      value: choiceValue(['reported', 'file']).optional(),
    },
    ...ofOneGarden,
  },
  run: async (call) => {
    const { at, options, argument: name = '' } = call;
    const wanted = { cwd: at.cwd, name, gardenId: options.garden, prefer: options.prefer ?? 'reported' };
    // Read once before the data folder is opened, so that a file that cannot be used makes none.
    await readGarden(at.cwd, name);
    await withHousehold(call, { make: true }, async (household) => {
      const found = await incoming(household, wanted);
      if (found.known !== undefined) {
        writeLines(at.stdout, differenceLines(found));
        const tried = await tryGarden(withHeld(found), clockOf(at, options.today));
        if (!changesAnything(found)) return;
        if (!options.apply) {
          writeLines(at.stdout, [...told(found, tried), '', 'Nothing was written. Add --apply to bring it in.']);
          return;
        }
      }
      await household.steward.importGarden(found.garden, BY);
      const view = await household.steward.view(found.garden.file.garden.id ?? '');
      writeLines(at.stdout, ['Brought in.', gardenSummary(view), ...told(found, view)]);
    });
  },
});

/** What the file says that is hardly meant. */
function told({ garden: { file } }: Incoming, view: GardenView): string[] {
  return doubtLines(doubtsOf(file, view), view.garden.place.units, view.plan.today);
}

function changesAnything({ garden, known }: Incoming): boolean {
  return known === undefined || known.differences.length > 0 || garden.record !== undefined;
}

/** The import with the record it would be planned by. */
function withHeld({ garden, known }: Incoming): Incoming['garden'] {
  const record = garden.record ?? known?.held;
  return record === undefined ? garden : { ...garden, record };
}

function differenceLines(found: Incoming): string[] {
  const { garden, known } = found;
  if (known === undefined) return [];
  if (!changesAnything(found)) return [`${known.id} is here already, and the file says nothing new.`];
  const { record } = garden;
  return [
    `${known.id} is here already. The file would change:`,
    ...known.differences.flatMap((difference) => wrapped(differenceLine(difference), '  ', '    ')),
    ...(record === undefined ? [] : [`  the weather record: ${counted(record.days.length, 'day')}. ${record.origin}`]),
  ];
}

function differenceLine({ path, now, file, keeps }: FileDifference): string {
  const kept =
    keeps === undefined
      ? ''
      : keeps === 'reported'
        ? ' (what was reported is kept)'
        : ' (the file is taken at its word)';
  return `${path}: now ${now}; in the file ${file}${kept}`;
}
