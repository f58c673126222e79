/**
 * What is easily sown at a time of year, to name when a window is lost or nothing is planned.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Vegetable } from '../../handbook/shapes/vegetable.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { addDays, type Day, earliestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { soonest } from '../bed-timeline.ts';
import { cropLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { type CropWindow, cooledFrom, cropWindow } from './crop-window.ts';
import type { PlantingInBed } from './planting-in-bed.ts';

/** Kinds that come readily from seed sown in the bed, the quickest first. Common practice. */
const EASY: readonly string[] = [
  'radish',
  'lettuce-leaf',
  'spinach',
  'pea',
  'arugula',
  'beet',
  'swiss-chard',
  'carrot',
  'snap-bean',
  'summer-squash',
  'cucumber',
  'turnip',
  'kale',
  'mustard-greens',
];

/** Days a kind's window must still be open to be worth naming. House default. */
const WORTH_NAMING_DAYS = 10;
/** Kinds named in place of one whose window is lost. House default. */
const NAMED_INSTEAD = 2;

/** A kind that can be sown, with the days it can be. */
export interface Sowable {
  crop: Vegetable;
  window: CropWindow;
}

/** The easy kinds with a window in a season, in their fixed order. */
export function easyKinds({ climate, garden }: PracticeInput, season: number): Sowable[] {
  return EASY.flatMap((id) => {
    const crop = vegetableById(id);
    const { frostRisk } = garden.place;
    const window = cropWindow(climate, { crop, how: 'sow', season, frostRisk });
    return window === undefined ? [] : [{ crop, window }];
  });
}

/** The easy kinds that can be sown from a day on for some days, the soil neither too cold nor too hot. */
export function sowableFrom(input: PracticeInput, day: Day, waits: number): Sowable[] {
  const { climate } = input;
  return easyKinds(input, seasonOf(climate.seasonTurn, day)).filter(({ crop, window }) => {
    const opens = window.earliest <= addDays(day, waits);
    const cool = cooledFrom(climate, crop, day, addDays(day, waits));
    return opens && window.latest >= addDays(day, WORTH_NAMING_DAYS) && cool !== undefined;
  });
}

/** A sentence that names what can still be sown once a window has closed, of other families than the one that is lost. */
export function insteadOf(input: PracticeInput, at: PlantingInBed, from: Day): string {
  const { bed, crop: lost } = at;
  const wanted = wantedFrom(at, from);
  const kinds = sowableFrom(input, addDays(from, 1), WORTH_NAMING_DAYS)
    .filter(({ crop }) => crop.rotationGroup !== lost.rotationGroup)
    .filter(({ crop }) => cropLockOut(input.garden, bed.id, crop, from) === undefined)
    .map((kind) => ({ crop: kind.crop, until: lastIn(kind, wanted) }))
    .filter(({ until }) => until >= addDays(from, WORTH_NAMING_DAYS))
    .sort((a, b) => (a.until > b.until ? -1 : a.until < b.until ? 1 : 0))
    .slice(0, NAMED_INSTEAD);
  if (kinds.length === 0) return 'Give the bed a cover, or a blanket of leaves or straw, instead.';
  const named = kinds.map(({ crop, until }) => `${crop.name.toLowerCase()} (until ${dated(until)})`);
  return `What can still be sown then: ${named.join(' or ')}; or give the bed a cover.`;
}

/** The day the bed is wanted again: for the next crop in it, else by the plan for the one that is lost. */
function wantedFrom({ planting, spans }: PlantingInBed, from: Day): Day | undefined {
  const next = spans.find((span) => span.planting.id !== planting.id && span.from > from);
  return soonest(next?.from, planting.lastHarvest?.day);
}

/** The last day a kind may be sown and still be ripe when its bed is wanted. */
function lastIn({ crop, window }: Sowable, wanted: Day | undefined): Day {
  return wanted === undefined ? window.latest : earliestOf(window.latest, addDays(wanted, -crop.maturityDays.low));
}
