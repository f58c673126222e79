/**
 * The week as one sheet, made to be printed and ticked with a pencil.
 */
import { IN_A_ROW, IN_ONE_LINE } from '../../digest/sheet-room.ts';
import { isToDo, type WeekList } from '../../digest/week-list.ts';
import { awayLine, daySum, emptyLine, hoursLine } from '../../digest/week-sections.ts';
import type { SheetDay, SheetEntry, WeekSheet } from '../../digest/week-sheet.ts';
import { hoursText, hourText, longDay, weekdayName, weekSpan } from '../../digest/words.ts';
import type { Garden } from '../../garden/garden.ts';
import { capital } from '../../measures/capital.ts';
import { dayParts } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { weekPath, weekSheetPath } from '../addresses/addresses.ts';
import { page } from '../frame/layout.tsx';
import { PracticeMark } from '../frame/patterns.tsx';
import { WhyDateIf } from '../frame/why.tsx';
import { askedAmounts } from '../task/amounts.ts';

interface WeekSheetPageProps {
  garden: Pick<Garden, 'id' | 'name' | 'place' | 'household'>;
  list: WeekList;
  sheet: WeekSheet;
}

/** The sheet of a week; what leads elsewhere is left off the paper. */
export function weekSheetPage({ garden, list, sheet }: WeekSheetPageProps) {
  const { units } = garden.place;
  const lines = [hoursLine(list), ...list.away.map((away) => awayLine(away, units)), emptyLine(list, units)];
  return page(
    { title: `Week of ${weekSpan(list.monday, units)}`, garden, docs: 'weekly-list' },
    <article class={`week-sheet letters-${sheet.size}`}>
      <h1>
        Week of {weekSpan(list.monday, units)}
        {list.person !== undefined && `, for ${list.person}`}
      </h1>
      <p class="hours">{lines.filter((line) => line !== '').join(' ')}</p>
      <Whose garden={garden} list={list} />
      {sheet.days.map((day) => (
        <DayOnSheet day={day} list={list} units={units} />
      ))}
      <div class="beside">
        {sheet.sections.map(({ name, heading, lines: said }) => (
          <section>
            <h2>{heading}</h2>
            <ul>
              {(IN_ONE_LINE.has(name) ? [said.join('; ')] : said).map((line) => (
                <li>{line}</li>
              ))}
            </ul>
          </section>
        ))}
      </div>
      {sheet.leftOut.length > 0 && (
        <p class="left-out">Left out, so that the week keeps to one sheet: {sheet.leftOut.join('; ')}.</p>
      )}
    </article>,
  );
}

/** Whose sheets there are; with a single member or none there is nothing to choose. */
const Whose = ({ garden: { id, household }, list: { monday, person } }: Omit<WeekSheetPageProps, 'sheet'>) => {
  const names = (household?.members ?? []).map(({ name }) => name);
  return (
    <nav class="turner" aria-label="Whose sheet">
      <span>Print this page from your browser.</span>
      <a href={weekPath(id, monday)}>The week on the screen, where each date can be asked why</a>
      {names.length > 1 && (
        <>
          <a href={weekSheetPath(id, monday)} aria-current={person === undefined ? 'page' : undefined}>
            Everybody
          </a>
          {names.map((name) => (
            <a href={weekSheetPath(id, monday, name)} aria-current={person === name ? 'page' : undefined}>
              {name}
            </a>
          ))}
        </>
      )}
    </nav>
  );
};

interface DayProps {
  day: SheetDay;
  list: WeekList;
  units: UnitSystem;
}

const DayOnSheet = ({ day: { listed, entries }, list, units }: DayProps) => {
  const { day } = listed;
  const sum = daySum(listed, isToDo);
  return (
    <section class="day" aria-label={longDay(day, units)}>
      <h2 class="date">
        <span class="weekday">{weekdayName(day)}</span>
        <span class="number">{dayParts(day).dayOfMonth}</span>
        <span class="month">{formatDay(day, units).replace(/\s*\d+\s*/, '')}</span>
        {sum !== '' && <span class="month">{sum}</span>}
      </h2>
      <ol class="entries">
        {entries.map((entry) => (
          <EntryOnSheet entry={entry} list={list} units={units} />
        ))}
      </ol>
    </section>
  );
};

const EntryOnSheet = ({
  entry: { listed, notes, asks },
  list,
  units,
}: Omit<DayProps, 'day'> & { entry: SheetEntry }) => {
  const { entry, tasks } = listed;
  const [hour] = tasks.map((task) => hourText(task, { timeZone: list.timeZone, units }));
  const row = notes.filter(({ kind }) => IN_A_ROW.has(kind)).map(({ text }) => text);
  return (
    <li class={`entry ${entry.state}`}>
      {isToDo(listed) && <span class="tick" aria-hidden="true" />}
      <p class="entry-head">
        <PracticeMark practice={entry.practice} /> <span class="effort">{hoursText(entry.effortMinutes)}</span>
        {hour !== undefined && <span class="standing">{hour}</span>}
        {entry.state === 'done' && <span class="standing">done</span>}
        {entry.state === 'lapsed' && <span class="standing">{isToDo(listed) ? 'late' : 'past'}</span>}
      </p>
      <p class="entry-title">
        <WhyDateIf gardenId={list.gardenId} of={tasks[0]?.key}>
          {readableIn(units, entry.title, entry.day)}
        </WhyDateIf>
      </p>
      {row.length > 0 && <p class="leeway">{row.join(' ')}</p>}
      {notes
        .filter(({ kind }) => kind === 'caution')
        .map(({ text }) => (
          <p class="caution">{text}</p>
        ))}
      {asks > 0 && <Used tasks={tasks} units={units} />}
      {notes
        .filter(({ kind }) => kind === 'why')
        .map(({ text }) => (
          <p class="first-reason">{text}</p>
        ))}
    </li>
  );
};

/** A line to write on for what was really used, where later arithmetic counts on it. */
const Used = ({ tasks, units }: { tasks: SheetEntry['listed']['tasks']; units: UnitSystem }) => {
  const asked = tasks.flatMap((task) => askedAmounts(task, units).map((amount) => ({ ...amount, task })));
  const [first] = asked;
  return first === undefined ? null : (
    <p class="used">
      Really used:{' '}
      {asked.map(({ label, planned, unit, task }) => (
        <span>
          {capital(usedOf(label, asked.length > 1 ? task : undefined))} <span class="blank" /> {unit} ({planned}{' '}
          planned){' '}
        </span>
      ))}
    </p>
  );
};

/** What an amount is of, and where several are asked for, which of them it is: "oat seed, Middle bed". */
function usedOf(label: string, task: SheetEntry['listed']['tasks'][number] | undefined): string {
  const what = label.replace('How much ', '');
  if (task === undefined) return what;
  const { subject } = task;
  return `${what}, ${('bedName' in subject ? subject.bedName : undefined) ?? subject.name}`;
}
