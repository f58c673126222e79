import type { Garden } from '../../src/garden/garden.ts';

/** A garden's lists of what was told and done, with nothing in them. */
export const NOTHING_TOLD = {
  mulches: [],
  topdressed: [],
  fed: [],
  compostBought: [],
  away: [],
  gear: [],
  seeds: [],
  wishes: [],
  soilTests: [],
  soilSqueezes: [],
  diseases: [],
  coldNights: [],
  weather: [],
  done: [],
  skipped: {},
  pins: {},
  assigned: {},
  putOff: {},
} satisfies Partial<Garden>;
