/**
 * What is done in a bed on which days: made, sown, set out, cut, cleared, dressed with compost, mulched. What was done has
 * its day; what is to be done has the days that will do and the one it is planned on.
 */
import type { Bed, Garden, Subject, Topdressed } from '../garden/garden.ts';
import { feedstockById } from '../handbook/feedstocks.ts';
import type { Day } from '../measures/days.ts';
import { quantity } from '../measures/quantity.ts';
import type { TaskKey } from '../practices/draft.ts';
import type { Plan } from '../schedule/plan.ts';

/** Work as a strip tells it apart. */
export type Doing = 'order mix' | 'mark out' | 'fill' | 'sow' | 'set out' | 'cut' | 'clear' | 'compost' | 'mulch';

/** Work in a bed. */
export interface BedDoing {
  doing: Doing;
  /** What it is done to, where the word alone does not say it: "winter rye". */
  what?: string;
  /** A whole sentence's worth, as its task is called; may hold marked amounts. */
  title: string;
  /** The first and the last day that will do; both the day it was done, where it was. */
  from: Day;
  to: Day;
  /** The day it was done, or is planned on. */
  on: Day;
  done: boolean;
  /** Its task, where that still has a page. */
  key?: TaskKey;
  /** It belongs to a cover. */
  cover: boolean;
}

const DOING: Readonly<Record<string, Doing>> = {
  'order-bed-mix': 'order mix',
  'mark-out-bed': 'mark out',
  'fill-bed': 'fill',
  'sow-cover': 'sow',
  'sow-cover-again': 'sow',
  'sow-crop': 'sow',
  'set-out': 'set out',
  'cut-cover': 'cut',
  'cut-again': 'cut',
  'clear-bed': 'clear',
  topdress: 'compost',
  'mulch-planned': 'mulch',
  'mulch-bare-bed': 'mulch',
  'mulch-thin-cover': 'mulch',
  'mulch-warm-crop': 'mulch',
  'mulch-garlic': 'mulch',
};

/** A bed's work in the order of its days: what the garden was told of, and the open tasks of its plan. */
export function doingsOf(garden: Garden, bed: Bed, { tasks }: Pick<Plan, 'tasks'>): BedDoing[] {
  const open = tasks.flatMap(({ kind, key, subject, title, window, day, state }): BedDoing[] => {
    const doing = DOING[kind];
    if (doing === undefined || state !== 'open' || bedIdOf(subject) !== bed.id) return [];
    return [{ doing, ...grownIn(subject), title, key, from: window.earliest, to: window.latest, on: day, done: false }];
  });
  // Compost that was spread is told by its own fact, with how much.
  const done = garden.done.flatMap(({ kind, subject, title, on }): BedDoing[] => {
    const doing = DOING[kind];
    if (doing === undefined || doing === 'compost' || bedIdOf(subject) !== bed.id) return [];
    return [{ doing, ...grownIn(subject), title, from: on, to: on, on, done: true }];
  });
  const dressed = garden.topdressed.filter(({ bedId }) => bedId === bed.id).map((row) => dressing(row, bed));
  return [...open, ...done, ...dressed].sort((a, b) => (a.on < b.on ? -1 : 1));
}

function dressing({ on, litres, materialId }: Topdressed, bed: Bed): BedDoing {
  const laid = materialId === undefined ? 'compost' : feedstockById(materialId).name.toLowerCase();
  const title = `${quantity(litres, 'L')} of ${laid} on ${bed.name}`;
  return { doing: 'compost', what: laid, title, from: on, to: on, on, done: true, cover: false };
}

function bedIdOf(subject: Subject): string | undefined {
  if (subject.type === 'bed') return subject.id;
  return 'bedId' in subject ? subject.bedId : undefined;
}

function grownIn(subject: Subject): Pick<BedDoing, 'what' | 'cover'> {
  const cover = subject.type === 'stand';
  return 'grows' in subject && subject.grows !== undefined ? { what: subject.grows, cover } : { cover };
}
