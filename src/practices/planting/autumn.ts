/**
 * Windows counted back from the first autumn freeze: kinds grown towards autumn, and garlic, which goes in after it.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeDay } from '../../climate/freeze.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { addDays, type Day, earliestOf } from '../../measures/days.ts';
import type { Reason } from '../draft.ts';
import { groundFreezes, medianFreeze, weeksFrom } from './ground.ts';

/** The days garlic goes in after the first killing freeze, 28 °F (veg:V43). */
const AFTER_KILLING_DAYS = { first: 7, last: 14 } as const;
/** Days of rooting garlic wants before the ground freezes (veg:V43: four to six weeks). */
const ROOTING_DAYS = 28;

/** The days a crop may go in. */
export interface CropWindow {
  earliest: Day;
  /** The last of the days that suit best. */
  bestUntil: Day;
  latest: Day;
  /** Why it opens when it does, the reason that decides first; and why it closes. */
  opens: readonly Reason[];
  closes: readonly Reason[];
  /** From here on it is late: it ripens in most years, through light frosts. */
  lateFrom?: Day;
  /** From here on only early kinds ripen. */
  earlyKindsFrom?: Day;
}

/** The last sowing in weeks before the median first freeze, counted for the way it is started. */
export interface LastWeeks {
  preferred: number;
  hard: number;
}

/** The window of a kind whose weeks are all counted from autumn; nothing where no date is known. */
export function autumnWindow(
  climate: Climate,
  crop: Vegetable,
  season: number,
  last: LastWeeks | undefined,
  aheadWeeks: number,
): CropWindow | undefined {
  const freeze = medianFreeze(climate, 'first-autumn', season);
  const weeks = crop.autumnSetWeeks;
  if (freeze === undefined || weeks === undefined) return undefined;
  if (crop.maturityFrom === 'fall-set') return garlicWindow(climate, crop, season, freeze);
  const [fromWeeks, toWeeks] = [weeks.fromWeeks + aheadWeeks, weeks.toWeeks + aheadWeeks];
  const latest = weeksFrom(freeze, -(last?.hard ?? toWeeks));
  const saw = { crop: crop.name.toLowerCase(), weeksFrom: fromWeeks, weeksTo: last?.hard ?? toWeeks, freeze };
  return {
    earliest: weeksFrom(freeze, -fromWeeks),
    bestUntil: earliestOf(weeksFrom(freeze, -toWeeks), latest),
    latest,
    opens: [],
    closes: [{ rule: 'plant.autumn', saw, limit: latest, source: originOf(crop, 'autumnSetWeeks') }],
  };
}

function garlicWindow(climate: Climate, crop: Vegetable, season: number, light: Day): CropWindow {
  const after = afterKilling(climate, crop, season, light);
  const frozen = groundFreezes(climate, season);
  const rooted = frozen === undefined ? undefined : addDays(frozen, -ROOTING_DAYS);
  const latest = rooted === undefined ? after.last : earliestOf(after.last, rooted);
  const week = AFTER_KILLING_DAYS.last - AFTER_KILLING_DAYS.first;
  const ground: Reason[] =
    frozen === undefined
      ? []
      : [
          {
            rule: 'plant.ground-freezes',
            saw: { frozen, days: ROOTING_DAYS },
            limit: rooted ?? latest,
            source: 'veg:V43',
          },
        ];
  return {
    earliest: earliestOf(after.first, addDays(latest, -week)),
    bestUntil: latest,
    latest,
    opens: [],
    closes: [after.reason, ...ground],
  };
}

/** One to two weeks after the median first 28 °F; where only freezes of 32 °F are known, three to four after those. */
function afterKilling(climate: Climate, crop: Vegetable, season: number, light: Day) {
  const known = climate.basis !== 'frost-dates';
  const killing = freezeDay(climate, { event: 'first-autumn', limitF: 28, season, chancePercent: 50 });
  if (known && killing !== undefined) {
    const { first, last } = AFTER_KILLING_DAYS;
    const saw = { freeze: killing, limitF: 28, daysFirst: first, daysLast: last };
    const days = { first: addDays(killing, first), last: addDays(killing, last) };
    return { ...days, reason: { rule: 'plant.garlic', saw, limit: days.last, source: 'veg:V43' } satisfies Reason };
  }
  const { fromWeeks, toWeeks } = crop.autumnSetWeeks ?? { fromWeeks: 0, toWeeks: 0 };
  const days = { first: weeksFrom(light, -fromWeeks), last: weeksFrom(light, -toWeeks) };
  const saw = { freeze: light, limitF: 32, daysFirst: -7 * fromWeeks, daysLast: -7 * toWeeks };
  return {
    ...days,
    reason: { rule: 'plant.garlic', saw, limit: days.last, source: originOf(crop, 'autumnSetWeeks') } satisfies Reason,
  };
}
