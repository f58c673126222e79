/**
 * When soil can be worked, by how coarse or fine it is: how long it drains, and how a handful feels that is still too
 * wet.
 *
 * A squeezed handful that runs water is far too wet; pressed with a finger it crumbles when fit and only dents when not
 * (agro:S42). The feel at field capacity is the one soil drains to by itself and is still to be left alone on medium
 * and fine ground (agro:S34, agro:S35).
 */
import type { SoilTexture } from './shapes/ground.ts';
import type { SourceId } from './shapes/row.ts';

/** How one class of soil is judged for work. */
export interface SoilWork {
  workClass: SoilTexture['workClass'];
  /** Days from a handful that smeared to the next worth squeezing. */
  retestDays: number;
  /** Whose figure the days are. */
  retestFrom: SourceId | 'common practice' | 'house default';
  /** The feel of a handful that is still too wet; may hold marked amounts (measures/quantity). */
  tooWet: string;
}

/**
 * The three classes. Sandy loam drains in about 50 hours (agro:S41), permeable soil in two to three days (common
 * practice). Clay loam took 19 days under a cover (agro:S41): it dries by evaporation as well, so it is looked at week
 * by week, which is a house default.
 */
const classes: Readonly<Record<SoilTexture['workClass'], SoilWork>> = {
  coarse: {
    workClass: 'coarse',
    retestDays: 2,
    retestFrom: 'agro:S41',
    tooWet: 'Sandy soil that leaves a wet outline on your hand is still too wet.',
  },
  medium: {
    workClass: 'medium',
    retestDays: 3,
    retestFrom: 'common practice',
    tooWet: 'Loam that leaves a wet outline, or presses out to a ribbon of ⟦25 mm⟧, is still too wet.',
  },
  fine: {
    workClass: 'fine',
    retestDays: 7,
    retestFrom: 'house default',
    tooWet: 'Clay that presses out to a smooth ribbon of ⟦50 mm⟧ is still too wet.',
  },
};

/** How a class of soil is judged for work. */
export function soilWorkOf(workClass: SoilTexture['workClass']): SoilWork {
  return classes[workClass];
}
