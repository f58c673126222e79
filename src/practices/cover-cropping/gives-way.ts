/**
 * What is planned for a bed whose cover has grown again: whether there is time to end it first, and else what gives way.
 */
import { addDays, type Day, daysBetween, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type AfterCut, SHEET_DAYS } from '../after-cut.ts';
import { nextCrop } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import { nextStand } from './followers.ts';
import { COVER_AFTER_COVER_DAYS, waitBefore } from './settle.ts';
import type { StandInBed } from './stand.ts';

/** What is wanted in a bed next. */
interface Wanted {
  /** In words. */
  what: string;
  day: Day;
  /** Days it waits for fresh residue to settle. */
  waitDays: number;
}

/** The crop or the cover that is planned for a bed next, after its stand was cut. */
export function nextWanted(
  input: PracticeInput,
  { bed, parts }: StandInBed,
  { lastCut }: AfterCut,
): Wanted | undefined {
  const crop = nextCrop(input.garden, bed.id, input.climate, lastCut);
  const cover = nextStand(input, bed.id, lastCut);
  const wanted: Wanted[] = [
    ...(crop === undefined
      ? []
      : [{ what: crop.crop.name.toLowerCase(), day: crop.from, waitDays: waitBefore(parts, crop) }]),
    ...(cover === undefined
      ? []
      : [{ what: coverName(cover.coverId), day: cover.sow.day, waitDays: COVER_AFTER_COVER_DAYS }]),
  ];
  return wanted.sort((a, b) => (a.day < b.day ? -1 : 1))[0];
}

/** Which gives way, what comes next or the way to end the cover, and by how many days; nothing where nothing is planned. */
export function givesWay(input: PracticeInput, at: StandInBed, state: AfterCut): string | undefined {
  const next = nextWanted(input, at, state);
  if (next === undefined) return undefined;
  const { what, day, waitDays } = next;
  const off = latestOf(addDays(state.on, SHEET_DAYS.low), addDays(state.lastCut, waitDays));
  const sheetLate = daysBetween(day, off);
  const planned = `Next here: ${what}, planned for ${dated(day)}.`;
  if (state.is !== 'green') {
    return sheetLate <= 0
      ? `${planned} The sheet is off by then.`
      : `${planned} The sheet lies until ${dated(off)} at the least, so that gives way, by ${inDays(sheetLate)}.`;
  }
  const settled = addDays(state.on, waitDays);
  const cutLate = daysBetween(day, settled);
  if (sheetLate <= 0 && cutLate <= 0) return `${planned} There is time for another cut, and for a sheet.`;
  if (cutLate <= 0) {
    return (
      `${planned} Cut now, it keeps its day; a sheet laid now lies until ${dated(off)} at the least and puts it off by ` +
      `${inDays(sheetLate)}.`
    );
  }
  return (
    `${planned} That gives way: what is cut now has settled by ${dated(settled)}, ${inDays(cutLate)} late; a sheet laid ` +
    `now is off on ${dated(off)}, ${inDays(Math.max(sheetLate, 0))} late.`
  );
}

function inDays(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}
