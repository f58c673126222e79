/**
 * Where the dates of an entry of History lead: why work had been planned when it was, and how what was told stands now.
 */
import type { Fact } from '../../garden/facts.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { touchedBy } from '../../steward/ledger/touched-by.ts';
import { bedPath, gardenFilePath, whyPath } from '../addresses/addresses.ts';
import { WhyFold } from '../frame/why.tsx';
import { plannedThen } from './planned-then.ts';

interface WaysProps {
  fact: Fact;
  view: Pick<GardenView, 'garden' | 'plan'>;
  /** The day it was told. */
  toldOn: Day;
}

/** The ways of one entry. */
export const HistoryWays = ({ fact, view, toldOn }: WaysProps) => (
  <>
    <PlannedThen fact={fact} view={view} toldOn={toldOn} />
    <StandsNow fact={fact} view={view} />
  </>
);

/** Why each task had been planned for the day it was. */
const PlannedThen = ({ fact, view: { garden }, toldOn }: WaysProps) => {
  const { units } = garden.place;
  const then = plannedThen(fact);
  return (
    <>
      {then.map(({ title, day, reasons }) => (
        <WhyFold
          title={
            (day === undefined
              ? 'Why it had been planned'
              : `Why it had been planned for ${formatDay(day, units, toldOn)}`) +
            (then.length > 1 ? `: ${readableIn(units, title, toldOn)}` : '')
          }
          reasons={reasons}
          gardenId={garden.id}
          units={units}
          beside={toldOn}
        />
      ))}
    </>
  );
};

/** The tasks and beds an entry is about, as they stand today. */
const StandsNow = ({ fact, view }: Pick<WaysProps, 'fact' | 'view'>) => {
  const ways = waysNow(fact, view);
  if (ways.length === 0) return null;
  return (
    <span class="under">
      As it stands now:{' '}
      {ways.map(({ path, words }, at) => (
        <>
          {at > 0 && ', '}
          <a href={path}>{words}</a>
        </>
      ))}
    </span>
  );
};

function waysNow(fact: Fact, { garden, plan }: WaysProps['view']): { path: string; words: string }[] {
  if (fact.kind === 'garden-imported') return [{ path: gardenFilePath(garden.id), words: 'the garden file' }];
  const touched = touchedBy(fact);
  if (touched === 'all') return [];
  const { units } = garden.place;
  const tasks = plan.tasks.filter(({ key, state }) => touched.has(key) && state !== 'done');
  return [
    ...tasks.map(({ key, title, day }) => ({ path: whyPath(garden.id, key), words: readableIn(units, title, day) })),
    ...garden.beds
      .filter(({ id }) => touched.has(id))
      .map(({ id, name }) => ({ path: bedPath(garden.id, id), words: name })),
  ];
}
