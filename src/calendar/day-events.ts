/**
 * A day's jobs gathered in one event.
 */
import type { Day } from '../measures/days.ts';
import { dayRevision } from '../schedule/left-days.ts';
import type { Plan } from '../schedule/plan.ts';
import type { FeedEvent } from './render-feed.ts';
import { dayUid } from './uid.ts';

/** What the title of finished work begins with; a to-do is ticked instead. */
export const DONE_MARK = 'Done: ';

/**
 * One event a day. Work that has its hour keeps an event of its own, because the hour is what matters about it. The event
 * of a day never moves: what leaves the day leaves its text, and every coming, change and leaving is a revision of it.
 */
export function dayEvents(plan: Plan, jobs: readonly FeedEvent[], feedId: string): FeedEvent[] {
  const timed = jobs.filter(({ at }) => at !== undefined);
  const byDay = new Map<Day, FeedEvent[]>();
  for (const job of jobs) {
    if (job.at === undefined) byDay.set(job.day, [...(byDay.get(job.day) ?? []), job]);
  }
  return [...timed, ...[...byDay].map(([day, ofDay]) => dayEvent(plan, day, toDoFirst(ofDay), feedId))];
}

function toDoFirst(jobs: readonly FeedEvent[]): FeedEvent[] {
  return [...jobs.filter(({ done }) => done !== true), ...jobs.filter(({ done }) => done === true)];
}

function dayEvent(plan: Plan, day: Day, jobs: readonly FeedEvent[], feedId: string): FeedEvent {
  const revision = dayRevision(plan, day);
  const allDone = jobs.every(({ done }) => done === true);
  const changes = jobs.map(({ changedAt }) => changedAt).sort();
  const began = jobs.map(({ createdAt }) => createdAt).sort()[0] ?? '';
  return {
    uid: dayUid(plan.gardenId, feedId, day),
    day,
    title: dayTitle(jobs),
    ...(allDone ? { done: true } : {}),
    description: jobs.length === 1 ? (jobs[0]?.description ?? '') : jobs.map((job) => block(job, allDone)).join('\n\n'),
    categories: [...new Set(jobs.flatMap(({ categories }) => categories))],
    sequence: revision?.sequence ?? 0,
    createdAt: began,
    changedAt: revision?.changedAt ?? changes.at(-1) ?? '',
  };
}

/** "Turn the pile in Left bay, and 2 more": what is still to be done stands first. */
function dayTitle([first, ...others]: readonly FeedEvent[]): string {
  const more = others.length === 0 ? '' : `, and ${others.length} more`;
  return `${first?.title ?? ''}${more}`;
}

function block({ title, done, description }: FeedEvent, allDone: boolean): string {
  const name = `${done === true && !allDone ? DONE_MARK : ''}${title}`;
  return description === '' ? name : `${name}\n${description}`;
}
