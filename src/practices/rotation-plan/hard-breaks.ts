/**
 * Rules that may not break, looked up at one crop of a bed.
 */
import { originOf } from '../../handbook/shapes/row.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { isPermanent } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import { type BrokenRule, followed, hardBreak, isEarlier, isKin, type Looked, seasonWord, word } from './looked-at.ts';
import { aheadOf, betweenOf, type Entry, type PlanBed, type RotationProblem, roomIn, shutFor } from './problem.ts';
import { LEAST_PIECE_M2 } from './rules.ts';

/** What breaks at a crop. Of the gardener's own doings a family back too soon and sick ground are held against them. */
export function hardBreaks(looked: Looked): BrokenRule[] {
  if (looked.entry.how !== 'proposed') return [...returns(looked), ...closed(looked)];
  return [returns, closed, heldBy, stillStands, shut].flatMap((rule) => rule(looked));
}

function returns(looked: Looked): BrokenRule[] {
  const { entries, entry, problem } = looked;
  if (isPermanent(entry.crop)) return [];
  const before = entries.findLast((other) => isKin(other, entry) && isEarlier(other, entry));
  const years = entry.season - (before?.season ?? entry.season - entry.crop.rotationYears);
  if (before === undefined || years >= entry.crop.rotationYears) return [];
  return [
    hardBreak(looked, {
      rule: 'rotation-plan.returns',
      saw: { crop: word(entry), before: word(before), years, season: seasonWord(problem, before.season) },
      limit: entry.crop.rotationYears,
      source: originOf(entry.crop, 'rotationYears'),
    }),
  ];
}

function closed(looked: Looked): BrokenRule[] {
  const { bed, entry } = looked;
  const found = bed.closed.find(({ cropId, season }) => cropId === entry.crop.id && season === entry.season);
  return found ? [hardBreak(looked, { ...found.why, rule: 'rotation-plan.disease' })] : [];
}

function heldBy(looked: Looked): BrokenRule[] {
  const { bed, entries, entry } = looked;
  const source = "the garden's own plan";
  if (bed.lasting !== undefined) {
    const saw = { crop: word(entry), lasting: vegetableById(bed.lasting).name.toLowerCase() };
    return [hardBreak(looked, { rule: 'rotation-plan.lasting', saw, source })];
  }
  const settled = entries.find(({ season, how }) => how === 'settled' && season === entry.season);
  if (settled === undefined || roomIn(bed, entry.season) >= LEAST_PIECE_M2) return [];
  const saw = { crop: word(entry), settled: word(settled) };
  return [hardBreak(looked, { rule: 'rotation-plan.settled', saw, source })];
}

/** What has no day in the bed. */
function shut(looked: Looked): BrokenRule[] {
  const { bed, entry } = looked;
  const why = shutFor(bed, { cropId: entry.crop.id, season: entry.season });
  if (why === undefined) return [];
  return [hardBreak(looked, why)];
}

/** A crop that went in late, after another, is taken to stand until spring: nothing goes in behind it in autumn. */
function stillStands(looked: Looked): BrokenRule[] {
  const { problem, entries, entry } = looked;
  const between = (before: Entry) => betweenOf(problem, before.crop.id, entry.crop.id);
  const first = followed(looked);
  const before =
    first === undefined
      ? aheadOf(entries, entry.season).find(
          (each) => between(each).stillStands || (each.after !== undefined && entry.crop.maturityFrom === 'fall-set'),
        )
      : between(first).follows === undefined
        ? first
        : undefined;
  if (before === undefined) return [];
  const saw = { crop: word(entry), before: word(before) };
  return [hardBreak(looked, { rule: 'rotation-plan.still-stands', saw, source: "the garden's climate" })];
}

/** Seasons in which more is given away of a bed than there is of it. */
export function tooFull(problem: RotationProblem, bed: PlanBed, entries: readonly Entry[]): BrokenRule[] {
  return problem.seasons.flatMap((season): BrokenRule[] => {
    const here = entries.filter((entry) => entry.season === season && entry.how === 'proposed');
    const room = roomIn(bed, season);
    const taken = room >= LEAST_PIECE_M2 ? bed.areaM2 - room : 0;
    const areaM2 = here.reduce((sum, entry) => sum + groundOf(entry, here), taken);
    if (areaM2 <= bed.areaM2 + ROUNDING_M2) return [];
    const beside = entries.filter((entry) => entry.season === season && entry.how === 'settled' && taken > 0);
    const saw = { areaM2, crops: [...beside, ...here].map(word).join(', ') };
    const reason: Reason = { rule: 'rotation-plan.area', saw, limit: bed.areaM2, source: "the garden's own plan" };
    return [{ bedId: bed.id, season, how: 'proposed', reason }];
  });
}

/** The ground a crop takes besides that of the crop it follows. */
function groundOf({ after, areaM2 = 0 }: Entry, here: readonly Entry[]): number {
  const first = here.find(({ crop }) => crop.id === after);
  return Math.max(0, areaM2 - (first?.areaM2 ?? 0));
}

/** Areas are given to the hundredth of a square metre. */
const ROUNDING_M2 = 0.006;
