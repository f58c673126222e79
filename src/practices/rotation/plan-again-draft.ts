/**
 * A plan that a disease has overtaken: plantings and covers that would bring it back are settled again.
 */

import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { coverName } from '../covers.ts';
import { hostsOf } from '../disease.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { cropLockOut, type LockOut, lockedPlantings, lockedStands } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';
import { lockReasons } from './disease-reasons.ts';

/** Days before a planting goes in that its season's plan is looked at: a year, before seed is ordered. House default. */
const LOOK_AHEAD_DAYS = 365;
/** Minutes to move a crop on paper. House default. */
const PLAN_MINUTES = 15;

/** Something planned for a bed that is closed to it. */
interface Clash {
  day: Day;
  what: string;
  /** Absent for a cover, which is dropped and not moved. */
  cropId?: string;
  lock: LockOut;
}

/** Settle the plan of a bed again, once for each season in which it holds what the bed is closed to. */
export function planAgainDrafts(input: PracticeInput, bed: Bed): TaskDraft[] {
  const seasons = new Map<number, Clash[]>();
  for (const clash of clashesIn(input, bed)) {
    const season = seasonOf(input.climate.seasonTurn, clash.day);
    seasons.set(season, [...(seasons.get(season) ?? []), clash]);
  }
  return [...seasons].map(([season, clashes]) => planAgainDraft(input, bed, season, clashes));
}

function clashesIn({ garden }: PracticeInput, bed: Bed): Clash[] {
  const crops = lockedPlantings(garden, bed.id).map(
    ({ planting: { cropId, start }, lock }): Clash => ({
      day: start.day,
      what: vegetableById(cropId).name.toLowerCase(),
      cropId,
      lock,
    }),
  );
  const covers = lockedStands(garden, bed.id).map(
    ({ stand, lock }): Clash => ({ day: stand.sow.day, what: coverName(stand.coverId), lock }),
  );
  return [...crops, ...covers].sort((a, b) => order(a.day, b.day) || order(a.what, b.what));
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function planAgainDraft(input: PracticeInput, bed: Bed, season: number, clashes: readonly Clash[]): TaskDraft {
  return {
    key: `plan-again/bed:${bed.id}/${season}`,
    practice: 'rotation',
    kind: 'plan-again',
    job: { id: 'plan-again', title: 'Settle the plan again after a disease' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Settle the plan for ${bed.name} again: no ${[...new Set(clashes.map(({ what }) => what))].join(', no ')}`,
    steps: [
      ...clashes.map((clash) => clashStep(input, bed, clash)),
      'Change the plan on the Beds page: every date follows.',
    ],
    cautions: [],
    supplies: [],
    window: planWindow(input, clashes),
    ifMissed: 'still do',
    missedNote: 'Planted there after all, it feeds the disease, and the years are counted from the start.',
    effortMinutes: PLAN_MINUTES,
    needs: [],
    after: [],
    confidence: 'recorded',
    reasons: reasonsOf(clashes),
    makes: [],
  };
}

/** From the finding, or the year before the planting, until the last day before it goes in. */
function planWindow({ garden }: PracticeInput, clashes: readonly Clash[]): TaskDraft['window'] {
  const [first, ...others] = clashes.map(({ day }) => day);
  const [found, ...finds] = clashes.map(({ lock }) => lock.finding.found.on);
  if (first === undefined || found === undefined) throw new RangeError('A plan is settled again for something.');
  const goesIn = earliestOf(first, ...others);
  const earliest = latestOf(garden.startedOn, earliestOf(found, ...finds), addDays(goesIn, -LOOK_AHEAD_DAYS));
  return { earliest, preferred: earliest, latest: latestOf(earliest, addDays(goesIn, -1)) };
}

function clashStep({ garden }: PracticeInput, bed: Bed, { day, what, cropId, lock }: Clash): string {
  const { finding, until } = lock;
  const why =
    until === undefined
      ? `${finding.name} keeps the bed closed to ${hostsOf(finding)}, and no end is known`
      : `${finding.name} keeps ${hostsOf(finding)} out until ${dated(until)}`;
  if (cropId === undefined) {
    return `${capital(what)} from ${dated(day)} is dropped: it carries ${finding.name}. Sow another kind, or mulch.`;
  }
  const crop = vegetableById(cropId);
  const open = garden.beds.filter(({ id }) => id !== bed.id && cropLockOut(garden, id, crop, day) === undefined);
  return open.length === 0
    ? `${capital(what)} on ${dated(day)} cannot go in here: ${why}. No other bed is open to it: leave it out.`
    : `${capital(what)} on ${dated(day)} cannot go in here: ${why}. Change places with a crop of another family.`;
}

function reasonsOf(clashes: readonly Clash[]): Reason[] {
  const planned = clashes.map(
    ({ day, what, lock: { finding } }): Reason => ({
      rule: 'disease.plan-clashes',
      saw: { what, day, disease: finding.name, on: finding.found.on },
      source: "the garden's own plan",
    }),
  );
  const locks = new Map(clashes.map(({ lock }) => [`${lock.finding.name} ${lock.until}`, lock]));
  return [...planned, ...[...locks.values()].flatMap(lockReasons)];
}
