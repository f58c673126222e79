/**
 * What may be told of the people of a garden: members that are there, beds that are there, work that is still to be done.
 */
import type { HouseholdFact } from '../garden/household-facts.ts';
import { suggestion } from '../garden/nearest-name.ts';
import type { Problem } from '../garden/problem.ts';
import { isDay } from '../measures/days.ts';
import type { VersionedView } from './planner.ts';

/** What is wrong with a fact about people, told of a garden as it stands. */
export function householdProblems(view: VersionedView, fact: HouseholdFact): Problem[] {
  switch (fact.kind) {
    case 'member-kept':
      return memberProblems(view, fact);
    case 'member-gone':
      return knownProblems(view, fact.name);
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
  return (garden.household?.members ?? []).map(({ name }) => name);
}

function memberProblems(view: VersionedView, { member, formerName }: Told<'member-kept'>): Problem[] {
  const former = formerName === undefined ? [] : knownProblems(view, formerName);
  const isTaken = formerName !== undefined && formerName !== member.name && namesIn(view).includes(member.name);
  const taken = { where: 'the name', what: `"${member.name}" is somebody else already.`, mend: 'Give another name.' };
  const beds = view.garden.beds.map(({ id }) => id);
  const unknown = (member.beds ?? []).filter((bed) => !beds.includes(bed));
  return [
    ...former,
    ...(isTaken ? [taken] : []),
    ...unknown.map((bed) => ({
      where: 'the beds',
      what: `"${bed}" is not a bed of this garden.`,
      mend: suggestion(bed, beds),
    })),
  ];
}

function knownProblems(view: VersionedView, name: string, where = 'the name'): Problem[] {
  const names = namesIn(view);
  if (names.includes(name)) return [];
  const mend = names.length === 0 ? 'Add members on the Household page first.' : suggestion(name, names);
  return [{ where, what: `"${name}" is not of this household.`, mend }];
}

function mailProblems(view: VersionedView, { name, week }: Told<'mail-stopped'>): Problem[] {
  const where = 'the week';
  const mend = 'Give the Monday of a week, such as 2027-04-19.';
  const wrongWeek = week === undefined || isDay(week) ? [] : [{ where, what: `"${week}" is not a day.`, mend }];
  return [...knownProblems(view, name), ...wrongWeek];
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
