/**
 * How long a bed waits before a group of crops comes back.
 *
 * The general rule is three to five years. The vegetables carry the interval to plan by; this table says why. What asks
 * for longer is in `diseases.ts`.
 */
import type { RotationGroup } from './shapes/plant.ts';
import type { SourceId, Span } from './shapes/row.ts';

/** One group's interval. */
export interface RotationInterval {
  group: RotationGroup;
  /** Years between two crops of the group in one bed. */
  years: Span;
  sources: readonly SourceId[];
}

/** Every group with a published interval. Lasting crops have none: their bed is theirs. */
export const rotationIntervals: readonly RotationInterval[] = [
  {
    group: 'cabbage',
    years: { low: 3, high: 5 },
    sources: ['veg:V36', 'veg:V12', 'veg:V37'],
  },
  {
    group: 'onion',
    years: { low: 3, high: 5 },
    sources: ['veg:V36', 'veg:V30', 'veg:V31', 'veg:V32', 'veg:V33'],
  },
  {
    group: 'nightshade',
    years: { low: 4, high: 4 },
    sources: ['veg:V12', 'veg:V36', 'veg:V63', 'veg:V64'],
  },
  { group: 'cucurbit', years: { low: 3, high: 3 }, sources: ['veg:V12', 'veg:V36'] },
  {
    group: 'legume',
    years: { low: 3, high: 3 },
    sources: ['veg:V12', 'veg:V36', 'veg:V62'],
  },
  { group: 'carrot', years: { low: 3, high: 3 }, sources: ['veg:V12', 'veg:V36'] },
  { group: 'beet-spinach', years: { low: 3, high: 3 }, sources: ['veg:V12'] },
  { group: 'lettuce-daisy', years: { low: 3, high: 3 }, sources: ['veg:V12'] },
  { group: 'grass-corn', years: { low: 2, high: 3 }, sources: ['veg:V12'] },
  {
    group: 'mallow',
    years: { low: 3, high: 3 },
    sources: ['veg:V64', 'veg:V63'],
  },
];
