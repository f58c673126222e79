/**
 * What tasks are about, as every practice names it.
 */
import type { Bed, Garden, Subject } from '../garden/garden.ts';

/** The garden as a whole, or what of it a task is about when that has a name of its own. */
export function gardenSubject({ id, name: gardenName }: Pick<Garden, 'id' | 'name'>, name = gardenName): Subject {
  return { type: 'garden', id, name };
}

/** A bed. */
export function bedSubject({ id, name }: Pick<Bed, 'id' | 'name'>): Subject {
  return { type: 'bed', id, name };
}

/**
 * A cover in its bed.
 *
 * @param grows what grows in it, in words
 */
export function standSubject(id: string, grows: string, bed: Pick<Bed, 'id' | 'name'>): Subject {
  return { type: 'stand', id, name: `${grows} in ${bed.name}`, bedId: bed.id, grows, bedName: bed.name };
}

/**
 * A crop in its bed.
 *
 * @param grows the crop in words
 */
export function plantingSubject(id: string, grows: string, bed: Pick<Bed, 'id' | 'name'>): Subject {
  return { type: 'planting', id, name: `${grows} in ${bed.name}`, bedId: bed.id, grows, bedName: bed.name };
}
