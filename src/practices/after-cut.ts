/**
 * What comes after a stand's cut: whether it grew again, what is to be done about that, and when its bed is free.
 */
import type { Garden, Regrowth, Stand } from '../garden/garden.ts';
import { bloomModels } from '../handbook/cover-blooms.ts';
import type { CoverCrop } from '../handbook/shapes/cover.ts';
import { addDays, type Day, daysBetween, latestOf } from '../measures/days.ts';
import type { CoverPart } from './covers.ts';
import type { TaskKey } from './draft.ts';
import { cutAgainKey, laySheetKey, liftSheetKey } from './keys.ts';
import { growingParts } from './stand-cover.ts';

/** Days after a cut when regrowth shows. House default within the 10–14 days of practice. */
export const REGROWTH_DAYS = { low: 10, high: 14 } as const;
/** Days of sheet that finish regrowth (cover:S39: three weeks worked, one did not). */
export const SHEET_DAYS = { low: 21, high: 28 } as const;

/** Times a stand may grow again before cutting is given up for a sheet. House default. */
const REGROWTHS_BEFORE_SHEET = 2;

/** Whether one cut ends a cover: it may be cut in flower, and does not grow again then. */
export function endedByOneCut(cover: CoverCrop): boolean {
  return bloomModels.some(({ coverId, grace }) => coverId === cover.id && grace !== undefined);
}

/** Whether some part of a stand would grow again after its cut. */
export function growsAgain(parts: readonly CoverPart[]): boolean {
  return parts.some(({ cover }) => cover.regrows === 'yes' && !endedByOneCut(cover));
}

/** How it stands with a stand that was cut. */
export interface AfterCut {
  /** Watched for regrowth, green again and to be cut, to go under a sheet, under it, ended by it, or over without one. */
  is: 'watched' | 'green' | 'to-sheet' | 'under-sheet' | 'sheeted' | 'over';
  /** The day that came to be so. */
  on: Day;
  lastCut: Day;
  /** How often it has grown again. */
  regrowths: number;
  /** The number of its next look for regrowth. */
  look: number;
  /** The number of the sheet that lies on it, or is to be laid. */
  sheet: number;
  /** Whether the gardener skipped what was to be done about it. */
  letBe: boolean;
}

/** Something that was seen or done after a cut. */
type Event = Regrowth | { on: Day; what: 'clean' };

/**
 * How it stands with a stand after its cut, by all that was told since. A clean look ends it; so does a sheet that lay long
 * enough, and one that was lifted sooner is looked under again.
 *
 * @returns nothing for a stand that was not cut
 */
export function afterCut({ skipped }: Pick<Garden, 'skipped'>, stand: Stand): AfterCut | undefined {
  const { id, cutOn } = stand;
  if (cutOn === undefined) return undefined;
  const is = growsAgain(growingParts(stand)) ? 'watched' : 'over';
  const first: AfterCut = { is, on: cutOn, lastCut: cutOn, regrowths: 0, look: 1, sheet: 1, letBe: false };
  const state = eventsSince(stand, cutOn).reduce(following, first);
  const todo = nextKey(id, state);
  return todo !== undefined && skipped[todo] !== undefined ? { ...state, letBe: true } : state;
}

/** What was told of a stand from its cut on, oldest first. What is seen green on a day outweighs a clean look on it. */
function eventsSince({ regrowth = [], regrowthCheckedOn }: Stand, cutOn: Day): Event[] {
  const clean = regrowthCheckedOn.map((on): Event => ({ on, what: 'clean' }));
  return [...clean, ...regrowth]
    .filter(({ on }) => on >= cutOn)
    .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
}

function following(state: AfterCut, event: Event): AfterCut {
  const { on } = event;
  switch (event.what) {
    case 'clean':
      return { ...state, is: 'over', on, look: state.look + 1 };
    case 'grew-again':
      return grewAgain(state, on, event.answer === 'sheet');
    case 'cut-again':
      return { ...state, is: 'watched', on, lastCut: on };
    case 'sheet-laid':
      return { ...state, is: 'under-sheet', on };
    case 'sheet-lifted': {
      const tooSoon = state.is === 'under-sheet' && daysBetween(state.on, on) < SHEET_DAYS.low;
      return { ...state, is: tooSoon ? 'watched' : 'sheeted', on, sheet: state.sheet + 1 };
    }
    default:
      return event satisfies never;
  }
}

/** Told twice before anything was done about it, it is the same regrowth: the last word says what is to be done. */
function grewAgain(state: AfterCut, on: Day, toSheet: boolean): AfterCut {
  const known = state.is === 'green' || state.is === 'to-sheet';
  const regrowths = state.regrowths + (known ? 0 : 1);
  const is = toSheet || regrowths >= REGROWTHS_BEFORE_SHEET ? 'to-sheet' : 'green';
  return known ? { ...state, is } : { ...state, is, on, regrowths, look: state.look + 1 };
}

function nextKey(standId: string, { is, regrowths, sheet }: AfterCut): TaskKey | undefined {
  if (is === 'green') return cutAgainKey(standId, regrowths);
  return is === 'to-sheet' ? laySheetKey(standId, sheet) : undefined;
}

/** The first day a bed is free after a stand, where fresh residue waits so many days. */
export function freeFrom({ is, on, lastCut, letBe }: AfterCut, waitDays: number): Day {
  const settled = addDays(lastCut, waitDays);
  if (letBe || is === 'over') return settled;
  if (is === 'green') return addDays(on, waitDays);
  return latestOf(settled, is === 'to-sheet' || is === 'under-sheet' ? addDays(on, SHEET_DAYS.low) : on);
}

/** The task that has to be done before the bed is free, where something has grown again. */
export function endingTask(standId: string, { is, letBe, regrowths, sheet }: AfterCut): TaskKey | undefined {
  if (letBe) return undefined;
  if (is === 'green') return cutAgainKey(standId, regrowths);
  return is === 'to-sheet' || is === 'under-sheet' ? liftSheetKey(standId, sheet) : undefined;
}
