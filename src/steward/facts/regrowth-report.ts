/**
 * Whether regrowth that somebody tells of can be true of its stand.
 */

import { fullDay } from '../../digest/words.ts';
import type { Garden, Stand } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import { coverName } from '../../practices/covers.ts';
import type { GardenView, Report } from '../doings/steward.ts';
import type { VersionedView } from '../planning/planner.ts';
import { doneTask } from './done-task.ts';

type RegrowthReport = Extract<Report, { kind: 'regrowth-seen' }>;

/** Everything that speaks against it. */
export function regrowthProblems({ garden, plan }: VersionedView, { standId, on }: RegrowthReport): Problem[] {
  const { units } = garden.place;
  const stand = garden.stands.find(({ id }) => id === standId);
  if (stand?.cutOn === undefined) {
    const what = stand === undefined ? `"${standId}" is not in this garden.` : `${nameOf(stand)} was not cut yet.`;
    return [{ where: 'the stand', what, mend: `Cut so far: ${cutStands(garden) || 'none'}.` }];
  }
  if (isDay(on) && on >= stand.cutOn && on <= plan.today) return [];
  const mend = `Give a day from ${fullDay(stand.cutOn, units)}, when it was cut, to ${fullDay(plan.today, units)}.`;
  return [{ where: 'the day it was seen', what: `"${on}" cannot be used.`, mend }];
}

function cutStands({ stands }: Garden): string {
  return stands
    .filter(({ cutOn }) => cutOn !== undefined)
    .map(({ id }) => id)
    .join(', ');
}

function nameOf({ coverId, id }: Stand): string {
  return `The ${coverName(coverId)} (${id})`;
}

/** What somebody saw, as the ledger keeps it: with the look that asked for it, where one is open. */
export function regrowthReport(
  { plan: { tasks, changes } }: GardenView,
  { id, bedId, coverId }: Stand,
  told: Pick<RegrowthReport, 'on' | 'answer'>,
): RegrowthReport {
  const asked = tasks.find(
    ({ kind, subject, state }) =>
      kind === 'check-regrowth' && subject.id === id && (state === 'open' || state === 'lapsed'),
  );
  const seen = { kind: 'regrowth-seen', standId: id, bedId, coverId, ...told } as const;
  if (asked === undefined || told.on < asked.window.earliest) return seen;
  return { ...seen, task: doneTask(asked, [], { on: told.on, changes }) };
}
