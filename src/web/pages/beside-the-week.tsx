/**
 * What stands beside the days of a week: closing windows, what was missed, what moved and why, next week.
 */
import { addDays, type Day } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { reasonSentence } from '../../schedule/explain.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { GardenView } from '../../steward/steward.ts';
import { taskPath, weekPath } from '../addresses.ts';
import { type ChangeGroup, changesOf, closingSoon, lapsedTasks, type WeekView } from '../week-view.ts';
import { daysAhead, longDay, weekdayName } from '../words.ts';

interface BesideProps {
  view: GardenView;
  today: Day;
  week: WeekView;
  isThisWeek: boolean;
}

/** The second column. What belongs to today is left out beside another week. */
export const BesideTheWeek = ({ view, today, week, isThisWeek }: BesideProps) => {
  const { garden, plan } = view;
  const at = { plan, today, gardenId: garden.id, units: garden.place.units };
  return (
    <div class="beside">
      {isThisWeek && <Closing {...at} />}
      {isThisWeek && <Clashes {...at} />}
      {isThisWeek && <Missed {...at} />}
      {isThisWeek && <Changes {...at} />}
      <NextWeek {...at} week={week} isThisWeek={isThisWeek} />
    </div>
  );
};

interface At {
  plan: Plan;
  today: Day;
  gardenId: string;
  units: UnitSystem;
}

const Closing = ({ plan, today, gardenId, units }: At) => {
  const closing = closingSoon({ plan, today });
  if (closing.length === 0) return null;
  return (
    <section class="closing">
      <h2>Closing soon</h2>
      <ul>
        {closing.map(({ key, title, latest, daysLeft }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              last day {formatDay(latest, units)}, {daysAhead(daysLeft)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Clashes = ({ plan, gardenId, units }: At) =>
  plan.clashes.length === 0 ? null : (
    <section class="clashes">
      <h2>Does not fit</h2>
      <ul>
        {plan.clashes.map(({ key, title, what }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">{readableIn(units, what)}</span>
          </li>
        ))}
      </ul>
    </section>
  );

const Missed = ({ plan, gardenId, units }: At) => {
  const tasks = lapsedTasks(plan);
  if (tasks.length === 0) return null;
  return (
    <section class="missed">
      <h2>Window closed</h2>
      <ul>
        {tasks.map(({ key, title, window, missedNote }) => (
          <li>
            <a href={taskPath(gardenId, key)}>{readableIn(units, title)}</a>
            <span class="under">
              closed {formatDay(window.latest, units)}. {readableIn(units, missedNote)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const Changes = ({ plan, units }: At) => {
  const [moved, dropped, added] = [changesOf(plan, 'moved'), changesOf(plan, 'dropped'), changesOf(plan, 'added')];
  if (moved.length + dropped.length + added.length === 0) return null;
  return (
    <section class="changes">
      <h2>What moved and why</h2>
      <ul>
        {[...moved, ...dropped].map((group) => (
          <ChangeLine group={group} units={units} />
        ))}
      </ul>
      {added.length > 0 && (
        <details>
          <summary>New in the plan: {added.reduce((sum, { titles }) => sum + titles.length, 0)}</summary>
          <ul>
            {added.map((group) => (
              <ChangeLine group={group} units={units} />
            ))}
          </ul>
        </details>
      )}
    </section>
  );
};

const ChangeLine = ({ group, units }: { group: ChangeGroup; units: UnitSystem }) => (
  <li>
    {readableIn(units, group.titles.join('; '))}: {whatHappened(group, units)}
    {group.because.length > 0 && (
      <span class="under">{readableIn(units, [...new Set(group.because.map(reasonSentence))].join(' '))}</span>
    )}
  </li>
);

function whatHappened({ kind, from, to }: ChangeGroup, units: UnitSystem): string {
  const [was, is] = [from, to].map((day) => (day === undefined ? 'no day' : formatDay(day, units)));
  switch (kind) {
    case 'moved':
      return `from ${was} to ${is}.`;
    case 'dropped':
      return `off the plan; it stood on ${was}.`;
    case 'added':
      return `on ${is}.`;
    case 'reworded':
      return `stays on ${is}, for other reasons.`;
    default:
      return kind satisfies never;
  }
}

const NextWeek = ({ week, gardenId, units, isThisWeek }: At & { week: WeekView; isThisWeek: boolean }) => {
  if (week.next.length === 0) return null;
  return (
    <section class="next-week">
      <h2>
        <a href={weekPath(gardenId, addDays(week.monday, 7))}>{isThisWeek ? 'Next week' : 'The week after'}</a>
      </h2>
      <ul>
        {week.next.flatMap(({ day, entries }) =>
          entries.map(({ entry }) => (
            <li>
              <span class="small-date" title={longDay(day, units)}>
                {weekdayName(day).slice(0, 3)} {formatDay(day, units)}
              </span>{' '}
              {readableIn(units, entry.title)}
            </li>
          )),
        )}
      </ul>
    </section>
  );
};
