/**
 * A crop that is over, and what follows it in its bed.
 */

import type { Bed, Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import type { Day } from '../../measures/days.ts';
import type { CropSpan } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import { sowKey } from '../keys.ts';
import { standLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';

/** What comes into the bed after a crop. */
export interface Follower {
  /** What goes into the bed next, in words. */
  what?: string;
  day?: Day;
  /** The next crop, whether or not a cover comes first. */
  crop?: CropSpan;
}

/** The end of a crop with all its task needs. */
export interface Changeover {
  span: CropSpan & { to: Day };
  /** Every crop of the bed, past and planned, in order. */
  spans: readonly CropSpan[];
  follower: Follower;
  /** What still stands in the bed when the crop is cleared: another crop or a cover sown under it. */
  stays?: string;
}

/** What follows a crop, and what stands beside it. */
export function changeoverOf(
  { garden }: PracticeInput,
  bed: Bed,
  span: CropSpan & { to: Day },
  spans: readonly CropSpan[],
): Changeover {
  const stands = inBed(garden.stands, bed.id)
    .filter((stand) => garden.skipped[sowKey(stand.id)] === undefined)
    .filter((stand) => standLockOut(garden, stand) === undefined)
    .sort((a, b) => order(a.sow.day, b.sow.day) || order(a.id, b.id));
  const stays = beside(span, spans) ?? sownUnder(span, stands);
  return { span, spans, follower: followerOf(span, spans, stands), ...(stays === undefined ? {} : { stays }) };
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function beside(span: CropSpan & { to: Day }, spans: readonly CropSpan[]): string | undefined {
  const other = spans.find(
    ({ planting, from, to }) =>
      planting.id !== span.planting.id && from < span.to && (to === undefined || to > span.to),
  );
  return other?.crop.name.toLowerCase();
}

/** A cover sown between the crop's own start and its end, and not yet gone. */
function sownUnder(span: CropSpan & { to: Day }, stands: readonly Stand[]): string | undefined {
  const under = stands.find(
    ({ sow, cutOn, deadOn }) =>
      sow.happened && sow.day > span.from && sow.day < span.to && (cutOn ?? deadOn) === undefined,
  );
  return under && coverName(under.coverId);
}

/** The next thing in the bed after a crop: a cover stand or a crop, whichever comes first. */
function followerOf(span: CropSpan & { to: Day }, spans: readonly CropSpan[], stands: readonly Stand[]): Follower {
  const crop = spans.find((other) => other.planting.id !== span.planting.id && other.from >= span.to);
  const stand = stands.find(({ sow }) => sow.day >= span.to);
  if (stand && (crop === undefined || stand.sow.day < crop.from)) {
    return { what: `a cover of ${coverName(stand.coverId)}`, day: stand.sow.day, ...(crop ? { crop } : {}) };
  }
  return crop ? { what: crop.crop.name.toLowerCase(), day: crop.from, crop } : {};
}
