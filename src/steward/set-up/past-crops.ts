/**
 * Days for what grew in seasons past, where nobody remembers them: the usual ones of the place.
 */
import type { Climate } from '../../climate/climate.ts';
import { dayOfIndex } from '../../climate/season.ts';
import type { Planting } from '../../garden/garden.ts';
import { firstFree, slug } from '../../garden/ids.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { cropSpans, cropYear, isPermanent } from '../../practices/bed-timeline.ts';
import { NO_NIGHTS } from '../../practices/frozen.ts';
import { cropWindow } from '../../practices/planting/crop-window.ts';
import { ASKED_DAYS } from '../../practices/rotation/index.ts';

/** Percent odds of a freeze by which the usual day is read: what a garden file has where it names none. */
const USUAL_RISK = 30;

/** Index of a season on which a crop is taken to have gone in where no window is known: late April, or autumn. House default. */
const SPRING_INDEX = 115;
const AUTUMN_INDEX = 285;

/** A planting as a garden file has it. */
export interface PastPlanting {
  id: string;
  bed: string;
  crop: string;
  sow?: Day;
  setOut?: Day;
  lastHarvest?: Day;
}

/** The day a crop of a season usually goes in, by the season it counts to. */
function usualDay(climate: Climate, crop: Vegetable, how: 'sow' | 'set-out', season: number): Day {
  const tried = [season, season - 1].flatMap((each) => {
    const day = cropWindow(climate, { crop, how, season: each, frostRisk: USUAL_RISK })?.earliest;
    return day !== undefined && cropYear({ crop, from: day }, climate) === season ? [day] : [];
  });
  const fallback =
    crop.maturityFrom === 'fall-set'
      ? dayOfIndex(climate.seasonTurn, season - 1, AUTUMN_INDEX)
      : dayOfIndex(climate.seasonTurn, season, SPRING_INDEX);
  return tried[0] ?? fallback;
}

/**
 * What grew in seasons past, as plantings that are over by a day; lasting crops stand on.
 *
 * @param today the garden's first day: all of them were cleared long enough before it that nobody is asked to
 */
export function pastPlantings(past: SetUpDraft['past'], climate: Climate, today: Day): PastPlanting[] {
  const taken = new Set<string>();
  // What was told as cleared is not asked to be cleared: so long ago, at least, was its last harvest.
  const cleared = addDays(today, -ASKED_DAYS.told - 1);
  return past.map(({ bed, crop: cropId, season }) => {
    const crop = vegetableById(cropId);
    const how = crop.establish === 'transplant' ? 'set-out' : 'sow';
    const day = earliestOf(usualDay(climate, crop, how, season), addDays(cleared, -1));
    const id = firstFree(slug(`${bed} ${cropId} ${season}`), taken);
    taken.add(id);
    const row = { id, bed, crop: cropId, ...(how === 'sow' ? { sow: day } : { setOut: day }) };
    if (isPermanent(crop)) return row;
    const ended = usualEnd({ id, bedId: bed, cropId, start: { how, day, happened: true } }, climate) ?? day;
    return { ...row, lastHarvest: latestOf(day, earliestOf(ended, cleared)) };
  });
}

function usualEnd(planting: Planting, climate: Climate): Day | undefined {
  return cropSpans({ plantings: [planting], ...NO_NIGHTS }, planting.bedId, climate)[0]?.to;
}
