/**
 * What a stand holds, for examples in which only the nitrogen that the next crop finds matters.
 */
import type { StandNitrogen } from '../../../../src/practices/stand-nitrogen.ts';

/** So much nitrogen for the next crop, from the least to the most, g/m². */
export function nitrogenHeld(low: number, high: number): StandNitrogen {
  return {
    dryKgPerM2: { low: 0.2, high: 0.4 },
    percentN: { low: 3, high: 4 },
    carbonToNitrogen: { low: 11, high: 14 },
    availableGPerM2: { low, high },
    origin: { provenance: 'derived', sources: [] },
  };
}
