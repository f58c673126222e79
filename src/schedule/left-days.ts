/**
 * Days that calendar entries have left, remembered so that whatever is said of such a day afterwards can count as a
 * later revision of what was said before.
 */
import { addDays, type Day, type Instant } from '../measures/days.ts';
import type { Entry, LeftDay, Plan } from './plan.ts';
import { DONE_KEPT_DAYS } from './plan.ts';

/** What is counted up: a day's revision is the sum of its entries' own and of what has left it. */
function weightOf({ sequence }: Pick<Entry, 'sequence'>): number {
  return sequence + 1;
}

/** The days left so far, with those that an entry of the published plan leaves now; days long past are forgotten. */
export function leftDays(
  published: Pick<Plan, 'entries' | 'left'> | undefined,
  entries: readonly Entry[],
  { today, now }: { today: Day; now: Instant },
): LeftDay[] {
  const since = addDays(today, -DONE_KEPT_DAYS);
  const dayNow = new Map(entries.map(({ lotId, day }) => [lotId, day]));
  const left = new Map((published?.left ?? []).map((one) => [one.day, one]));
  for (const before of published?.entries ?? []) {
    if (dayNow.get(before.lotId) === before.day) continue;
    const revisions = (left.get(before.day)?.revisions ?? 0) + weightOf(before) + 1;
    left.set(before.day, { day: before.day, revisions, at: now });
  }
  return [...left.values()].filter(({ day }) => day >= since).sort((a, b) => (a.day < b.day ? -1 : 1));
}

/**
 * Revision of everything that stands on a day, and when it last changed: raised whenever an entry comes, changes or
 * leaves, and by nothing else. Undefined for a day that no entry was ever on.
 */
export function dayRevision(
  plan: Pick<Plan, 'entries' | 'left'>,
  day: Day,
): { sequence: number; changedAt: Instant } | undefined {
  const here = plan.entries.filter((entry) => entry.day === day);
  const gone = plan.left?.find((one) => one.day === day);
  const moments = [...here.map(({ changedAt }) => changedAt), ...(gone === undefined ? [] : [gone.at])].sort();
  const changedAt = moments.at(-1);
  if (changedAt === undefined) return undefined;
  const sequence = here.reduce((sum, entry) => sum + weightOf(entry), gone?.revisions ?? 0);
  return { sequence, changedAt };
}
