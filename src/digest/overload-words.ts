/**
 * Weeks that want more than they give, in words: what can wait and until when, what cannot, and what might be put off or
 * left out. The hours are the whole household's: handing work from one member to another leaves a week as full as it was.
 */
import type { Garden } from '../garden/garden.ts';
import type { PracticeName } from '../garden/practice-names.ts';
import { addDays, type Day, weekStart } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import { effortTogether } from '../schedule/effort-together.ts';
import { titleOf } from '../schedule/entry-text.ts';
import { minutesWithout } from '../schedule/overloads.ts';
import type { Overload, Plan, PlannedTask } from '../schedule/plan.ts';
import { givenMinutes as givenIn } from '../schedule/week-hours.ts';
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
  const { monday, wantedMinutes, canWait, cannotWait } = overload;
  const [waiting, staying] = [partsOf(canWait, plan), partsOf(cannotWait, plan)];
  const late = waiting.filter(isLate);
  const inTime = waiting.filter((part) => !isLate(part));
  const named = (part: Part): string => `"${part.title}", until ${dated(lastDay(part, overload))}`;
  return [
    `Week of ${dated(monday)}: ${hoursText(wantedMinutes)} wanted, ${givenText(overload, plan, garden)}.`,
    ...listed(inTime, 'can wait', named),
    ...listed(late, late.length === 1 ? 'is late and stays in sight' : 'are late and stay in sight', named),
    ...listed(
      staying,
      'cannot wait',
      ({ title, tasks }) => `"${title}"${tasks.some(isPinned) ? ', which is pinned' : ''}`,
    ),
    ...waysOut(overload, waiting, staying, { plan, garden }),
  ];
}

function givenText({ monday, givenMinutes }: Overload, { today }: Plan, { place, away }: Garden): string {
  const now = monday === weekStart(today);
  if (givenMinutes > 0) return `${hoursText(givenMinutes)} ${now && monday < today ? 'left' : 'given'}`;
  return isAwayThroughout(monday, { place, away }) ? 'nobody is at home on a work day' : 'none of its hours are left';
}

/** Whether a week has no work day on which anybody is at home. */
function isAwayThroughout(monday: Day, { place, away }: Pick<Garden, 'place' | 'away'>): boolean {
  return givenIn(monday, { ...place, away }) === 0;
}

function isLate({ tasks }: Part): boolean {
  return tasks.every(({ state }) => state === 'lapsed');
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

/** What would make the week fit: work put off where that is enough, else what to leave out. */
function waysOut(overload: Overload, waiting: readonly Part[], staying: readonly Part[], around: Around): string[] {
  const { plan, garden } = around;
  const over = (parts: readonly Part[]): number => {
    const keys = new Set(parts.flatMap(({ tasks }) => tasks.map(({ key }) => key)));
    return minutesWithout(keys, overload.monday, plan) - overload.givenMinutes;
  };
  const latestFirst = [...waiting].sort((a, b) => (lastDay(a, overload) < lastDay(b, overload) ? 1 : -1));
  const putOff = enough(latestFirst, over);
  const left = over(putOff);
  if (left <= 0) {
    const without = roomless(putOff, overload, around);
    return [
      `With ${titles(putOff)} put off, the rest fits.`,
      ...without.map((part) => `But no week until ${dated(lastDay(part, overload))} has room for "${part.title}".`),
    ];
  }
  const givenUp = enough([...staying].sort(byLoss), (parts) => over([...putOff, ...parts]));
  return [
    ...(waiting.length === 0 ? [] : [`With all that can wait put off, ${hoursText(left)} are still too much.`]),
    ...givenUp.map((part) => leaving(part, isAwayThroughout(overload.monday, garden))),
  ];
}

/** Parts that no later week in their time has room for, once those before them have taken theirs. */
function roomless(parts: readonly Part[], overload: Overload, { plan, garden }: Around): Part[] {
  const taken = new Map<Day, number>();
  return parts.filter((part) => {
    const last = lastDay(part, overload);
    for (let monday = addDays(overload.monday, 7); monday <= last; monday = addDays(monday, 7)) {
      const wanted = minutesWithout(new Set(), monday, plan) + (taken.get(monday) ?? 0) + part.minutes;
      if (wanted > givenIn(monday, { ...garden.place, away: garden.away })) continue;
      taken.set(monday, (taken.get(monday) ?? 0) + part.minutes);
      return false;
    }
    return true;
  });
}

/** The first parts without which a week is over no more; all where that is not enough. */
function enough(parts: readonly Part[], over: (without: readonly Part[]) => number): Part[] {
  const taken: Part[] = [];
  for (const part of parts) if (over(taken) > 0) taken.push(part);
  return taken;
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

/** What leaving a part out comes to; while the household is away somebody else may do it instead. */
function leaving({ title, tasks }: Part, isAway: boolean): string {
  const way = isAway ? `Ask whoever minds the garden for "${title}", or leave it out.` : `Leave out "${title}".`;
  return `${way} If it is left: ${tasks[0]?.missedNote ?? ''}`;
}
