/**
 * Odds of a date: how it is spread over the years that were looked at.
 */
import type { Day } from '../measures/days.ts';

/**
 * How a dated event is spread over years, in calendar sense: `early` in one year of ten it has come by then, `late`
 * in nine of ten. An absent day means the event does not come that surely.
 */
export interface Odds {
  early?: Day;
  median?: Day;
  late?: Day;
  /** Share of years in which the event comes at all, 0–1. */
  shareOfYears: number;
  /** Years looked at; 0 when the odds come from published or assumed dates and not from counted years. */
  years: number;
}

/** How well a date is known. */
export type Confidence = 'recorded' | 'modelled' | 'derived' | 'assumed';
