/**
 * Keys by which one practice's task waits for another's without knowing it. A key whose task is not in the plan holds
 * nothing up.
 */
import type { TaskKey } from './draft.ts';

/** The task that clears a crop away. */
export function clearKey(plantingId: string): TaskKey {
  return `bed-clear/planting:${plantingId}`;
}

/** The task that spreads the yearly compost on a bed, named by the season whose crops it feeds. */
export function topdressKey(bedId: string, season: number): TaskKey {
  return `topdress/bed:${bedId}/${season}`;
}

/** The task that sows a stand. */
export function sowKey(standId: string): TaskKey {
  return `cover-sow/stand:${standId}`;
}

/** The task that cuts a stand. */
export function cutKey(standId: string): TaskKey {
  return `cover-cut/stand:${standId}`;
}
