/**
 * Why a crop is over when it is, and what speaks against what follows.
 */
import { originOf } from '../../handbook/shapes.ts';
import { daysBetween } from '../../measures/days.ts';
import { celsius } from '../../measures/units.ts';
import { type CropSpan, isPermanent } from '../bed-timeline.ts';
import type { Reason } from '../draft.ts';
import type { Changeover } from './changeover.ts';

const DAYS_IN_YEAR = 365.25;

/** The reasons of a changeover that may take so many days. */
export function clearReasons(change: Changeover, withinDays: number): Reason[] {
  const { what, day } = change.follower;
  const next: Reason[] =
    what === undefined || day === undefined
      ? []
      : [{ rule: 'changeover.next', saw: { next: what, day }, limit: withinDays, source: 'from memory' }];
  const back = change.follower.crop && returnsTooSoon(change.follower.crop, change.spans);
  return [endReason(change), ...next, ...(back ? [back] : [])];
}

function endReason({ span }: Changeover): Reason {
  const saw = { crop: span.crop.name.toLowerCase(), day: span.to };
  if (span.end === 'happened') return { rule: 'changeover.harvested', saw, source: "the garden's own plan" };
  if (span.end === 'stated') return { rule: 'changeover.last-harvest', saw, source: "the garden's own plan" };
  if (span.freezeLimitF !== undefined) {
    const tempC = Math.round(celsius(span.freezeLimitF) * 10) / 10;
    return { rule: 'changeover.killed', saw: { ...saw, tempC }, source: "the garden's climate" };
  }
  const { low, high } = span.crop.maturityDays;
  return {
    rule: 'changeover.maturity',
    saw: { ...saw, from: span.from, daysLow: low, daysHigh: high },
    source: originOf(span.crop, 'maturityDays'),
  };
}

/** A warning when a crop's family comes back to its bed too soon. */
export function returnsTooSoon(next: CropSpan, spans: readonly CropSpan[]): Reason | undefined {
  if (isPermanent(next.crop)) return undefined;
  const before = lastOfFamily(next, spans);
  if (before === undefined) return undefined;
  const years = Math.round(daysBetween(before.from, next.from) / DAYS_IN_YEAR);
  if (years >= next.crop.rotationYears) return undefined;
  return {
    rule: 'changeover.family-returns',
    saw: { next: next.crop.name.toLowerCase(), before: before.crop.name.toLowerCase(), years },
    limit: next.crop.rotationYears,
    source: originOf(next.crop, 'rotationYears'),
  };
}

function lastOfFamily(next: CropSpan, spans: readonly CropSpan[]): CropSpan | undefined {
  return spans.findLast(
    ({ planting, from, crop }) =>
      from < next.from && planting.id !== next.planting.id && crop.rotationGroup === next.crop.rotationGroup,
  );
}
