/**
 * How it stands with a cover that was cut, in words: what is looked for or done, and when its bed is free.
 */
import type { Garden, Stand } from '../garden/garden.ts';
import { addDays } from '../measures/days.ts';
import { type AfterCut, afterCut, freeFrom, REGROWTH_DAYS, SHEET_DAYS } from '../practices/after-cut.ts';
import { waitDaysOf } from '../practices/covers.ts';
import { growingParts, standName } from '../practices/stand-cover.ts';
import { fullDay } from './words.ts';

/** One sentence or two about a stand after its cut; nothing for one that was not cut. */
export function afterCutTold({ place: { units }, ...garden }: Garden, stand: Stand): string | undefined {
  const state = afterCut(garden, stand);
  if (state === undefined) return undefined;
  const name = `The ${standName(stand)}`;
  const on = (day: string): string => fullDay(day, units);
  const free = freeWords(stand, state, on);
  if (state.letBe) return `${name} has grown again and is let be. ${free}`;
  switch (state.is) {
    case 'watched':
      return (
        `${name} was cut on ${on(state.lastCut)}; from ${on(addDays(state.on, REGROWTH_DAYS.low))} on it shows whether ` +
        `it grows again. ${free}`
      );
    case 'green':
      return `${name} grew again, seen on ${on(state.on)}: it is to be cut once more. ${free}`;
    case 'to-sheet':
      return `${name} grew again, seen on ${on(state.on)}: it goes under a sheet. ${free}`;
    case 'under-sheet':
      return `${name} has been under a sheet since ${on(state.on)}, for ${SHEET_DAYS.low} days at the least. ${free}`;
    case 'sheeted':
      return `${name} was ended by a sheet, lifted on ${on(state.on)}. ${free}`;
    case 'over':
      return `${name} was cut on ${on(state.lastCut)} and is over. ${free}`;
    default:
      return state.is satisfies never;
  }
}

function freeWords(stand: Stand, state: AfterCut, on: (day: string) => string): string {
  const wait = waitDaysOf(growingParts(stand));
  const [plants, seed] = [freeFrom(state, wait.transplant), freeFrom(state, wait.smallSeed)];
  return plants === seed
    ? `The bed is free from ${on(plants)}.`
    : `The bed is free for plants from ${on(plants)}, for small seed from ${on(seed)}.`;
}
