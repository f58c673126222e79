/**
 * Crops that a garden file plans for another time of year than theirs: told as doubts, since a tunnel or a sheltered wall
 * moves them.
 */
import type { Climate } from '../../climate/climate.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Garden, Planting } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { killedByFreeze } from '../../practices/bed-timeline.ts';
import { type CropWindow, cropWindow } from '../../practices/planting/crop-window.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';

/** Days before or after its window from which on a planting is hardly meant. House default: three weeks, as a tunnel gives. */
const FAR_DAYS = 21;
/** Days for which a crop that bears no frost may be kept under covers after its freeze. House default: four weeks. */
const KEPT_DAYS = 28;

interface Looked {
  garden: Garden;
  climate: Climate;
}

/** A planned crop whose day lies far from the days it goes in. A succession's late sowings are told by themselves. */
export function seasonDoubts(
  { garden, climate }: Looked,
  planting: Planting,
  where: string,
  again: boolean,
): Problem[] {
  const { cropId, start } = planting;
  if (start.happened) return [];
  const crop = vegetableById(cropId);
  const season = seasonOf(climate.seasonTurn, start.day);
  const windows = [season - 1, season, season + 1].flatMap(
    (each) => cropWindow(climate, { crop, how: start.how, season: each, frostRisk: garden.place.frostRisk }) ?? [],
  );
  if (windows.some(({ earliest, latest }) => isNear(start.day, earliest, latest))) return [];
  const nearest = nearestOf(start.day, windows);
  if (nearest === undefined || (again && start.day > nearest.latest)) return [];
  const key = start.how === 'sow' ? 'sow' : 'setOut';
  return [
    {
      where: `${where}.${key}`,
      what:
        `${crop.name} is ${startWord(cropId, start.how)} on ${dated(start.day)}, ${start.day < nearest.earliest ? 'long before' : 'long after'} its ` +
        `time here, from ${dated(nearest.earliest)} to ${dated(nearest.latest)}.`,
      mend: 'Perhaps another month was meant; under a tunnel or in a sheltered place leave it as it is.',
    },
  ];
}

function isNear(day: string, earliest: string, latest: string): boolean {
  return day >= addDays(earliest, -FAR_DAYS) && day <= addDays(latest, FAR_DAYS);
}

function nearestOf(day: string, windows: readonly CropWindow[]): CropWindow | undefined {
  const [nearest] = [...windows].sort((a, b) => away(day, a) - away(day, b));
  return nearest;
}

/** Days by which a day misses a window. */
function away(day: string, { earliest, latest }: CropWindow): number {
  return Math.max(daysBetween(day, earliest), daysBetween(latest, day), 0);
}

/** A planned last harvest long after the freeze that kills a crop which bears none. */
export function frozenDoubts({ climate }: Looked, { cropId, start, lastHarvest }: Planting, where: string): Problem[] {
  if (lastHarvest === undefined || lastHarvest.happened) return [];
  const crop = vegetableById(cropId);
  const bearsNone = crop.frostClass === 'tender' || crop.frostClass === 'very-tender';
  const killed = bearsNone ? killedByFreeze(crop, start.day, climate) : undefined;
  if (killed === undefined || lastHarvest.day <= addDays(killed.day, KEPT_DAYS)) return [];
  return [
    {
      where: `${where}.lastHarvest`,
      what:
        `The last harvest of ${crop.name.toLowerCase()} is to be on ${dated(lastHarvest.day)}, and it bears no frost: the ` +
        `first freeze comes about ${dated(killed.day)}.`,
      mend: 'Perhaps another month was meant; under cover leave it as it is.',
    },
  ];
}
