/**
 * The demo garden lived day by day through a real season: each morning the weather of the day before is logged and the
 * plan made again, each evening what was done is marked and it is made once more.
 */
import { demoGardenFile } from '../../demo-data/demo-garden.ts';
import { DEMO_WEATHER_YEAR, shiftedWeather } from '../../demo-data/demo-weather.ts';
import { withWeather } from '../../src/climate/logged.ts';
import type { Fact } from '../../src/garden/facts.ts';
import type { LedgerEntry } from '../../src/garden/ledger.ts';
import { projectGarden } from '../../src/garden/project.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { addDays, type Day, daysBetween, yearOf } from '../../src/measures/days.ts';
import { draftsOf } from '../../src/practices/catalogue.ts';
import type { TaskDraft, TaskKey } from '../../src/practices/draft.ts';
import { HELD_DAYS } from '../../src/schedule/held.ts';
import type { Change, Plan, PlannedTask } from '../../src/schedule/plan.ts';
import { makePlan } from '../../src/schedule/reconcile.ts';
import { doneTask } from '../../src/steward/facts/done-task.ts';
import { saidToday } from '../../src/steward/planning/said-today.ts';
import { demoClimate, demoRecord } from './demo-season.ts';

/** A plan made again: the one before it, and the drafts it was made from. */
export interface Replan {
  today: Day;
  when: 'morning' | 'evening';
  before: Plan;
  after: Plan;
  drafts: readonly TaskDraft[];
}

/** Work that a plan made again has put on another day. */
export interface Move {
  before: PlannedTask;
  after: PlannedTask;
  /** Its day had passed without a mark. */
  late: boolean;
  /** It was published for one of the next seven days. */
  inside: boolean;
  /** What the plan tells of it. */
  change: Change | undefined;
}

/** The work that a plan made again has put on another day, whatever it tells. */
export function movesIn({ today, before, after }: Replan): Move[] {
  const is = new Map(after.tasks.map((task) => [task.key, task]));
  return before.tasks.filter(isToDo).flatMap((was) => {
    const now = is.get(was.key);
    if (now === undefined || !isToDo(now) || now.day === was.day) return [];
    const told = after.changes.find(({ key, kind, from, to }) => {
      return key === was.key && kind === 'moved' && from === was.day && to === now.day;
    });
    const late = was.day < today;
    return [{ before: was, after: now, late, inside: !late && was.day <= addDays(today, HELD_DAYS), change: told }];
  });
}

function isToDo({ state, ifMissed }: PlannedTask): boolean {
  return state === 'open' || (state === 'lapsed' && ifMissed === 'still do');
}

/** Of so many tasks that come due one is not done on its day, and how many days later it is. */
const ONE_LATE_IN = 10;
const LATE_DAYS = 3;
/** Days ahead that a plan is worked out for, as the planner does. */
const DAYS_AHEAD = 396;

/** The demo garden laid on a day and lived for so many days of that year, by a household that does nine tasks in ten on time. */
export function* livedDemo(from: Day, days: number): Generator<Replan> {
  const file = checkGardenFile(demoGardenFile(from));
  const season = shiftedWeather(demoRecord, { year: DEMO_WEATHER_YEAR, anchor: `${yearOf(from)}-12-31` });
  const seen = (first: Day, last: Day): Fact => ({
    kind: 'weather-logged',
    days: season.filter(({ day }) => day >= first && day <= last).map((row) => ({ ...row, kind: 'observed' })),
  });
  const life = new Life();
  life.tell(from, { kind: 'garden-imported', file, prefer: 'file' }, seen('', addDays(from, -1)));
  life.plan(from, 'T06');
  for (let n = 0; n < days; n += 1) {
    const today = addDays(from, n);
    if (n > 0) {
      life.tell(today, seen(addDays(today, -1), addDays(today, -1)));
      yield { today, when: 'morning', ...life.plan(today, 'T06') };
    }
    const doing = life.doing(today);
    if (doing === undefined) continue;
    life.tell(today, doing);
    yield { today, when: 'evening', ...life.plan(today, 'T20') };
  }
}

/** One household's ledger, the plan it last saw, and when each task first came due. */
class Life {
  readonly #ledger: LedgerEntry[] = [];
  readonly #due = new Map<TaskKey, { on: Day; late: boolean }>();
  #published: Plan | undefined;
  #climate = { day: '', climate: demoClimate };

  tell(recordedOn: Day, ...facts: Fact[]): void {
    for (const fact of facts) {
      const entry = this.#ledger.length + 1;
      this.#ledger.push({ entry, recordedAt: `${recordedOn}T12:00:00.000Z`, recordedOn, by: 'household', fact });
    }
  }

  plan(today: Day, hour: string): Pick<Replan, 'before' | 'after' | 'drafts'> {
    const garden = projectGarden(this.#ledger);
    if (garden === undefined) throw new Error('No garden was brought in.');
    // What is worked out from a climate is kept with it: the evening plans by the morning's.
    if (this.#climate.day !== today)
      this.#climate = { day: today, climate: withWeather(demoClimate, garden.weather, today) };
    const { climate } = this.#climate;
    const drafts = draftsOf({ garden, climate, today, until: addDays(today, DAYS_AHEAD) });
    const [published, said] = [this.#published, saidToday(this.#ledger, today)];
    const made = { garden, drafts, today, now: `${today}${hour}:00:00.000Z`, said };
    const after = makePlan({ ...made, factsVersion: this.#ledger.length, published });
    this.#published = after;
    return { before: published ?? after, after, drafts };
  }

  /** What is done today: what stands on today, but for one task in ten, which is done some days later. */
  doing(today: Day): Fact | undefined {
    const { tasks = [], changes = [] } = this.#published ?? {};
    const toDo = tasks.filter(isToDo);
    for (const { key } of toDo.filter(({ key, day }) => day <= today && !this.#due.has(key)))
      this.#due.set(key, { on: today, late: (this.#due.size + 1) % ONE_LATE_IN === 0 });
    const done = toDo.filter((task) => this.#isDoneOn(today, task));
    if (done.length === 0) return undefined;
    return {
      kind: 'tasks-done',
      on: today,
      tasks: done.map((task) => doneTask(task, task.makes, { on: today, changes })),
    };
  }

  #isDoneOn(today: Day, { key, day }: PlannedTask): boolean {
    const due = this.#due.get(key);
    if (due === undefined) return false;
    return due.late ? daysBetween(due.on, today) >= LATE_DAYS : day <= today;
  }
}
