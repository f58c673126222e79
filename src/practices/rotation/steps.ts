/**
 * How a crop is cleared, in steps.
 */
import { type Day, daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import type { CropSpan } from '../bed-timeline.ts';
import type { Changeover, Follower } from './changeover.ts';

/** Days a bed may lie open before it wants a blanket. House default. */
const OPEN_DAYS = 21;

/** Crops whose harvest is what grows in the ground: they are lifted, and no root is left. Common practice. */
export const LIFTED: ReadonlySet<string> = new Set([
  'garlic',
  'onion-seed',
  'onion-sets',
  'green-onion',
  'shallot',
  'leek',
  'carrot',
  'parsnip',
  'celeriac',
  'beet',
  'radish',
  'winter-radish',
  'turnip',
  'rutabaga',
  'potato',
  'sweet-potato',
]);

/** Whether a crop is lifted out of the ground rather than cut off at it. */
export function isLifted(span: CropSpan): boolean {
  return LIFTED.has(span.planting.cropId);
}

/** The steps of a changeover. */
export function clearSteps({ span, follower, stays }: Changeover): string[] {
  return [
    ...harvestSteps(span),
    ...(span.crop.nitrogen === 'legume-fixer'
      ? [`Leave every root: they hold nitrogen for what follows${hungry(follower)}.`]
      : []),
    'Chop the healthy tops into the compost, and rake the surface level by hand.',
    stays === undefined ? nextStep(span, follower) : `The ${stays} stays: work round it.`,
  ];
}

function harvestSteps(span: CropSpan): string[] {
  if (isLifted(span)) {
    return ['Lift the last of the crop: ease it up with a fork, without turning the soil.', 'Level the holes by hand.'];
  }
  return [
    'Gather the last of the crop.',
    'Cut the plants off at the soil line. Do not pull or dig: the roots rot into channels for air and water.',
  ];
}

function nextStep(span: CropSpan, { what, day }: Follower): string {
  return what === undefined || day === undefined
    ? 'Nothing is planned here next: give the soil a cover or a blanket of leaves, never leave it bare.'
    : `Next in this bed: ${what}, from ${dated(day)}.${blanket(span, day)}`;
}

function blanket({ to }: CropSpan, next: Day): string {
  if (to === undefined || daysBetween(to, next) <= OPEN_DAYS) return '';
  return ' Until then keep it covered: a cover if one still fits, else leaves or straw.';
}

function hungry({ crop: span }: Follower): string {
  return span?.crop.nitrogen === 'high' ? `, and ${span.crop.name.toLowerCase()} is a hungry crop` : '';
}
