/**
 * A stand where it grows, and what all its tasks have in common.
 */
import type { Bed, Stand, Subject } from '../../garden/garden.ts';
import { knownAs } from '../confidence.ts';
import type { CoverPart } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import { growingParts, standName } from '../stand-cover.ts';

/** A stand with all its tasks need: where it is, what is in it. */
export interface StandInBed {
  stand: Stand;
  bed: Bed;
  parts: readonly CoverPart[];
  /** What grows in it, for the middle of a sentence. */
  name: string;
}

/** Subject of a stand's tasks, named by what grows and where. */
function standSubject({ stand, bed, name: grows }: StandInBed): Subject {
  return { type: 'stand', id: stand.id, name: `${grows} in ${bed.name}`, bedId: bed.id, grows, bedName: bed.name };
}

/** A stand with its bed and its kinds. */
export function standInBed(stand: Stand, bed: Bed): StandInBed {
  return { stand, bed, parts: growingParts(stand), name: standName(stand) };
}

/** What every draft about a stand begins from. */
export const draftOfStand = ({ climate }: PracticeInput, at: StandInBed) => ({
  practice: 'cover-cropping' as const,
  subject: standSubject(at),
  needs: [],
  after: [],
  confidence: knownAs(climate, 'derived'),
  makes: [],
});
