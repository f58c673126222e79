/**
 * How a stand is sown, in steps.
 */
import type { Span } from '../../handbook/shapes/row.ts';
import { quantity } from '../../measures/quantity.ts';
import { type CoverPart, commonDepthCm } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import type { SeedAmount } from './seed.ts';
import { isFrostSeeded, type SowWindow } from './sow-window.ts';
import type { StandInBed } from './stand.ts';
import { winterFate } from './winter.ts';

/** The steps of a sowing. */
export function sowSteps(
  input: PracticeInput,
  { bed, parts }: StandInBed,
  sow: SowWindow,
  seed: readonly SeedAmount[],
): string[] {
  const amounts = seed.map(({ part, grams }) => `${part.cover.name}: ${quantity(grams, 'g')}`);
  const legumes = parts.some(({ cover }) => cover.inoculant !== undefined);
  return [
    `Weigh out the seed. ${amounts.join('; ')}.`,
    ...(legumes ? ['Damp the legume seed and roll it in its inoculant just before sowing.'] : []),
    ...(isFrostSeeded(parts, sow) ? frostSeeding() : [...raking(parts), watering(bed.watered)]),
    ...ending(input, parts, sow),
  ];
}

function frostSeeding(): string[] {
  return [
    'Go out early on a frozen, still morning, with no snow on the bed.',
    'Scatter half of it walking one way and half crossing it. Rake nothing: thaw and frost draw the seed in.',
  ];
}

function raking(parts: readonly CoverPart[]): string[] {
  const scatter = 'Scatter half of it walking one way and half crossing it.';
  const depth = commonDepthCm(parts);
  if (depth) return [scatter, `Rake it in ${deep(depth)} deep and firm with the back of the rake.`];
  const [largest, ...smaller] = [...parts].sort((a, b) => b.cover.depthCm.low - a.cover.depthCm.low);
  if (largest === undefined) return [scatter];
  return [
    `Scatter the ${nameOf(largest)} first, half walking one way and half crossing it; rake it in ${deep(largest.cover.depthCm)} deep.`,
    ...smaller.map((part) => `Then scatter the ${nameOf(part)} and rake it in ${deep(part.cover.depthCm)} deep.`),
    'Firm with the back of the rake.',
  ];
}

function nameOf({ cover }: CoverPart): string {
  return cover.name.toLowerCase();
}

function deep({ low, high }: Span): string {
  return low === high ? quantity(low, 'cm') : `${quantity(low, 'cm')} to ${quantity(high, 'cm')}`;
}

/** How seed is kept damp until it is up. */
export function watering(watered: boolean): string {
  return watered
    ? 'Water it in, and keep the surface damp until it is up.'
    : 'Sow before rain if you can; in dry weather keep the surface damp with a can until it is up.';
}

/** What ends the stand, where nobody has to. */
function ending(input: PracticeInput, parts: readonly CoverPart[], { half }: SowWindow): string[] {
  if (parts.every(({ cover }) => cover.frostTender)) return ['The first freeze finishes what has not been cut.'];
  const killed = half === 'autumn' && parts.every(({ cover }) => winterFate(cover, input) === 'dies');
  return killed ? ['Winter finishes this cover; look in late winter whether it did.'] : [];
}

/** What to do once the sowing window has closed. */
export function tooLateNote({ parts }: StandInBed, { half }: SowWindow): string {
  const mulch = 'Too late for this cover: lay leaves or straw on the bed instead';
  const rye = parts.some(({ cover }) => cover.id === 'cereal_rye');
  if (half === 'autumn') return rye ? `${mulch}.` : `${mulch}, or sow rye up to the first freeze.`;
  return `${mulch}, or sow a cover that is still in season.`;
}
