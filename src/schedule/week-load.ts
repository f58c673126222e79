/**
 * What each week holds: its entries and the minutes they take, beside the minutes the household keeps for it.
 */
import type { DoneMark, Subject } from '../garden/garden.ts';
import { type Day, weekStart } from '../measures/days.ts';
import type { TaskDraft } from '../practices/draft.ts';
import { type Effort, effortTogether } from './effort-together.ts';
import { tripTo } from './room.ts';
import { dayShareMinutes, givenMinutes, type Hours } from './week-hours.ts';

/**
 * Entries a week holds before work that may go elsewhere does: two short of one a day, so that what cannot wait finds
 * room. House default.
 */
export const FULL_WEEK_ENTRIES = 5;

/** Work as a week counts it. */
export interface Load extends Effort {
  subject: Subject;
  weight?: TaskDraft['weight'];
}

/** The work of one entry. */
interface Lot {
  day: Day;
  parts: readonly Load[];
  minutes: number;
}

interface Week {
  lots: Map<string, Lot>;
  minutes: number;
  /** Minutes kept for it, in all and for each of its work days at home. */
  given: number;
  share: number;
}

/** The load of each week: one entry for every job on every day. */
export class WeekLoad {
  readonly #weeks = new Map<Day, Week>();
  readonly #hours: Hours;
  #overMinutes = 0;

  /** @param done work done already, which fills the week it was done in */
  constructor(done: readonly DoneMark[], hours: Hours) {
    this.#hours = hours;
    for (const mark of done) this.add(mark.on, mark);
  }

  /** Minutes by which weeks are over what they give, all weeks together. */
  get overMinutes(): number {
    return this.#overMinutes;
  }

  /** Counts work on a day: in an entry of its own job, or in that of the work it rides with. */
  add(day: Day, work: Load, jobId = work.job.id): void {
    const parts = this.#week(day).lots.get(lotName(day, jobId))?.parts ?? [];
    this.#keep(day, jobId, [...parts, work]);
  }

  /** Takes back what was counted. */
  remove(day: Day, work: Load, jobId = work.job.id): void {
    const parts = this.#week(day).lots.get(lotName(day, jobId))?.parts ?? [];
    this.#keep(
      day,
      jobId,
      parts.filter((part) => part !== work),
    );
  }

  /** Whether work of one job on a day would be an entry or minutes too many for its week. */
  isFullFor(day: Day, work: readonly Load[]): boolean {
    return this.isCrowdedFor(day, work) || this.#week(day).minutes + this.#more(day, work) > this.#week(day).given;
  }

  /** Whether work of one job on a day would be one entry too many for its week. */
  isCrowdedFor(day: Day, work: readonly Load[]): boolean {
    const { lots } = this.#week(day);
    return lots.size >= FULL_WEEK_ENTRIES && !lots.has(lotName(day, work[0]?.job.id ?? ''));
  }

  /** Whether a day holds work already, and more of it would take more than its share of the week. */
  isDayFullFor(day: Day, work: readonly Load[]): boolean {
    const here = this.#lotsOn(day).reduce((sum, { minutes }) => sum + minutes, 0);
    return here > 0 && here + this.#more(day, work) > this.#week(day).share;
  }

  /** How many of the places that work leads to are gone to on a day anyway, for work of another job. */
  tripsShared(day: Day, work: readonly Load[]): number {
    const going = new Set(this.#lotsOn(day).flatMap(({ parts }) => parts.flatMap((part) => tripTo(part) ?? [])));
    const places = new Set(work.flatMap((each) => tripTo(each) ?? []));
    return [...places].filter((place) => going.has(place)).length;
  }

  /** The Mondays of weeks that are over what they give, in order. */
  overfullWeeks(): Day[] {
    return [...this.#weeks]
      .filter(([, { minutes, given }]) => minutes > given)
      .map(([monday]) => monday)
      .sort();
  }

  /** Minutes by which the week of a day is over. */
  overIn(day: Day): number {
    const { minutes, given } = this.#week(day);
    return Math.max(0, minutes - given);
  }

  #more(day: Day, work: readonly Load[]): number {
    const lot = this.#week(day).lots.get(lotName(day, work[0]?.job.id ?? ''));
    return effortTogether([...(lot?.parts ?? []), ...work]) - (lot?.minutes ?? 0);
  }

  #lotsOn(day: Day): Lot[] {
    return [...this.#week(day).lots.values()].filter((lot) => lot.day === day);
  }

  #keep(day: Day, jobId: string, parts: readonly Load[]): void {
    const week = this.#week(day);
    const name = lotName(day, jobId);
    const lot = { day, parts, minutes: effortTogether(parts) };
    const minutes = week.minutes + lot.minutes - (week.lots.get(name)?.minutes ?? 0);
    this.#overMinutes += Math.max(0, minutes - week.given) - Math.max(0, week.minutes - week.given);
    week.minutes = minutes;
    if (parts.length === 0) week.lots.delete(name);
    else week.lots.set(name, lot);
  }

  #week(day: Day): Week {
    const monday = weekStart(day);
    const known = this.#weeks.get(monday);
    if (known !== undefined) return known;
    const share = dayShareMinutes(day, this.#hours);
    const week = { lots: new Map(), minutes: 0, given: givenMinutes(day, this.#hours), share };
    this.#weeks.set(monday, week);
    return week;
  }
}

function lotName(day: Day, jobId: string): string {
  return `${day} ${jobId}`;
}
