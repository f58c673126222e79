/**
 * A weekly list as JSON.
 */
import type { ListedDay, WeekList } from '../../digest/week-list.ts';
import { taskJson } from './task-json.ts';

/** A list for {@link writeJson}, which writes its texts in the reader's units. */
export function weekJson({ gardenId, gardenName: _name, lapsed, days, next, comes, ...rest }: WeekList): object {
  return {
    garden: gardenId,
    ...rest,
    days: days.map(dayJson),
    lapsed: lapsed.map(({ key, title, window, missedNote }) => ({ key, title, latest: window.latest, missedNote })),
    next: next.map(briefDay),
    ...(comes === undefined ? {} : { comes: briefDay(comes) }),
  };
}

function dayJson({ day, entries }: ListedDay): object {
  return {
    day,
    entries: entries.map(({ entry: { lotId, title, state, effortMinutes }, tasks, whose }) => ({
      lotId,
      title,
      state,
      effortMinutes,
      ...(whose === undefined ? {} : { whose }),
      tasks: tasks.map(taskJson),
    })),
  };
}

function briefDay({ day, entries }: ListedDay): object {
  return { day, titles: entries.map(({ entry }) => entry.title) };
}
