/**
 * What is left of cover seed: packets whose grams are known, less what was sown since, oldest first.
 */
import type { Garden, SeedSown, Stand } from '../../garden/garden.ts';
import { coverSeedLifeOf } from '../../handbook/seed-life.ts';
import { type Day, yearOf } from '../../measures/days.ts';
import { areaOf } from '../bed-timeline.ts';
import { coverParts } from '../covers.ts';
import type { PracticeInput } from '../practice.ts';
import { seedAmounts } from './seed.ts';

/** What is left of one packet. */
export interface SeedLeft {
  coverId: string;
  packedYear: number;
  /** The day from which it is there. */
  on: Day;
  grams: number;
}

/** So much of a kind. */
export interface SeedGrams {
  coverId: string;
  grams: number;
}

/**
 * Every packet of cover seed with what should be left in it, empty ones left out. A stand nobody told the seed of counts at
 * the published rate over its bed.
 */
export function seedLeft(input: PracticeInput): SeedLeft[] {
  const left = packetsOf(input.garden);
  if (left.length === 0) return [];
  const sown = input.garden.stands.flatMap((stand) => sownIn(input, stand)).sort((a, b) => (a.on < b.on ? -1 : 1));
  for (const use of sown) takeFrom(left, use, use.on);
  return left.filter(({ grams }) => grams > 0);
}

function packetsOf({ seeds }: Garden): SeedLeft[] {
  return seeds
    .flatMap(({ plant, packedYear, held }) =>
      plant.kind === 'cover' && held !== undefined ? [{ coverId: plant.id, packedYear, ...held }] : [],
    )
    .sort((a, b) => a.packedYear - b.packedYear || (a.on < b.on ? -1 : 1));
}

/** Seed that went into a stand: as told, and its first sowing as reckoned where that was not. */
function sownIn(
  { garden, climate }: PracticeInput,
  { bedId, coverId, sow, seed = [], resown = [] }: Stand,
): SeedSown[] {
  const bed = garden.beds.find(({ id }) => id === bedId);
  // Not by the day of the sowing, which may have been put right since its seed was told.
  const isTold = seed.some(({ on }) => !resown.some((again) => again.on === on));
  if (!sow.happened || bed === undefined || isTold) return [...seed];
  const reckoned = seedAmounts(coverParts(coverId), areaOf(bed), sow.day, climate);
  return [...seed, ...reckoned.map(({ part, grams }) => ({ coverId: part.cover.id, on: sow.day, grams }))];
}

/** Whether seed of a packet is sown in a year without a test: before the last year it is said to keep. */
export function isGoodIn({ coverId, packedYear }: SeedLeft, year: number): boolean {
  return year - packedYear < coverSeedLifeOf(coverId).years;
}

/**
 * Takes seed for a sowing out of packets that are there by then, those still good first.
 *
 * @returns what no packet had
 */
function takeFrom(left: SeedLeft[], { coverId, grams }: SeedGrams, on: Day): number {
  const there = left.filter((packet) => packet.coverId === coverId && packet.on <= on);
  const good = there.filter((packet) => isGoodIn(packet, yearOf(on)));
  return [...good, ...there.filter((packet) => !good.includes(packet))].reduce((wanted, packet) => {
    const taken = Math.min(wanted, packet.grams);
    packet.grams -= taken;
    return wanted - taken;
  }, grams);
}

/** A sowing to come, with the seed it takes. */
export interface SowingNeed {
  standId: string;
  on: Day;
  need: readonly SeedGrams[];
  /** Whether its own seed was ordered, so that none is asked for again. */
  ordered: boolean;
  /** Whether the gardener planned it. */
  planned: boolean;
}

/**
 * What each sowing to come lacks, by its stand: seed still good in its year is given first to the sowings it was ordered for,
 * then to those that are planned, then to those suggested, the earliest of each first.
 */
export function lackingOf(input: PracticeInput, sowings: readonly SowingNeed[]): ReadonlyMap<string, SeedGrams[]> {
  const left = seedLeft(input);
  const inTurn = [...sowings].sort(
    (a, b) =>
      Number(b.ordered) - Number(a.ordered) ||
      Number(b.planned) - Number(a.planned) ||
      (a.on === b.on ? (a.standId < b.standId ? -1 : 1) : a.on < b.on ? -1 : 1),
  );
  return new Map(inTurn.map(({ standId, on, need }) => [standId, need.flatMap((each) => lacking(left, each, on))]));
}

function lacking(left: readonly SeedLeft[], need: SeedGrams, on: Day): SeedGrams[] {
  const good = left.filter((packet) => isGoodIn(packet, yearOf(on)));
  const grams = Math.ceil(takeFrom(good, need, on));
  return grams > 0 ? [{ coverId: need.coverId, grams }] : [];
}
