/**
 * What every draft about a pile has in common.
 */
import type { Bin, Pile, Subject } from '../../garden/garden.ts';
import { START_UP_MINUTES, TURN_MINUTES_PER_M3 } from '../effort.ts';

const LITRES_PER_M3 = 1000;

/** Said wherever a pile is opened. */
export const OPENING_CAUTIONS = [
  'Dust and mould spores: wet a dusty pile first, wear a mask, and leave turning to others if your lungs or immunity are weak.',
  'A working pile can be scalding inside and steams when opened. Lift small forkfuls with bent knees; wash hands after.',
] as const;

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
