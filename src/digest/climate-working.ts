/**
 * How each figure of a climate was worked out, in words, and what it rests on.
 */
import type { Climate, FreezeEvent, FreezeLimitF } from '../climate/climate.ts';
import { freezeDatesIn } from '../climate/season-freezes.ts';
import { quantity } from '../measures/quantity.ts';
import type { ReasonSource } from '../practices/draft.ts';

/** Depth the soil is reckoned at, cm (agro:S30). */
const SOIL_DEPTH_CM = 10;
/** Half a hardiness zone, 5 °F as a difference in °C (agro:S49). */
const HALF_ZONE_C = 25 / 9;

/** The working of a figure: sentences, and where its method or its figure comes from. */
export interface Working {
  how: string;
  source: ReasonSource;
}

/** What a climate is called by what it was taken from. */
export const BASIS_WORDS: Readonly<Record<Climate['basis'], string>> = {
  'daily-record': 'A daily record, counted season by season.',
  station: 'A station with published dates, kept as they are.',
  'weighted-stations':
    'The nearest stations together, each brought to the height of the garden; nearer ones weigh more.',
  'monthly-normals': 'Monthly means, from which freeze dates are read off.',
  'frost-dates': 'Two freeze dates that you gave; everything else is laid through them.',
};

/** How the dates of a freeze were come by. */
export function freezeWorking(
  climate: Climate,
  { event, limitF, season }: { event: FreezeEvent; limitF: FreezeLimitF; season: number },
): Working {
  const dates = freezeDatesIn(climate, { event, limitF, season });
  switch (dates.kind) {
    case 'none':
      return { how: 'No date is known: a freeze may come in any month, or never.', source: "the garden's climate" };
    case 'counted':
      return { how: countedWords(climate, dates.indices.length, dates.seasonsUsed), source: 'agro:S3' };
    case 'stated':
      return limitF === 32 ? STATED[climate.basis] : { how: DERIVED, source: 'climate:NCEI-8110' };
    default:
      return dates satisfies never;
  }
}

function countedWords({ seasons, frostOffsetDays }: Climate, having: number, used: number): string {
  const [first, last] = [seasons[0]?.season, seasons.at(-1)?.season];
  const years = first === undefined ? '' : `, ${first} to ${last}`;
  const all = having === used ? 'every one had it' : `${having} had it`;
  const moved =
    frostOffsetDays === 0 ? '' : ` The dates are then moved by ${frostOffsetDays} days inwards, as you asked.`;
  return `Counted in ${used} seasons of the record${years}; ${all}. The day that one, five or nine seasons of ten had passed is read off the sorted dates.${moved}`;
}

const DERIVED =
  'Derived: the mean minimum is followed from the 32 °F (0 °C) date to where it is colder by as much as this limit is. The ' +
  'spread is that of the 32 °F date.';

const HALVES =
  'Each side of the middle date is half of a normal curve, so that the published dates come back to the day.';

const STATED: Readonly<Record<Climate['basis'], Working>> = {
  'daily-record': { how: 'Counted in the seasons of the record.', source: 'agro:S3' },
  station: {
    how: `The middle date and the one of nine years in ten are published; the cautious one in ten is their mirror image. ${HALVES}`,
    source: 'climate:NCEI-8110',
  },
  'weighted-stations': {
    how: `Published dates of the stations below, brought to the height of the garden and weighed by nearness. ${HALVES}`,
    source: 'climate:NCEI-8110',
  },
  'monthly-normals': {
    how: 'Put where your mean minimum passes the level it has on that date at other places, and as wide as there.',
    source: 'climate:NCEI-8110',
  },
  'frost-dates': {
    how: 'The middle date is the one you gave; how far years scatter about it is the median of stations elsewhere.',
    source: "the garden's own plan",
  },
};

/** How the warmth of the soil was come by. */
export function soilWorking({ seasons }: Climate): Working {
  const counted =
    seasons.length > 0
      ? `looked for in each of ${seasons.length} seasons`
      : 'taken from the usual year, with the scatter measured on two records';
  return {
    how: `At a depth of ${quantity(SOIL_DEPTH_CM, 'cm')}, from the weighted mean of eleven days of air, pulled a fifth towards the mean of the year; snow holds it near freezing. The first day from which it holds for seven days, ${counted}. Bare soil: mulch and shade are not reckoned with.`,
    source: 'agro:S30',
  };
}

/** How heat was come by. */
export const HEAT_WORKING: Working = {
  how: 'Each day counts by as much as its mean lies above the base, added up; days below it count for nothing.',
  source: 'agro:S12',
};

/** How months were come by. */
export function monthsWorking({ seasons, basis }: Climate): Working {
  if (seasons.length > 0)
    return {
      how: `Each figure is the mean of its days in the ${seasons.length} seasons of the daily record behind this climate.`,
      source: "the garden's climate",
    };
  if (basis === 'frost-dates')
    return {
      how: 'Assumed: a smooth year laid through your two dates; highs lie above lows by the median of stations elsewhere. Take them as rough.',
      source: 'climate:NCEI-8110',
    };
  if (basis === 'monthly-normals') return { how: 'The monthly means you gave.', source: "the garden's own plan" };
  return { how: 'Published monthly means; between them a smooth line.', source: 'climate:NCEI-8110' };
}

/** How the zone was come by. */
export const ZONE_WORKING: Working = {
  how:
    `The coldest night of each winter, averaged, in steps of ${quantity(HALF_ZONE_C, 'deltaC')}. It says how cold winters ` +
    'get, and nothing of freeze dates.',
  source: 'agro:S49',
};
