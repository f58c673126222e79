/**
 * What was said of tasks of something that is no longer meant.
 */
import type { Day } from '../measures/days.ts';
import type { Garden } from './garden.ts';

/** The garden with nothing skipped, pinned or put off among the tasks whose keys hold all these parts; what is done stays done. */
export function asUnsaid(garden: Garden, parts: readonly string[]): Garden {
  const stays = ([key]: [string, Day]): boolean => !parts.every((part) => key.split('/').includes(part));
  const without = (told: Garden['skipped']) => Object.fromEntries(Object.entries(told).filter(stays));
  return { ...garden, skipped: without(garden.skipped), pins: without(garden.pins), putOff: without(garden.putOff) };
}
