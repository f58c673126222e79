/**
 * What a change does to a plan, task by task.
 */
import { toldOtherwise } from '../../digest/told-otherwise.ts';
import type { Plan, PlannedTask } from '../../schedule/plan.ts';
import type { AmountChange, TaskMove } from '../doings/steward.ts';

/** What moves, comes, goes or is told otherwise between a plan and the one a change would make of it. */
export function movesBetween(before: Plan, after: Plan): TaskMove[] {
  const open = (plan: Plan) =>
    new Map(plan.tasks.filter(({ state }) => state !== 'skipped').map((task) => [task.key, task]));
  const [was, will] = [open(before), open(after)];
  const keys = [...new Set([...was.keys(), ...will.keys()])];
  return keys.flatMap((key) => {
    const [from, to] = [was.get(key), will.get(key)];
    const amounts = from && to ? amountChanges(from, to) : [];
    const otherwise = from && to && toldOtherwise(from, to);
    if (from?.day === to?.day && from?.state === to?.state && amounts.length === 0 && otherwise === undefined)
      return [];
    const title = ((otherwise && from) ?? to ?? from)?.title ?? key;
    const days = { ...(from ? { from: from.day } : {}), ...(to ? { to: to.day } : {}) };
    const reasons = (to ?? from)?.reasons ?? [];
    return [
      {
        key,
        title,
        ...days,
        reasons,
        ...(amounts.length === 0 ? {} : { amounts }),
        ...(otherwise ? { otherwise } : {}),
      },
    ];
  });
}

/** What is wanted in another amount than before, by what is to hand. */
function amountChanges(before: PlannedTask, after: PlannedTask): AmountChange[] {
  const measured = ({ supplies }: PlannedTask) =>
    new Map(supplies.flatMap(({ what, amount }) => (amount === undefined ? [] : [[what, amount] as const])));
  const [was, will] = [measured(before), measured(after)];
  return [...new Set([...was.keys(), ...will.keys()])].flatMap((what) => {
    const [from, to] = [was.get(what), will.get(what)];
    if (from?.value === to?.value && from?.unit === to?.unit) return [];
    return [{ what, ...(from ? { from } : {}), ...(to ? { to } : {}) }];
  });
}
