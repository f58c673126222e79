/**
 * Seed that was sown thinner or thicker than the published rate, told where the young stand is looked at.
 */
import { originOf } from '../../handbook/shapes/row.ts';
import { quantity, quantitySpan } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf } from '../bed-timeline.ts';
import { coverParts } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { seedAmounts } from './seed.ts';
import type { StandInBed } from './stand.ts';

/**
 * What the look says of the seed that went into a stand of one kind, with the reason; nothing inside the published rates, or up
 * to what was asked for a late sowing. Of a mix no range is published for its parts.
 */
export function sownDensity(
  { climate }: PracticeInput,
  { stand, bed }: StandInBed,
): { step: string; reason: Reason } | undefined {
  const { coverId, sow, seed = [] } = stand;
  const [part, ...others] = coverParts(coverId);
  const sown = seed.filter((each) => each.coverId === coverId && each.on === sow.day);
  if (part === undefined || others.length > 0 || sown.length === 0) return undefined;
  const areaM2 = areaOf(bed);
  const grams = sown.reduce((sum, each) => sum + each.grams, 0);
  const asked = seedAmounts([part], areaM2, sow.day, climate)[0]?.gPerM2 ?? part.gPerM2;
  const { broadcastGPerM2: rate, name } = part.cover;
  const [low, high] = [Math.min(rate.low, asked), Math.max(rate.high, asked)].map(tenth);
  if (low === undefined || high === undefined) return undefined;
  const isThin = grams < Math.floor(low * areaM2);
  if (!isThin && grams <= Math.ceil(high * areaM2)) return undefined;
  const gPerM2 = tenth(grams / areaM2);
  const saw = { cover: name.toLowerCase(), gPerM2, lowGPerM2: low, highGPerM2: high };
  return {
    step:
      `It was sown at ${quantity(gPerM2, 'gPerM2')}, where the handbook has ${rateWords(low, high)}: look ` +
      (isThin ? 'for gaps.' : 'whether it stands so close that it stays thin and yellow.'),
    reason: { rule: 'cover-check.density', saw, source: originOf(part.cover, 'broadcastGPerM2') },
  };
}

/** A rate in words: one figure, or both ends. */
export function rateWords(low: number, high: number): string {
  return low === high ? quantity(low, 'gPerM2') : quantitySpan(low, high, 'gPerM2');
}
