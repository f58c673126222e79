/**
 * This week: the days with their work, and beside them what closes, what moved and what comes next.
 */
import type { Child } from 'hono/jsx';
import { closedNotes, firstReasonOf, leewayLine } from '../../digest/entry-notes.ts';
import type { Reader } from '../../digest/reader.ts';
import {
  isToDo,
  type ListedDay,
  type ListedEntry,
  ridingAlong,
  type WeekList,
  weekList,
} from '../../digest/week-list.ts';
import { awayLine, hoursLine } from '../../digest/week-sections.ts';
import { hoursText, hourText, longDay, weekdayName, weekSpan } from '../../digest/words.ts';
import { addDays, type Day, dayParts, weekStart } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { gatheredSupplies, supplyLine } from '../../schedule/entry-text.ts';
import type { MailStanding } from '../../steward/doings/mail-doings.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { bedsPath, compostPath, taskPath, weekPath, weekSheetPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { LinkedPracticeMark } from '../frame/patterns.tsx';
import { WhyDate } from '../frame/why.tsx';
import { standing } from '../frame/words.ts';
import { MailTrouble } from '../mail/mail-standing.tsx';
import { LOOK_DAYS } from './asked-week.ts';
import { BesideTheWeek } from './beside-the-week.tsx';

/** What the page of a week shows: the plan, and how everybody's mail stands. */
type WeekView = Pick<GardenView, 'garden' | 'plan'> & {
  mail?: readonly MailStanding[];
  /** What stands above the days, where something does. */
  notice?: Child;
};

/** The page of the week a day falls in, of everybody or of one member. */
export function weekPage({ garden, plan, mail = [], notice }: WeekView, weekOf: Day, reader: Reader = {}) {
  const { units } = garden.place;
  const week = weekList(plan, garden, weekOf, reader);
  const isThisWeek = week.monday === weekStart(week.today);
  const leadsOn = addDays(week.monday, 7) <= addDays(week.today, LOOK_DAYS);
  return page(
    { title: isThisWeek ? 'This week' : `Week of ${formatDay(week.monday, units)}`, garden, here: 'week' },
    <div class="spread">
      <div class="week-days">
        <h1>
          {isThisWeek ? 'This week' : 'A week'}
          {week.person !== undefined && `, for ${week.person}`} <span class="span">{weekSpan(week.monday, units)}</span>
        </h1>
        {isThisWeek && notice}
        <WeekHours week={week} units={units} />
        {isThisWeek && <MailTrouble standings={mail} garden={garden} />}
        <CalmWeek week={week} units={units} isPlanEmpty={plan.tasks.length === 0} />
        {week.days.map((day) => (
          <DayRow day={day} week={week} units={units} />
        ))}
        <WeekTurner
          week={week}
          isThisWeek={isThisWeek}
          leadsOn={leadsOn}
          names={(garden.household?.members ?? []).map(({ name }) => name)}
        />
      </div>
      <BesideTheWeek week={week} units={units} isThisWeek={isThisWeek} leadsOn={leadsOn} />
    </div>,
  );
}

const WeekHours = ({ week, units }: { week: WeekList; units: UnitSystem }) => {
  const lines = [hoursLine(week), ...week.away.map((away) => awayLine(away, units))].filter((line) => line !== '');
  return lines.length === 0 ? null : <p class="hours">{lines.join(' ')}</p>;
};

interface CalmWeekProps {
  week: WeekList;
  units: UnitSystem;
  isPlanEmpty: boolean;
}

/** That a week has no work, or none left, and what comes next. */
const CalmWeek = ({ week, units, isPlanEmpty }: CalmWeekProps) => {
  const { gardenId, next, comes, person, days, monday } = week;
  const first = next[0] ?? comes;
  if (days.some(({ entries }) => entries.some(isToDo))) return null;
  return (
    <div class="empty">
      <p>{days.length === 0 ? 'Nothing asks for you in this week.' : 'All of this week’s work is settled.'}</p>
      {first !== undefined && (
        <p>
          Next comes <a href={weekPath(gardenId, first.day, person)}>{longDay(first.day, units, monday)}</a>:{' '}
          {first.entries.map(({ entry }) => readableIn(units, entry.title)).join('; ')}.
        </p>
      )}
      {isPlanEmpty && (
        <p>
          The plan is empty. Tasks come from beds with crops and covers, and from piles: begin on{' '}
          <a href={bedsPath(gardenId)}>Beds</a>, or in the <a href={compostPath(gardenId)}>Compost yard</a>.
        </p>
      )}
    </div>
  );
};

interface DayRowProps {
  day: ListedDay;
  week: WeekList;
  units: UnitSystem;
}

const DayRow = ({ day: { day, entries }, week: { today, gardenId, timeZone }, units }: DayRowProps) => (
  <section class={day === today ? 'day today' : 'day'} aria-label={longDay(day, units)}>
    <h2 class="date">
      <span class="weekday">{day === today ? 'Today' : weekdayName(day)}</span>
      <span class="number">{dayParts(day).dayOfMonth}</span>
      <span class="month">{formatDay(day, units).replace(/\s*\d+\s*/, '')}</span>
    </h2>
    <ol class="entries">
      {entries.map((row) => (
        <EntryLine row={row} gardenId={gardenId} timeZone={timeZone} units={units} />
      ))}
    </ol>
  </section>
);

interface EntryLineProps {
  row: ListedEntry;
  gardenId: string;
  timeZone: string;
  units: UnitSystem;
}

const EntryLine = ({ row, gardenId, timeZone, units }: EntryLineProps) => {
  const { entry, tasks } = row;
  const [first] = tasks;
  if (first === undefined) return null;
  const supplies = gatheredSupplies(tasks.flatMap((task) => task.supplies)).map(supplyLine);
  const hour = hourText(first, { timeZone, units });
  const warnings = new Set(tasks.flatMap(({ pinWarning }) => pinWarning ?? []));
  return (
    <li class={`entry ${entry.state}`}>
      {isToDo(row) && <span class="tick" aria-hidden="true" />}
      <p class="entry-head">
        <LinkedPracticeMark practice={entry.practice} /> <span class="effort">{hoursText(entry.effortMinutes)}</span>
        {hour !== undefined && <span class="standing">{hour}</span>}
        {first.state !== 'open' && <span class="standing">{standing(first)}</span>}
        {tasks.some(({ pinned }) => pinned) && <span class="standing">pinned</span>}
      </p>
      <p class="entry-title">
        <a href={taskPath(gardenId, first.key)}>{readableIn(units, entry.title)}</a>
      </p>
      <EntryNotes row={row} gardenId={gardenId} units={units} />
      {ridingAlong(row).map((check) => (
        <p class="rides">
          Along the way: <a href={taskPath(gardenId, check.key)}>{readableIn(units, check.title)}</a>
        </p>
      ))}
      {isToDo(row) && supplies.length > 0 && <p class="to-hand">To hand: {readableIn(units, supplies.join('; '))}</p>}
      {[...warnings].map((warning) => (
        <p class="to-hand">{readableIn(units, warning)}</p>
      ))}
    </li>
  );
};

/** Until when, in what weather, and why then: one quiet line each. */
const EntryNotes = ({ row, gardenId, units }: Omit<EntryLineProps, 'timeZone'>) => {
  const { entry } = row;
  const leeway = leewayLine(row, units);
  const why = isToDo(row) ? firstReasonOf(row) : undefined;
  const [first] = row.tasks;
  return (
    <>
      {row.whose !== undefined && <p class="leeway">{row.whose}</p>}
      {leeway !== '' && <p class="leeway">{leeway}</p>}
      {closedNotes(row, units).map((closed) => (
        <p class="leeway">{readableIn(units, closed, entry.day)}</p>
      ))}
      {why !== undefined && <p class="first-reason">{readableIn(units, why, entry.day)}</p>}
      {first !== undefined && entry.state !== 'done' && (
        <p class="small why-alone">
          <WhyDate gardenId={gardenId} of={first.key}>
            Why this date
          </WhyDate>
        </p>
      )}
    </>
  );
};

interface TurnerProps {
  week: WeekList;
  isThisWeek: boolean;
  leadsOn: boolean;
  names: readonly string[];
}

const WeekTurner = ({ week, isThisWeek, leadsOn, names }: TurnerProps) => {
  const { gardenId, monday, today, person } = week;
  const [before, after] = [addDays(monday, -7), addDays(monday, 7)];
  const shown = isThisWeek ? undefined : monday;
  return (
    <>
      <nav class="turner" aria-label="Other weeks">
        {before >= addDays(today, -LOOK_DAYS) && <a href={weekPath(gardenId, before, person)}>The week before</a>}
        {!isThisWeek && <a href={weekPath(gardenId, undefined, person)}>This week</a>}
        {leadsOn && <a href={weekPath(gardenId, after, person)}>The week after</a>}
        <a href={weekSheetPath(gardenId, monday, person)}>Print this week</a>
      </nav>
      {names.length > 1 && (
        <nav class="turner" aria-label="Whose work">
          <a href={weekPath(gardenId, shown)} aria-current={person === undefined ? 'page' : undefined}>
            Everybody
          </a>
          {names.map((name) => (
            <a href={weekPath(gardenId, shown, name)} aria-current={person === name ? 'page' : undefined}>
              {name}
            </a>
          ))}
        </nav>
      )}
    </>
  );
};
