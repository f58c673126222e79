/**
 * Why work went on another day, looked up in the two plans and not in what they tell; and which reasons told are reasons
 * for work of the next seven days.
 */
import { addDays, daysBetween } from '../../src/measures/days.ts';
import { SHIFT_DAYS } from '../../src/schedule/held.ts';
import type { Move, Replan } from './lived-year.ts';

/** The plans a move lies between. */
export type Between = Pick<Replan, 'when' | 'before' | 'after'>;

/** What made a move necessary, or nothing that did. */
export type Cause = 'its window' | 'the order of work' | 'its company' | 'what was done' | 'nothing';

/** Looks up why work moved. A check's company is the work it rode with; other company is no cause. */
export function causeOf(move: Move, plans: Between): Cause {
  if (isShutOut(move)) return 'its window';
  if (isHeldUp(move, plans)) return 'the order of work';
  if (isLeft(move, plans)) return 'its company';
  return isRedated(move, plans) ? 'what was done' : 'nothing';
}

/** Rules that tell of a fuller week or other company: enough for later work, no reason inside seven days. */
const DRAWN_ELSEWHERE = ['load', 'hours', 'entries', 'gathered', 'alone'].map((rule) => `schedule.${rule}`);

/** Whether what a plan tells of a move is a reason for work of the next seven days. */
export function isReasoned({ change }: Pick<Move, 'change'>): boolean {
  const [first] = change?.because ?? [];
  return first !== undefined && !DRAWN_ELSEWHERE.includes(first.rule);
}

function isShutOut({ before: { day }, after: { window } }: Move): boolean {
  return day < window.earliest || day > window.latest;
}

function isHeldUp({ before: { day }, after: { after } }: Move, { after: plan }: Between): boolean {
  return after.some(({ key, minDays, maxDays }) => {
    const first = plan.tasks.find((task) => task.key === key);
    if (first === undefined) return false;
    return day < addDays(first.day, minDays) || (maxDays !== undefined && day > addDays(first.day, maxDays));
  });
}

/** A check that was in one entry with work which has left that day. */
function isLeft({ before, after }: Move, plans: Between): boolean {
  if (after.weight !== 'check') return false;
  const mates = plans.before.tasks.filter(({ lotId, key }) => lotId === before.lotId && key !== before.key);
  return mates.some(({ key }) => plans.after.tasks.find((task) => task.key === key)?.day !== before.day);
}

/** Work whose best day was shifted by more than a few days by what was done that day. */
function isRedated({ before, after }: Move, { when }: Between): boolean {
  return when === 'evening' && Math.abs(daysBetween(before.window.preferred, after.window.preferred)) > SHIFT_DAYS;
}
