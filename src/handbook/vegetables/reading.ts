/** How the rows of the vegetable table name their sources. */
import type { SourceId } from '../shapes/row.ts';
import type { VegetableField } from '../shapes/vegetable.ts';

/** Where a figure of a row is read unless the row says otherwise. */
export const usualReading = {
  soilPracticalC: 'veg:V4',
  soilOptimumC: 'veg:V4',
  soilMaxC: 'agro:S44',
  nitrogen: 'veg:V10',
  nitrogenKgPerHa: 'veg:V10',
  rotationYears: 'veg:V36',
  rotationYearsIfDisease: 'veg:V12',
} as const satisfies Partial<Record<VegetableField, SourceId>>;

/** Source ids from a line of them with spaces between; the source of the sowing dates stands first. */
export function cited(line: string): readonly SourceId[] {
  return line.split(' ') as SourceId[];
}
