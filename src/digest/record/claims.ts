/**
 * What makes a thing told by a fact and the same thing held by the garden one.
 *
 * A sowing, a cut or a pile's building happens once to a thing, whatever day is told of it; what may happen again is told
 * apart by its day, and where two may fall on one day by what was seen or given.
 */
import type {
  Away,
  BedFed,
  ColdNight,
  CompostBought,
  DiseaseFound,
  NotReady,
  PileReading,
  Regrowth,
  SeedSown,
  SoilSqueeze,
  SoilTest,
  StageSeen,
  Stand,
  StandLook,
  Topdressed,
} from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';

type Resown = NonNullable<Stand['resown']>[number];

/** The claim of each kind of happening. */
export const claims = {
  started: (plantingId: string) => `started ${plantingId}`,
  raised: (plantingId: string) => `raised ${plantingId}`,
  ended: (plantingId: string) => `ended ${plantingId}`,
  coverSown: (standId: string) => `cover sown ${standId}`,
  coverCut: (standId: string) => `cover cut ${standId}`,
  coverDead: (standId: string) => `cover dead ${standId}`,
  resown: (standId: string, { on, coverId }: Resown) => `resown ${standId} ${on} ${coverId}`,
  seedSown: (standId: string, { on, coverId, grams }: SeedSown) => `seed sown ${standId} ${on} ${coverId} ${grams}`,
  seedBought: (coverId: string, on: Day) => `seed bought ${coverId} ${on}`,
  looked: (standId: string, { on, covered, weedy }: StandLook) => `looked ${standId} ${on} ${covered} ${weedy}`,
  stage: (standId: string, { on, coverId, stage }: StageSeen) => `stage ${standId} ${on} ${coverId} ${stage}`,
  regrowthChecked: (standId: string, on: Day) => `regrowth checked ${standId} ${on}`,
  regrowth: (standId: string, { on, what }: Pick<Regrowth, 'on' | 'what'>) => `regrowth ${standId} ${on} ${what}`,
  filled: (bedId: string) => `filled ${bedId}`,
  built: (pileId: string) => `built ${pileId}`,
  reading: (pileId: string, { on, at, tempC, moisture, smell, pests, slumped }: PileReading) =>
    `read ${pileId} ${[on, at, tempC, moisture, smell, pests, slumped].join(' ')}`,
  turned: (pileId: string, on: Day) => `turned ${pileId} ${on}`,
  notReady: (pileId: string, { on, failed }: NotReady) => `not ready ${pileId} ${on} ${failed.join(' ')}`,
  curing: (pileId: string, on: Day) => `curing ${pileId} ${on}`,
  ready: (pileId: string) => `ready ${pileId}`,
  /** A layer told without its piles and reported with them is one layer. */
  spread: ({ bedId, on, litres, materialId = '' }: Topdressed) => `spread ${bedId} ${on} ${litres} ${materialId}`,
  fed: ({ bedId, on, grams, fertiliserId, plantingId = '' }: BedFed) =>
    `fed ${bedId} ${on} ${grams} ${fertiliserId} ${plantingId}`,
  sampled: ({ on, bedId = '' }: Pick<SoilTest, 'on' | 'bedId'>) => `sampled ${on} ${bedId}`,
  squeezed: ({ on, soilTexture, answer }: SoilSqueeze) => `squeezed ${on} ${soilTexture} ${answer}`,
  disease: ({ bedId, cropId, disease, on }: DiseaseFound) => `disease ${bedId} ${cropId} ${on} ${disease}`,
  bought: ({ on, litres }: CompostBought) => `bought ${on} ${litres}`,
  tested: (boughtOn: Day) => `tested ${boughtOn}`,
  away: ({ from, to }: Away) => `away ${from} ${to}`,
  coldNight: ({ evening, lowC }: ColdNight) => `cold night ${evening} ${lowC}`,
  skipped: (key: string, on: Day) => `skipped ${key} ${on}`,
  putOff: (key: string, on: Day) => `put off ${key} ${on}`,
  task: (key: string, entry: number) => `task ${key} ${entry}`,
} as const;
