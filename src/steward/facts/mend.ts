/**
 * Changing what a garden was told: checked as a whole file, tried out as a plan, and kept as what changed.
 */
import { logsInWords } from '../../digest/log-words.ts';
import { type RowReader, rowInWords, type TellableRow } from '../../digest/row-words.ts';
import { type Edit, type EditedFile, editedFile } from '../../garden/edit.ts';
import { gardenFileOf } from '../../garden/export-garden-file.ts';
import type { Fact } from '../../garden/facts.ts';
import { fileDifferences } from '../../garden/file-difference.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { everyItemId } from '../../garden/item-ids.ts';
import { storedEdits } from '../../garden/kept-edits.ts';
import { heldFile } from '../../garden/member-ids.ts';
import { InputRefused } from '../../garden/problem.ts';
import { checkGardenFile } from '../../garden/read-garden-file.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import type { MendPreview } from '../doings/steward.ts';
import { movesBetween } from '../ledger/moves-between.ts';
import type { Planner, TriedOut, VersionedView } from '../planning/planner.ts';
import { refuseCrowded } from './crowded.ts';
import { loggedProblems } from './reports.ts';
import { readerOf } from './row-reader.ts';

/** Edits as they would be kept, and the file they make. */
interface Mend {
  before: GardenFile;
  edited: EditedFile;
  checked: GardenFile;
  /** None where nothing changes. */
  facts: Fact[];
}

/** A mend on its way into the ledger. */
export interface MendTaken {
  /** The fact that the edits make; none where they change nothing. */
  facts: readonly Fact[];
  /** Refuses the garden with them where two crops would come to stand in each other's way. */
  refuse: (tried: TriedOut) => void;
}

/**
 * What edits are kept as.
 *
 * @throws {InputRefused} with every problem, where the garden as it would be cannot be read
 */
export async function mendTaken(view: VersionedView, edits: readonly Edit[]): Promise<MendTaken> {
  const { checked, facts } = await refusing(async () => mendOf(view, edits));
  const refuse = ({ garden, climate }: TriedOut) => refuseCrowded(checked, garden, climate, view.garden);
  return { facts, refuse };
}

/**
 * What edits would change, and do to the plan. Nothing is kept.
 *
 * @throws {InputRefused} with every problem, where the garden as it would be cannot be read, or no plan can be made of it
 */
export async function mendPreview(planner: Planner, view: VersionedView, edits: readonly Edit[]): Promise<MendPreview> {
  return refusing(async () => {
    const mend = mendOf(view, edits);
    const { garden, plan: after } = await triedOut(planner, view, mend);
    const { before, edited } = mend;
    const reader = readerOf(view.garden);
    return {
      before: view.plan,
      after,
      garden,
      moves: movesBetween(view.plan, after),
      differences: fileDifferences(before, gardenFileOf(garden)),
      gone: [
        ...ownLogs(before, edits),
        ...edited.goneAlong.map(({ list, row }) => ({ list, words: goneInWords(list, row, reader) })),
      ],
      refs: edited.refs,
    };
  });
}

function mendOf({ garden, ledger, plan }: VersionedView, edits: readonly Edit[]): Mend {
  const before = gardenFileOf(garden);
  const taken = everyItemId(ledger);
  const edited = editedFile(before, edits, taken);
  const days = edits.flatMap((edit) => ('days' in edit ? edit.days : []));
  const problems = loggedProblems(days, plan.today);
  if (problems.length > 0) throw new InputRefused('It cannot be taken in.', problems);
  const checked = checkGardenFile(edited.file, heldFile(ledger));
  const stored = storedEdits({ before, edits, refs: edited.refs, taken }, checked);
  return { before, edited, checked, facts: stored.length === 0 ? [] : [{ kind: 'garden-mended', edits: stored }] };
}

/**
 * The same with a long record behind the garden that is kept together with the edits.
 *
 * @throws {InputRefused} as {@link mendPreview}; also where the record is too short to plan by
 */
export async function mendWithRecord(
  planner: Planner,
  view: VersionedView,
  edits: readonly Edit[],
  record: WeatherRecord,
): Promise<{ tried: TriedOut; facts: readonly Fact[] }> {
  if (edits.length === 0) return { tried: await planner.wouldBe(view.ledger, view, record), facts: [] };
  return refusing(async () => {
    const mend = mendOf(view, edits);
    return { tried: await triedOut(planner, view, mend, record), facts: mend.facts };
  });
}

/** The garden and its plan with a mend taken in: refused where two crops would come to stand in each other's way. */
async function triedOut(
  planner: Planner,
  view: VersionedView,
  { checked, facts }: Mend,
  record?: WeatherRecord,
): Promise<TriedOut> {
  const [fact] = facts;
  if (fact === undefined) return view;
  const { today } = view.plan;
  const entry = (view.ledger.at(-1)?.entry ?? 0) + 1;
  const told = { entry, recordedAt: `${today}T00:00:00.000Z`, recordedOn: today, by: '', fact };
  const tried = await planner.wouldBe([...view.ledger, told], view, record);
  refuseCrowded(checked, tried.garden, tried.climate, view.garden);
  return tried;
}

/** The logs of what is taken out itself. */
function ownLogs(before: GardenFile, edits: readonly Edit[]): { list: string; words: string }[] {
  return edits.flatMap((edit) => {
    if (!('id' in edit) || edit.row !== undefined) return [];
    const row = before[edit.list].find(({ id }) => id === edit.id);
    const words = row && logsInWords(edit.list, row);
    return words === undefined ? [] : [{ list: edit.list, words }];
  });
}

/** What goes along, with what its own logs hold. */
function goneInWords(list: string, row: TellableRow, reader: RowReader): string {
  const logs = logsInWords(list, row);
  return `${rowInWords(list, row, reader)}${logs === undefined ? '' : `, with ${logs}`}`;
}

/** Says of whatever is refused that it is a change that was. */
export async function refusing<Made>(make: () => Promise<Made>): Promise<Made> {
  try {
    return await make();
  } catch (error) {
    if (error instanceof InputRefused) throw new InputRefused('It cannot be changed.', error.problems);
    throw error;
  }
}
