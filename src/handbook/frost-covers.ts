/**
 * Covers against frost, and how much warmth each may be counted on for: what trials measured, not what is sold.
 */
import type { SourceId } from './shapes/row.ts';

/** A cover by what it is made of. */
export interface FrostCoverRow {
  kind: 'light-fabric' | 'heavy-fabric' | 'fabric-and-film';
  /** In words, as a sentence takes it. */
  name: string;
  /** Degrees it may be counted on for. House default, at or below what the source measured. */
  gainC: number;
  /** Where gains of such covers are told. */
  source: SourceId;
}

/**
 * From the lightest to the warmest. Light fabric gained 0.5–1.8 °C in the mean of two springs of trials, and on some
 * clear nights nothing (agro:S57); heavier fabric is given about 2.8 °C, film on hoops over fabric 5 °C and more
 * (agro:S59). On a calm clear night none is sure.
 */
export const frostCovers: readonly FrostCoverRow[] = [
  { kind: 'light-fabric', name: 'light fabric', gainC: 1, source: 'agro:S57' },
  { kind: 'heavy-fabric', name: 'heavy fabric', gainC: 2, source: 'agro:S59' },
  { kind: 'fabric-and-film', name: 'fabric with film over it', gainC: 5, source: 'agro:S59' },
];
