import { wrapped } from '../../digest/wrapped.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import type { Day } from '../../measures/days.ts';
import type { UndoPreview } from '../../steward/doings/steward.ts';
import { factInWords } from '../../web/words/ledger-words.ts';
import { command, switchOption } from '../command-line/command.ts';
import { BY, chosenGarden, withHousehold } from '../command-line/household.ts';
import { formatOption, ofOneGarden } from '../command-line/options.ts';
import { numberValue } from '../command-line/values.ts';
import { moveLines, section } from '../text/moves-text.ts';
import { writeJson, writeLines } from '../text/output.ts';

/** Most entries a ledger is asked about at once. */
const LAST_ENTRY = 1_000_000_000;

export const undo = command({
  name: 'undo',
  about: 'Shows what taking back the newest change, or an older one, would do; does it with --apply.',
  options: {
    entry: {
      flags: '--entry <number>',
      about: 'an older change (default: the newest)',
      value: numberValue('the number of an entry', 12, 1, LAST_ENTRY).optional(),
    },
    apply: switchOption('--apply', 'take it back'),
    ...ofOneGarden,
    format: formatOption('text', 'json'),
  },
  run: (call) => {
    const { at, options } = call;
    const apply = options.apply ?? false;
    return withHousehold(call, { onlyLook: !apply }, async ({ steward }) => {
      const gardenId = await chosenGarden(steward, options.garden);
      const preview = await steward.previewUndo(gardenId, options.entry);
      const { garden, plan } = await steward.view(gardenId);
      const { today } = plan;
      if (preview !== undefined && apply) await steward.undo(gardenId, preview.entry.entry, BY);
      const { units } = garden.place;
      if (options.format === 'json') writeJson(at.stdout, undoJson({ garden, today }, preview, apply), units);
      else writeLines(at.stdout, undoLines({ garden, today }, preview, apply));
    });
  },
});

/** The garden and the day it is looked at. */
interface Looked {
  garden: Garden;
  today: Day;
}

function undoJson({ garden, today }: Looked, preview: UndoPreview | undefined, applied: boolean): object {
  if (preview === undefined) return { garden: garden.id, applied: false, entry: null, leaning: [], moves: [] };
  const entryJson = (row: LedgerEntry): object => {
    const { entry, recordedAt, recordedOn, by, fact } = row;
    return { entry, recordedAt, recordedOn, by, kind: fact.kind, text: factInWords(fact, garden, today) };
  };
  const { entry, leaning, moves } = preview;
  return { garden: garden.id, applied, entry: entryJson(entry), leaning: leaning.map(entryJson), moves };
}

function undoLines({ garden, today }: Looked, preview: UndoPreview | undefined, applied: boolean): string[] {
  if (preview === undefined) return ['Nothing can be undone: nothing was marked or changed yet.'];
  const { units } = garden.place;
  const { entry, leaning, moves } = preview;
  const told = ({ entry: number, fact }: LedgerEntry): string => `${number}: ${factInWords(fact, garden, today)}`;
  return [
    ...wrapped(`${applied ? 'Taken back' : 'Would take back'} entry ${told(entry)}`),
    ...section('Later changes about the same things, which stay:', leaning.map(told)),
    ...moveLines(`What ${applied ? 'moved' : 'would move'}:`, moves, units),
    ...(applied ? [] : ['', 'Nothing was changed. Add --apply to take it back.']),
  ];
}
