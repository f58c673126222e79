/**
 * How a crop is cleared, in steps.
 */
import type { Climate } from '../../climate/climate.ts';
import { type Day, daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type CropSpan, cropYear } from '../bed-timeline.ts';
import { seasonName } from '../seasons.ts';
import type { Changeover, Follower } from './changeover.ts';

/** Days within which a crop finds something left of a legume's roots. House default: a year. */
const ROOTS_LAST_DAYS = 365;
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

/** Lifted crops that are dried and kept with their tops on: a green neck that is cut lets rot in. Common practice. */
const CURED: ReadonlySet<string> = new Set(['garlic', 'onion-seed', 'onion-sets', 'shallot']);

/** Whether a crop is lifted out of the ground rather than cut off at it. */
export function isLifted(span: CropSpan): boolean {
  return LIFTED.has(span.planting.cropId);
}

/** The steps of a changeover. */
export function clearSteps({ span, follower, stays }: Changeover, climate: Climate): string[] {
  return [
    ...(span.frozen === undefined ? lookStep(span) : [DEAD_STEP]),
    ...harvestSteps(span),
    ...(span.crop.nitrogen === 'legume-fixer' ? [rootsStep(span, follower, climate)] : []),
    topsStep(span),
    stays === undefined ? nextStep(span, follower) : `The ${stays} stays: work round it.`,
  ];
}

/** The look before a crop is cleared that a cold night has ended: a thermometer is not the plant. Common practice. */
const DEAD_STEP =
  'Look first, when all has thawed: dead stems are soft and dark. Does it live? Choose Not yet, and it stays for as long as it was meant to.';

/** The look before a crop that stood through winter is ended: its day is reckoned loosely. */
function lookStep({ countedFrom, liftedIn }: CropSpan): string[] {
  if (liftedIn !== undefined) {
    return [
      'Look first: lift it once the lower leaves are brown and about half of the upper ones still green. Green yet? Leave it a week.',
    ];
  }
  return countedFrom === undefined
    ? []
    : [
        'Look first: nobody can name this day well for a crop that stood through winter. Is there still more to come? Leave it.',
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

function topsStep({ planting: { cropId } }: CropSpan): string {
  return CURED.has(cropId)
    ? 'Leave the tops on: hang or spread the crop in shade and wind until the necks are dry, and cut it only then. Rake the surface level by hand.'
    : 'Chop the healthy tops into the compost, and rake the surface level by hand.';
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

/** What the roots of a legume are left for: the crop that follows by name, hungry or not, or none that is planned. */
function rootsStep({ to }: CropSpan, { crop: next }: Follower, climate: Climate): string {
  const soon = next !== undefined && to !== undefined && daysBetween(to, next.from) <= ROOTS_LAST_DAYS;
  if (!soon)
    return 'Leave every root: they hold nitrogen. No crop is planned here within a year; a hungry one would use it.';
  const name = next.crop.name.toLowerCase();
  const season = seasonName(climate, cropYear(next, climate));
  if (next.crop.nitrogen === 'high') {
    return `Leave the roots for the ${name} that follows in ${season}: it is a hungry crop, and they hold nitrogen.`;
  }
  if (next.crop.nitrogen === 'legume-fixer') {
    return `Leave every root: they hold nitrogen, though the ${name} that follows in ${season} makes its own.`;
  }
  return next.crop.nitrogen === 'low'
    ? `Leave every root: they hold nitrogen, of which the ${name} that follows in ${season} needs little.`
    : `Leave the roots for the ${name} that follows in ${season}: it uses some of the nitrogen they hold.`;
}
