/**
 * A heap of one material as it goes into a pile: its weight, water, carbon and nitrogen.
 */
import type { Feedstock, Typical } from '../../../handbook/shapes/feedstock.ts';

/** So much of one material, by volume as piled or by weight as it lies. */
export interface Portion {
  material: Feedstock;
  amount: { litres: number } | { kg: number };
}

/** The figures of a material that the arithmetic needs. */
export interface Makeup {
  carbonToNitrogen: number;
  carbonPctDry: number;
  moisturePctWet: number;
  densityKgPerM3: number;
}

/** The figures that vary from heap to heap. */
export type Varying = 'carbonToNitrogen' | 'moisturePctWet' | 'densityKgPerM3';

/** A figure with the ends it lies between. */
export interface Band {
  low: number;
  usual: number;
  high: number;
}

/**
 * How far a figure strays where nobody published a span for it: the middle of the spreads of the feedstocks that have
 * one, of the ratio and the weight as shares, of water in points. Derived from the handbook's own table.
 */
export const UNPUBLISHED_SPREAD = {
  carbonToNitrogen: { low: 0.73, high: 1.48 },
  densityKgPerM3: { low: 0.71, high: 1.15 },
  moisturePctWet: { low: -10, high: 7 },
} as const;

/** Water that even the wettest heap leaves room beside, percent. House default. */
const WETTEST_PCT = 95;
const DRIEST_PCT = 1;

/** Whether the arithmetic can reckon with a material: its ratio, water and weight are known. */
export function isReckoned({ carbonToNitrogen, carbonPctDry, moisturePctWet, densityKgPerM3 }: Feedstock): boolean {
  return Boolean(carbonToNitrogen && carbonPctDry && moisturePctWet && densityKgPerM3);
}

/**
 * A material's usual figures.
 *
 * @throws RangeError for a material without them; {@link isReckoned} tells
 */
export function makeupOf(material: Feedstock): Makeup {
  const { carbonToNitrogen, carbonPctDry, moisturePctWet, densityKgPerM3 } = material;
  if (!carbonToNitrogen || !carbonPctDry || !moisturePctWet || !densityKgPerM3)
    throw new RangeError(`${material.name} has no published ratio: it is left out of the arithmetic.`);
  return {
    carbonToNitrogen: carbonToNitrogen.usual,
    carbonPctDry,
    moisturePctWet: moisturePctWet.usual,
    densityKgPerM3: densityKgPerM3.usual,
  };
}

/** A figure's span: as published, else as wide as such figures usually are. */
export function spanOf(material: Feedstock, figure: Varying): Band {
  const { usual, low, high } = material[figure] as Typical;
  if (low !== undefined || high !== undefined) return { usual, low: low ?? usual, high: high ?? usual };
  const spread = UNPUBLISHED_SPREAD[figure];
  if (figure !== 'moisturePctWet') return { usual, low: usual * spread.low, high: usual * spread.high };
  const clip = (percent: number): number => Math.min(WETTEST_PCT, Math.max(DRIEST_PCT, percent));
  return { usual, low: clip(usual + spread.low), high: clip(usual + spread.high) };
}

/** What a portion holds, kg and litres. */
export interface Contents {
  litres: number;
  wetKg: number;
  waterKg: number;
  dryKg: number;
  carbonKg: number;
  nitrogenKg: number;
}

/** Weight of a volume as piled, kg, or its own where it was weighed (compost.md F1). */
function wetKgOf(amount: Portion['amount'], { densityKgPerM3 }: Makeup): number {
  return 'kg' in amount ? amount.kg : (amount.litres / 1000) * densityKgPerM3;
}

/** Litres a portion takes up. */
function litresOf(amount: Portion['amount'], { densityKgPerM3 }: Makeup): number {
  return 'litres' in amount ? amount.litres : (amount.kg / densityKgPerM3) * 1000;
}

/**
 * What a portion holds: dry mass is what is not water, carbon its share of that, and nitrogen carbon by the ratio.
 */
export function contentsOf(amount: Portion['amount'], makeup: Makeup): Contents {
  const wetKg = wetKgOf(amount, makeup);
  const waterKg = (wetKg * makeup.moisturePctWet) / 100;
  const dryKg = wetKg - waterKg;
  const carbonKg = (dryKg * makeup.carbonPctDry) / 100;
  return {
    litres: litresOf(amount, makeup),
    wetKg,
    waterKg,
    dryKg,
    carbonKg,
    nitrogenKg: carbonKg / makeup.carbonToNitrogen,
  };
}
