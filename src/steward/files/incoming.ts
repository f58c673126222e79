/**
 * A garden file on its way in: what it says, what it would change, and who wins where it meets what was reported.
 */
import { gardenFileOf } from '../../garden/export-garden-file.ts';
import { importDifferences } from '../../garden/file-difference.ts';
import type { Garden } from '../../garden/garden.ts';
import type { GardenFile } from '../../garden/garden-file.ts';
import { editsBetween } from '../../garden/kept-edits.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { heldFile } from '../../garden/member-ids.ts';
import { gardenOfFile, projectGarden } from '../../garden/project.ts';
import { readGardenFile } from '../../garden/read-garden-file.ts';
import type { StoredEdit } from '../../garden/stored-edit.ts';
import { readStationTable } from '../../store/station-file.ts';
import type { HandedFile, ImportPreview } from '../doings/steward.ts';
import { doubtsOf } from '../doubts/doubts.ts';
import { refusal } from '../facts/marking.ts';
import { movesBetween } from '../ledger/moves-between.ts';
import { type ImportRoom, tryImport } from './imports.ts';

/**
 * Reads a garden file and tries it out. Nothing is kept.
 *
 * @throws {InputRefused} with every problem, where it cannot be read, is another garden's, or no plan can be made of it
 */
export async function importPreview(room: ImportRoom, handed: HandedFile): Promise<ImportPreview> {
  const { store, planner } = room;
  const { text, prefer, gardenId } = handed;
  const stations = new Set((await readStationTable()).map(({ id }) => id));
  const ledger = gardenId === undefined ? [] : await store.ledger(gardenId);
  const file = readGardenFile(text, heldFile(ledger), stations);
  const id = file.garden.id ?? '';
  if (gardenId === undefined) await refuseKnown(room, id);
  else if (gardenId !== id) throw otherGarden(gardenId, id);
  const tried = await tryImport(room, { file, prefer }, '');
  const { garden, climate, plan } = tried;
  const view = { garden, climate, plan, ledger: tried.ledger };
  const doubts = doubtsOf(file, view);
  if (gardenId === undefined) return { file, view, changes: [], ofPeople: [], against: [], moves: [], doubts };
  const now = await planner.view(gardenId);
  const { today } = now.plan;
  const differences = importDifferences(ledger, file, { prefer, readOn: today }) ?? [];
  return {
    file,
    view,
    changes: editsBetween(gardenFileOf(now.garden), gardenFileOf(garden)),
    ofPeople: differences.filter(({ path }) => path.startsWith('household.members') || path.startsWith('work given')),
    against: standsAgainst(ledger, handed, { file, today, garden, before: now.garden }),
    moves: movesBetween(now.plan, plan),
    doubts,
  };
}

interface Met {
  file: GardenFile;
  today: string;
  garden: Garden;
  before: Garden;
}

/** What the file says otherwise than the garden will be; or, where the file wins, what would be kept if it did not. */
function standsAgainst(ledger: readonly LedgerEntry[], { prefer }: HandedFile, met: Met): StoredEdit[] {
  const { file, today, garden, before } = met;
  if (prefer === 'reported') {
    const told = gardenOfFile(file, today, before.startedOn, before);
    return editsBetween(gardenFileOf(told), gardenFileOf(garden));
  }
  const entry = (ledger.at(-1)?.entry ?? 0) + 1;
  const fact = { kind: 'garden-imported' as const, file, prefer: 'reported' as const };
  const kept = projectGarden([
    ...ledger,
    { entry, recordedAt: `${today}T00:00:00.000Z`, recordedOn: today, by: '', fact },
  ]);
  return kept === undefined ? [] : editsBetween(gardenFileOf(garden), gardenFileOf(kept));
}

async function refuseKnown({ store }: ImportRoom, id: string): Promise<void> {
  if (!(await store.gardenIds()).includes(id)) return;
  throw refusal(
    'garden.id',
    `"${id}" is a garden here already.`,
    'Bring the file into that garden from its own page of the garden file, or write another id here.',
  );
}

function otherGarden(gardenId: string, inFile: string) {
  return refusal(
    'garden.id',
    `"${inFile}" is not this garden.`,
    `Write id: ${gardenId} to change this one, or bring the file in as a garden of its own.`,
  );
}
