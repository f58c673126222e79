/**
 * What is to go into the bed after a stand, and how early the stand has to be cut for it.
 */

import type { Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { REGROWTH_DAYS, SHEET_DAYS } from '../after-cut.ts';
import { type CropSpan, nextCrop } from '../bed-timeline.ts';
import { type CoverPart, coverName, coverParts } from '../covers.ts';
import type { Reason } from '../draft.ts';
import { sowKey } from '../keys.ts';
import { standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { COVER_AFTER_COVER_DAYS, daysToNextCover, settleDays, waitBefore } from './settle.ts';
import { standsAt } from './winter.ts';

/** A crop or cover that waits for the bed, and the last day to cut what stands there. */
export interface Follower {
  from: Day;
  /** What it is, in words. */
  what: string;
  cutBy: Day;
  /** Days that the fresh residue settles before it, sheet or no sheet. */
  waitDays: number;
  reason: Reason;
}

/** The follower that asks for the earliest cut; nothing where the stand is dead by then, or nothing is planned. */
export function firstFollower(
  input: PracticeInput,
  bedId: string,
  parts: readonly CoverPart[],
  sown: Day,
): Follower | undefined {
  const living = (day: Day): CoverPart[] => parts.filter(({ cover }) => standsAt(cover, sown, day, input));
  const crop = nextCrop(input.garden, bedId, input.climate, sown);
  const cover = nextStand(input, bedId, sown);
  const followers = [
    ...(crop && living(crop.from).length > 0 ? [cropFollower(living(crop.from), crop)] : []),
    ...(cover && living(cover.sow.day).length > 0 ? [coverFollower(living(cover.sow.day), cover)] : []),
  ];
  return followers.sort((a, b) => (a.cutBy < b.cutBy ? -1 : 1))[0];
}

/**
 * The next stand planned for a bed after a day. Clover broadcast on frozen ground goes in among what stands and waits
 * for no cut; nothing waits for a sowing that was skipped, or dropped for a disease.
 */
export function nextStand({ garden }: PracticeInput, bedId: string, after: Day): Stand | undefined {
  return inBed(garden.stands, bedId)
    .filter(
      (stand) =>
        stand.sow.day > after &&
        garden.skipped[sowKey(stand.id)] === undefined &&
        standLockOut(garden, stand) === undefined &&
        !coverParts(stand.coverId).every(({ cover }) => cover.springSow?.onFrozenSoil === true),
    )
    .sort((a, b) => (a.sow.day === b.sow.day ? (a.id < b.id ? -1 : 1) : a.sow.day < b.sow.day ? -1 : 1))[0];
}

function cropFollower(parts: readonly CoverPart[], next: CropSpan): Follower {
  const days = settleDays(parts, next);
  const cutBy = addDays(next.from, -days);
  const waitDays = waitBefore(parts, next);
  const sheeted = days > waitDays;
  const what = next.crop.name.toLowerCase();
  return {
    from: next.from,
    what,
    cutBy,
    waitDays,
    reason: {
      rule: sheeted ? 'cover-cut.next-sheet' : 'cover-cut.next-wait',
      saw: {
        next: what,
        how: next.planting.start.how === 'sow' ? 'sown' : 'set out',
        day: next.from,
        waitDays,
        regrowthDays: REGROWTH_DAYS.low,
        sheetDays: SHEET_DAYS.low,
      },
      limit: cutBy,
      source: sheeted ? 'cover:S39' : waitOrigin(parts),
    },
  };
}

function coverFollower(parts: readonly CoverPart[], { coverId, sow }: Stand): Follower {
  const days = daysToNextCover(parts);
  const cutBy = addDays(sow.day, -days);
  const what = coverName(coverId);
  return {
    from: sow.day,
    what,
    cutBy,
    waitDays: COVER_AFTER_COVER_DAYS,
    reason: {
      rule: 'cover-cut.next-cover',
      saw: { next: what, day: sow.day, days },
      limit: cutBy,
      source: days > SHEET_DAYS.low ? 'cover:S39' : 'cover:S5',
    },
  };
}

function waitOrigin(parts: readonly CoverPart[]): Reason['source'] {
  const [first] = parts;
  return first === undefined ? 'house default' : originOf(first.cover, 'waitDays');
}
