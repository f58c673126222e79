/**
 * A bed: what grows there one after another, and the gaps between with all that could lie in them.
 */

import { afterCutTold } from '../../digest/after-cut-words.ts';
import { coversToSow } from '../../digest/cover-sowings.ts';
import type { LedgerTold } from '../../digest/fertility-sheet.ts';
import type { PlannedFill } from '../../digest/fill-sheet.ts';
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { BedGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import {
  bedPath,
  bedsPath,
  handbookPath,
  historyPath,
  recordPath,
  seasonEndPath,
  taskPath,
} from '../addresses/addresses.ts';
import { PlannedBed } from '../compost/fill.tsx';
import { BedFertility } from '../fertility/fertility.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates, Whence, WhyDate } from '../frame/why.tsx';
import { GapChoices } from './fit.tsx';
import { GrowsHere } from './grows-here.tsx';
import { ToldOfBed } from './told-of-bed.tsx';

/** Choices shown for each gap before the rest are folded away. House default. */
const SHOWN = 3;

interface BedProps {
  view: GardenView;
  /** How it is filled, where it is still to be made. */
  planned?: PlannedFill | undefined;
  /** The case for compost where its soil is sandy or clay; may hold marked amounts. */
  soil: readonly string[];
  /** What feeds it, this season and the next. */
  told: readonly LedgerTold[];
  gaps: BedGaps;
  problems?: readonly Problem[];
}

/** The page of a bed. */
export function bedPage({ view, planned, soil, told, gaps: { bed, gaps, stands }, problems = [] }: BedProps) {
  const { garden, plan } = view;
  const { units } = garden.place;
  const reader = { gardenId: garden.id, units, today: plan.today, plan, toSow: coversToSow(garden, plan) };
  const itsHistory = historyPath(garden.id, { about: { type: 'bed', id: bed.id } });
  return page(
    { title: bed.name, garden, here: 'beds', docs: 'choosing-covers' },
    <article class="season-end two">
      <h1>{bed.name}</h1>
      <Problems problems={problems} />
      {planned && <PlannedBed view={view} planned={planned} />}
      <GrowsHere view={view} bed={bed} stands={stands} isNew={planned !== undefined} />
      <CutLately told={cutLately(view, bed.id)} way={itsHistory} />
      <StandTasks tasks={openTasks(view, bed.id)} gardenId={garden.id} units={units} />
      <ItsSoil soil={soil} units={units} toldAt={`${bedPath(garden.id, bed.id)}#told`} />
      <BedFertility view={view} told={told} bedId={bed.id} />
      <section class="aside">
        <h2>Gaps in the next two years</h2>
        {gaps.length === 0 && <p>There is none: something grows here all the time.</p>}
        {gaps.map((gap) => (
          <GapChoices gap={gap} reader={reader} first={SHOWN} whole />
        ))}
      </section>
      <ToldOfBed view={view} bed={bed} />
      <p>
        <a href={seasonEndPath(garden.id)}>Every bed at season end</a> ·{' '}
        <a href={bedsPath(garden.id)}>Every bed by seasons</a> ·{' '}
        <a href={`${recordPath(garden.id)}#bed-${bed.id}`}>What was done in it this season</a> ·{' '}
        <a href={itsHistory}>All that was told of it</a>
      </p>
    </article>,
  );
}

interface ItsSoilProps {
  soil: readonly string[];
  units: UnitSystem;
  /** Where its soil can be told otherwise. */
  toldAt: string;
}

const ItsSoil = ({ soil, units, toldAt }: ItsSoilProps) =>
  soil.length === 0 ? null : (
    <section>
      <h2>Its soil</h2>
      <ul class="marked plain">
        {soil.map((line) => (
          <li>
            <AskedDates text={readableIn(units, line)} to={toldAt} />
          </li>
        ))}
      </ul>
      <Whence to={handbookPath('topdressing', 'sandy-and-clay-beds')}>How compost helps such a bed</Whence>
    </section>
  );

/** What has come of the covers that were cut in a bed, until something else goes in. */
function cutLately({ garden }: GardenView, bedId: string): string[] {
  const goneIn = [
    ...garden.plantings.map(({ start, ...row }) => ({ ...row, ...start })),
    ...garden.stands.map(({ sow, ...row }) => ({ ...row, ...sow })),
  ]
    .filter((row) => row.bedId === bedId && row.happened)
    .map(({ day }) => day);
  return garden.stands
    .filter(({ cutOn, ...stand }) => stand.bedId === bedId && cutOn !== undefined && !goneIn.some((day) => day > cutOn))
    .flatMap((stand) => afterCutTold(garden, stand) ?? []);
}

const CutLately = ({ told, way }: { told: readonly string[]; way: string }) =>
  told.length === 0 ? null : (
    <section>
      <h2>After the cut</h2>
      {told.map((words) => (
        <p>
          <AskedDates text={words} to={way} />
        </p>
      ))}
    </section>
  );

/** The work on a bed's covers that is still to be done, soonest first. */
function openTasks({ plan: { tasks } }: GardenView, bedId: string): PlannedTask[] {
  return tasks
    .filter(({ state, subject }) => state === 'open' && subject.type === 'stand' && subject.bedId === bedId)
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

interface StandTasksProps {
  tasks: readonly PlannedTask[];
  gardenId: string;
  units: UnitSystem;
}

const StandTasks = ({ tasks, gardenId, units }: StandTasksProps) =>
  tasks.length === 0 ? null : (
    <section>
      <h2>Work on its covers</h2>
      <ul class="marked">
        {tasks.map(({ key, title, day }) => (
          <li>
            <WhyDate gardenId={gardenId} of={key}>
              {fullDay(day, units)}
            </WhyDate>
            : <a href={taskPath(gardenId, key)}>{readableIn(units, title, day)}</a>
          </li>
        ))}
      </ul>
    </section>
  );
