/**
 * Water in the top of a bed: how far it is below what the soil can hold, or above it after rain.
 *
 * FAO-56's evaporation from bare soil (agro:S1; the form from memory) with one thing added: water above field capacity
 * takes its time to drain, and much longer in clay.
 */
import type { SoilTexture } from '../handbook/shapes/ground.ts';
import type { Span } from '../handbook/shapes/row.ts';
import type { Day } from '../measures/days.ts';

/** Depth of the layer that is worked, m (FAO-56 gives 0.10 to 0.15 for drying by evaporation). */
const LAYER_M = 0.15;
/** Water that goes at the full rate from a wet surface, mm (FAO-56's default for medium soil, seen in agro:S1). */
export const READILY_EVAPORATED_MM = 8;
/** Evaporation of bare wet soil as a share of the reference (FAO-56, from memory). */
const BARE_WET_SHARE = 1.15;
/** Water the layer holds above field capacity when every pore is full, m³/m³. House default. */
const ABOVE_CAPACITY = 0.1;

/**
 * Days from full pores to field capacity with nothing evaporating: sandy loam about 2 days and clay loam about 19 (Jabro
 * et al. 2009, agro:S41); 2 to 3 days in even, open soil (common practice).
 */
const DRAINING_DAYS: Readonly<Record<SoilTexture['workClass'], number>> = { coarse: 2, medium: 3, fine: 19 };

/** A raised bed of soil rich in compost drains in half the time: it stands above the ground and is open in crumb. House default. */
const RAISED_SHARE = 0.5;

/**
 * Share of the layer's available water that must be gone before soil is fit to work: out of the wettest feel class of
 * NRCS for medium and fine ground; less for sand and for raised beds rich in compost. House default on agro:S33 to S36.
 */
const FIT_SHARE = { closeGround: 0.25, openGround: 0.1 } as const;

/** A kind of soil as its water behaves. */
export interface SoilClass {
  texture: SoilTexture;
  raised: boolean;
  /** What squeezed handfuls of it said, oldest first; they go before the reckoning. */
  handfuls?: readonly Handful[];
}

/** What a squeezed handful said of a soil's top layer. */
export interface Handful {
  on: Day;
  /** It crumbled; otherwise it smeared. */
  crumbled: boolean;
}

/**
 * Depletion once a handful has been squeezed, mm: one that crumbles is at least fit, one that smears has at best just
 * drained. The reckoning goes on from there, so that the next soaking leaves nothing of it. House default.
 */
export function depletionAsFelt(reckonedMm: number, { crumbled }: Handful, { fitMm }: LayerWater): number {
  return crumbled ? Math.max(reckonedMm, fitMm) : Math.min(reckonedMm, 0);
}

/** The layer's water figures, mm. */
export interface LayerWater {
  /** Depletion below field capacity at which no more evaporates. */
  mostMm: number;
  /** Depletion from which it is fit to work. */
  fitMm: number;
  /** Water above field capacity that full pores hold, and how much of it drains in a day. */
  aboveMm: number;
  drainedMm: number;
}

/** Water figures of a soil's top layer. */
export function layerWaterOf({ texture, raised }: SoilClass): LayerWater {
  const [capacity, wilting] = [middle(texture.fieldCapacity), middle(texture.wiltingPoint)];
  const open = raised || texture.workClass === 'coarse';
  const aboveMm = 1000 * ABOVE_CAPACITY * LAYER_M;
  return {
    mostMm: 1000 * (capacity - wilting / 2) * LAYER_M,
    fitMm: 1000 * (capacity - wilting) * LAYER_M * (open ? FIT_SHARE.openGround : FIT_SHARE.closeGround),
    aboveMm,
    drainedMm: aboveMm / (DRAINING_DAYS[texture.workClass] * (raised ? RAISED_SHARE : 1)),
  };
}

function middle({ low, high }: Span): number {
  return (low + high) / 2;
}

/**
 * Depletion after a day, mm: 0 at field capacity, negative while water above it has not drained. Water beyond full pores
 * runs off.
 *
 * @param wetMm rain, melt and watering of the day
 * @param referenceMm reference evapotranspiration; 0 under snow and on frozen ground
 */
export function depletionAfter(beforeMm: number, wetMm: number, referenceMm: number, layer: LayerWater): number {
  const wetted = Math.max(beforeMm - wetMm, -layer.aboveMm);
  const drained = wetted < 0 ? Math.min(0, wetted + layer.drainedMm) : wetted;
  return Math.min(layer.mostMm, drained + BARE_WET_SHARE * referenceMm * wetShare(drained, layer));
}

/** Share of the full rate at which a drying surface still evaporates. */
function wetShare(depletionMm: number, { mostMm }: LayerWater): number {
  if (depletionMm <= READILY_EVAPORATED_MM) return 1;
  return Math.max(0, (mostMm - depletionMm) / (mostMm - READILY_EVAPORATED_MM));
}
