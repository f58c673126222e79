/**
 * A sheet for whoever minds the garden: only what cannot wait, in words for somebody who has never seen it, and what to
 * leave alone.
 */
import type { Climate } from '../climate/climate.ts';
import type { Away, Bed, Garden } from '../garden/garden.ts';
import { addDays, type Day, earliestOf, latestOf } from '../measures/days.ts';
import { cropSpans } from '../practices/bed-timeline.ts';
import { coverName } from '../practices/covers.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Plan, PlannedTask } from '../schedule/plan.ts';
import { timesAway } from '../schedule/work-days.ts';

/** Days after sowing that seed may not be up: slow kinds take three weeks in cool soil. House default. */
const SEED_DAYS = 21;

/** One thing to do. */
export interface Ask {
  key: TaskKey;
  /** The days of the time away it may be done on. */
  from: Day;
  to: Day;
  /** The day that is best, or the evening or morning it is for. */
  day: Day;
  /** In plain words; may hold marked amounts. */
  text: string;
}

/** What stands where. */
export interface BedLine {
  name: string;
  /** Crop and cover names, in words. */
  holds: string;
  /** Whether a crop to be watered stands in it. */
  thirsty: boolean;
  /** Whether it was sown so lately that its seed may not be up. */
  newlySown: boolean;
}

/** The sheet of one time away. */
export interface AwaySheet {
  gardenName: string;
  from: Day;
  to: Day;
  asks: readonly Ask[];
  beds: readonly BedLine[];
  /** Bins with a pile in them. */
  piles: readonly string[];
  /** What can hurt whoever does what is asked. */
  cautions: readonly string[];
}

/** What a sheet is made from. */
export interface SheetView {
  garden: Garden;
  climate: Climate;
  plan: Plan;
}

/** The time away a day lies in, else the next one; times that meet count as one. */
export function comingAway({ away }: Garden, day: Day): Away | undefined {
  return timesAway(away).find(({ to }) => to >= day);
}

/** The sheet of a time away. */
export function awaySheet({ garden, climate, plan }: SheetView, away: Away): AwaySheet {
  const asked = plan.tasks.filter((task) => isAsked(task, away));
  return {
    gardenName: garden.name,
    from: away.from,
    to: away.to,
    asks: asked.flatMap((task) => askOf(task, away)),
    beds: garden.beds.map((bed) => bedLine(garden, climate, bed, away)),
    piles: garden.bins.filter(({ id }) => holdsPile(garden, id, away.to)).map(({ name }) => name),
    cautions: [...new Set(asked.flatMap(({ cautions }) => cautions.slice(0, 1)))],
  };
}

function isAsked({ day, state, ifMissed, minder }: PlannedTask, { from, to }: Away): boolean {
  const wanted = state === 'open' || (state === 'lapsed' && ifMissed === 'still do');
  return wanted && minder !== undefined && day >= from && day <= to;
}

function askOf({ key, day, minder, window }: PlannedTask, { from, to }: Away): Ask[] {
  if (minder === undefined) return [];
  const [opens, closes] = [latestOf(window.earliest, from), earliestOf(window.latest, to)];
  const span = opens <= closes ? { from: opens, to: closes } : { from: day, to: day };
  return [{ key, day, text: minder, ...span }];
}

function bedLine(garden: Garden, climate: Climate, bed: Bed, { from }: Away): BedLine {
  const crops = cropSpans(garden, bed.id, climate).filter(
    (span) => span.from < from && (span.to === undefined || span.to >= from),
  );
  const covers = garden.stands.filter(
    ({ bedId, sow, cutOn, deadOn }) => bedId === bed.id && sow.day < from && !cutOn && !deadOn,
  );
  const names = [
    ...crops.map(({ crop }) => crop.name.toLowerCase()),
    ...covers.map(({ coverId }) => `${coverName(coverId)}, grown to feed the soil`),
  ];
  const sown = [
    ...crops.filter(({ planting }) => planting.start.how === 'sow').map((span) => span.from),
    ...covers.map(({ sow }) => sow.day),
  ];
  return {
    name: bed.name,
    holds: names.length === 0 ? 'no crop; it may be mulched' : [...new Set(names)].join('; '),
    thirsty: crops.length > 0,
    newlySown: sown.some((day) => day >= addDays(from, -SEED_DAYS)),
  };
}

function holdsPile({ piles }: Garden, binId: string, until: Day): boolean {
  return piles.some((pile) => pile.binId === binId && pile.built.happened && pile.built.day <= until);
}
