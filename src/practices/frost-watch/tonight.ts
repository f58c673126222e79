/**
 * What a night that is expected to be cold asks for: beds to cover, crops to pick, plants to carry in.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Day } from '../../measures/days.ts';
import { firstRipe } from '../bed-timeline.ts';
import { bedsAtRisk, isAtRisk } from './risk.ts';
import { type CoveredBed, shareCovers } from './share-covers.ts';
import { hardeningOn, type Standing, standingOn } from './standing.ts';

/** The work of an evening, and what may be left alone. */
export interface Tonight {
  evening: Day;
  /** The low over the beds, °C. */
  lowC: number;
  /** Beds that get a cover, in the order to cover them. */
  covered: readonly CoveredBed[];
  /** Ripe crops that no cover makes safe. */
  pick: readonly Standing[];
  /** Crops without a cover that are not ripe. */
  unsheltered: readonly Standing[];
  carryIn: readonly Standing[];
  /** Watched crops that stand the night. */
  left: readonly Standing[];
}

/** Crops whose harvest is below the soil: there is nothing to pick. */
const BELOW_SOIL: ReadonlySet<string> = new Set(['potato', 'sweet-potato']);

/** The work of an evening; nothing where the night hurts nothing. */
export function tonightOf(
  watched: readonly Standing[],
  { gear }: Garden,
  evening: Day,
  lowC: number,
): Tonight | undefined {
  const standing = standingOn(watched, evening);
  const shared = shareCovers(bedsAtRisk(standing, evening, lowC), gear);
  const carryIn = hardeningOn(watched, evening).filter((one) => isAtRisk(one, lowC));
  if (shared.length + carryIn.length === 0) return undefined;
  const isPickable = (one: Standing): boolean => firstRipe(one) <= evening && !BELOW_SOIL.has(one.crop.id);
  const unsafe = shared.filter(({ isEnough }) => !isEnough).flatMap(({ risk }) => risk.crops);
  const bare = shared.filter(({ cover }) => cover === undefined).flatMap(({ risk }) => risk.crops);
  return {
    evening,
    lowC,
    covered: shared.filter(({ cover }) => cover !== undefined),
    pick: unsafe.filter(isPickable),
    unsheltered: bare.filter((one) => !isPickable(one)),
    carryIn,
    left: standing.filter((one) => !isAtRisk(one, lowC)),
  };
}
