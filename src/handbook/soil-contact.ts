/**
 * Which crops are picked clear of the soil: what the wait after raw manure hangs on.
 *
 * The rule (7 CFR 205.203(c), compost:S23) names no crops. Whatever is not listed here counts as touching soil: roots,
 * leaves that rain splashes, fruit that lies or hangs low. Pages disagree over peppers and egg-plants, so those are left out.
 */
import type { Provenance, SourceId } from './shapes/row.ts';

/** A crop whose edible part has no contact with soil or soil particles, and what it takes for that. */
export interface ClearOfSoil {
  vegetableId: string;
  /** What keeps it clear, where the plant does not do so by itself. */
  kept?: string;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** Every crop that is judged clear of the soil. */
export const clearOfSoil: readonly ClearOfSoil[] = [
  { vegetableId: 'sweet-corn', provenance: 'published', sources: ['compost:CSU-90-120'] },
  // Named as touching soil where it is grown on the ground.
  { vegetableId: 'tomato', kept: 'on stakes', provenance: 'derived', sources: ['compost:USU-518'] },
  { vegetableId: 'pole-bean', kept: 'on poles', provenance: 'house default', sources: ['compost:S23'] },
  { vegetableId: 'okra', provenance: 'house default', sources: ['compost:S23'] },
];

const byId: ReadonlyMap<string, ClearOfSoil> = new Map(clearOfSoil.map((row) => [row.vegetableId, row]));

/** Why a crop counts as clear of the soil; nothing for one that touches it, or may. */
export function clearOfSoilById(vegetableId: string): ClearOfSoil | undefined {
  return byId.get(vegetableId);
}
