/**
 * What a report would do to the plan, as sections of a page.
 */
import type { ChangePreview, PreviewedClash, PreviewedWork } from '../../digest/change-preview.ts';
import { fullDay } from '../../digest/words.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { TaskMove } from '../../steward/steward.ts';
import { taskPath, whyPath } from '../addresses.ts';
import { amountsInWords } from '../amount-words.ts';
import { AskedDates, WhyDate } from '../why.tsx';

interface PreviewProps {
  preview: ChangePreview;
  gardenId: string;
  units: UnitSystem;
  /** With the amounts that change, where those are told too. */
  moves?: readonly TaskMove[];
  /** What is said where nothing changes. */
  nothing?: string;
}

const NOTHING = 'No task moves, none is added and none goes. The log still keeps it for what comes later.';

/** Moves, clashes, what is added and what goes, each with its reason. */
export const PreviewSections = ({ preview, gardenId, units, moves = [], nothing = NOTHING }: PreviewProps) => {
  const { moved, clashes, added, dropped, reworded } = preview;
  const other = moves.filter(
    ({ amounts = [], from, to }) => amounts.length > 0 && from !== undefined && to !== undefined,
  );
  const isSame = [moved, clashes, added, dropped, reworded, other].every(({ length }) => length === 0);
  return (
    <>
      {isSame && <p>{nothing}</p>}
      <Work heading="What moves" rows={moved} gardenId={gardenId} units={units} />
      <Amounts rows={other} gardenId={gardenId} units={units} />
      <Otherwise rows={reworded} gardenId={gardenId} units={units} />
      <Clashes rows={clashes} units={units} />
      <Work heading="What is added" rows={added} units={units} />
      <Work heading="What goes off the plan" rows={dropped} gardenId={gardenId} units={units} />
    </>
  );
};

interface AmountsProps {
  rows: readonly TaskMove[];
  gardenId: string;
  units: UnitSystem;
}

const Amounts = ({ rows, gardenId, units }: AmountsProps) =>
  rows.length === 0 ? null : (
    <>
      <h2>What wants other amounts</h2>
      <ul class="marked">
        {rows.map(({ key, title, amounts = [], to }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title, to)}</a>: {amountsInWords(amounts, units)}
          </li>
        ))}
      </ul>
    </>
  );

const Otherwise = ({ rows, gardenId, units }: Required<Omit<WorkProps, 'heading'>>) =>
  rows.length === 0 ? null : (
    <>
      <h2>What says something else</h2>
      <ul class="marked">
        {rows.map(({ keys: [key = ''], title, from, because }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>:{' '}
            <AskedDates text={readableIn(units, because, from)} to={whyPath(gardenId, key)} />
          </li>
        ))}
      </ul>
    </>
  );

interface WorkProps {
  heading: string;
  rows: readonly PreviewedWork[];
  /** Given where the tasks have pages already. */
  gardenId?: string;
  units: UnitSystem;
}

const Work = ({ heading, rows, gardenId, units }: WorkProps) =>
  rows.length === 0 ? null : (
    <>
      <h2>{heading}</h2>
      <ul class="marked">
        {rows.map(({ keys: [key = ''], title, from, to, because }) => (
          <li>
            {gardenId === undefined ? (
              readableIn(units, title)
            ) : (
              <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            )}
            : <Days from={from} to={to} gardenId={gardenId} of={key} units={units} />
            <span class="under">{readableIn(units, because, to ?? from)}</span>
          </li>
        ))}
      </ul>
    </>
  );

interface DaysProps {
  from: string | undefined;
  to: string | undefined;
  gardenId: string | undefined;
  of: string;
  units: UnitSystem;
}

/** The day it stands on now can be asked why; of the new one the line beneath tells. */
const Days = ({ from, to, gardenId, of, units }: DaysProps) => {
  if (from === undefined || gardenId === undefined) return <>{fullDay(to ?? from ?? '', units)}</>;
  const now = (
    <WhyDate gardenId={gardenId} of={of}>
      {fullDay(from, units)}
    </WhyDate>
  );
  return to === undefined ? (
    now
  ) : (
    <>
      from {now} to {fullDay(to, units)}
    </>
  );
};

const Clashes = ({ rows, units }: { rows: readonly PreviewedClash[]; units: UnitSystem }) =>
  rows.length === 0 ? null : (
    <>
      <h2>What no longer fits</h2>
      <ul class="marked">
        {rows.map(({ title, what, gives }) => (
          <li>
            {readableIn(units, title)}: {readableIn(units, what)}
            <span class="under">{readableIn(units, gives)}</span>
          </li>
        ))}
      </ul>
    </>
  );
