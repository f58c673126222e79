/**
 * What a disease found in a bed keeps out of it, and for how long.
 */

import type { Garden, Planting, Stand } from '../garden/garden.ts';
import { inBed } from '../garden/in-bed.ts';
import { strikes } from '../handbook/disease-names.ts';
import type { CoverCrop } from '../handbook/shapes/cover.ts';
import { originOf } from '../handbook/shapes/row.ts';
import type { Vegetable } from '../handbook/shapes/vegetable.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import { addDays, type Day, inYear, latestOf, monthDayOf, yearOf } from '../measures/days.ts';
import { isPermanent } from './bed-timeline.ts';
import { coverParts } from './covers.ts';
import { type Finding, findingsIn, hostsOf } from './disease.ts';
import type { ReasonSource } from './draft.ts';

/** Days after its planned day that a cover may still be sown. House default, as far as planned sowings are moved. */
const LATE_SOWING_DAYS = 45;

/** How long a finding keeps a crop or cover out of its bed. */
export interface LockOut {
  finding: Finding;
  /** The day its years are counted from. */
  since: Day;
  years: number | 'for good';
  /** The first day the bed is open to it again; absent where no end is known. */
  until?: Day;
  source: ReasonSource;
}

/** What keeps a crop out of a bed on a day: of several findings the one that does so longest. */
export function cropLockOut(garden: Garden, bedId: string, crop: Vegetable, day: Day): LockOut | undefined {
  const locks = findingsIn(garden, bedId).flatMap((finding) =>
    catches(finding, crop) ? [lockOut(garden, finding, yearsFor(finding, crop))] : [],
  );
  return longest(locks, day);
}

/**
 * What keeps a cover, or a mix of covers, out of a bed on a day: covers that carry the disease. Of a disease the
 * handbook does not know it is those of the crop's own group, cereals beside corn left out. House default.
 */
export function coverLockOut(garden: Garden, bedId: string, coverId: string, day: Day): LockOut | undefined {
  const kinds = coverParts(coverId).map(({ cover }) => cover);
  const locks = findingsIn(garden, bedId).flatMap((finding) =>
    kinds.some((kind) => carries(finding, kind)) ? [ownLockOut(garden, finding)] : [],
  );
  return longest(locks, day);
}

function carries({ disease, crop }: Finding, cover: CoverCrop): boolean {
  if (disease) return disease.coverIds.includes(cover.id);
  return cover.rotationGroup === crop.rotationGroup && cover.form !== 'grass';
}

/** What a finding keeps out of its bed, by the crop it was found on. */
export function ownLockOut(garden: Garden, finding: Finding): LockOut {
  return lockOut(garden, finding, yearsFor(finding, finding.crop));
}

/** What is kept out of a bed from a day on by all that was found there, as told by the crops it was found on. */
export function standingLockOuts(garden: Garden, bedId: string, day: Day): LockOut[] {
  const standing = findingsIn(garden, bedId)
    .map((finding) => ownLockOut(garden, finding))
    .filter(({ until }) => until === undefined || until > day);
  return [...new Map(standing.map((lock) => [`${lock.finding.name} ${hostsOf(lock.finding)}`, lock])).values()];
}

/** Planned plantings that a finding's bed is closed to on the day they would go in. */
export function lockedPlantings(garden: Garden, bedId: string): { planting: Planting; lock: LockOut }[] {
  return inBed(garden.plantings, bedId)
    .filter((planting) => !planting.start.happened)
    .flatMap((planting) => {
      const lock = cropLockOut(garden, bedId, vegetableById(planting.cropId), planting.start.day);
      return lock && planting.start.day > lock.finding.found.on ? [{ planting, lock }] : [];
    });
}

/** What drops a planned stand from the plan: something found in its bed that it would carry. */
export function standLockOut(garden: Garden, { bedId, coverId, sow }: Stand): LockOut | undefined {
  return sow.happened ? undefined : coverLockOut(garden, bedId, coverId, addDays(sow.day, LATE_SOWING_DAYS));
}

/** The stands of a bed that are dropped. */
export function lockedStands(garden: Garden, bedId: string): { stand: Stand; lock: LockOut }[] {
  return inBed(garden.stands, bedId).flatMap((stand) => {
    const lock = standLockOut(garden, stand);
    return lock ? [{ stand, lock }] : [];
  });
}

/** Whether a crop catches what was found; of a disease the handbook does not know, whether it is of the same group. */
function catches({ disease, crop: sick }: Finding, crop: Vegetable): boolean {
  if (disease) return strikes(disease, crop);
  return sick.rotationGroup === 'perennial' ? crop.id === sick.id : crop.rotationGroup === sick.rotationGroup;
}

type Years = Pick<LockOut, 'years' | 'source'>;

/**
 * Years a crop keeps out: the disease's own where they are known, but never less than the crop's ordinary interval.
 * Without a known disease it is the longest interval the handbook has for the sick crop.
 */
function yearsFor({ disease, crop: sick }: Finding, crop: Vegetable): Years {
  const ordinary = ordinaryYears(crop);
  if (disease === undefined) return worstYears(sick);
  if (disease.years === undefined) return ordinary;
  if (disease.years === 'for good') return { years: disease.years, source: originOf(disease, 'years') };
  if (ordinary.years !== 'for good' && ordinary.years > disease.years) return ordinary;
  return { years: disease.years, source: originOf(disease, 'years') };
}

function ordinaryYears(crop: Vegetable): Years {
  const years = isPermanent(crop) ? 'for good' : crop.rotationYears;
  return { years, source: originOf(crop, 'rotationYears') };
}

function worstYears(crop: Vegetable): Years {
  const years = crop.rotationYearsIfDisease;
  return years === undefined ? ordinaryYears(crop) : { years, source: originOf(crop, 'rotationYearsIfDisease') };
}

/** Years run from the finding, and anew from the end of every crop that catches it and went in before they were over. */
function lockOut(garden: Garden, finding: Finding, { years, source }: Years): LockOut {
  let since = finding.found.on;
  const end = () => (years === 'for good' ? undefined : yearsAfter(since, years));
  for (const { from, to } of hostSpans(garden, finding)) {
    const until = end();
    if (until === undefined || from < until) since = latestOf(since, to);
  }
  const until = end();
  return { finding, since, years, source, ...(until === undefined ? {} : { until }) };
}

/** The times in which something that catches it stood in its bed, in order. */
function hostSpans({ plantings }: Garden, finding: Finding): { from: Day; to: Day }[] {
  return inBed(plantings, finding.found.bedId)
    .filter(({ start }) => start.happened)
    .filter(({ cropId }) => catches(finding, vegetableById(cropId)))
    .map(({ start, lastHarvest }) => ({
      from: start.day,
      to: lastHarvest?.happened ? latestOf(start.day, lastHarvest.day) : start.day,
    }))
    .sort((x, y) => (x.from === y.from ? 0 : x.from < y.from ? -1 : 1));
}

/** The same day so many years later; after 29 February the full years are over on 1 March. */
function yearsAfter(day: Day, years: number): Day {
  const same = inYear(monthDayOf(day), yearOf(day) + years);
  return monthDayOf(same) === monthDayOf(day) ? same : addDays(same, 1);
}

function longest(locks: readonly LockOut[], day: Day): LockOut | undefined {
  return locks
    .filter(({ finding, until }) => finding.found.on <= day && (until === undefined || day < until))
    .sort((a, b) => (endOf(a) === endOf(b) ? 0 : endOf(a) > endOf(b) ? -1 : 1))[0];
}

/** Sorts a lock-out without an end behind every day there is. */
function endOf({ until }: LockOut): string {
  return until ?? 'no end';
}
