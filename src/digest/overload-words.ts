/**
 * Weeks that want more than they give, in words: what can wait and until when, what cannot, and what might be put off, left
 * out or handed over.
 */
import type { Garden, Member } from '../garden/garden.ts';
import type { PracticeName } from '../garden/practice-names.ts';
import { type Day, weekStart } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import { effortTogether } from '../schedule/effort-together.ts';
import { titleOf } from '../schedule/entry-text.ts';
import type { Overload, Plan, PlannedTask } from '../schedule/plan.ts';
import { isTheirs } from '../schedule/whose.ts';
import { hoursText } from './words.ts';

/** An overload with its sentences, which may hold marked days. */
export interface OverloadTold extends Overload {
  sentences: readonly string[];
}

/** Work of one entry, or the part of it that can wait, or cannot. */
interface Part {
  tasks: readonly PlannedTask[];
  title: string;
  minutes: number;
}

/** What a garden lives by comes last; what it can best do without comes first. House default, from common practice. */
const LEFT_FIRST: readonly PracticeName[] = [
  'season-end',
  'mulching',
  'composting',
  'new-beds',
  'topdressing',
  'fertility',
  'rotation',
  'cover-cropping',
  'soil-readiness',
  'planting',
  'frost-watch',
];

/** What can still be done late is left before what another thing can replace, and that before what is lost. */
const LOSS: Readonly<Record<PlannedTask['ifMissed'], number>> = { 'still do': 0, replace: 1, drop: 2 };

/** The overloads that touch a week; beside the current week those ahead as well. */
export function overloadsTold(plan: Plan, garden: Garden, monday: Day): OverloadTold[] {
  const ahead = monday === weekStart(plan.today);
  return (plan.overloads ?? [])
    .filter((overload) => ahead || overload.monday === monday)
    .map((overload) => ({ ...overload, sentences: overloadSentences(overload, plan, garden) }));
}

/** An overload in sentences. */
export function overloadSentences(overload: Overload, plan: Plan, garden: Garden): string[] {
  const { monday, wantedMinutes, givenMinutes, canWait, cannotWait } = overload;
  const [waiting, staying] = [partsOf(canWait, plan), partsOf(cannotWait, plan)];
  const given = givenMinutes === 0 ? 'nobody is at home on a work day' : `${hoursText(givenMinutes)} given`;
  return [
    `Week of ${dated(monday)}: ${hoursText(wantedMinutes)} wanted, ${given}.`,
    ...listed(waiting, 'can wait', (part) => `"${part.title}", until ${dated(lastDay(part, overload))}`),
    ...listed(staying, 'cannot', ({ title, tasks }) => `"${title}"${tasks.some(isPinned) ? ', which is pinned' : ''}`),
    ...waysOut(overload, waiting, staying, { plan, garden }),
  ];
}

/** The work of each entry together, in the plan's order. */
function partsOf(keys: readonly string[], { tasks }: Plan): Part[] {
  const lots = new Map<string, PlannedTask[]>();
  for (const task of tasks) {
    if (keys.includes(task.key)) lots.set(task.lotId, [...(lots.get(task.lotId) ?? []), task]);
  }
  return [...lots.values()].map((lot) => ({ tasks: lot, title: titleOf(lot), minutes: effortTogether(lot) }));
}

function listed(parts: readonly Part[], verb: string, told: (part: Part) => string): string[] {
  if (parts.length === 0) return [];
  const which = parts.length === 1 ? 'This one' : `These ${counted(parts.length)}`;
  return [`${which} ${verb}: ${parts.map(told).join('; ')}.`];
}

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'] as const;

function counted(count: number): string {
  return COUNTS[count] ?? String(count);
}

function lastDay({ tasks }: Part, { until, monday }: Overload): Day {
  return tasks.map(({ key }) => until[key] ?? monday).sort()[0] ?? monday;
}

function isPinned({ pinned }: PlannedTask): boolean {
  return pinned;
}

interface Around {
  plan: Plan;
  garden: Garden;
}

/** What would make the week fit: work put off where that is enough, else what to leave out, or to whom to hand it. */
function waysOut(overload: Overload, waiting: readonly Part[], staying: readonly Part[], around: Around): string[] {
  const over = overload.wantedMinutes - overload.givenMinutes;
  const latestFirst = [...waiting].sort((a, b) => (lastDay(a, overload) < lastDay(b, overload) ? 1 : -1));
  const putOff = enough(latestFirst, over);
  const left = over - minutesOf(putOff);
  if (left <= 0) return [`With ${titles(putOff)} put off, the rest fits.`];
  const givenUp = enough([...staying].sort(byLoss), left);
  return [
    ...(waiting.length === 0 ? [] : [`With all that can wait put off, ${hoursText(left)} are still too much.`]),
    ...givenUp.map((part) => leaving(part, around)),
  ];
}

/** The first parts that together take so many minutes; all where that is not enough. */
function enough(parts: readonly Part[], minutes: number): Part[] {
  const taken: Part[] = [];
  for (const part of parts) if (minutesOf(taken) < minutes) taken.push(part);
  return taken;
}

function minutesOf(parts: readonly Part[]): number {
  return parts.reduce((sum, part) => sum + part.minutes, 0);
}

function titles(parts: readonly Part[]): string {
  return parts.map(({ title }) => `"${title}"`).join(' and ');
}

function byLoss(a: Part, b: Part): number {
  return lossOf(a) - lossOf(b) || b.minutes - a.minutes;
}

function lossOf({ tasks }: Part): number {
  return Math.max(
    ...tasks.map(({ ifMissed, practice }) => LOSS[ifMissed] * LEFT_FIRST.length + LEFT_FIRST.indexOf(practice)),
  );
}

/** What leaving a part out comes to, and who else might do it. */
function leaving(part: Part, around: Around): string {
  const [first] = part.tasks;
  const to = memberFree(part, around);
  const hand = to === undefined ? '' : `, or hand it to ${to.name}`;
  return `Leave out "${part.title}"${hand}. If it is left: ${first?.missedNote ?? ''}`;
}

/** The member with the least work of their own in the week among those whose work it is not. */
function memberFree({ tasks }: Part, { plan, garden }: Around): Member | undefined {
  const { assigned, household } = garden;
  const week = weekStart(tasks[0]?.day ?? plan.today);
  const own = (member: Member): number =>
    plan.tasks
      .filter(({ day, state }) => weekStart(day) === week && (state === 'open' || state === 'done'))
      .filter((task) => isTheirs(task, member, assigned))
      .reduce((sum, { effortMinutes }) => sum + effortMinutes, 0);
  const others = (household?.members ?? []).filter((member) => !tasks.some((task) => isTheirs(task, member, assigned)));
  return [...others].sort((a, b) => own(a) - own(b))[0];
}
