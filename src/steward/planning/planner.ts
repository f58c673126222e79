/**
 * Makes each garden's plan again when a fact or the day has changed, and hands out the last good one.
 */
import { DateTime, Settings } from 'luxon';
import { usualOf } from '../../climate/logged.ts';
import { seasonOf, seasonTurnOf } from '../../climate/season.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { withMemberIds } from '../../garden/member-ids.ts';
import { InputRefused } from '../../garden/problem.ts';
import { projectGarden } from '../../garden/project.ts';
import type { Day, Instant } from '../../measures/days.ts';
import type { PracticeInput } from '../../practices/practice.ts';
import type { Plan } from '../../schedule/plan.ts';
import type { Shelves } from '../../store/store.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import type { Crew, Urgency } from '../crew/crew.ts';
import type { Look, Seen } from '../crew/look.ts';
import { type Asked, climateOn, type Ground, noClimates, practiceInput, type WorkedOut } from '../crew/work.ts';
import type { Shown } from '../doings/look-doings.ts';
import type { GardenView } from '../doings/steward.ts';
import { Recent } from '../long-work/recent.ts';
import { saidToday } from './said-today.ts';

// Luxon hands an unreadable date on in silence unless it is told to throw.
Settings.throwOnInvalid = true;
declare module 'luxon' {
  interface TSSettings {
    throwOnInvalid: true;
  }
}

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

/** A garden as it stands in a version of its facts. */
export interface Standing extends Omit<GardenView, 'climate'> {
  version: number;
}

/** A view with the version of the facts it shows. */
export interface VersionedView extends GardenView {
  version: number;
}

/** A garden as other facts would have it, with its climate and its plan. */
export type TriedOut = Pick<GardenView, 'garden' | 'climate' | 'plan'>;

/** How facts are tried out; each where it is otherwise than for a look at what they would do. */
interface Trying {
  /** A long record that is not kept yet, in place of the one that is. */
  record?: WeatherRecord | undefined;
  /** The plan to hold it against, where there is one. */
  published: Plan | undefined;
  version: number;
  silent?: boolean;
}

/** Whoever asks waits for the answer, unless they say otherwise. */
const waitedFor = (): Urgency => ({ isWaitedFor: true });

/** Gardens held ready. House default: more than a few households look at in a day; one may take some megabytes. */
const GARDENS_HELD = 24;

/** Reads a garden and its plan, planning again where the plan is out of date. */
export class Planner {
  readonly #shelves: Shelves;
  readonly #clock: Clock;
  readonly #crew: Crew;
  readonly #held = new Recent<string, Standing | VersionedView>(GARDENS_HELD);
  readonly #climates = noClimates();
  /** Gardens this program made a plan for: the one on disk may be that of an older program. */
  readonly #planned = new Set<string>();
  readonly #underWay = new Map<string, { version: number; urgency: Urgency; made: Promise<unknown> }>();
  readonly #unkept = new WeakMap<WeatherRecord, string>();
  #records = 0;

  constructor(shelves: Shelves, clock: Clock, crew: Crew) {
    this.#shelves = shelves;
    this.#clock = clock;
    this.#crew = crew;
  }

  /** The garden's current day. */
  dayOf(garden: Garden): Day {
    return this.#clock.today ?? dayIn(garden.place.timeZone, this.#clock.now());
  }

  /** The garden with a plan made from its current facts for its current day. */
  async view(gardenId: string): Promise<VersionedView> {
    return (await this.#look(gardenId, true, waitedFor())) as VersionedView;
  }

  /** The same without the climate, which most of what is told of a plan has no need of. */
  standing(gardenId: string, urgency = waitedFor()): Promise<Standing> {
    return this.#look(gardenId, false, urgency);
  }

  async #look(gardenId: string, withClimate: boolean, urgency: Urgency): Promise<Standing | VersionedView> {
    for (let tried = 0; tried < TRIES; tried += 1) {
      const version = await this.#shelves.factsVersion(gardenId);
      const going = this.#underWay.get(gardenId);
      if (going?.version === version) {
        if (urgency.isWaitedFor) going.urgency.isWaitedFor = true;
        await going.made;
      }
      const held =
        this.#heldAt(gardenId, version, withClimate) ?? (await this.#once(gardenId, { version, withClimate, urgency }));
      if (held !== undefined) return held;
    }
    throw new Error(`The facts of garden "${gardenId}" kept changing while its plan was made. Try again.`);
  }

  #heldAt(gardenId: string, version: number, withClimate: boolean): Standing | VersionedView | undefined {
    const held = this.#held.get(gardenId);
    if (held?.version !== version || held.plan.today !== this.dayOf(held.garden)) return undefined;
    return withClimate && !('climate' in held) ? undefined : held;
  }

  /** One planning for all who ask at once. */
  async #once(gardenId: string, look: Sought): Promise<Standing | VersionedView | undefined> {
    const made = this.#current(gardenId, look);
    const going = { version: look.version, urgency: look.urgency, made };
    this.#underWay.set(gardenId, going);
    try {
      return await made;
    } finally {
      if (this.#underWay.get(gardenId) === going) this.#underWay.delete(gardenId);
    }
  }

  async #current(gardenId: string, { version, withClimate, urgency }: Sought): Promise<Standing | undefined> {
    const ledger = await this.#shelves.ledger(gardenId);
    const garden = gardenOf(gardenId, ledger);
    const today = this.dayOf(garden);
    const stored = await this.#shelves.plan(gardenId);
    const isCurrent = this.#planned.has(gardenId) && stored?.factsVersion === version && stored.today === today;
    const now = this.#clock.now();
    const silent = stored !== undefined && isRestated(ledger, stored);
    const making = { now, factsVersion: version, published: stored, silent, said: saidToday(ledger, today) };
    const asked = { garden, today, withClimate, ...(isCurrent ? {} : { plan: making }) };
    const { climate, plan = stored } = await this.#workOut(asked, urgency);
    if (plan === undefined) throw new Error(`No plan was made of garden "${gardenId}".`);
    if (!isCurrent && !(await this.#shelves.savePlan(gardenId, plan, version))) return undefined;
    this.#planned.add(gardenId);
    return this.#hold(gardenId, { garden, plan, ledger, version, ...(climate && { climate }) });
  }

  #hold<View extends Standing>(gardenId: string, view: View): View {
    this.#held.set(gardenId, view);
    return view;
  }

  /** Has the crew work out what is not known here. */
  async #workOut({ garden, today, withClimate, plan, look, record }: Wanted, urgency: Urgency): Promise<WorkedOut> {
    const climateName = await this.#climateName(garden, today, record);
    const known = this.#climates.get(climateName);
    const wantsClimate = withClimate && known === undefined;
    const wanted = { ...(wantsClimate && { climate: true }), ...(plan && { plan }), ...(look && { look }) };
    const ground = async (): Promise<Ground> => {
      const climate = this.#climates.get(climateName);
      if (climate !== undefined) return { climate };
      return { record: record ?? (isRecorded(garden) ? await this.#shelves.weatherRecord(garden.id) : undefined) };
    };
    const asked = { garden, today, climateName, ...wanted };
    const { climate, ...done } =
      Object.keys(wanted).length === 0 ? {} : await this.#crew.workOut(asked, { ground, urgency });
    if (climate !== undefined) this.#climates.set(climateName, climate);
    const usual = climate ?? known;
    return { ...done, ...(withClimate && usual !== undefined && { climate: climateOn(garden, usual, today) }) };
  }

  /** What the climate without the garden's own weather hangs on. */
  async #climateName(garden: Garden, today: Day, unkept?: WeatherRecord): Promise<string> {
    const { id, place, climate: choice } = garden;
    const season = seasonOf(seasonTurnOf(place.latitude), today);
    const of = (record: unknown) => JSON.stringify([place, choice, season, record]);
    if (!isRecorded(garden)) return of(undefined);
    if (unkept === undefined) return of([id, await this.#shelves.recordVersion(id)]);
    const name = this.#unkept.get(unkept) ?? `unkept ${this.#records++}`;
    this.#unkept.set(unkept, name);
    return of(name);
  }

  /**
   * The garden that other facts add up to with its climate, and the plan they would give: tried before they are stored.
   *
   * @throws {InputRefused} when the facts hold no garden, or its climate cannot be worked out
   */
  async tryOut(gardenId: string, ledger: readonly LedgerEntry[], trying: Trying): Promise<TriedOut> {
    const garden = gardenOf(gardenId, ledger);
    const today = this.dayOf(garden);
    const { record, published, version, silent = false } = trying;
    const now = this.#clock.now();
    const making = { now, factsVersion: version, published, silent, said: saidToday(ledger, today) };
    const { climate, plan } = await this.#workOut(
      { garden, today, withClimate: true, plan: making, record },
      waitedFor(),
    );
    if (climate === undefined || plan === undefined) throw new Error(`No plan was made of garden "${gardenId}".`);
    return { garden, climate, plan };
  }

  /** The same held against the plan of a view: what other facts would do to it. */
  wouldBe(ledger: readonly LedgerEntry[], view: VersionedView, record?: WeatherRecord): Promise<TriedOut> {
    const { garden, plan: published, version } = view;
    return this.tryOut(garden.id, ledger, { published, version, record });
  }

  /** Looks at a garden as it is shown. */
  async look<Asking extends Look>({ garden, plan: { today } }: Shown, look: Asking): Promise<Seen[Asking['at']]> {
    const { seen } = await this.#workOut({ garden, today, withClimate: false, look }, waitedFor());
    return seen as Seen[Asking['at']];
  }

  /** The plan that entries would be published with if they were added now to what a view shows. */
  async tryAdding(view: VersionedView, entries: readonly LedgerEntry[]): Promise<TriedOut> {
    const { id } = view.garden;
    const ledger = withMemberIds([...view.ledger, ...entries]);
    const published = await this.#shelves.plan(id);
    const silent = published !== undefined && isRestated(ledger, published);
    return this.tryOut(id, ledger, { published, version: view.version + 1, silent });
  }

  /** Publishes a plan that was tried out, now that the facts are as it took them to be. Where they have moved on, nothing is done. */
  async adopt(
    gardenId: string,
    { climate, plan: made }: Pick<TriedOut, 'climate' | 'plan'>,
    version: number,
  ): Promise<void> {
    const ledger = await this.#shelves.ledger(gardenId);
    const garden = gardenOf(gardenId, ledger);
    const plan = { ...made, factsVersion: version };
    if (this.dayOf(garden) !== plan.today || !(await this.#shelves.savePlan(gardenId, plan, version))) return;
    const name = await this.#climateName(garden, plan.today);
    this.#climates.set(name, usualOf(climate));
    this.#planned.add(gardenId);
    this.#hold(gardenId, { garden, climate, plan, ledger, version });
  }
}

/** What is looked for, and when. */
interface Sought {
  version: number;
  withClimate: boolean;
  urgency: Urgency;
}

interface Wanted extends Pick<Asked, 'garden' | 'today' | 'plan' | 'look'> {
  withClimate: boolean;
  record?: WeatherRecord | undefined;
}

function isRecorded({ climate }: Garden): boolean {
  return climate.kind === 'daily-record';
}

/** What the practices look at, as the plan of a view was worked out from. */
export function planningInput({ garden, climate, plan: { today } }: GardenView): PracticeInput {
  return practiceInput(garden, climate, today);
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
