/**
 * The stations a climate is taken from, as seen from its garden.
 */
import { type NearStation, nearestStations, STATIONS_WEIGHTED, seenFrom, weightOf } from '../../climate/stations.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Station } from '../../handbook/stations.ts';

/** A station with its share of the mean, 0–1. */
export interface StationTold {
  near: NearStation;
  share: number;
}

/** The one station a garden names, or the nearest that are weighed together; none where it rests on something else. */
export function stationsTold(
  { climate, place }: Pick<Garden, 'climate' | 'place'>,
  all: readonly Station[],
): StationTold[] {
  if (climate.kind === 'station') {
    return all.filter(({ id }) => id === climate.station).map((each) => ({ near: seenFrom(place, each), share: 1 }));
  }
  if (climate.kind !== 'nearest') return [];
  const near = nearestStations(all, place, STATIONS_WEIGHTED);
  const total = near.reduce((sum, each) => sum + weightOf(each), 0);
  return near.map((each) => ({ near: each, share: weightOf(each) / total }));
}
