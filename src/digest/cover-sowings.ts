/**
 * The covers that a plan still asks to sow, each on its day: those that somebody chose, and those it proposes itself where
 * nobody did.
 */
import type { Garden } from '../garden/garden.ts';
import type { Day } from '../measures/days.ts';
import { dated } from '../measures/quantity.ts';
import type { Supply, TaskKey, Window } from '../practices/draft.ts';
import type { Plan } from '../schedule/plan.ts';

/** A cover still to be sown. */
export interface CoverToSow {
  standId: string;
  bedId: string;
  bedName: string;
  cover: string;
  /** The day its task stands on, and the days that will do. */
  day: Day;
  window: Window;
  /** Its seed, with how much. */
  seed: readonly Supply[];
  /** Its task. */
  key: TaskKey;
  /** Whether it is the plan's own proposal: nobody has chosen it. */
  proposed: boolean;
}

/** The covers a plan asks to sow, the soonest first. */
export function coversToSow(garden: Pick<Garden, 'stands'>, { tasks }: Pick<Plan, 'tasks'>): CoverToSow[] {
  const chosen = new Set(garden.stands.map(({ id }) => id));
  return tasks
    .flatMap(({ kind, state, subject, day, window, supplies, key }): CoverToSow[] => {
      if (kind !== 'sow-cover' || state !== 'open' || subject.type !== 'stand') return [];
      const { id, bedId, bedName = '', grows } = subject;
      const seed = supplies.filter(({ amount }) => amount !== undefined);
      const proposed = !chosen.has(id);
      return [{ standId: id, bedId, bedName, cover: grows ?? 'a cover', day, window, seed, key, proposed }];
    })
    .sort((a, b) => (a.day < b.day ? -1 : 1));
}

/** When a stand in the plan is sown: by its task where that is asked, else by the day it is meant for. */
export function sownWhen(
  { id, sow }: Pick<Garden['stands'][number], 'id' | 'sow'>,
  toSow: readonly Pick<CoverToSow, 'standId' | 'day' | 'window'>[],
): string {
  const sowing = toSow.find(({ standId }) => standId === id);
  return sowing === undefined ? `sown about ${dated(sow.day)}` : `sown ${sowingDays(sowing)}`;
}

/** When a cover is to be sown: "on 29 September, between 27 September and 24 October". Holds marked days. */
export function sowingDays({ day, window: { earliest, latest } }: Pick<CoverToSow, 'day' | 'window'>): string {
  if (earliest === latest) return `on ${dated(day)}`;
  return `on ${dated(day)}, between ${dated(earliest)} and ${dated(latest)}`;
}
