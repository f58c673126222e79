/**
 * Compost wanted against compost to come, as the year's plan has it: data for a page, a command and a drawing.
 */
import type { Day } from '../measures/days.ts';
import type { BedLayer } from './compost-layer.ts';
import type { TaskKey, Window } from './draft.ts';

/** A layer spread thinner: what the whole takes, what is lacking, and the share of it that is given. */
export interface Thinner {
  fullLitres: number;
  /** Litres lacking: in the season, or of this layer where what is ordered comes too late for it. */
  lacking: number;
  percent: number;
  /** The first day on which what is ordered could be spread, where that is why. */
  comes?: Day;
}

/** One bed's layer of a season, and what of it there will be. */
export interface BedDemand {
  key: TaskKey;
  bedId: string;
  bedName: string;
  season: number;
  half: 'autumn' | 'spring';
  /** When it can go on: the bed clear or its crop mulched, the soil not frozen; no earlier than its compost is ready. */
  window: Window;
  areaM2: number;
  layer: BedLayer;
  litres: number;
  /** Where it is spread a touch thinner because too little is lacking to order it, or an order comes too late. */
  thinner?: Thinner;
  /** Litres of that which the bins, deliveries and orders give. */
  given: number;
  /** The heaps it draws on; a pile by its id. */
  drawn: readonly { ready: Day; litres: number; pileId?: string }[];
  skipped: boolean;
  /** A new bed's fill: what it lacks is bought as bed mix, and is no shortage. */
  fill?: true;
}

/** A heap of compost there or to come, less what has been spread of it. */
export interface HeapSupply {
  what: 'pile' | 'delivery' | 'order';
  /** For a pile, its id; for what was bought, the day. */
  of: string;
  ready: Day;
  litres: number;
  /** Whether somebody has found it ready, or grown beans in it. */
  proven: boolean;
}

/** A bed that gets none because its soil holds very much phosphorus. */
export interface BedSpared {
  bedName: string;
  phosphorusPpm: number;
}

/** A bed whose layer of a season no compost can be in hand for, or whose days for it were over too soon. */
export interface BedUnserved {
  bedName: string;
  season: number;
  /** The last day of its layer. */
  closes: Day;
  /** The first day on which compost ordered at once could be spread; absent where the garden was brought in too late. */
  comes?: Day;
}

/** What can be done about a shortage. */
export interface WaysOut {
  /** What each bed that goes short could be given of its layer, mm. */
  thinner: readonly { bedName: string; depthMm: number; insteadMm: number }[];
  /** The share of its layer that every bed of the season would get if all were spread alike, percent. */
  evenPercent: number;
  /** A pile to begin, large enough, and the last day for it; absent where none begun from today on is ready in time. */
  pile?: { litres: number; startBy: Day; readyBy: Day };
  buy: { litres: number; bags: number; bagLitres: number; kg: number; barrows: string };
}

/** A season's shortage. */
export interface Shortfall {
  season: number;
  /** Litres short, rounded up to what is ordered. */
  litres: number;
  /** The last day of the first bed that goes short. */
  by: Day;
  /** When to order it: from, best, and at the latest. */
  order: Window;
  waysOut: WaysOut;
}

/** Everything wanted and everything to come, for the running season and the two after it. */
export interface CompostBalance {
  beds: readonly BedDemand[];
  spared: readonly BedSpared[];
  unserved: readonly BedUnserved[];
  heaps: readonly HeapSupply[];
  shortfalls: readonly Shortfall[];
}
