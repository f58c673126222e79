/**
 * What stands outdoors and can be hurt by a light frost.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Bed, Garden } from '../../garden/garden.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { type CropSpan, cropSpans, isPermanent } from '../bed-timeline.ts';
import { isOutFrom } from '../frozen.ts';

/** A crop in its bed. */
export interface Standing extends CropSpan {
  bed: Bed;
  /** The day it shows above the ground, or is set out. */
  out: Day;
  /** The day the next crop goes into the bed once this one is over. */
  nextFrom?: Day;
}

/** Crops hurt at this or a warmer night are watched: 28 °F, where half-hardy crops end (veg:V49). */
const WATCHED_FROM_C = -2.2;

/** Days a crop is taken to stand on after its expected end, while nobody has said it is cleared. House default. */
const LINGER_DAYS = 21;

/** Half-hardy crops whose harvest is in the ground: the soil keeps them through light freezes. Common practice. */
const KEPT_BY_SOIL: ReadonlySet<string> = new Set(['beet', 'carrot', 'celeriac', 'parsnip', 'winter-radish']);

/** Whether frost watch looks after a crop: hurt by a light frost, not kept by the soil, no bed that comes again. */
function isWatched(crop: Vegetable): boolean {
  return crop.damageTempC >= WATCHED_FROM_C && !isPermanent(crop) && !KEPT_BY_SOIL.has(crop.id);
}

/** Every crop that frost watch looks after, past and planned, by the ids of their beds. */
export function watchedCrops(garden: Garden, climate: Climate): Standing[] {
  const beds = [...garden.beds].sort((a, b) => (a.id < b.id ? -1 : 1));
  return beds.flatMap((bed) => {
    const spans = cropSpans(garden, bed.id, climate);
    return spans
      .filter(({ crop }) => isWatched(crop))
      .map((span) => {
        const { to, planting } = span;
        const out = isOutFrom(planting);
        const nextFrom = to === undefined ? undefined : spans.find((other) => other.from > to)?.from;
        return { ...span, bed, out, ...(nextFrom === undefined ? {} : { nextFrom }) };
      });
  });
}

/** Days before they are set out that plants raised indoors may be standing outside to harden: 7–14, from memory. */
const HARDENING_DAYS = 14;

/** Plants that may be outside in their pots on an evening, and can be carried in. */
export function hardeningOn(crops: readonly Standing[], evening: Day): Standing[] {
  return crops.filter(
    ({ planting: { start }, out }) =>
      start.how === 'set-out' && !start.happened && out > evening && out <= addDays(evening, HARDENING_DAYS),
  );
}

/** Those that stand outdoors on an evening, cleared ones and those since followed by another crop left out. */
export function standingOn(crops: readonly Standing[], evening: Day): Standing[] {
  return crops.filter(({ out, to, end, nextFrom }) => {
    if (out > evening || to === undefined) return out <= evening;
    if (end === 'happened' || end === 'frozen') return to > evening;
    return evening <= addDays(to, LINGER_DAYS) && (nextFrom === undefined || nextFrom > evening);
  });
}
