/**
 * The weekly look for buds in a stand whose flowers no published figure foretells.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { budsKey, sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter } from '../seasons.ts';
import type { CutWindow } from './cut-window.ts';
import { bloomOdds } from './fit/bloom-odds.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Days from one look to the next. House default: buds take a week or more to open. */
const WEEK_DAYS = 7;
/**
 * Days before the freeze from which buds do no harm: what shows then seeds no more. House default: a week to the flower, and
 * in the cool of autumn three or more to viable seed, where buckwheat takes ten days of summer (cover:S4a).
 */
const BUDS_TO_SEED_DAYS = 30;

/**
 * The next look for buds, one at a time: the first from the day the handbook names, each other a week after the last.
 *
 * @param sown the day it was sown, or is meant to be
 * @returns nothing where a figure is known, a stage was seen already, its cut is due by then, or the freeze comes first
 */
export function budLook(
  input: PracticeInput,
  at: StandInBed,
  sown: Day,
  cut: CutWindow | undefined,
): TaskDraft | undefined {
  const { stand, bed, parts, name } = at;
  const bloom = stand.seen === undefined ? bloomOdds(input, parts, sown, cut?.window.latest) : undefined;
  if (bloom === undefined || !('none' in bloom)) return undefined;
  const { looks, last } = looksMade(input, stand.id);
  const from = last === undefined ? bloom.lookFrom : latestOf(bloom.lookFrom, addDays(last, WEEK_DAYS));
  if (from > lastLookDay(input, at, bloom.lookFrom, cut)) return undefined;
  return {
    ...draftOfStand(input, at),
    key: budsKey(stand.id, looks + 1),
    kind: 'look-for-buds',
    job: { id: 'look-for-buds', title: 'Look for buds on covers' },
    weight: 'check',
    title: `Look for buds on the ${name} in ${bed.name}`,
    steps: [
      'Part it with your hands and look at the tips; on grains, whether a head swells in the topmost leaf.',
      'Nothing yet: mark this done, and it is looked at again in a week.',
      'Buds, heads or flowers: say so under Report, with the day. Its cut is dated from that day, and it is remembered here.',
    ],
    cautions: [],
    supplies: [],
    window: { earliest: from, preferred: from, latest: addDays(from, WEEK_DAYS - 1) },
    ifMissed: 'still do',
    missedNote: 'Flowers come unseen while nobody looks: look now, and cut it where any are out.',
    effortMinutes: LOOK_MINUTES,
    after: stand.sow.happened ? [] : [{ key: sowKey(stand.id), minDays: 0 }],
    reasons: [{ rule: 'cover-buds.no-figure', saw: { cover: name, from: bloom.lookFrom }, source: 'house default' }],
  };
}

/** How many looks of a stand are settled, done or skipped, and the day of the last. */
function looksMade({ garden: { done, skipped } }: PracticeInput, standId: string): { looks: number; last?: Day } {
  const days = new Map([...done.map(({ key, on }): [string, Day] => [key, on]), ...Object.entries(skipped)]);
  let looks = 0;
  let last: Day | undefined;
  for (let day = days.get(budsKey(standId, 1)); day !== undefined; day = days.get(budsKey(standId, looks + 1))) {
    looks += 1;
    last = last === undefined ? day : latestOf(last, day);
  }
  return { looks, ...(last === undefined ? {} : { last }) };
}

/** The last day that a look may begin on: a week before its cut may be made, or while buds could still come to seed. */
function lastLookDay(input: PracticeInput, at: StandInBed, lookFrom: Day, cut: CutWindow | undefined): Day {
  const seeds = addDays(overBy(input, at, lookFrom), -BUDS_TO_SEED_DAYS);
  return cut === undefined ? seeds : earliestOf(seeds, addDays(cut.window.earliest, -WEEK_DAYS));
}

/** The day by which nothing flowers any more: the freeze of that season, or the winter after it. */
function overBy({ climate }: PracticeInput, { parts }: StandInBed, lookFrom: Day): Day {
  const limitF = parts.every(({ cover }) => cover.frostTender) ? 32 : 28;
  const season = seasonOf(climate.seasonTurn, lookFrom);
  const freeze = freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
  const winter = midwinterAfter(climate, lookFrom);
  return freeze === undefined || freeze <= lookFrom ? winter : earliestOf(freeze, winter);
}
