/**
 * What speaks against a planned day and a way of putting a crop in: said where the plan is made, and kept where it stands.
 */
import { chanceOfFreezeOnOrAfter } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { type CropWindow, cropWindow } from './crop-window.ts';
import { type How, SPRING_FREEZE_F, UNDER_GROUND_DAYS } from './first-day.ts';
import { plannedStart } from './planned-day.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** Share of years with a freeze to come from which a day is told to freeze most likely: more often than not. */
const LIKELY_SHARE = 0.5;

/** What is held against a planned day. */
export interface OffSeason {
  /** Why no day near it would do, so that the planting itself gets no task. */
  refused?: Reason;
  /** What it costs where the day is only a little outside: the nearest good day, and the freeze it meets. */
  warned: readonly Reason[];
}

/** A planned day held against its season here; a bed that is not free for it is only warned of. */
export function offSeason(input: PracticeInput, at: PlantingInBed): OffSeason {
  if (at.planting.start.happened) return { warned: [] };
  const planned = plannedStart(input, at);
  if ('refused' in planned) {
    const { refused } = planned;
    return refused.rule === 'plant.bed-taken' ? { warned: [refused] } : { refused, warned: [] };
  }
  if (planned.start.pulledFrom === undefined) return { warned: [] };
  const pulled = planned.start.reasons.filter(({ rule }) => rule === 'plant.pulled-in');
  return { warned: [...pulled, ...freezeAhead(input, at, planned.start.window.preferred)] };
}

/** The freeze of spring that what goes in on its planned day, ahead of the first good one, meets more often than not. */
function freezeAhead({ climate }: PracticeInput, { planting, crop, name }: PlantingInBed, good: Day): Reason[] {
  const { day, how } = planting.start;
  if (day >= good) return [];
  const limitF = SPRING_FREEZE_F[crop.frostClass];
  const open = how === 'sow' ? addDays(day, UNDER_GROUND_DAYS) : day;
  const share = chanceOfFreezeOnOrAfter(climate, { limitF, day: open });
  if (share === undefined || share < LIKELY_SHARE) return [];
  const saw = { crop: name, from: open, percent: Math.round(100 * share), tempC: celsius(limitF), how };
  return [{ rule: 'plant.will-freeze', saw, source: "the garden's climate" }];
}

/** A way of putting a crop in that it is not grown by. */
export function unusualHow({ planting, crop, name }: PlantingInBed): Reason | undefined {
  const { how } = planting.start;
  const usual = crop.establish === 'direct' ? 'sow' : crop.establish === 'transplant' ? 'set-out' : how;
  return how === usual ? undefined : { rule: 'plant.unusual-how', saw: { crop: name, how }, source: 'common practice' };
}

/** The window nearest to a day among those of the seasons around it that are still open on another day. */
export function openWindow(
  { climate, garden }: PracticeInput,
  { planting, crop }: PlantingInBed,
  { how, from }: { how: How; from: Day },
): CropWindow | undefined {
  const { day } = planting.start;
  const off = ({ earliest, latest }: CropWindow): number =>
    Math.max(0, daysBetween(day, earliest), daysBetween(latest, day));
  const season = seasonOf(climate.seasonTurn, day);
  const { frostRisk } = garden.place;
  return [season - 1, season, season + 1]
    .flatMap((year) => cropWindow(climate, { crop, how, season: year, frostRisk }) ?? [])
    .filter(({ latest }) => latest >= from)
    .sort((a, b) => off(a) - off(b))[0];
}
