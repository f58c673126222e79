/**
 * The practices of the house, in the one order they are worked through. Adding one is a folder and a line here.
 */

import { addDays, type Day } from '../measures/days.ts';
import type { CompostBalance } from './compost-balance.ts';
import { composting } from './composting/index.ts';
import { coverCropping } from './cover-cropping/index.ts';
import type { TaskDraft } from './draft.ts';
import { fertility } from './fertility/index.ts';
import { type BedLedger, bedLedger } from './fertility/ledger.ts';
import { frostWatch } from './frost-watch/index.ts';
import { heldBeds } from './manure-spreads.ts';
import { warnedOfManure } from './manure-warnings.ts';
import { mulching } from './mulching/index.ts';
import { newBeds } from './new-beds/index.ts';
import { planting } from './planting/index.ts';
import type { Findings, Practice, PracticeInput, Sentence } from './practice.ts';
import { rotation } from './rotation/index.ts';
import { seasonEnd } from './season-end/index.ts';
import { soilReadiness } from './soil-readiness/index.ts';
import { topdressing } from './topdressing/index.ts';
import { heldUntilThere } from './until-there.ts';

/** Every practice, each seeing what those before it found. */
export const practices: readonly Practice[] = [
  rotation,
  soilReadiness,
  planting,
  coverCropping,
  composting,
  topdressing,
  newBeds,
  mulching,
  fertility,
  frostWatch,
  seasonEnd,
];

/**
 * Every task the garden wants in the span worked out. Windows that had closed before the garden was first brought in
 * are history and left out, as are windows that open after the span. But a stand the file shows as standing is still
 * asked after, and a pile's next job is never history, nor is a bed that is still to be made: it is what they want now.
 */
export function draftsOf(input: PracticeInput): TaskDraft[] {
  const drafts = heldUntilThere(input.garden, workedThrough(input).drafts);
  const { startedOn, done } = input.garden;
  const history = new Set(drafts.filter((draft) => isHistory(draft, startedOn)).map(({ key }) => key));
  const wanted = drafts.filter(({ key, window }) => window.earliest <= input.until && !history.has(key));
  // What is history holds nothing up, unless it was done: then the days since count.
  const made = new Set(done.map(({ key }) => key));
  const waitsFor = ({ key }: TaskDraft['after'][number]): boolean => !history.has(key) || made.has(key);
  return wanted.map((draft) => ({ ...draft, after: draft.after.filter(waitsFor) }));
}

/** Days ahead that a balance looks: seasons are whole, so any day within the year will do. */
const BALANCE_DAYS = 396;

/** Compost wanted against compost to come, as the plan of a day has it. */
export function compostBalance(input: Omit<PracticeInput, 'until'>): CompostBalance {
  const { found } = workedThrough({ ...input, until: addDays(input.today, BALANCE_DAYS) });
  return found.compostBalance ?? { beds: [], spared: [], unserved: [], heaps: [], shortfalls: [] };
}

/** The nitrogen of every bed in each of some seasons, as the plan of a day has them; beds without a crop are left out. */
export function nitrogenLedgers(input: PracticeInput, seasons: readonly number[]): BedLedger[] {
  const { found } = workedThrough(input);
  return input.garden.beds.flatMap((bed) => seasons.flatMap((season) => bedLedger(input, found, bed, season) ?? []));
}

/** Ids of the planned stands that no rule lets in: there is no day for them, or no time before what comes next. */
export function coversRefused(input: PracticeInput): string[] {
  const { uncovered = [] } = coverCropping.work(input, NOTHING_FOUND).found ?? {};
  return uncovered.flatMap(({ inPlaceOf }) => inPlaceOf?.standId ?? []);
}

const NOTHING_FOUND: Findings = {
  coverSowings: [],
  coverStands: [],
  uncovered: [],
  thinStands: [],
  compostSupply: [],
};

function workedThrough(input: PracticeInput): { drafts: TaskDraft[]; found: Findings } {
  let found = NOTHING_FOUND;
  const drafts: TaskDraft[] = [];
  for (const practice of practices) {
    const result = practice.work(input, found);
    drafts.push(...result.drafts);
    found = { ...found, ...result.found };
  }
  const { compostBalance: balance } = found;
  if (balance === undefined) return { drafts, found };
  return {
    drafts: warnedOfManure(input, balance.beds, drafts),
    found: { ...found, compostBalance: { ...balance, beds: heldBeds(input, balance.beds) } },
  };
}

/** Days before the garden was brought in that an uncut stand is still asked after. House default, as for lapsed work. */
const UNCUT_DAYS = 60;

/** Work that something standing or lying in a bed still asks for. */
const STILL_STANDS: ReadonlySet<string> = new Set(['cut-cover', 'cut-again', 'lay-sheet', 'lift-sheet']);

function isHistory({ practice, kind, window }: TaskDraft, startedOn: Day): boolean {
  if (practice === 'composting' || practice === 'new-beds') return false;
  const since = STILL_STANDS.has(kind) ? addDays(startedOn, -UNCUT_DAYS) : startedOn;
  return window.latest < since;
}

/** The sentence of a rule. */
export function sentenceOf(rule: string): Sentence | undefined {
  return practices.find((practice) => rule in practice.sentences)?.sentences[rule];
}
