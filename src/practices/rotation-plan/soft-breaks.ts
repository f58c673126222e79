/**
 * Rules that may break, looked up at one crop of a bed.
 */
import { coverName, coverParts } from '../covers.ts';
import { type BrokenRule, followed, isKin, type Looked, seasonWord, softBreak, word } from './looked-at.ts';
import { aheadOf, betweenOf, type Entry, firstStanding } from './problem.ts';
import { legumesWait, longestWait, wiltNeighbour } from './waits.ts';

/** What breaks at a crop; what holds for a whole family is told once, at its first crop of the season. */
export function softBreaks(looked: Looked): BrokenRule[] {
  const { entries, entry } = looked;
  const first = entries.find((other) => other.season === entry.season && isKin(other, entry));
  const ofFamily = first === entry ? [longest, wilt] : [];
  return [legumeFirst, coverKin, ...ofFamily].flatMap((rule) => rule(looked));
}

/** Of crops the gardener planned one after another in a season only the first follows the season before. */
function legumeFirst(looked: Looked): BrokenRule[] {
  const { bed, entries, entry } = looked;
  const settled = entries.filter(({ season, how }) => season === entry.season && how === 'settled');
  const isFirst = entry.how === 'proposed' || firstStanding(settled).includes(entry);
  if (entry.crop.nitrogen !== 'high' || !isFirst) return [];
  if (coversAhead(looked).some(({ cover }) => cover.form === 'legume')) return [];
  const first = followed(looked);
  const before = (first === undefined ? aheadOf(entries, entry.season) : [first]).find(
    (each) => each.crop.nitrogen !== 'legume-fixer' && !hasTimeForLegume(looked, each),
  );
  if (before === undefined) return [];
  const saw = { crop: word(entry), before: word(before), bed: bed.name };
  return [softBreak(looked, { rule: 'rotation-plan.legume-first', saw, source: 'from memory' })];
}

/** A late crop after another leaves no time; where no dates are known none is held to be lacking. */
function hasTimeForLegume({ problem, entries, entry }: Looked, before: Entry): boolean {
  if (entry.after !== undefined || before.after !== undefined) return false;
  const { legume } = betweenOf(problem, before.crop.id, entry.crop.id);
  const certain = entries.filter(({ how }) => how !== 'proposed');
  return typeof legume === 'object' ? !legumesWait(certain, entry.season) : legume === 'unknown';
}

/** Cabbage kin share clubroot, flea beetle and moths (cover:S4e); legumes share root rots. */
function coverKin(looked: Looked): BrokenRule[] {
  const { entry } = looked;
  const group = entry.crop.rotationGroup;
  if (entry.after !== undefined) return [];
  const kin = coversAhead(looked).find(({ cover }) => cover.rotationGroup === group);
  if (kin === undefined || (group !== 'cabbage' && group !== 'legume')) return [];
  const saw = { crop: word(entry), cover: coverName(kin.cover.id) };
  const source = group === 'cabbage' ? 'cover:S4e' : 'house default';
  return [softBreak(looked, { rule: 'rotation-plan.cover-kin', saw, source })];
}

function coversAhead({ bed, entry }: Looked) {
  return bed.covers.filter(({ season }) => season === entry.season).flatMap(({ coverId }) => coverParts(coverId));
}

function longest(looked: Looked): BrokenRule[] {
  const { problem, entries, entry } = looked;
  const wait = longestWait(entry.crop);
  const before = entries.findLast((other) => isKin(other, entry) && other.season < entry.season);
  if (wait === undefined || before === undefined) return [];
  const years = entry.season - before.season;
  if (years < entry.crop.rotationYears || years >= wait.years) return [];
  const saw = {
    crop: word(entry),
    before: word(before),
    years,
    season: seasonWord(problem, before.season),
  };
  return [softBreak(looked, { rule: 'rotation-plan.longest-wait', saw, limit: wait.years, source: wait.source })];
}

function wilt(looked: Looked): BrokenRule[] {
  const { problem, entries, entry } = looked;
  const other = wiltNeighbour(entry.crop.rotationGroup);
  const before = entries.find(({ season, crop }) => season === entry.season - 1 && crop.rotationGroup === other);
  if (before === undefined) return [];
  const saw = { crop: word(entry), before: word(before), season: seasonWord(problem, before.season) };
  return [softBreak(looked, { rule: 'rotation-plan.wilt-neighbours', saw, source: 'veg:V64' })];
}
