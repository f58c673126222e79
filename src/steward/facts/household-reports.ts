/**
 * What may be told of the people of a garden: members that are there, beds that are there, work that is still to be done.
 */
import { membersOf } from '../../garden/household-changes.ts';
import type { HouseholdFact } from '../../garden/household-facts.ts';
import { everyMemberId } from '../../garden/member-ids.ts';
import { suggestion } from '../../garden/nearest-name.ts';
import type { Problem } from '../../garden/problem.ts';
import { isDay } from '../../measures/days.ts';
import type { VersionedView } from '../planning/planner.ts';

/** What is wrong with a fact about people, told of a garden as it stands. */
export function householdProblems(view: VersionedView, fact: HouseholdFact): Problem[] {
  switch (fact.kind) {
    case 'member-kept':
      return memberProblems(view, fact);
    case 'member-gone':
      return presentProblems(view, fact);
    case 'mail-stopped':
      return mailProblems(view, fact);
    case 'people-told':
      return [];
    case 'task-assigned':
      return assignedProblems(view, fact);
    default:
      return fact satisfies never;
  }
}

type Told<Kind extends HouseholdFact['kind']> = Extract<HouseholdFact, { kind: Kind }>;

function namesIn({ garden }: VersionedView): string[] {
  return membersOf(garden).map(({ name }) => name);
}

function memberProblems(view: VersionedView, { member }: Told<'member-kept'>): Problem[] {
  const others = membersOf(view.garden).filter(({ id }) => id !== member.id);
  const isGone = others.length === membersOf(view.garden).length && everyMemberId(view.ledger).has(member.id);
  const gone = { where: 'the id', what: `"${member.id}" is that of somebody who has left.`, mend: 'Give another.' };
  const isTaken = others.some(({ name }) => name === member.name);
  const taken = { where: 'the name', what: `"${member.name}" is somebody else already.`, mend: 'Give another name.' };
  const beds = view.garden.beds.map(({ id }) => id);
  const unknown = (member.beds ?? []).filter((bed) => !beds.includes(bed));
  return [
    ...(isGone ? [gone] : []),
    ...(isTaken ? [taken] : []),
    ...unknown.map((bed) => ({
      where: 'the beds',
      what: `"${bed}" is not a bed of this garden.`,
      mend: suggestion(bed, beds),
    })),
  ];
}

/** What is said of somebody by their id, with the name they have. */
function presentProblems(view: VersionedView, { id, name }: { id: string; name: string }): Problem[] {
  const isThere = membersOf(view.garden).some((member) => member.id === id && member.name === name);
  const known = isThere ? [] : knownProblems(view, name);
  const mend = 'Look at the Household page, and tell it again.';
  return isThere || known.length > 0 ? known : [{ where: 'the name', what: `"${name}" is somebody else.`, mend }];
}

function knownProblems(view: VersionedView, name: string, where = 'the name'): Problem[] {
  const names = namesIn(view);
  if (names.includes(name)) return [];
  const mend = names.length === 0 ? 'Add members on the Household page first.' : suggestion(name, names);
  return [{ where, what: `"${name}" is not of this household.`, mend }];
}

function mailProblems(view: VersionedView, { id, name, week }: Told<'mail-stopped'>): Problem[] {
  const where = 'the week';
  const mend = 'Give the Monday of a week, such as 2027-04-19.';
  const wrongWeek = week === undefined || isDay(week) ? [] : [{ where, what: `"${week}" is not a day.`, mend }];
  return [...presentProblems(view, { id, name }), ...wrongWeek];
}

function assignedProblems(view: VersionedView, { tasks, to }: Told<'task-assigned'>): Problem[] {
  const unfit = tasks.flatMap(({ key }) => {
    const task = view.plan.tasks.find((row) => row.key === key);
    if (task !== undefined && (task.state === 'open' || task.state === 'lapsed')) return [];
    const what = task === undefined ? 'is not in the plan.' : `is ${task.state} already.`;
    return [{ where: key, what, mend: 'Choose a task that is still open; the week page lists them.' }];
  });
  return [...unfit, ...(to === undefined ? [] : knownProblems(view, to, 'whose it is'))];
}
