/**
 * The nitrogen of a bed in a season: what its crops want against what soil, compost and legumes give, line by line.
 *
 * Most coefficients are remembered or wide, so that every figure is a span and the outcome a band, never a number alone.
 */
import type { Bed } from '../../garden/garden.ts';
import type { CropSpan } from '../bed-timeline.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { compostLines } from './compost-lines.ts';
import { cropsOf, needLines } from './crop-needs.ts';
import type { Grams, LedgerLine } from './ledger-line.ts';
import { coverLines, pulseLines } from './legume-lines.ts';
import { soilLine } from './soil-line.ts';

/**
 * How a season comes out: `enough` by the usual figures, `low` where it falls short by them but not if everything gives
 * its best, `short` where it falls short even then.
 */
export type Band = 'enough' | 'low' | 'short';

/** A bed's season. */
export interface BedLedger {
  bed: Bed;
  season: number;
  crops: readonly CropSpan[];
  lines: readonly LedgerLine[];
  /** What is given less what is wanted. */
  balance: Grams;
  band: Band;
}

/** The ledger of a bed for a season; nothing where no crop is known for it. */
export function bedLedger(
  input: PracticeInput,
  found: Pick<Findings, 'coverStands'>,
  bed: Bed,
  season: number,
): BedLedger | undefined {
  const crops = cropsOf(input, bed, season);
  if (crops.length === 0) return undefined;
  const lines = [
    ...needLines(bed, crops),
    soilLine(input, bed),
    ...compostLines(input, bed, season),
    ...coverLines(input, found, bed, season),
    ...pulseLines(input, bed, crops),
  ];
  const balance = balanceOf(lines);
  return { bed, season, crops, lines, balance, band: bandOf(balance) };
}

/** What all the lines of a side come to. */
export function totalOf(lines: readonly LedgerLine[], side: LedgerLine['side']): Grams {
  const of = (end: keyof Grams): number =>
    lines.filter((line) => line.side === side).reduce((sum, { gPerM2 }) => sum + gPerM2[end], 0);
  return { low: of('low'), usual: of('usual'), high: of('high') };
}

function balanceOf(lines: readonly LedgerLine[]): Grams {
  const [want, give] = [totalOf(lines, 'want'), totalOf(lines, 'give')];
  return { low: give.low - want.usual, usual: give.usual - want.usual, high: give.high - want.usual };
}

function bandOf({ usual, high }: Grams): Band {
  if (usual >= 0) return 'enough';
  return high >= 0 ? 'low' : 'short';
}
