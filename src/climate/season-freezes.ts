/**
 * The freeze dates a season may still have, once some of its nights have been seen.
 */
import type { Climate, FreezeDates, FreezeEvent, FreezeLimitF } from './climate.ts';
import { countFreezes } from './freeze-record.ts';
import { loggedIn, membersFor, seenTo } from './members.ts';
import { memory } from './remembered.ts';

/** A freeze of a season. */
export interface SeasonFreeze {
  event: FreezeEvent;
  limitF: FreezeLimitF;
  season: number;
}

const counted = memory<Climate, string, FreezeDates>();

/**
 * How a freeze of a season is spread. A record's seasons are counted again with the season's own nights laid over them;
 * published and assumed dates stay as they are, for they have no nights to lay them over.
 */
export function freezeDatesIn(climate: Climate, { event, limitF, season }: SeasonFreeze): FreezeDates {
  const usual = climate.freezes[limitF][event];
  if (climate.seasons.length === 0 || loggedIn(climate, season).length === 0) return usual;
  return counted(climate, `${event} ${limitF} ${season}`, () =>
    countFreezes(climate.seasonTurn, membersFor(climate, season), {
      event,
      limitF,
      offsetDays: climate.frostOffsetDays,
      seenTo: seenTo(climate, season),
    }),
  );
}
