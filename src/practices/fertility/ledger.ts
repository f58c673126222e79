/**
 * The nitrogen of a bed in a season: what its crops want against what soil, compost and legumes give, line by line.
 *
 * Most coefficients are remembered or wide, so that every figure is a span and the outcome a band, never a number alone.
 */
import type { Bed } from '../../garden/garden.ts';
import type { CropSpan } from '../bed-timeline.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { compostLines } from './compost-lines.ts';
import { cropsOf, groundNeed, needLines } from './crop-needs.ts';
import { fedGround, fedIn, fedLines } from './fed-lines.ts';
import { type Grams, type LedgerLine, plus } from './ledger-line.ts';
import { coverLines, pulseLines } from './legume-lines.ts';
import { soilLine } from './soil-line.ts';

/**
 * How a season comes out: `enough` by the usual figures, `low` where it falls short by them but not if everything gives
 * its best, `short` where it falls short even then.
 */
export type Band = 'enough' | 'low' | 'short';

/** How the ground of one crop comes out. */
export interface Ground {
  span: CropSpan;
  /** What is wanted of it over the season, g/m², by the crop and by those before and after it. */
  wants: number;
  /** What it is given, g/m²: what the bed is, and what was strewn on this ground. */
  gives: Grams;
  /** What is given less what is wanted, g/m². */
  balance: Grams;
  band: Band;
}

/** A bed's season. */
export interface BedLedger {
  bed: Bed;
  season: number;
  crops: readonly CropSpan[];
  lines: readonly LedgerLine[];
  /** What all the lines that give come to. */
  gives: Grams;
  /** One a crop, in their order. */
  grounds: readonly Ground[];
  /** The ground that comes out worst: it stands for the bed. */
  worst: Ground;
  band: Band;
}

/** The ledger of a bed for a season; nothing where no crop is known for it. */
export function bedLedger(
  input: PracticeInput,
  found: Pick<Findings, 'coverStands' | 'compostBalance'>,
  bed: Bed,
  season: number,
): BedLedger | undefined {
  const crops = cropsOf(input, bed, season);
  const fed = fedIn(input, bed, season);
  const lines = [
    ...needLines(bed, crops),
    soilLine(input, bed),
    ...compostLines(input, found, bed, season),
    ...coverLines(input, found, bed, season),
    ...pulseLines(input, bed, season),
  ];
  const strewn = fedLines(fed);
  const shared = givenBy(lines);
  const gives = givenBy([...lines, ...strewn]);
  const grounds = crops.map((span) =>
    groundOf(span, groundNeed(bed, span, crops), plus(shared, fedGround(bed, span, fed))),
  );
  const [worst] = [...grounds].sort((a, b) => a.balance.usual - b.balance.usual);
  return worst && { bed, season, crops, lines: [...lines, ...strewn], gives, grounds, worst, band: worst.band };
}

function givenBy(lines: readonly LedgerLine[]): Grams {
  const of = (end: keyof Grams): number =>
    lines.filter(({ side }) => side === 'give').reduce((sum, { gPerM2 }) => sum + gPerM2[end], 0);
  return { low: of('low'), usual: of('usual'), high: of('high') };
}

function groundOf(span: CropSpan, wants: number, gives: Grams): Ground {
  const balance = { low: gives.low - wants, usual: gives.usual - wants, high: gives.high - wants };
  return { span, wants, gives, balance, band: wants === 0 ? 'enough' : bandOf(balance) };
}

function bandOf({ usual, high }: Grams): Band {
  if (usual >= 0) return 'enough';
  return high >= 0 ? 'low' : 'short';
}
