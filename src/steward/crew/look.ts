/**
 * What is worked out of a garden for a page that shows it, and never kept: it takes as long as a plan, and is the crew's
 * work for that reason.
 */
import { fertilitySheet, type LedgerTold } from '../../digest/fertility-sheet.ts';
import type { Bed } from '../../garden/garden.ts';
import { type BedGaps, bedGaps, gardenGaps } from '../../practices/cover-cropping/fit/bed-gaps.ts';
import { type SeedToBuy, seedToBuy } from '../../practices/cover-cropping/fit/seed-to-buy.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import { type CropChoice, cropChoices, plannedAt } from '../bed-plan/crop-choices.ts';

/** What could lie in the gaps of every bed, and the seed to buy for what is planned. */
export interface SeasonEnd {
  beds: BedGaps[];
  seed: SeedToBuy[];
}

/** A look at a garden. Beds go by their ids. */
export type Look =
  | { at: 'season end' }
  | { at: 'gaps'; bedId: string }
  | { at: 'fertility' }
  | { at: 'crops'; bedId: string; season: number };

/** What each look comes to. */
export interface Seen {
  'season end': SeasonEnd;
  gaps: BedGaps;
  fertility: LedgerTold[];
  crops: CropChoice[];
}

/**
 * Looks at a garden.
 *
 * @throws {Error} for a bed the garden has not
 */
export function seenAt(input: PracticeInput, look: Look): Seen[Look['at']] {
  switch (look.at) {
    case 'season end':
      return { beds: gardenGaps(input), seed: seedToBuy(input) };
    case 'gaps':
      return bedGaps(input, bedIn(input, look.bedId));
    case 'fertility':
      return fertilitySheet(input);
    case 'crops': {
      const { bedId, season } = look;
      return cropChoices(input, { bed: bedIn(input, bedId), season, instead: plannedAt(input, bedId, season) });
    }
    default:
      return look satisfies never;
  }
}

function bedIn({ garden }: PracticeInput, bedId: string): Bed {
  const bed = garden.beds.find(({ id }) => id === bedId);
  if (bed === undefined) throw new Error(`Garden "${garden.id}" has no bed "${bedId}".`);
  return bed;
}
