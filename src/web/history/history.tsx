/**
 * History: everything that was told, newest first, each with the way to take it back.
 */
import { fullDay } from '../../digest/words.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { standingEntries, undoneEntries } from '../../garden/project.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { type AskedAfter, entriesAbout } from '../../steward/ledger/entries-about.ts';
import { gardenFilePath, historyPath, recordPath, undoPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { factInWords } from '../words/ledger-words.ts';
import { HistoryWays } from './history-ways.tsx';

/** Entries on one page. House default: about a season of a busy garden. */
const ENTRIES_A_PAGE = 100;

/** A bed or a pile whose history is asked for, as a sentence names it. */
export interface HistoryAbout extends AskedAfter {
  name: string;
}

interface Asked {
  /** Only entries older than this one. */
  before?: number | undefined;
  about?: HistoryAbout | undefined;
}

/** The ledger in words. */
export function historyPage(view: GardenView, { before, about }: Asked) {
  const { garden, ledger } = view;
  const told = about === undefined ? ledger : entriesAbout(ledger, garden, about);
  const older = told.filter(({ entry }) => before === undefined || entry < before);
  const shown = older.slice(-ENTRIES_A_PAGE).reverse();
  const undone = undoneEntries(ledger);
  const undoable = undoableEntries(ledger);
  const oldest = shown.at(-1);
  return page(
    { title: 'History', garden, here: 'history' },
    <article class="history">
      <h1>History</h1>
      {about === undefined ? (
        <p>Everything this garden was told, the newest first. What is taken back stays on the list, struck through.</p>
      ) : (
        <p>
          {told.length === 0
            ? `Nothing was told of ${about.name} yet, beside the garden file. What is marked done or reported of it stands here from then on. `
            : `What was told of ${about.name}, beside the garden file. `}
          <a href={historyPath(garden.id)}>Everything this garden was told</a>
        </p>
      )}
      <p>
        <a href={recordPath(garden.id)}>
          The season's record: what was done when, bed by bed, to print or to keep as a file
        </a>
      </p>
      <p>
        <a href={gardenFilePath(garden.id)}>The garden file: all of it in one text, to keep, or to bring in changed</a>
      </p>
      <ol class="ledger" reversed>
        {shown.map((row) => (
          <li class={undone.has(row.entry) ? 'undone' : ''}>
            <span class="ledger-number">{row.entry}</span>
            <span class="ledger-line">
              <span class="fact">{factInWords(row.fact, garden, row.recordedOn)}</span>
              <span class="under">
                {fullDay(row.recordedOn, garden.place.units)}, {row.by}
                {undone.has(row.entry) && ', taken back'}
              </span>
              <HistoryWays fact={row.fact} view={view} toldOn={row.recordedOn} />
            </span>
            {undoable.has(row.entry) && <a href={undoPath(garden.id, row.entry)}>Take back</a>}
          </li>
        ))}
      </ol>
      {oldest !== undefined && shown.length < older.length && (
        <p>
          <a href={historyPath(garden.id, { before: oldest.entry, ...(about === undefined ? {} : { about }) })}>
            Older entries
          </a>
        </p>
      )}
    </article>,
  );
}

/** Entries that can be taken back: those that stand, but never the only garden file. */
function undoableEntries(ledger: readonly LedgerEntry[]): Set<number> {
  const standing = standingEntries(ledger);
  const files = standing.filter(({ fact }) => fact.kind === 'garden-imported');
  const kept = files.length === 1 ? files[0]?.entry : undefined;
  return new Set(standing.map(({ entry }) => entry).filter((entry) => entry !== kept));
}
