/**
 * Where the day a cover is worth cutting, its flowers and what follows do not meet: which gives way, and what that costs.
 */
import { normalShareBelow } from '../../climate/quantiles.ts';
import { addDays, type Day, daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { growsAgain, REGROWTH_DAYS, SHEET_DAYS } from '../after-cut.ts';
import type { CoverPart } from '../covers.ts';
import { type BloomClose, givesOdds } from './bloom-figure.ts';
import { type CutWindow, OPEN_DAYS } from './cut-window.ts';
import type { Follower } from './followers.ts';

/** In words what gives way at a stand's cut, with days and years; nothing where its limits meet. */
export function cutClash(parts: readonly CoverPart[], { window, next, bloom, grown }: CutWindow): string | undefined {
  const { latest } = window;
  if (next !== undefined && latest > next.cutBy) return nextGivesWay(parts, latest, next, bloom);
  if (bloom === undefined) return undefined;
  if (grown !== undefined && bloom.close < grown && latest <= bloom.close)
    return (
      `It flowers before it is worth cutting, so growth gives way: the cut comes ${inDays(latest, grown)} sooner.` +
      flowersBy(bloom, grown, 'Left to grow until then')
    );
  if (next !== undefined && daysBetween(latest, bloom.close) >= OPEN_DAYS)
    return (
      `Growth gives way to ${next.what}, ${inDays(latest, bloom.close)} of it: its flowers alone would let it stand until ` +
      `${dated(bloom.close)}.`
    );
  return undefined;
}

/** The cut comes too late for all of the wait: what follows goes in later, or there is no time for a sheet. */
function nextGivesWay(
  parts: readonly CoverPart[],
  latest: Day,
  { what, from, waitDays }: Follower,
  bloom: BloomClose | undefined,
): string {
  const settled = addDays(latest, waitDays);
  const sheetOff = addDays(latest, REGROWTH_DAYS.low + SHEET_DAYS.low);
  const sheet =
    growsAgain(parts) && sheetOff > from
      ? ` Where it grows again, a sheet makes that ${inDays(from, sheetOff)} later than planned.`
      : '';
  const flowers = bloom === undefined ? '' : flowersBy(bloom, latest, 'By then');
  return settled > from
    ? `The bed is wanted before this cover is worth cutting, so ${what} gives way: cut on ${dated(latest)}, it goes in ` +
        `${inDays(from, settled)} later than planned.${sheet}${flowers}`
    : `The bed is wanted so soon that the time for a sheet gives way: cut on ${dated(latest)}, ${what} keeps its day.` +
        `${sheet}${flowers}`;
}

/** In how many of ten years it has flowered, or come to seed, by a day; nothing where that is hardly one, or a guess. */
function flowersBy({ expected, inFlower, model }: BloomClose, day: Day, when: string): string {
  if (expected === undefined || !givesOdds(model)) return '';
  const share = normalShareBelow(daysBetween(expected.day, day) / expected.deviationDays);
  const years = Math.round(share * 10);
  return years === 0 ? '' : ` ${when} it ${inFlower ? 'has viable seed' : 'flowers'} in ${years} of 10 years.`;
}

function inDays(from: Day, to: Day): string {
  const days = daysBetween(from, to);
  return days === 1 ? '1 day' : `${days} days`;
}
