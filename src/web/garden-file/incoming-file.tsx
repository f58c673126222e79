/**
 * What a garden file would change, before it is brought in.
 */

import { mendLines } from '../../digest/mend-words.ts';
import type { RowReader } from '../../digest/row-words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { ImportPreview } from '../../steward/doings/steward.ts';
import { bringInPath, gardenFilePath, gardenPath, incomingFilePath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { ProblemWords, page } from '../frame/layout.tsx';
import { Whence } from '../frame/why.tsx';

interface IncomingProps {
  preview: ImportPreview;
  /** The garden that is there; absent for a new one. */
  known?: { garden: Garden; plan: Plan };
  word: string;
  prefer: 'reported' | 'file';
  /** Of the text that was handed over. */
  lineOf: (where: string) => number | undefined;
  units: UnitSystem;
}

/** The page that asks before a file is brought in. */
export function incomingFilePage({ preview, known, word, prefer, lineOf, units }: IncomingProps) {
  const { view, doubts } = preview;
  const id = known?.garden.id;
  return page(
    { title: 'What the file says', docs: 'garden-file', ...(known === undefined ? {} : { garden: known.garden }) },
    <article class="garden-file undo">
      <h1>{known === undefined ? `${view.garden.name} would be brought in` : 'What the file would change'}</h1>
      <p>Nothing is kept yet.</p>
      {known === undefined ? <Holds garden={view.garden} /> : <Changes {...{ preview, known, prefer, units }} />}
      <Doubts doubts={doubts} lineOf={lineOf} units={units} />
      <form method="post" action={incomingFilePath(word, id)}>
        <button type="submit">Bring it in</button>
        {known !== undefined && <p class="small">It stands in History then, and can be taken back as one.</p>}
      </form>
      <p>
        <a href={id === undefined ? bringInPath() : gardenFilePath(id)}>Leave everything as it is</a>
      </p>
    </article>,
  );
}

const Holds = ({ garden }: { garden: Garden }) => {
  const { beds, plantings, stands, bins, piles } = garden;
  const counts = [
    counted(beds.length, 'bed'),
    counted(plantings.length, 'planting'),
    counted(stands.length, 'cover'),
    counted(bins.length, 'bin'),
    counted(piles.length, 'pile'),
  ];
  return (
    <p class="about">
      {garden.name}: {counts.join(', ')}
    </p>
  );
};

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

interface ChangesProps {
  preview: ImportPreview;
  known: { garden: Garden; plan: Plan };
  prefer: 'reported' | 'file';
  units: UnitSystem;
}

const Changes = ({ preview: { changes, ofPeople, against, view, moves }, known, prefer, units }: ChangesProps) => {
  const reader = readerOf([known.garden, view.garden], units);
  const lines = mendLines(changes, reader);
  const people = ofPeople.map(({ path, now, file }) => `${placeWords(path)}: now ${now}; in the file ${file}`);
  return (
    <>
      <h2>In the garden</h2>
      <Whence to={`${gardenPath(known.garden.id)}#beds`}>What this garden was told so far</Whence>
      {lines.length + people.length === 0 ? (
        <p>The file says nothing new.</p>
      ) : (
        <ul class="marked">
          {[...lines, ...people].map((line) => (
            <li>{line}</li>
          ))}
        </ul>
      )}
      {against.length > 0 && (
        <>
          <h2>{prefer === 'reported' ? 'What stays, though the file says otherwise' : 'What was reported and goes'}</h2>
          <p>
            {prefer === 'reported'
              ? 'It was reported or changed here, and counts more than the file:'
              : 'It was reported or changed here, and the file says otherwise:'}
          </p>
          <ul class="marked">
            {mendLines(against, reader).map((line) => (
              <li>{line}</li>
            ))}
          </ul>
        </>
      )}
      <PreviewSections
        plans={{ before: known.plan, after: view.plan }}
        garden={known.garden}
        moves={moves}
        nothing="No task moves, none is added and none goes."
      />
    </>
  );
};

function placeWords(path: string): string {
  return path === 'household.members' ? 'In the household' : path.replace(/^household\./, '');
}

/** Names for ids of both gardens: that of what goes is known to the one, that of what comes to the other. */
function readerOf(gardens: readonly Garden[], units: UnitSystem): RowReader {
  const named = (items: readonly { id: string; name: string }[], id: string) =>
    items.find((item) => item.id === id)?.name ?? id;
  const [beds, bins] = [gardens.flatMap((garden) => garden.beds), gardens.flatMap((garden) => garden.bins)];
  return { bedName: (id) => named(beds, id), binName: (id) => named(bins, id), units };
}

interface DoubtsProps {
  doubts: readonly Problem[];
  lineOf: (where: string) => number | undefined;
  units: UnitSystem;
}

const Doubts = ({ doubts, lineOf, units }: DoubtsProps) =>
  doubts.length === 0 ? null : (
    <>
      <h2>Look at these again</h2>
      <p>They are taken as they stand.</p>
      <ul class="marked">
        {withLines(doubts, lineOf).map(({ where, what, mend }) => (
          <li>
            <ProblemWords where={where} what={readableIn(units, what)} mend={readableIn(units, mend)} />
          </li>
        ))}
      </ul>
    </>
  );

/** Problems of a file, each with the line it stands in, where that is known. */
export function withLines(problems: readonly Problem[], lineOf: (where: string) => number | undefined): Problem[] {
  return problems.map((problem) => {
    const line = problem.where.startsWith('line ') ? undefined : lineOf(problem.where);
    return line === undefined ? problem : { ...problem, where: `${problem.where} (line ${line})` };
  });
}
