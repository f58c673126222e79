/**
 * A stand where it grows, and what all its tasks have in common.
 */
import type { Bed, Stand } from '../../garden/garden.ts';
import { knownAs } from '../confidence.ts';
import type { CoverPart } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import { coveredShare, growingParts, standName } from '../stand-cover.ts';
import { standSubject } from '../subjects.ts';

/** A stand with all its tasks need: where it is, what is in it. */
export interface StandInBed {
  stand: Stand;
  bed: Bed;
  parts: readonly CoverPart[];
  /** What grows in it, for the middle of a sentence. */
  name: string;
  /** The share of its ground it covers, 0–1; absent where it is not known. */
  share?: number;
}

/** A stand with its bed and its kinds. */
export function standInBed(stand: Stand, bed: Bed): StandInBed {
  const share = coveredShare(stand);
  return { stand, bed, parts: growingParts(stand), name: standName(stand), ...(share === undefined ? {} : { share }) };
}

/** What every draft about a stand begins from. */
export const draftOfStand = ({ climate }: PracticeInput, at: StandInBed) => ({
  practice: 'cover-cropping' as const,
  subject: standSubject(at.stand.id, at.name, at.bed),
  needs: [],
  after: [],
  confidence: knownAs(climate, 'derived'),
  makes: [],
});
