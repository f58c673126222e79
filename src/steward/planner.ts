/**
 * Makes each garden's plan again when a fact or the day has changed, and hands out the last good one.
 */
import { DateTime, Settings } from 'luxon';
import type { Climate } from '../climate/climate.ts';
import { withWeather } from '../climate/logged.ts';
import { seasonOf, seasonTurnOf } from '../climate/season.ts';
import type { Garden } from '../garden/garden.ts';
import type { LedgerEntry } from '../garden/ledger.ts';
import { InputRefused } from '../garden/problem.ts';
import { projectGarden } from '../garden/project.ts';
import { addDays, type Day, type Instant } from '../measures/days.ts';
import { draftsOf } from '../practices/catalogue.ts';
import type { PracticeInput } from '../practices/practice.ts';
import type { SaidToday } from '../schedule/held.ts';
import type { Plan } from '../schedule/plan.ts';
import { makePlan } from '../schedule/reconcile.ts';
import { readStationTable } from '../store/station-file.ts';
import type { Shelves } from '../store/store.ts';
import type { WeatherRecord } from '../store/weather.ts';
import { climateOf } from './garden-climate.ts';
import { saidToday } from './said-today.ts';
import type { GardenView } from './steward.ts';

// Luxon hands an unreadable date on in silence unless it is told to throw.
Settings.throwOnInvalid = true;
declare module 'luxon' {
  interface TSSettings {
    throwOnInvalid: true;
  }
}

/** Days ahead that tasks are worked out for: the feed's year and a month, so that nothing ends at its edge. */
const DAYS_AHEAD = 396;
/** Times a plan is made again when the facts moved on while it was being made. */
const TRIES = 5;

/** How the planner tells the time. */
export interface Clock {
  now(): Instant;
  /** The garden's day, when it is not to follow `now`. */
  today?: Day | undefined;
}

/** A garden's day at a moment. */
export function dayIn(timeZone: string, now: Instant): Day {
  return DateTime.fromISO(now, { zone: timeZone }).toISODate();
}

/** The moment a garden's day begins: midnight, or the first moment after it where clocks skip midnight. */
export function dayBegins(timeZone: string, day: Day): Instant {
  return DateTime.fromISO(day, { zone: timeZone }).toUTC().toISO();
}

/** A view with the version of the facts it shows. */
export interface VersionedView extends GardenView {
  version: number;
}

/** A garden as other facts would have it, with its climate and its plan. */
export type TriedOut = Pick<GardenView, 'garden' | 'climate' | 'plan'>;

/** Reads a garden and its plan, planning again where the plan is out of date. */
export class Planner {
  readonly #shelves: Shelves;
  readonly #clock: Clock;
  readonly #held = new Map<string, VersionedView>();
  readonly #climates = new Map<string, { name: string; climate: Climate }>();

  constructor(shelves: Shelves, clock: Clock) {
    this.#shelves = shelves;
    this.#clock = clock;
  }

  /** The garden's current day. */
  dayOf(garden: Garden): Day {
    return this.#clock.today ?? dayIn(garden.place.timeZone, this.#clock.now());
  }

  /** The garden with a plan made from its current facts for its current day. */
  async view(gardenId: string): Promise<VersionedView> {
    for (let tried = 0; tried < TRIES; tried += 1) {
      const view = await this.#current(gardenId);
      if (view !== undefined) return view;
    }
    throw new Error(`The facts of garden "${gardenId}" kept changing while its plan was made. Try again.`);
  }

  async #current(gardenId: string): Promise<VersionedView | undefined> {
    const version = await this.#shelves.factsVersion(gardenId);
    const held = this.#held.get(gardenId);
    if (held?.version === version && held.plan.today === this.dayOf(held.garden)) return held;
    const ledger = await this.#shelves.ledger(gardenId);
    const garden = gardenOf(gardenId, ledger);
    const today = this.dayOf(garden);
    const climate = await this.#climate(garden, today);
    const stored = await this.#shelves.plan(gardenId);
    // The first look in a run plans again: the plan on disk may be that of an older program.
    const current = held !== undefined && stored?.factsVersion === version && stored.today === today;
    const silent = stored !== undefined && isRestated(ledger, stored);
    const said = saidToday(ledger, today);
    const plan = current ? stored : this.plan(garden, climate, today, version, stored, { silent, said });
    if (!current && !(await this.#shelves.savePlan(gardenId, plan, version))) return undefined;
    const view = { garden, climate, plan, ledger, version };
    this.#held.set(gardenId, view);
    return view;
  }

  async #climate(garden: Garden, today: Day): Promise<Climate> {
    return withWeather(await this.#usualClimate(garden, today), garden.weather, today);
  }

  /** The climate without the garden's own weather, worked out anew only when what it hangs on has changed. */
  async #usualClimate(garden: Garden, today: Day): Promise<Climate> {
    const { id, place, climate: choice } = garden;
    const recorded = choice.kind === 'daily-record';
    const version = recorded ? await this.#shelves.recordVersion(id) : undefined;
    const season = seasonOf(seasonTurnOf(place.latitude), today);
    const name = JSON.stringify([place, choice, version, season]);
    const held = this.#climates.get(id);
    if (held?.name === name) return held.climate;
    const record = recorded ? await this.#shelves.weatherRecord(id) : undefined;
    const climate = await climateOf(garden, today, { record, stations: readStationTable });
    this.#climates.set(id, { name, climate });
    return climate;
  }

  /**
   * The plan other facts would give, held against the plan of a view: tried before they are stored.
   *
   * @throws {InputRefused} when the facts hold no garden, or its climate cannot be worked out
   */
  async planFrom(ledger: readonly LedgerEntry[], view: VersionedView): Promise<Plan> {
    return (await this.tryOut(ledger, view)).plan;
  }

  /**
   * The same with the garden that other facts add up to, and its climate.
   *
   * @param record a long record that is not kept yet, in place of the one that is
   */
  async tryOut(
    ledger: readonly LedgerEntry[],
    { garden: { id }, plan, version }: VersionedView,
    record?: WeatherRecord,
  ): Promise<TriedOut> {
    const garden = gardenOf(id, ledger);
    const today = this.dayOf(garden);
    const said = saidToday(ledger, today);
    const usual =
      record === undefined
        ? await this.#usualClimate(garden, today)
        : await climateOf(garden, today, { record, stations: readStationTable });
    const climate = withWeather(usual, garden.weather, today);
    return { garden, climate, plan: this.plan(garden, climate, today, version, plan, { said }) };
  }

  /** A plan from facts that need not be stored: also used to show what a change would do. */
  plan(
    garden: Garden,
    climate: Climate,
    today: Day,
    factsVersion: number,
    published: Plan | undefined,
    telling: { silent?: boolean; said?: SaidToday } = {},
  ): Plan {
    const drafts = draftsOf(inputFor(garden, climate, today));
    return makePlan({ garden, drafts, today, now: this.#clock.now(), factsVersion, published, ...telling });
  }
}

/** What the practices look at, as the plan of a view was worked out from. */
export function planningInput({ garden, climate, plan: { today } }: GardenView): PracticeInput {
  return inputFor(garden, climate, today);
}

function inputFor(garden: Garden, climate: Climate, today: Day): PracticeInput {
  return { garden, climate, today, until: addDays(today, DAYS_AHEAD) };
}

/** Whether, since a plan was made, a file was brought in or something taken back: what that moves was shown beforehand. */
function isRestated(ledger: readonly LedgerEntry[], { revisedAt }: Plan): boolean {
  const newest = ledger.at(-1);
  if (newest === undefined || newest.recordedAt <= revisedAt) return false;
  return newest.fact.kind === 'garden-imported' || newest.fact.kind === 'entry-undone';
}

/**
 * The garden a ledger adds up to.
 *
 * @throws {InputRefused} when there is none
 */
export function gardenOf(gardenId: string, ledger: readonly LedgerEntry[]): Garden {
  const garden = projectGarden(ledger);
  if (garden !== undefined) return garden;
  throw new InputRefused('There is no such garden.', [
    { where: gardenId, what: 'has no garden file.', mend: 'Bring one in with: loamtide garden import FILE' },
  ]);
}
