/**
 * What a time away does to the plan, told before it is taken in: work pulled forward, work that waits, and work that
 * somebody else has to do or that is missed.
 */
import type { Away } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import type { Reason, TaskKey } from '../practices/draft.ts';
import { titleOf } from '../schedule/entry-text.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';

/** Work of one entry that has another day. */
export interface MovedWork {
  keys: readonly TaskKey[];
  title: string;
  from: Day;
  to: Day;
  /** What the new day rests on: the time away first. */
  reasons: readonly Reason[];
}

/** Work of one entry that stands on a day with nobody at home. */
export interface LeftWork {
  keys: readonly TaskKey[];
  title: string;
  day: Day;
  /** What is lost if nobody does it, and what to do on return. */
  missedNote: string;
  /** What to ask of somebody else, where it cannot wait. */
  asks: readonly string[];
  pinned: boolean;
}

/** What a time away comes to. */
export interface AwayList {
  earlier: readonly MovedWork[];
  later: readonly MovedWork[];
  left: readonly LeftWork[];
}

/**
 * The plan with the time away held against the one without.
 *
 * @param before the plan as it stands; the same as `after` for a time away that is in it already
 */
export function awayList(before: Plan, after: Plan, away: Away): AwayList {
  const was = new Map(before.tasks.map((task) => [task.key, task]));
  const moved = toDo(after).flatMap((task) => {
    const from = was.get(task.key)?.day;
    return from === undefined || from === task.day ? [] : [{ task, from }];
  });
  const isLeft = ({ day }: PlannedTask): boolean => day >= away.from && day <= away.to;
  const elsewhere = gathered(
    moved.filter(({ task }) => !isLeft(task)),
    ({ task, from }) => `${from} ${task.day} ${task.lotId}`,
  ).flatMap((rows) => movedWork(rows, away));
  return {
    earlier: elsewhere.filter(({ from, to }) => to < from),
    later: elsewhere.filter(({ from, to }) => to > from),
    left: gathered(toDo(after).filter(isLeft), ({ day, lotId, missedNote }) => `${day} ${lotId} ${missedNote}`).flatMap(
      leftWork,
    ),
  };
}

/** Tasks that still ask for something, in the order of the plan: by day. */
function toDo({ tasks }: Plan): PlannedTask[] {
  return tasks.filter(({ state, ifMissed }) => state === 'open' || (state === 'lapsed' && ifMissed === 'still do'));
}

function gathered<Row>(rows: readonly Row[], nameOf: (row: Row) => string): Row[][] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) groups.set(nameOf(row), [...(groups.get(nameOf(row)) ?? []), row]);
  return [...groups.values()];
}

function movedWork(rows: readonly { task: PlannedTask; from: Day }[], { from, to }: Away): MovedWork[] {
  const [first] = rows;
  if (first === undefined) return [];
  const tasks = rows.map(({ task }) => task);
  const home: Reason = { rule: 'schedule.nobody-home', saw: { from, to }, source: "the garden's own plan" };
  return [
    {
      ...{ keys: tasks.map(({ key }) => key), title: titleOf(tasks) },
      ...{ from: first.from, to: first.task.day, reasons: [home, ...first.task.reasons] },
    },
  ];
}

function leftWork(tasks: readonly PlannedTask[]): LeftWork[] {
  const [first] = tasks;
  if (first === undefined) return [];
  return [
    {
      keys: tasks.map(({ key }) => key),
      title: titleOf(tasks),
      day: first.day,
      missedNote: first.missedNote,
      asks: tasks.flatMap(({ minder }) => minder ?? []),
      pinned: tasks.some(({ pinned }) => pinned),
    },
  ];
}
