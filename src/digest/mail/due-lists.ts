/**
 * Which weekly list is to be sent to a member now, which was never sent in time, and when the next one goes out.
 */
import { Cron } from 'croner';
import { DateTime } from 'luxon';
import { addDays, type Day, type Instant, type Weekday, weekdayOf, weekStart } from '../../measures/days.ts';

/** A list with the moment it goes out. */
export interface DueList {
  /** Monday of the week it covers. */
  monday: Day;
  at: Instant;
}

/** What is due for one member. */
export interface DueLists {
  /** The list to send now or as late as this; absent where nothing was due yet, or the week of the last is over. */
  now?: DueList;
  /** Lists that were due, and are of no use any more: their week is over, or a newer one is due too. Newest first. */
  past: readonly DueList[];
  next: DueList;
}

/** Whose lists, by whose clock. */
export interface DueAsked {
  timeZone: string;
  mail: { weekday: Weekday; hour: number };
  /** When the member first had mail: hours before it are nobody's. */
  since: Instant;
  now: Instant;
  /** Mondays of weeks whose list went out or is settled otherwise: none of them is announced again. */
  settled?: readonly Day[];
}

/** Weeks looked back over. House default: what was missed longer ago is of no use as news either. */
const LOOK_BACK_WEEKS = 5;

/** The first day of the week whose list covers the week after. House default: on Saturday and Sunday one looks ahead. */
const LOOKS_AHEAD_FROM: Weekday = 6;

/**
 * What is due for a member at a moment. Where the clocks skip the chosen hour it is the first moment after it; where
 * they show it twice, the first of the two.
 */
export function dueLists({ timeZone, mail, since, now, settled = [] }: DueAsked): DueLists {
  const hours = new Cron(`0 ${mail.hour} * * ${mail.weekday}`, { timezone: timeZone, paused: true });
  const listAt = (moment: Date): DueList => {
    const at = moment.toISOString();
    return { monday: mondayOf(localDay(timeZone, at), mail.weekday), at };
  };
  // Only hours before the moment asked for are given back, by the second: one that has just struck counts.
  const past = hours
    .previousRuns(LOOK_BACK_WEEKS, new Date(Date.parse(now) + MS_PER_SECOND))
    .map(listAt)
    .filter(({ at }) => at >= since && at <= now);
  const listAfter = (moment: Date): DueList => {
    const run = hours.nextRun(moment);
    if (run === null) throw new Error(`No hour ${mail.hour} of weekday ${mail.weekday} comes in ${timeZone}.`);
    return listAt(run);
  };
  let next = listAfter(new Date(now));
  while (settled.includes(next.monday)) next = listAfter(new Date(next.at));
  const [newest, ...older] = past;
  const isOver = newest === undefined || localDay(timeZone, now) > addDays(newest.monday, 6);
  return isOver ? { past, next } : { now: newest, past: older, next };
}

/** The first day on which the list of a week can go out. */
export function earliestSending(monday: Day): Day {
  return addDays(monday, LOOKS_AHEAD_FROM - 8);
}

const MS_PER_SECOND = 1_000;

/** The Monday of the week that a list sent on a day covers. Clocks that skip an hour can carry it past midnight. */
function mondayOf(day: Day, weekday: Weekday): Day {
  const chosen = addDays(day, -((weekdayOf(day) - weekday + 7) % 7));
  return addDays(weekStart(chosen), weekday >= LOOKS_AHEAD_FROM ? 7 : 0);
}

function localDay(timeZone: string, at: Instant): Day {
  return DateTime.fromISO(at, { zone: timeZone }).toISODate() ?? at.slice(0, 10);
}
