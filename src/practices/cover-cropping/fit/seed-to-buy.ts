/**
 * The seed of all that is planned, added up by kind.
 */
import { type Day, earliestOf } from '../../../measures/days.ts';
import { areaOf } from '../../bed-timeline.ts';
import { coverParts } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { seedAmounts } from '../seed.ts';
import { lastOrderDay, orderKey } from '../sow-drafts.ts';
import { standSpans } from './stand-spans.ts';

/** Seed of one kind, for every stand that is planned and has none ordered. */
export interface SeedToBuy {
  coverId: string;
  cover: string;
  grams: number;
  /** The last day on which an order comes in time for the first of them. */
  by: Day;
  beds: readonly string[];
}

/** What has to be bought, the most pressing first. Seed of suggestions is not among it: nobody has chosen them. */
export function seedToBuy(input: PracticeInput): SeedToBuy[] {
  const wanted = new Map<string, SeedToBuy>();
  for (const { coverId, cover, grams, by, bed } of amounts(input)) {
    const held = wanted.get(coverId);
    const beds = [...new Set([...(held?.beds ?? []), bed])];
    wanted.set(coverId, {
      coverId,
      cover,
      grams: grams + (held?.grams ?? 0),
      by: held === undefined ? by : earliestOf(held.by, by),
      beds,
    });
  }
  return [...wanted.values()].sort((a, b) => (a.by === b.by ? (a.coverId < b.coverId ? -1 : 1) : a.by < b.by ? -1 : 1));
}

function amounts(input: PracticeInput) {
  const { garden, climate } = input;
  const ordered = (standId: string): boolean => {
    const key = orderKey(standId);
    return garden.skipped[key] !== undefined || garden.done.some((mark) => mark.key === key);
  };
  return garden.beds.flatMap((bed) =>
    standSpans(input, bed.id)
      .filter(({ stand }) => !stand.sow.happened && !ordered(stand.id))
      .flatMap(({ stand }) =>
        seedAmounts(coverParts(stand.coverId), areaOf(bed), stand.sow.day, climate).map(({ part, grams }) => ({
          coverId: part.cover.id,
          cover: part.cover.name.toLowerCase(),
          grams,
          by: lastOrderDay(stand.sow.day),
          bed: bed.name,
        })),
      ),
  );
}
