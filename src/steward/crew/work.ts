/**
 * The long work of a steward, as one function from plain data to plain data: it is called where the pages are answered, or
 * in a thread beside them, and comes to the same either way.
 */
import type { Climate } from '../../climate/climate.ts';
import { withWeather } from '../../climate/logged.ts';
import type { Garden } from '../../garden/garden.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { draftsOf } from '../../practices/catalogue.ts';
import type { TaskDraft } from '../../practices/draft.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import type { Plan } from '../../schedule/plan.ts';
import { makePlan, type PlanInput } from '../../schedule/reconcile.ts';
import { readStationTable } from '../../store/station-file.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { Recent } from '../long-work/recent.ts';
import { climateOf } from './garden-climate.ts';
import { type Look, type Seen, seenAt } from './look.ts';

/** Days ahead that tasks are worked out for: the feed's year and a month, so that nothing ends at its edge. */
const DAYS_AHEAD = 396;

/** What is to be worked out of a garden. */
export interface Asked {
  garden: Garden;
  today: Day;
  /** Names the climate without the garden's own weather: equal names stand for equal climates. */
  climateName: string;
  /** Hands the climate itself back, without the garden's own weather. */
  climate?: boolean;
  /** Makes a plan of it. */
  plan?: Pick<PlanInput, 'now' | 'factsVersion' | 'published' | 'silent' | 'said'>;
  /** Works out something else of it, which a page shows. */
  look?: Look;
}

/** What came of it, each where it was asked for. */
export interface WorkedOut {
  climate?: Climate;
  plan?: Plan;
  seen?: Seen[Look['at']];
}

/** What a climate is made of: the climate itself where it is known, else the record behind it, where it has one. */
export type Ground = { climate: Climate } | { record: WeatherRecord | undefined };

/** What the work goes on with. */
export interface WorkRoom {
  /** Climates worked out before, by name. */
  climates: Climates;
  /** Asked only for a climate that is not held. */
  ground: () => Promise<Ground>;
}

/** Climates by their names, a few of those used last. */
export type Climates = Recent<string, Climate>;

/** Climates held for working with. House default: the gardens of a few households. One may take some megabytes. */
const CLIMATES_HELD = 24;

export function noClimates(): Climates {
  return new Recent(CLIMATES_HELD);
}

/**
 * Works out what is asked. Holds no clock and reads no store: the same garden, day, climate and published plan give the
 * same, byte for byte.
 *
 * @throws {InputRefused} when the climate cannot be worked out
 */
export async function workOut(asked: Asked, room: WorkRoom): Promise<WorkedOut> {
  const usual = await usualClimate(asked, room);
  const { garden, today, plan, look } = asked;
  return {
    ...(asked.climate === true ? { climate: usual } : {}),
    ...(plan === undefined ? {} : { plan: planOf(garden, usual, today, plan) }),
    ...(look === undefined ? {} : { seen: seenAt(inputOn(garden, usual, today), look) }),
  };
}

async function usualClimate({ garden, today, climateName }: Asked, { climates, ground }: WorkRoom): Promise<Climate> {
  const held = climates.get(climateName);
  if (held !== undefined) return held;
  const given = await ground();
  const climate =
    'climate' in given
      ? given.climate
      : await climateOf(garden, today, { record: given.record, stations: readStationTable });
  climates.set(climateName, climate);
  return climate;
}

function planOf(garden: Garden, usual: Climate, today: Day, rest: Required<Asked>['plan']): Plan {
  return makePlan({ garden, drafts: draftsOn(garden, usual, today), today, ...rest });
}

/** Drafts remembered with each climate: what was previewed is then done, and shown before and after. House default. */
const DRAFTS_HELD = 8;

const known = new WeakMap<object, Recent<string, readonly TaskDraft[]>>();

/** Stands for the climate of every garden without a long record: it hangs on nothing but the garden and the day. */
const NO_RECORD = {};

/** What the practices make of a garden on a day: the same facts and climate make the same drafts, so they are remembered. */
function draftsOn(garden: Garden, usual: Climate, today: Day): readonly TaskDraft[] {
  const hangsOn = garden.climate.kind === 'daily-record' ? usual : NO_RECORD;
  const drafts = known.get(hangsOn) ?? new Recent<string, readonly TaskDraft[]>(DRAFTS_HELD);
  known.set(hangsOn, drafts);
  const facts = JSON.stringify([today, garden]);
  const made = drafts.get(facts) ?? draftsOf(inputOn(garden, usual, today));
  drafts.set(facts, made);
  return made;
}

const inputs = new WeakMap<Climate, { facts: string; input: PracticeInput }>();

/** What the practices look at. The last garden under a climate stays the same object: what they remembered of it hangs on it. */
function inputOn(garden: Garden, usual: Climate, today: Day): PracticeInput {
  const facts = JSON.stringify([today, garden]);
  const last = inputs.get(usual);
  if (last?.facts === facts) return last.input;
  const input = practiceInput(garden, climateOn(garden, usual, today), today);
  inputs.set(usual, { facts, input });
  return input;
}

/** What the practices look at on a day. */
export function practiceInput(garden: Garden, climate: Climate, today: Day): PracticeInput {
  return { garden, climate, today, until: addDays(today, DAYS_AHEAD) };
}

/** Climates with a garden's weather remembered under one without: what is shown and what was previewed. House default. */
const LOGGED_HELD = 4;

const logged = new WeakMap<Climate, Recent<string, Climate>>();

/** A climate with the weather of a garden: the same object for the same weather, because what is worked out hangs on it. */
export function climateOn(garden: Garden, usual: Climate, today: Day): Climate {
  const known = logged.get(usual) ?? new Recent<string, Climate>(LOGGED_HELD);
  logged.set(usual, known);
  const seen = JSON.stringify([today, garden.weather]);
  const climate = known.get(seen) ?? withWeather(usual, garden.weather, today);
  known.set(seen, climate);
  return climate;
}
