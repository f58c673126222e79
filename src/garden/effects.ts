/**
 * What doing a task makes true. A draft carries its effects; marking it done writes them into the ledger with the day.
 */
import type { Day } from '../measures/days.ts';
import type { Regrowth, SoilTextureId } from './garden.ts';

/** One thing that doing a task makes true. */
export type Effect =
  | { makes: 'stand-sown'; standId: string; bedId: string; coverId: string }
  | { makes: 'stand-resown'; standId: string; coverId: string }
  /** Seed of one kind went into a stand. */
  | { makes: 'seed-sown'; standId: string; coverId: string; grams: number }
  /** Seed of one cover was ordered, and counts as to hand. */
  | { makes: 'seed-bought'; coverId: string; grams: number }
  | { makes: 'stand-cut'; standId: string }
  /** Looked at, and nothing was green. */
  | { makes: 'regrowth-checked'; standId: string }
  | { makes: 'regrowth-worked'; standId: string; what: Exclude<Regrowth['what'], 'grew-again'> }
  | { makes: 'stand-dead'; standId: string }
  | { makes: 'bed-cleared'; plantingId: string }
  /** A planned bed has its soil, and is there. */
  | { makes: 'bed-filled'; bedId: string }
  /** Of so many litres in all; absent where it was as planned. */
  | { makes: 'pile-built'; pileId: string; litres?: number | undefined }
  | { makes: 'pile-turned'; pileId: string }
  | { makes: 'pile-curing'; pileId: string }
  /** With so many litres of compost; absent where nobody measured it. */
  | { makes: 'pile-finished'; pileId: string; litres?: number | undefined }
  /** Of what there is from piles, the piles. */
  | { makes: 'bed-topdressed'; bedId: string; litres: number; pileIds?: string[] | undefined }
  /** A fertiliser of the handbook strewn; `plantingId` is the crop it was strewn for, absent where it was for the whole bed. */
  | { makes: 'bed-fed'; bedId: string; fertiliserId: string; grams: number; plantingId?: string | undefined }
  /** Ordered, not yet delivered. */
  | { makes: 'compost-bought'; litres: number }
  /** Beans grew well in what was ordered or delivered on a day. */
  | { makes: 'compost-tested'; boughtOn: Day }
  | { makes: 'planting-started'; plantingId: string }
  /** Its plants were sown under a roof. */
  | { makes: 'planting-raised'; plantingId: string }
  | { makes: 'soil-sampled'; bedId?: string | undefined }
  | { makes: 'soil-squeezed'; soilTexture: SoilTextureId; answer: 'crumbles' | 'smears' };

/** Whether an effect is of cover seed: so many grams of one kind. */
export function isOfSeed(effect: Effect): effect is Extract<Effect, { makes: 'seed-sown' | 'seed-bought' }> {
  return effect.makes === 'seed-sown' || effect.makes === 'seed-bought';
}
