/**
 * One crop of a bed with everything the rules look at, and the words they use for it.
 */
import { isPermanent } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import type { Entry, PlanBed, RotationProblem } from './problem.ts';
import { HARD_RULES, type HardRule, type SoftRule, WEIGHTS } from './rules.ts';

/** A rule that a plan, or the garden's own past, breaks. */
export interface BrokenRule {
  /** Absent where it breaks at no one bed: a crop in more beds than it needs. */
  bedId?: string;
  season: number;
  /** Absent where it breaks at no one crop: a bed given away twice. */
  cropId?: string;
  /** Whether it lies in the past, in what the gardener planned, or in the proposal. */
  how: Entry['how'];
  /** What it counts; absent for a rule that may not break. */
  weight?: number;
  reason: Reason;
}

/** Whether a broken rule is one that may not break. */
export function isHard({ reason }: BrokenRule): boolean {
  return (HARD_RULES as readonly string[]).includes(reason.rule);
}

/** A crop of a bed, with all that stands in the bed in every season. */
export interface Looked {
  problem: RotationProblem;
  bed: PlanBed;
  entries: readonly Entry[];
  entry: Entry;
}

/** A break of a rule that may not break, at a crop. */
export function hardBreak({ bed, entry }: Looked, reason: Reason & { rule: HardRule }): BrokenRule {
  return { bedId: bed.id, season: entry.season, cropId: entry.crop.id, how: entry.how, reason };
}

/** A break of a rule that may, at a crop. */
export function softBreak({ bed, entry }: Looked, reason: Reason & { rule: SoftRule }): BrokenRule {
  const { season, crop, how } = entry;
  return { bedId: bed.id, season, cropId: crop.id, how, weight: WEIGHTS[reason.rule], reason };
}

/** How the crop of an entry is called inside a sentence. */
export function word({ crop }: Pick<Entry, 'crop'>): string {
  return crop.name.toLowerCase();
}

/** A season as a gardener calls it. */
export function seasonWord({ seasonNames }: RotationProblem, season: number): string {
  return seasonNames[season] ?? String(season);
}

/** The crop that one follows in its season. */
export function followed({ entries, entry }: Pick<Looked, 'entries' | 'entry'>): Entry | undefined {
  return entries.find(
    ({ season, crop, how }) => how === 'proposed' && season === entry.season && crop.id === entry.after,
  );
}

/** Whether a crop was in a bed before another: in an earlier season, or as the one it follows. */
export function isEarlier(before: Entry, entry: Entry): boolean {
  return before.season < entry.season || (before.season === entry.season && before.crop.id === entry.after);
}

/** Whether two crops share a family that waits; lasting crops wait for none. */
export function isKin(a: Entry, b: Entry): boolean {
  return a.crop.rotationGroup === b.crop.rotationGroup && !isPermanent(a.crop) && !isPermanent(b.crop);
}
