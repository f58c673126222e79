/**
 * What else than its day and its amounts a change makes of a task that stays: its title, what it is about, its steps and
 * the days it may be done on.
 */
import { dated } from '../measures/quantity.ts';
import type { PlannedTask } from '../schedule/plan.ts';

/** A task that is told otherwise than before; absent is what stays. Texts may hold marked amounts and days. */
export interface ToldOtherwise {
  /** Its new title, where its work or what it is about is another. */
  title?: string;
  /** Steps it did not have before, in their order; empty where some only fall away. */
  steps?: readonly string[];
  /** The days it may now be done on, where it stands on its old day. */
  window?: { earliest: string; latest: string };
}

/** What a task of the same key tells otherwise; nothing where it is told as before, and of what is settled. */
export function toldOtherwise(before: PlannedTask, after: PlannedTask): ToldOtherwise | undefined {
  if (after.state !== 'open' && after.state !== 'lapsed') return undefined;
  const isMoved = before.day !== after.day;
  const plain = isMoved || amountsOf(before) !== amountsOf(after) ? withoutMarks : (text: string) => text;
  const isOther = before.subject.id !== after.subject.id || plain(before.title) !== plain(after.title);
  const known = new Set(before.steps.map(plain));
  const fresh = after.steps.filter((step) => !known.has(plain(step)));
  const hasOtherSteps = before.steps.map(plain).join('\n') !== after.steps.map(plain).join('\n');
  const { earliest, latest } = after.window;
  const hasOtherDays = before.window.earliest !== earliest || before.window.latest !== latest;
  const told: ToldOtherwise = {
    ...(isOther ? { title: after.title } : {}),
    ...(hasOtherSteps ? { steps: fresh } : {}),
    ...(hasOtherDays && !isMoved ? { window: { earliest, latest } } : {}),
  };
  return Object.keys(told).length === 0 ? undefined : told;
}

/** The same in words that follow the task's old title and a colon. */
export function otherwiseInWords({ title, steps, window }: ToldOtherwise): string {
  return [
    ...(title === undefined ? [] : [`is now: ${title}`]),
    ...(window === undefined ? [] : [`may now be done from ${dated(window.earliest)} to ${dated(window.latest)}`]),
    ...(steps === undefined ? [] : [stepsInWords(steps)]),
  ].join('; ');
}

function stepsInWords(steps: readonly string[]): string {
  return steps.length === 0 ? 'some of its steps fall away' : `its steps now say: ${steps.join(' ')}`;
}

/** Amounts are told by themselves where they change, and days where a task moves. */
function withoutMarks(text: string): string {
  return text.replace(/⟦[^⟧]*⟧/g, '⟦⟧');
}

function amountsOf({ supplies }: PlannedTask): string {
  return JSON.stringify(supplies.map(({ what, amount }) => [what, amount]));
}
