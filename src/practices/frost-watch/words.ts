/**
 * Crops and beds in a row.
 */
import type { Standing } from './standing.ts';

/** "a", "a and b", "a, b and c". */
export function listed(names: readonly string[]): string {
  const all = [...new Set(names)];
  return all.length < 2 ? all.join('') : `${all.slice(0, -1).join(', ')} and ${all.at(-1)}`;
}

/** Crops by name, each once. */
export function cropNames(crops: readonly Standing[]): string {
  return listed(crops.map(({ crop }) => crop.name.toLowerCase()));
}

/** Crops with their beds: "tomato and pepper in Plum bed; snap bean in Upper bed". */
export function cropsInBeds(crops: readonly Standing[]): string {
  const beds = new Map<string, Standing[]>();
  for (const one of crops) beds.set(one.bed.name, [...(beds.get(one.bed.name) ?? []), one]);
  return [...beds].map(([name, inBed]) => `${cropNames(inBed)} in ${name}`).join('; ');
}
