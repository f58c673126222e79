/**
 * What a report would do to the plan, as sections of a page.
 */
import { changePreview, type PreviewedClash, type PreviewedWork } from '../../digest/change-preview.ts';
import { fullDay } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { TaskMove } from '../../steward/doings/steward.ts';
import { taskPath, whyPath } from '../addresses/addresses.ts';
import { AskedDates, WhyDate, WhyFold } from '../frame/why.tsx';
import { amountsInWords } from '../words/amount-words.ts';

interface PreviewProps {
  /** The plan as it is, and as it would be. */
  plans: { before: Plan; after: Plan };
  garden: Pick<Garden, 'id' | 'place' | 'away'>;
  /** With the amounts that change, where those are told too. */
  moves?: readonly TaskMove[];
  /** What is said where nothing changes. */
  nothing?: string;
}

const NOTHING = 'No task moves, none is added and none goes. The log still keeps it for what comes later.';

/** Moves, clashes, what is added and what goes, each with its reason. */
export const PreviewSections = ({ plans, garden, moves = [], nothing = NOTHING }: PreviewProps) => {
  const { id: gardenId, place, away } = garden;
  const { units } = place;
  const { moved, clashes, added, dropped, reworded } = changePreview(plans.before, plans.after, { ...place, away });
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
      <Clashes rows={clashes} gardenId={gardenId} units={units} />
      <Work heading="What is added" rows={added} gardenId={gardenId} units={units} />
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
  gardenId: string;
  units: UnitSystem;
}

const Work = ({ heading, rows, gardenId, units }: WorkProps) =>
  rows.length === 0 ? null : (
    <>
      <h2>{heading}</h2>
      <ul class="marked">
        {rows.map((row) => (
          <li>
            <Title row={row} gardenId={gardenId} units={units} />: <Days row={row} gardenId={gardenId} units={units} />
            <span class="under">{readableIn(units, row.because, row.to ?? row.from)}</span>
            <WhyFold
              reasons={row.reasons}
              gardenId={gardenId}
              units={units}
              beside={row.to ?? row.from}
              title={row.to === undefined ? 'Why' : 'Why this date'}
            />
          </li>
        ))}
      </ul>
    </>
  );

interface RowProps {
  row: PreviewedWork;
  gardenId: string;
  units: UnitSystem;
}

/** What is only to be added has no page yet. */
const Title = ({ row: { keys, title, from }, gardenId, units }: RowProps) => {
  const words = readableIn(units, title);
  return from === undefined ? words : <a href={taskPath(gardenId, keys[0] ?? '')}>{words}</a>;
};

/** The day it stands on now can be asked why; of the new one the fold beneath tells. */
const Days = ({ row: { keys, from, to }, gardenId, units }: RowProps) => {
  if (from === undefined) return <>{fullDay(to ?? '', units)}</>;
  const now = (
    <WhyDate gardenId={gardenId} of={keys[0] ?? ''}>
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

const Clashes = ({
  rows,
  gardenId,
  units,
}: Omit<WorkProps, 'rows' | 'heading'> & { rows: readonly PreviewedClash[] }) =>
  rows.length === 0 ? null : (
    <>
      <h2>What no longer fits</h2>
      <ul class="marked">
        {rows.map(({ title, what, gives, reasons }) => (
          <li>
            {readableIn(units, title)}: {readableIn(units, what)}
            <span class="under">{readableIn(units, gives)}</span>
            <WhyFold reasons={reasons} gardenId={gardenId} units={units} title="Why its dates" />
          </li>
        ))}
      </ul>
    </>
  );
