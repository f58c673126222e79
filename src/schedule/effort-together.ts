/**
 * What tasks take that are done in one go.
 */

/** What counting minutes looks at. */
export interface Effort {
  job: { id: string };
  effortMinutes: number;
  /** The part of it that is spent once, however many are done together. */
  onceMinutes?: number;
}

/** Minutes for tasks done in one go: what is spent once a job is counted once. */
export function effortTogether(tasks: readonly Effort[]): number {
  const once = new Map<string, number>();
  let rest = 0;
  for (const { job, effortMinutes, onceMinutes = 0 } of tasks) {
    once.set(job.id, Math.max(once.get(job.id) ?? 0, onceMinutes));
    rest += effortMinutes - onceMinutes;
  }
  return rest + [...once.values()].reduce((sum, minutes) => sum + minutes, 0);
}
