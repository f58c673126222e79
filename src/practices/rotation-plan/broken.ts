/**
 * Any plan held against the rules, without a solver: each broken rule with where, why and by what source.
 */
import { hardBreaks, tooFull } from './hard-breaks.ts';
import { type BrokenRule, type Looked, seasonWord } from './looked-at.ts';
import { entriesOf, type Placement, type PlanBed, type RotationProblem } from './problem.ts';
import { WEIGHTS } from './rules.ts';
import { softBreaks } from './soft-breaks.ts';
import { isPastUnknown } from './waits.ts';
import { familyNeeds, type Need, wishNeeds } from './wishes.ts';

/** A bed in which a crop's family may have stood not long ago: nobody wrote it down. That breaks no rule. */
export interface UnknownPast {
  bedId: string;
  season: number;
  cropId: string;
}

/** Every rule a plan breaks, and those the past broke: bed by bed and oldest first, then what no one bed breaks. */
export function brokenRules(problem: RotationProblem, placements: readonly Placement[]): BrokenRule[] {
  return [...problem.beds.flatMap((bed) => brokenIn(problem, bed, placements)), ...brokenInNone(problem, placements)];
}

/** What breaks in one bed, oldest first. */
export function brokenIn(problem: RotationProblem, bed: PlanBed, placements: readonly Placement[]): BrokenRule[] {
  const entries = entriesOf(problem, bed, placements);
  const ofCrops = looksAt(problem, bed, placements).flatMap((looked) => [
    ...hardBreaks(looked),
    ...(looked.entry.how === 'past' ? [] : softBreaks(looked)),
  ]);
  return [...ofCrops, ...tooFull(problem, bed, entries)].sort((a, b) => a.season - b.season);
}

/** What breaks at no one bed: crops and families in more beds than they need. */
export function brokenInNone(problem: RotationProblem, placements: readonly Placement[]): BrokenRule[] {
  return [...splits(problem, placements), ...familiesApart(problem, placements)];
}

/** The proposed crops of which nobody wrote down whether their family stood in the bed not long ago. */
export function unknownPasts(problem: RotationProblem, placements: readonly Placement[]): UnknownPast[] {
  return problem.beds.flatMap((bed) => unknownIn(problem, bed, placements));
}

/** The same for one bed. */
export function unknownIn(problem: RotationProblem, bed: PlanBed, placements: readonly Placement[]): UnknownPast[] {
  const [first] = problem.seasons;
  return looksAt(problem, bed, placements)
    .filter(({ entry }) => entry.how === 'proposed' && isPastUnknown(bed, first, entry.crop, entry.season))
    .map(({ entry }) => ({ bedId: bed.id, season: entry.season, cropId: entry.crop.id }));
}

function looksAt(problem: RotationProblem, bed: PlanBed, placements: readonly Placement[]): Looked[] {
  const entries = entriesOf(problem, bed, placements);
  return entries.map((entry) => ({ problem, bed, entries, entry }));
}

function splits(problem: RotationProblem, placements: readonly Placement[]): BrokenRule[] {
  return wishNeeds(problem).flatMap((need) => {
    const [cropId] = need.cropIds;
    const over = bedsOver(need, placements);
    if (over <= 0 || cropId === undefined) return [];
    const saw = { crop: need.name, beds: over + need.beds };
    return [{ cropId, ...inNoOneBed(problem, need, over, 'rotation-plan.split', saw) }];
  });
}

function familiesApart(problem: RotationProblem, placements: readonly Placement[]): BrokenRule[] {
  return familyNeeds(problem).flatMap((need) => {
    const over = bedsOver(need, placements);
    const saw = { family: need.name, beds: over + need.beds };
    return over <= 0 ? [] : [inNoOneBed(problem, need, over, 'rotation-plan.family-apart', saw)];
  });
}

function bedsOver({ cropIds, season, beds }: Need, placements: readonly Placement[]): number {
  const here = placements.filter((place) => place.season === season && cropIds.includes(place.cropId));
  return new Set(here.map(({ bedId }) => bedId)).size - beds;
}

function inNoOneBed(
  problem: RotationProblem,
  { season, beds }: Need,
  over: number,
  rule: 'rotation-plan.split' | 'rotation-plan.family-apart',
  saw: Record<string, number | string>,
): BrokenRule {
  return {
    season,
    how: 'proposed',
    weight: over * WEIGHTS[rule],
    reason: { rule, saw: { ...saw, season: seasonWord(problem, season) }, limit: beds, source: 'house default' },
  };
}
