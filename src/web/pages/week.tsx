/**
 * This week: the days with their work, and beside them what closes, what moved and what comes next.
 */
import { addDays, type Day, dayParts, weekStart } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { gatheredSupplies, supplyLine } from '../../schedule/entry-text.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import type { GardenView } from '../../steward/steward.ts';
import { taskPath, weekPath } from '../addresses.ts';
import { page } from '../layout.tsx';
import { PracticeMark } from '../patterns.tsx';
import {
  type DayOfWork,
  type EntryWithTasks,
  isToDo,
  LOOK_DAYS,
  ridingAlong,
  type WeekView,
  weekView,
} from '../week-view.ts';
import { hoursMinutes, longDay, standing, weekdayName, weekSpan } from '../words.ts';
import { BesideTheWeek } from './beside-the-week.tsx';

export interface WeekPageProps {
  view: GardenView;
  today: Day;
  monday: Day;
}

/** The page of a week. */
export function weekPage({ view, today, monday }: WeekPageProps) {
  const { garden, plan } = view;
  const { units } = garden.place;
  const week = weekView(plan, monday);
  const isThisWeek = monday === weekStart(today);
  return page(
    { title: isThisWeek ? 'This week' : `Week of ${formatDay(monday, units)}`, garden, here: 'week' },
    <div class="spread">
      <div class="week-days">
        <h1>
          {isThisWeek ? 'This week' : 'A week'} <span class="span">{weekSpan(monday, units)}</span>
        </h1>
        <WeekHours week={week} hoursPerWeek={garden.place.hoursPerWeek} />
        {week.days.length === 0 && (
          <EmptyWeek week={week} gardenId={garden.id} units={units} isPlanEmpty={plan.tasks.length === 0} />
        )}
        {week.days.map((day) => (
          <DayRow day={day} today={today} gardenId={garden.id} units={units} />
        ))}
        <WeekTurner gardenId={garden.id} monday={monday} today={today} />
      </div>
      <BesideTheWeek view={view} today={today} week={week} isThisWeek={isThisWeek} />
    </div>,
  );
}

const WeekHours = ({ week, hoursPerWeek }: { week: WeekView; hoursPerWeek: number }) => {
  const { openMinutes, doneMinutes } = week;
  if (openMinutes + doneMinutes === 0) return null;
  const overMinutes = openMinutes + doneMinutes - hoursPerWeek * 60;
  return (
    <p class="hours">
      {hoursMinutes(openMinutes)} h to do{doneMinutes > 0 && `, ${hoursMinutes(doneMinutes)} h done`}, of the{' '}
      {hoursMinutes(hoursPerWeek * 60)} h a week kept for the garden.
      {overMinutes > 0 && ` That is ${hoursMinutes(overMinutes)} h over: what closes late can wait.`}
    </p>
  );
};

interface EmptyWeekProps {
  week: WeekView;
  gardenId: string;
  units: UnitSystem;
  isPlanEmpty: boolean;
}

const EmptyWeek = ({ week: { comes }, gardenId, units, isPlanEmpty }: EmptyWeekProps) => (
  <div class="empty">
    <p>Nothing asks for you this week.</p>
    {comes !== undefined && (
      <p>
        Next comes <a href={weekPath(gardenId, comes.day)}>{longDay(comes.day, units)}</a>:{' '}
        {comes.entries.map(({ entry }) => readableIn(units, entry.title)).join('; ')}.
      </p>
    )}
    {comes === undefined && isPlanEmpty && (
      <p>
        The plan is empty. Tasks come from beds, plantings, cover stands and piles: add them to the garden file and
        bring it in with <code>loamtide garden import FILE</code>.
      </p>
    )}
  </div>
);

interface DayRowProps {
  day: DayOfWork;
  today: Day;
  gardenId: string;
  units: UnitSystem;
}

const DayRow = ({ day: { day, entries }, today, gardenId, units }: DayRowProps) => (
  <section class={day === today ? 'day today' : 'day'} aria-label={longDay(day, units)}>
    <h2 class="date">
      <span class="weekday">{day === today ? 'Today' : weekdayName(day)}</span>
      <span class="number">{dayParts(day).dayOfMonth}</span>
      <span class="month">{formatDay(day, units).replace(/\s*\d+\s*/, '')}</span>
    </h2>
    <ol class="entries">
      {entries.map((row) => (
        <EntryLine row={row} gardenId={gardenId} units={units} />
      ))}
    </ol>
  </section>
);

const EntryLine = ({ row, gardenId, units }: { row: EntryWithTasks; gardenId: string; units: UnitSystem }) => {
  const { entry, tasks } = row;
  const [first] = tasks;
  if (first === undefined) return null;
  const supplies = gatheredSupplies(tasks.flatMap((task) => task.supplies)).map(supplyLine);
  return (
    <li class={`entry ${entry.state}`}>
      {isToDo(row) && <span class="tick" aria-hidden="true" />}
      <p class="entry-head">
        <PracticeMark practice={entry.practice} /> <span class="effort">{hoursMinutes(entry.effortMinutes)} h</span>
        <Standing task={first} />
      </p>
      <p class="entry-title">
        <a href={taskPath(gardenId, first.key)}>{readableIn(units, entry.title)}</a>
      </p>
      {ridingAlong(row).map((check) => (
        <p class="rides">
          Along the way: <a href={taskPath(gardenId, check.key)}>{readableIn(units, check.title)}</a>
        </p>
      ))}
      {isToDo(row) && supplies.length > 0 && <p class="to-hand">To hand: {readableIn(units, supplies.join('; '))}</p>}
      {first.pinWarning !== undefined && <p class="to-hand">{readableIn(units, first.pinWarning)}</p>}
    </li>
  );
};

const Standing = ({ task }: { task: PlannedTask }) => (
  <>
    {task.state !== 'open' && <span class="standing">{standing(task)}</span>}
    {task.pinned && task.state === 'open' && <span class="standing">pinned</span>}
  </>
);

const WeekTurner = ({ gardenId, monday, today }: { gardenId: string; monday: Day; today: Day }) => {
  const [before, after] = [addDays(monday, -7), addDays(monday, 7)];
  return (
    <nav class="turner" aria-label="Other weeks">
      {before >= addDays(today, -LOOK_DAYS) && <a href={weekPath(gardenId, before)}>The week before</a>}
      {monday !== weekStart(today) && <a href={weekPath(gardenId)}>This week</a>}
      {after <= addDays(today, LOOK_DAYS) && <a href={weekPath(gardenId, after)}>The week after</a>}
    </nav>
  );
};
