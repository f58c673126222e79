/**
 * Tasks of the plan put off, as facts.
 */
import type { Fact } from '../../garden/facts.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import { addDays, type Day, isDay } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';
import { canWait } from '../../schedule/put-off.ts';
import type { VersionedView } from '../planning/planner.ts';
import { MARK_DAYS, openTasks, refusal } from './marking.ts';

/**
 * What putting tasks off past a day makes true; nothing for those that were put off as far already.
 *
 * @throws {InputRefused} with every task that cannot wait so long, and what is lost where it waits all the same
 */
export function putOffFacts({ garden, plan }: VersionedView, keys: readonly TaskKey[], past: Day): Fact[] {
  if (!isDay(past) || past < plan.today || past > addDays(plan.today, MARK_DAYS)) {
    const mend = `Give a day of the coming year from today on, such as ${plan.today}.`;
    throw refusal('the day it is put off past', `"${past}" cannot be used.`, mend);
  }
  const asked = openTasks({ plan, garden }, keys).filter(({ key }) => (garden.putOff[key] ?? '') < past);
  const late = asked.filter((task) => !canWait(task, past));
  if (late.length > 0) {
    const problems = late.map((task) => cannotWait(task, garden.place.units));
    throw new InputRefused('It cannot wait.', problems);
  }
  return asked.length === 0
    ? []
    : [{ kind: 'put-off', on: past, tasks: asked.map(({ key, title }) => ({ key, title })) }];
}

/** Why a task cannot be put off, and what to say of it instead. */
export function cannotWait({ title, state, window, missedNote }: PlannedTask, units: UnitSystem): Problem {
  const closes = state === 'lapsed' ? 'It is late already: its last day was' : 'It cannot wait: its last day is';
  return {
    where: readableIn(units, title),
    what: readableIn(units, `${closes} ⟦${window.latest}⟧. ${missedNote}`),
    mend: 'Say that it is done, or skip it.',
  };
}
