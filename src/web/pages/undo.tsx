/**
 * Undo: what taking an entry back would do, before it is done.
 */
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView, UndoPreview } from '../../steward/steward.ts';
import { historyPath, undoPath } from '../addresses.ts';
import { Problems, page } from '../layout.tsx';
import { factInWords } from '../ledger-words.ts';

interface UndoPageProps {
  view: Pick<GardenView, 'garden'>;
  /** Absent when nothing can be taken back. */
  preview: UndoPreview | undefined;
  problems?: readonly Problem[];
}

/** The page that asks before an entry is taken back. */
export function undoPage({ view: { garden }, preview, problems = [] }: UndoPageProps) {
  return page(
    { title: 'Take back', garden, here: 'history' },
    <article class="undo">
      <h1>Take back</h1>
      <Problems problems={problems} />
      {preview === undefined ? (
        problems.length === 0 && <p>There is nothing to take back yet.</p>
      ) : (
        <Preview preview={preview} garden={garden} />
      )}
      <p>
        <a href={historyPath(garden.id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

const Preview = ({ preview, garden }: { preview: UndoPreview; garden: GardenView['garden'] }) => {
  const { entry, leaning, moves } = preview;
  const { units } = garden.place;
  return (
    <>
      <p class="about">
        {factInWords(entry.fact, garden)}
        <span class="under">
          Entry {entry.entry}, {fullDay(entry.recordedOn, units)}, {entry.by}
        </span>
      </p>
      <h2>What would change</h2>
      {moves.length === 0 ? <p>No task moves.</p> : <Moves moves={moves} units={units} />}
      {leaning.length > 0 && (
        <>
          <h2>Later entries about the same things</h2>
          <p>They stay as they are. Look whether they still hold.</p>
          <ul class="marked">
            {leaning.map((later) => (
              <li>
                {factInWords(later.fact, garden)} <span class="small">entry {later.entry}</span>
              </li>
            ))}
          </ul>
        </>
      )}
      <form method="post" action={undoPath(garden.id)}>
        <input type="hidden" name="entry" value={String(entry.entry)} />
        <button type="submit">Take it back</button>
      </form>
    </>
  );
};

const Moves = ({ moves, units }: { moves: UndoPreview['moves']; units: UnitSystem }) => (
  <ul class="marked">
    {moves.map(({ title, from, to }) => (
      <li>
        {readableIn(units, title)}: {moveInWords(from, to, units)}
      </li>
    ))}
  </ul>
);

function moveInWords(from: string | undefined, to: string | undefined, units: UnitSystem): string {
  if (from === undefined) return to === undefined ? 'as it is' : `back on ${formatDay(to, units)}`;
  if (to === undefined) return `off the plan; it stands on ${formatDay(from, units)}`;
  return from === to
    ? `stays on ${formatDay(to, units)}, its mark taken back`
    : `from ${formatDay(from, units)} to ${formatDay(to, units)}`;
}
