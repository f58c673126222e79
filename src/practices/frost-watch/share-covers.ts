/**
 * Covers shared out: to the beds with the most to lose, the lightest that will do.
 */
import type { Bed } from '../../garden/garden.ts';
import type { FrostCover } from '../../garden/household.ts';
import { type FrostCoverRow, frostCovers } from '../../handbook/frost-covers.ts';
import type { BedAtRisk } from './risk.ts';

/** How far a cover reaches beyond the bed on every side, to come down over the plants to the ground. House default. */
const COVER_DROP_M = 0.3;

/** A bed with the cover it gets, if any is left for it. */
export interface CoveredBed {
  risk: BedAtRisk;
  cover?: FrostCoverRow;
  /** Square metres of cover the bed takes. */
  coverM2: number;
  /** Whether what the cover may be counted on for makes up for what the night is short of. */
  isEnough: boolean;
}

/** Square metres of cover that a bed takes. */
function coverM2(bed: Bed): number {
  return (bed.lengthM + 2 * COVER_DROP_M) * (bed.widthM + 2 * COVER_DROP_M);
}

/**
 * The covers of a household laid on beds, none twice. First the beds a cover can save, each under the lightest that
 * will do; what is then left goes, warmest first, to beds it may still help.
 *
 * @param beds the bed with the most to lose first; the answer keeps their order
 */
export function shareCovers(beds: readonly BedAtRisk[], gear: readonly FrostCover[]): CoveredBed[] {
  const left = new Map(frostCovers.map((row) => [row.kind, areaOwned(gear, row.kind)]));
  const given = new Map<string, FrostCoverRow>();
  const give = ({ bed }: BedAtRisk, rows: readonly FrostCoverRow[]): void => {
    const row = rows.find(({ kind }) => (left.get(kind) ?? 0) >= coverM2(bed));
    if (row === undefined) return;
    given.set(bed.id, row);
    left.set(row.kind, (left.get(row.kind) ?? 0) - coverM2(bed));
  };
  for (const risk of beds) {
    give(
      risk,
      frostCovers.filter((row) => isEnough(row, risk)),
    );
  }
  const warmestFirst = [...frostCovers].reverse();
  for (const risk of beds.filter(({ bed }) => !given.has(bed.id))) give(risk, warmestFirst);
  return beds.map((risk) => {
    const cover = given.get(risk.bed.id);
    const enough = cover !== undefined && isEnough(cover, risk);
    return { risk, ...(cover === undefined ? {} : { cover }), coverM2: coverM2(risk.bed), isEnough: enough };
  });
}

function isEnough({ gainC }: FrostCoverRow, { shortC }: BedAtRisk): boolean {
  return gainC >= shortC;
}

function areaOwned(gear: readonly FrostCover[], kind: FrostCover['what']): number {
  return gear.reduce((sum, { what, areaM2 }) => sum + (what === kind ? areaM2 : 0), 0);
}
