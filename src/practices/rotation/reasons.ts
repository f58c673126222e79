/**
 * Why a crop is over when it is, and what speaks against what follows.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Garden } from '../../garden/garden.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { celsius } from '../../measures/units.ts';
import { type CropSpan, cropYear, isPermanent, seasonsBetween } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import { KILLED_C } from '../frozen.ts';
import { cropLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import type { Changeover } from './changeover.ts';

/** The reasons of a changeover that may take so many days. */
export function clearReasons({ garden, climate }: PracticeInput, change: Changeover, withinDays: number): Reason[] {
  const { what, day } = change.follower;
  const next: Reason[] =
    what === undefined || day === undefined
      ? []
      : [{ rule: 'changeover.next', saw: { next: what, day }, limit: withinDays, source: 'from memory' }];
  const following = change.follower.crop;
  const back = following && (lockedOut(garden, following) ?? returnsTooSoon(following, change.spans, climate));
  return [endReason(change), ...next, ...(back ? [back] : [])];
}

function endReason({ span }: Changeover): Reason {
  const saw = { crop: span.crop.name.toLowerCase(), day: span.to };
  if (span.end === 'happened') return { rule: 'changeover.harvested', saw, source: "the garden's own plan" };
  if (span.frozen !== undefined) {
    const { evening, lowC: tempC } = span.frozen;
    return { rule: 'changeover.frozen', saw: { ...saw, evening, tempC }, limit: KILLED_C, source: 'agro:S53' };
  }
  const { start, lastHarvest } = span.planting;
  if (span.end === 'stated' && start.meant !== undefined && lastHarvest !== undefined && span.to > lastHarvest.day) {
    const moved = { ...saw, meant: start.meant, from: span.from, planned: lastHarvest.day };
    return { rule: 'changeover.moved-on', saw: moved, source: "the garden's own plan" };
  }
  if (span.end === 'stated') return { rule: 'changeover.last-harvest', saw, source: "the garden's own plan" };
  if (span.freezeLimitF !== undefined) {
    const tempC = Math.round(celsius(span.freezeLimitF) * 10) / 10;
    return { rule: 'changeover.killed', saw: { ...saw, tempC }, source: "the garden's climate" };
  }
  if (span.liftedIn !== undefined) {
    const lifted = { ...saw, from: span.from, opens: span.liftedIn.from, closes: span.liftedIn.to };
    return { rule: 'changeover.lifted-in', saw: lifted, source: 'common practice' };
  }
  const { low, high } = span.crop.maturityDays;
  const counted = span.countedFrom === undefined ? {} : { counted: span.countedFrom };
  return {
    rule: span.countedFrom === undefined ? 'changeover.maturity' : 'changeover.over-winter',
    saw: { ...saw, from: span.from, daysLow: low, daysHigh: high, ...counted },
    source: originOf(span.crop, 'maturityDays'),
  };
}

/** A warning when a disease found in the bed keeps the following crop out of it. */
function lockedOut(garden: Garden, next: CropSpan): Reason | undefined {
  const lock = cropLockOut(garden, next.planting.bedId, next.crop, next.from);
  if (lock === undefined) return undefined;
  const { finding, until, source } = lock;
  const saw = { next: next.crop.name.toLowerCase(), day: next.from, disease: finding.name };
  return until === undefined
    ? { rule: 'changeover.locked-out', saw, source }
    : { rule: 'changeover.locked-out', saw: { ...saw, until }, limit: until, source };
}

/** A warning when a crop's family comes back to its bed too soon. Sowings of one crop in one season count as one. */
export function returnsTooSoon(next: CropSpan, spans: readonly CropSpan[], climate: Climate): Reason | undefined {
  if (isPermanent(next.crop)) return undefined;
  const before = lastOfFamily(next, spans, climate);
  if (before === undefined) return undefined;
  const years = seasonsBetween(before, next, climate);
  if (years >= next.crop.rotationYears) return undefined;
  return {
    rule: 'changeover.family-returns',
    saw: { next: next.crop.name.toLowerCase(), before: before.crop.name.toLowerCase(), years },
    limit: next.crop.rotationYears,
    source: originOf(next.crop, 'rotationYears'),
  };
}

function lastOfFamily(next: CropSpan, spans: readonly CropSpan[], climate: Climate): CropSpan | undefined {
  const sameSowing = (span: CropSpan): boolean =>
    span.crop.id === next.crop.id && cropYear(span, climate) === cropYear(next, climate);
  return spans.findLast(
    (span) => span.from < next.from && span.crop.rotationGroup === next.crop.rotationGroup && !sameSowing(span),
  );
}
