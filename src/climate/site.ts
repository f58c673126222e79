/**
 * Where a garden lies, and how it differs from the place its weather is known for.
 */
import { quantity } from '../measures/quantity.ts';
import type { MonthlyNormals } from './climate.ts';

/** A garden's place. */
export interface Site {
  latitude: number;
  longitude: number;
  elevationM?: number;
  /** Days the freeze-free season is shorter at each end here (negative: longer). */
  frostOffsetDays: number;
  /** Degrees the garden is warmer (negative: a cold pocket). */
  tempOffsetC: number;
}

/** Sentences that own up to the gardener's own offsets. */
export function offsetNotes({ frostOffsetDays, tempOffsetC }: Pick<Site, 'frostOffsetDays' | 'tempOffsetC'>): string[] {
  const notes: string[] = [];
  if (frostOffsetDays !== 0)
    notes.push(
      `The freeze-free season is taken ${Math.abs(frostOffsetDays)} days ${frostOffsetDays > 0 ? 'shorter' : 'longer'} at each end, as the garden asks.`,
    );
  if (tempOffsetC !== 0)
    notes.push(
      `Temperatures are taken ${quantity(Math.abs(tempOffsetC), 'deltaC')} ${tempOffsetC > 0 ? 'warmer' : 'colder'}, as the garden asks.`,
    );
  return notes;
}

/** Monthly means with the garden's own degrees added. */
export function warmed(normals: MonthlyNormals, offsetC: number): MonthlyNormals {
  const shifted = (monthly: readonly number[]): number[] => monthly.map((tempC) => tempC + offsetC);
  return { ...normals, tmaxC: shifted(normals.tmaxC), tminC: shifted(normals.tminC) };
}
