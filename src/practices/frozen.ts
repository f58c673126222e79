/**
 * Crops that a measured night ended where they stood uncovered, for as long as nobody says that they live.
 */
import type { Garden, Planting } from '../garden/garden.ts';
import { measuredNights, type ToldNight } from '../garden/told-nights.ts';
import type { Vegetable } from '../handbook/shapes/vegetable.ts';
import { addDays, type Day } from '../measures/days.ts';
import { clearKey, coverTonightKey } from './keys.ts';

/** A night that ends tender crops where they stand uncovered, °C: the cold end of the bands of beans and corn (agro:S53). */
export const KILLED_C = -2;

/** Days after sowing before there is anything above the ground to freeze. House default. */
const SEEDLING_UP_DAYS = 7;

/** Tender crops that come again from below the ground where their leaves have frozen. Common practice. */
const COMES_AGAIN: ReadonlySet<string> = new Set(['potato']);

/** What is told of nights, and of what was done about them. */
export type NightsTold = Pick<Garden, 'coldNights' | 'weather' | 'done' | 'putOff'>;

/** Where nothing was told of any night. */
export const NO_NIGHTS: NightsTold = { coldNights: [], weather: [], done: [], putOff: {} };

/** Whether ice alone hurts a crop: tomatoes, beans and the like, and the leaves of potatoes. */
export function isTender({ damageTempC }: Vegetable): boolean {
  return damageTempC >= 0;
}

/** Whether a night of {@link KILLED_C} ends a crop for good. */
export function isEndedByIce(crop: Vegetable): boolean {
  return isTender(crop) && !COMES_AGAIN.has(crop.id);
}

/** The day a planting shows above the ground, or is set out. */
export function isOutFrom({ start }: Planting): Day {
  return start.how === 'sow' ? addDays(start.day, SEEDLING_UP_DAYS) : start.day;
}

/** Nights by the garden they were told of: every span of every bed asks for them. */
const known = new WeakMap<NightsTold, readonly ToldNight[]>();

/** The measured nights that end tender crops, without those for which covers went on; the earliest first. */
function killingNights(garden: NightsTold): readonly ToldNight[] {
  const held = known.get(garden);
  if (held !== undefined) return held;
  const nights = measuredNights(garden).filter(
    ({ evening, lowC }) => lowC <= KILLED_C && !garden.done.some(({ key }) => key === coverTonightKey(evening)),
  );
  known.set(garden, nights);
  return nights;
}

/**
 * The night that ended a planting; nothing where none did, or where its clearing was put off since: what is not yet to be
 * cleared lives.
 */
export function frozenBy(garden: NightsTold, planting: Planting, crop: Vegetable): ToldNight | undefined {
  if (!planting.start.happened || !isEndedByIce(crop)) return undefined;
  const out = isOutFrom(planting);
  const livesPast = garden.putOff[clearKey(planting.id)] ?? '';
  return killingNights(garden).find(({ evening }) => evening >= out && evening >= livesPast);
}
