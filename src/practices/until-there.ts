/**
 * Work in a bed that is still to be made waits until it is filled, whichever practice asks for it.
 */

import type { Bed, Garden } from '../garden/garden.ts';
import { inBed } from '../garden/in-bed.ts';
import { isStillToBeMade, thereFrom } from '../garden/planned-beds.ts';
import { latestOf } from '../measures/days.ts';
import type { TaskDraft } from './draft.ts';
import { fillKey, setOutKey, sowCropKey, sowKey } from './keys.ts';

/** The drafts, with those held back that put something into a bed before it is there. */
export function heldUntilThere(garden: Garden, drafts: readonly TaskDraft[]): readonly TaskDraft[] {
  const beds = garden.beds.filter(isStillToBeMade);
  if (beds.length === 0) return drafts;
  const beforeIt = new Map(beds.flatMap((bed) => keysOf(garden, bed).map((key) => [key, bed] as const)));
  return drafts.map((draft) => {
    const bed = beforeIt.get(draft.key);
    return bed === undefined ? draft : held(draft, bed);
  });
}

/** The tasks that put something into a bed: what is raised for it indoors does not wait. */
function keysOf({ plantings, stands }: Garden, bed: Bed): string[] {
  return [
    ...inBed(plantings, bed.id).flatMap(({ id }) => [sowCropKey(id), setOutKey(id)]),
    ...inBed(stands, bed.id).map(({ id }) => sowKey(id)),
  ];
}

function held(draft: TaskDraft, bed: Bed): TaskDraft {
  const { earliest, preferred, latest } = draft.window;
  const opens = latestOf(earliest, thereFrom(bed) ?? earliest);
  const window = opens > latest ? draft.window : { earliest: opens, preferred: latestOf(opens, preferred), latest };
  return { ...draft, window, after: [...draft.after, { key: fillKey(bed.id), minDays: 0 }] };
}
