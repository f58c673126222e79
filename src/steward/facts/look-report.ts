/**
 * Whether what somebody saw of a young cover can be true of its stand, and the task that asked for the look.
 */
import { fullDay } from '../../digest/words.ts';
import type { Stand, StandLook } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { COVERED } from '../../garden/stand-file.ts';
import { type Day, isDay } from '../../measures/days.ts';
import { coverName } from '../../practices/covers.ts';
import type { GardenView, Report } from '../doings/steward.ts';
import type { VersionedView } from '../planning/planner.ts';
import { doneTask } from './done-task.ts';

type LookReport = Extract<Report, { kind: 'stand-looked' }>;

/** Everything that speaks against it. */
export function lookProblems({ garden, plan }: VersionedView, { standId, on, covered }: LookReport): Problem[] {
  const stand = garden.stands.find(({ id }) => id === standId);
  if (stand === undefined) {
    const ids = garden.stands.filter(({ sow }) => sow.happened).map(({ id }) => id);
    const mend = `Sown here: ${ids.join(', ') || 'none yet'}.`;
    return [{ where: 'the stand', what: `"${standId}" is not a stand of this garden.`, mend }];
  }
  const day = (on: Day): string => fullDay(on, garden.place.units);
  if (!stand.sow.happened) {
    const what = `Its ${coverName(stand.coverId)} seed is not sown yet: that is meant for ${day(stand.sow.day)}.`;
    return [{ where: 'the stand', what, mend: 'Mark its sowing done first.' }];
  }
  const problems = lookDayProblems(stand, on, plan.today, day);
  if (COVERED.includes(covered)) return problems;
  const mend = `Give one of ${COVERED.join(', ')}.`;
  return [...problems, { where: 'the share of the ground', what: `"${covered}" is none.`, mend }];
}

function lookDayProblems(stand: Stand, on: Day, today: Day, day: (on: Day) => string): Problem[] {
  const where = 'the day it was looked at';
  const { sow, cutOn, deadOn } = stand;
  if (!isDay(on)) return [{ where, what: `"${on}" is no day.`, mend: `Give a day up to today, such as ${today}.` }];
  const ended = cutOn ?? deadOn;
  const mend = `Give a day from ${day(sow.day)} to ${day(ended !== undefined && ended < today ? ended : today)}.`;
  if (on > today) return [{ where, what: `${day(on)} is still to come.`, mend }];
  if (on < sow.day) return [{ where, what: `${day(on)} is before it was sown, on ${day(sow.day)}.`, mend }];
  if (ended === undefined || on <= ended) return [];
  const how = cutOn === undefined ? 'was seen dead' : 'was cut';
  return [{ where, what: `On ${day(on)} it stood no more: it ${how} on ${day(ended)}.`, mend }];
}

/** What somebody saw, as the ledger keeps it: with the task that asked for the look, where one is open. */
export function lookReport({ plan }: GardenView, look: StandLook & { standId: string }): LookReport {
  const asked = plan.tasks.find(
    ({ kind, subject, state }) =>
      kind === 'check-stand' && subject.id === look.standId && (state === 'open' || state === 'lapsed'),
  );
  return {
    kind: 'stand-looked',
    ...look,
    ...(asked === undefined ? {} : { task: doneTask(asked, [], { on: look.on, changes: plan.changes }) }),
  };
}
