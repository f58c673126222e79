/**
 * One page a task: what to do and with what, when and why then, and the forms to settle it.
 */
import { afterCutTold } from '../../digest/after-cut-words.ts';
import { CONDITION_WORDS, fullDay, hoursText, hourText, weekdayName } from '../../digest/words.ts';
import type { Garden, Stand } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { type Day, dayParts } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { afterCut } from '../../practices/after-cut.ts';
import { pastOddsOf } from '../../practices/past-odds.ts';
import { gatheredSupplies, supplyAmount } from '../../schedule/entry-text.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { standsBecause } from '../../schedule/stands-because.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { doneDoubts } from '../../steward/doubts/done-doubts.ts';
import { bedPath, editPath, handbookPath, taskPath } from '../addresses/addresses.ts';
import { Cautions } from '../frame/cautions.tsx';
import { Problems, page } from '../frame/layout.tsx';
import { LinkedPracticeMark } from '../frame/patterns.tsx';
import { amountsPath, PRACTICE_DOCS } from '../frame/practice-docs.ts';
import { AskedDates, Whence } from '../frame/why.tsx';
import { standing } from '../frame/words.ts';
import type { Entered } from './entered.ts';
import { Settled, TaskForms } from './task-forms.tsx';
import type { TaskView } from './task-view.ts';
import { WhyThisDate } from './why-this-date.tsx';

export interface TaskPageProps {
  view: GardenView;
  found: TaskView;
  today: Day;
  /** What was entered and what was wrong with it, when a form comes back. */
  entered?: Entered;
  problems?: readonly Problem[];
}

/** The page of a task. */
export function taskPage({ view, found, today, entered, problems = [] }: TaskPageProps) {
  const { garden, climate } = view;
  const { task } = found;
  const { units } = garden.place;
  const stand = garden.stands.find(({ id }) => task.subject.type === 'stand' && id === task.subject.id);
  const regrowths = stand && afterCut(garden, stand)?.regrowths;
  return page(
    { title: readableIn(units, task.title), garden, docs: PRACTICE_DOCS[task.practice] },
    <article class="task">
      <header class="task-head">
        <LinkedPracticeMark practice={task.practice} />
        <h1>{readableIn(units, task.title)}</h1>
        <TaskDate task={task} today={today} place={garden.place} />
        <Settled found={found} gardenId={garden.id} />
        <DoneDoubts view={view} found={found} />
        {found.task.state === 'done' && stand !== undefined && <AfterCutNote garden={garden} stand={stand} />}
        {task.assignedTo !== undefined && <p class="mates">For {task.assignedTo}.</p>}
        <LotMates found={found} gardenId={garden.id} units={units} />
        <ToldOf subject={task.subject} garden={garden} />
      </header>
      <Problems problems={problems} />
      <div class="task-body">
        <div class="doing">
          <Steps task={task} units={units} />
          <Supplies task={task} units={units} />
          <AmountsWhence task={task} />
          <Cautions cautions={task.cautions} units={units} />
        </div>
        <TaskForms found={found} garden={garden} today={today} entered={entered} regrowths={regrowths} />
        <WhyThisDate
          found={found}
          gardenId={garden.id}
          units={units}
          climateOrigin={climate.origin}
          today={today}
          stands={standsBecause(task, { plan: view.plan, household: { ...garden.place, away: garden.away } })}
          pastOdds={pastOddsOf(task, { garden, climate, today })}
        />
      </div>
    </article>,
  );
}

/** The ways to the bed of what a task is about, and to what was told of it. */
const ToldOf = ({ subject, garden }: { subject: PlannedTask['subject']; garden: Garden }) => {
  if (subject.type !== 'stand' && subject.type !== 'planting') return null;
  const { id, type, bedId } = subject;
  const isTold = [...garden.stands, ...garden.plantings].some((each) => each.id === id);
  const bed = garden.beds.find((each) => each.id === bedId);
  if (!isTold || bed === undefined) return null;
  return (
    <p class="mates">
      {type === 'stand' && (
        <>
          What else lies in this bed: <a href={bedPath(garden.id, bedId)}>{bed.name}</a>.{' '}
        </>
      )}
      If it was told wrong:{' '}
      <a href={editPath(garden.id, type === 'stand' ? 'cover-stands' : 'plantings', id)}>change it</a>.
    </p>
  );
};

/** What is hardly meant of what was marked. */
const DoneDoubts = ({ view, found: { task, settledBy } }: { view: GardenView; found: TaskView }) => {
  const fact = settledBy?.fact;
  const marked = fact?.kind === 'tasks-done' ? fact.tasks.find(({ key }) => key === task.key) : undefined;
  if (fact?.kind !== 'tasks-done' || marked === undefined) return null;
  const { units } = view.garden.place;
  return (
    <>
      {doneDoubts(view, marked, fact.on).map((doubt) => (
        <p class="warning">{readableIn(units, doubt, fact.on)}</p>
      ))}
    </>
  );
};

/** What has come of a cover that was cut. */
const AfterCutNote = ({ garden, stand }: { garden: Garden; stand: Stand }) => {
  const told = afterCutTold(garden, stand);
  return told === undefined ? null : <p class="mates">{told}</p>;
};

interface TaskDateProps {
  task: PlannedTask;
  today: Day;
  place: GardenView['garden']['place'];
}

const TaskDate = ({ task, today, place }: TaskDateProps) => {
  const { earliest, latest } = task.window;
  const { units } = place;
  const hour = hourText(task, place);
  return (
    <div class="task-date">
      <p class="date">
        <span class="weekday">{task.day === today ? 'Today' : weekdayName(task.day)}</span>
        <span class="number">
          <AskedDates text={formatDay(task.day, units)} to="#why" />
        </span>
        <span class="month">{dayParts(task.day).year}</span>
      </p>
      <p class="small">
        {task.state === 'lapsed' && <span class="standing">{standing(task)}</span>}
        {task.pinned && <span class="standing">pinned</span>}
        {task.state !== 'done' && (
          <AskedDates
            text={
              earliest === latest
                ? `Only on ${formatDay(earliest, units)}${hour === undefined ? '' : `, ${hour}`}. `
                : `Any day from ${formatDay(earliest, units)} to ${fullDay(latest, units)} will do. `
            }
            to="#why"
          />
        )}
        About <a href={handbookPath('how-a-day-is-chosen', 'how-long-work-takes')}>{hoursText(task.effortMinutes)}</a>.
        {task.needs.length > 0 && ` Wants ${task.needs.map((need) => CONDITION_WORDS[need]).join(', ')}.`}
      </p>
      {task.pinWarning !== undefined && (
        <p class="warning">
          <AskedDates text={readableIn(units, task.pinWarning, task.day)} to="#why" />
        </p>
      )}
      {task.state === 'lapsed' && (
        <p class="warning">
          The window has closed. <AskedDates text={readableIn(units, task.missedNote, task.day)} to="#why" />
        </p>
      )}
    </div>
  );
};

const LotMates = ({
  found: { task, lot },
  gardenId,
  units,
}: {
  found: TaskView;
  gardenId: string;
  units: UnitSystem;
}) => {
  const mates = lot.filter(({ key }) => key !== task.key);
  if (mates.length === 0) return null;
  return (
    <p class="mates">
      The same day:{' '}
      {mates.map((mate, index) => (
        <>
          {index > 0 && '; '}
          <a href={taskPath(gardenId, mate.key)}>{readableIn(units, mate.title)}</a>
        </>
      ))}
      .
    </p>
  );
};

const Steps = ({ task: { steps, day }, units }: { task: PlannedTask; units: UnitSystem }) =>
  steps.length === 0 ? null : (
    <section>
      <h2>How</h2>
      <ol class="marked">
        {steps.map((step) => (
          <li>
            <AskedDates text={readableIn(units, step, day)} to="#why" />
          </li>
        ))}
      </ol>
    </section>
  );

const Supplies = ({ task, units }: { task: PlannedTask; units: UnitSystem }) => {
  const supplies = gatheredSupplies(task.supplies);
  if (supplies.length === 0) return null;
  return (
    <section>
      <h2>To hand</h2>
      <table class="supplies">
        <tbody>
          {supplies.map((supply) => (
            <tr>
              <th scope="row">{readableIn(units, supply.what)}</th>
              <td>
                {supplyAmount(supply, units)}
                {supply.also !== undefined && <span class="small"> {readableIn(units, supply.also)}</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
};

/** An amount in a sentence that is still to meet its reader. */
const MARKED_AMOUNT = /⟦[^⟧]* [A-Za-z]\w*⟧/;

/** The way to how the amounts of a task are worked out; nothing where it has none. */
const AmountsWhence = ({ task }: { task: PlannedTask }) =>
  task.supplies.some(({ amount }) => amount !== undefined) || task.steps.some((step) => MARKED_AMOUNT.test(step)) ? (
    <Whence to={amountsPath(task)}>How these amounts are worked out</Whence>
  ) : null;
