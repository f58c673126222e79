/**
 * Residue and mulch drawn aside before small seed, so that the soil warms and the seedlings find light.
 */

import type { Bed, Planting } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { MOULDY } from '../cautions.ts';
import type { TaskDraft } from '../draft.ts';
import type { CoverStanding, Findings, PracticeInput } from '../practice.ts';
import { growingParts, lastLook, standName } from '../stand-cover.ts';
import { draftOnBed, firstOfEach } from './mulch.ts';

/** Days before sowing in which residue is drawn aside: one to two weeks. Common practice. */
const ASIDE_DAYS = { first: 14, best: 10, last: 7 } as const;
/** Days after its end that a cover's residue still lies on a bed. House default. Brassicas leave next to none (cover:S16). */
const RESIDUE_LASTS_DAYS = 120;
/** Days after its window that a mulch nobody marked is still reckoned with. House default, as for work still to do. */
const MULCH_LOST_DAYS = 60;

/** What lies on the bed when the seed goes in. */
interface Lying {
  what: string;
  /** The day from which it can be drawn aside. */
  from: Day;
  after: TaskDraft['after'];
}

/** The tasks of a bed's small seed still to be sown. */
export function asideDrafts(
  input: PracticeInput,
  found: Findings,
  bed: Bed,
  mulches: readonly TaskDraft[],
): TaskDraft[] {
  const small = inBed(input.garden.plantings, bed.id)
    .filter(({ cropId, start }) => {
      return start.how === 'sow' && !start.happened && vegetableById(cropId).smallSeed;
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
  return firstOfEach(small, ({ start }) => start.day).flatMap((planting) => {
    const lying = lyingOn(input, found, planting, mulches);
    return lying === undefined ? [] : [asideDraft(input, bed, planting, lying)];
  });
}

/** The last thing laid or left on the bed since its last crop, before the seed. */
function lyingOn(
  input: PracticeInput,
  found: Findings,
  { id, bedId, start: { day } }: Planting,
  mulches: readonly TaskDraft[],
): Lying | undefined {
  const since = inBed(input.garden.plantings, bedId)
    .filter((other) => other.id !== id && other.start.day < day)
    .map((other) => other.start.day)
    .sort()
    .at(-1);
  const covers = inBed(found.coverStands, bedId).flatMap((cover) => residue(input, cover, day));
  const sown = inBed(found.coverStands, bedId).filter((cover) => cover.from < day);
  const laid = mulches
    .filter(({ subject, window }) => subject.id === bedId && !sown.some(({ from }) => from > window.earliest))
    .flatMap((mulch) => mulchOf(input, mulch));
  return [...covers, ...laid]
    .filter(({ from }) => from < day && (since === undefined || from > since))
    .sort((a, b) => (a.from === b.from ? (a.what < b.what ? -1 : 1) : a.from < b.from ? -1 : 1))
    .at(-1);
}

/** What a cover leaves. One that winter kills can be drawn aside at any time, one that is cut only once it is down. */
function residue({ garden }: PracticeInput, cover: CoverStanding, day: Day): Lying[] {
  const { standId, from, ends, endKey } = cover;
  const stand = garden.stands.find(({ id }) => id === standId);
  const soft =
    stand === undefined ||
    lastLook(stand)?.covered === 'hardly-any' ||
    growingParts(stand).every((part) => part.cover.form === 'brassica');
  if (soft || (ends !== undefined && daysBetween(ends, day) > RESIDUE_LASTS_DAYS)) return [];
  const isCut = endKey !== undefined || stand.cutOn !== undefined;
  const after = endKey === undefined ? [] : [{ key: endKey, minDays: 0 }];
  return [{ what: `the ${standName(stand)}`, from: isCut && ends !== undefined ? ends : from, after }];
}

function mulchOf({ garden, today }: PracticeInput, { key, window }: TaskDraft): Lying[] {
  if (garden.skipped[key] !== undefined) return [];
  const done = garden.done.some((mark) => mark.key === key);
  if (!done && daysBetween(window.latest, today) > MULCH_LOST_DAYS) return [];
  return [{ what: 'the mulch', from: window.earliest, after: done ? [] : [{ key, minDays: 0 }] }];
}

function asideDraft(input: PracticeInput, bed: Bed, { id, cropId, start }: Planting, lying: Lying): TaskDraft {
  const crop = vegetableById(cropId).name.toLowerCase();
  const latest = earliestOf(addDays(start.day, -1), latestOf(lying.from, addDays(start.day, -ASIDE_DAYS.last)));
  const earliest = earliestOf(latest, latestOf(lying.from, addDays(start.day, -ASIDE_DAYS.first)));
  return {
    ...draftOnBed(input, bed),
    key: `residue-aside/planting:${id}`,
    kind: 'draw-aside',
    job: { id: 'draw-aside', title: 'Draw residue aside for small seed' },
    title: `Draw ${lying.what} aside in ${bed.name} for ${crop}`,
    steps: [
      `Rake ${lying.what} off the rows or to the edges of the bed, so that sun reaches the soil. Dig nothing in.`,
      'Look beneath it for slugs, and again at dusk before sowing: pick off what you find.',
      'Lay it back between the rows once the seedlings are a finger high.',
    ],
    cautions: [MOULDY],
    supplies: [{ what: 'rake' }],
    window: {
      earliest,
      preferred: latestOf(earliest, earliestOf(latest, addDays(start.day, -ASIDE_DAYS.best))),
      latest,
    },
    ifMissed: 'still do',
    missedNote: 'Draw it aside on the day you sow: the soil is colder, and slugs are still near.',
    after: lying.after,
    reasons: [
      {
        rule: 'residue-aside.small-seed',
        saw: { crop, what: lying.what, daysFirst: ASIDE_DAYS.first, daysLast: ASIDE_DAYS.last, sow: start.day },
        limit: latest,
        source: 'common practice',
      },
    ],
  };
}
