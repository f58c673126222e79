/**
 * What every draft about a pile has in common.
 */
import type { Bin, Pile, Subject } from '../../garden/garden.ts';
import { LITRES_PER_CUBIC_FOOT } from '../../measures/units.ts';
import { DUST, HOT_INSIDE, LIFTING } from '../cautions.ts';
import { START_UP_MINUTES, TURN_MINUTES_PER_M3 } from '../effort.ts';
import { HOT_RECORD } from './hot-record.ts';
import { builtLitres, mayHoldManure } from './pile-life.ts';

const LITRES_PER_M3 = 1000;

/** Cuts and tetanus. From memory. */
const CUTS =
  'Tines, wire and sticks cut, and soil and dung can carry tetanus: stout shoes, gloves, and a shot that is not too old.';
const MANURE = 'It holds manure: keep hands from mouth and face, and follow local rules on keeping and spreading it.';
/** Heaps that catch fire are large and drying. From memory. */
const FIRE =
  'A large heap that dries while it is hot can smoulder: keep it damp all through and no higher than you can reach. Smoke or a smell of burning: do not open it, keep away, and call the fire brigade.';

/** Volume above which a heap counts as large: more than 5 × 5 × 5 ft, the most for turning by hand (compost:S19). */
const LARGE_LITRES = Math.round(125 * LITRES_PER_CUBIC_FOOT);

/** What can hurt whoever builds or opens a pile. */
export function pileCautions(pile: Pile): string[] {
  const hottest = Math.max(...pile.readings.map(({ tempC = 0 }) => tempC), 0);
  return [
    DUST,
    pile.built.happened ? `${HOT_INSIDE} ${LIFTING}` : LIFTING,
    CUTS,
    ...(pile.ingredients.length > 0 && mayHoldManure(pile) ? [MANURE] : []),
    ...(builtLitres(pile) > LARGE_LITRES || hottest > HOT_RECORD.toC ? [FIRE] : []),
  ];
}

/** Minutes to fork over so many litres, so many times. */
export function forkingMinutes(litres: number, times = 1): number {
  return Math.ceil(START_UP_MINUTES + (litres / LITRES_PER_M3) * times * TURN_MINUTES_PER_M3);
}

function subjectOf(pile: Pile, bin: Bin): Subject {
  return { type: 'pile', id: pile.id, name: `the pile in ${bin.name}`, binId: bin.id };
}

/** What every draft about a pile begins from. */
export const draftOfPile = (pile: Pile, bin: Bin) => ({
  practice: 'composting' as const,
  subject: subjectOf(pile, bin),
  supplies: [],
  needs: [],
  after: [],
});
