/**
 * What the sky and the soil allow over a year sheet's days: freezing nights, and days on which each soil can be worked.
 */
import type { FreezeLimitF } from '../climate/climate.ts';
import { type FreezeNight, freezeNights } from '../climate/freeze-nights.ts';
import { type DaySpan, fitCourse } from '../climate/season-course.ts';
import { addDays, type Day } from '../measures/days.ts';
import { formatQuantity } from '../measures/quantity.ts';
import { celsius, type UnitSystem } from '../measures/units.ts';
import type { PracticeInput } from '../practices/practice.ts';
import { soilClassOf, texturesOf } from '../practices/soil-class.ts';

/** The limits drawn: a light freeze, and one that only hardy crops stand. */
export const LIMITS_F = [32, 28] as const satisfies readonly FreezeLimitF[];

/** A limit in the reader's units: "28 °F", "-2.2 °C". */
export function limitWord(limitF: FreezeLimitF, units: UnitSystem): string {
  return formatQuantity({ value: celsius(limitF), unit: 'tempC' }, units);
}

/** The share of the ways a season may go in which a soil can be worked on a day, 0–1. */
export interface FitShare {
  day: Day;
  share: number;
}

/** A soil of the garden with its days. */
export interface SoilFit {
  /** "silt loam, raised beds". */
  soil: string;
  days: readonly FitShare[];
}

/** The odds day by day. Empty lists mean that the climate does not know. */
export interface YearOdds {
  freezes: Readonly<Record<(typeof LIMITS_F)[number], readonly FreezeNight[]>>;
  /** One row a soil, that of most beds first. */
  soils: readonly SoilFit[];
}

/** Freezing nights and days fit to work between two days, as this season goes where its weather was logged. */
export function yearOdds({ garden, climate }: Pick<PracticeInput, 'garden' | 'climate'>, span: DaySpan): YearOdds {
  const soils = texturesOf(garden).map((id) => {
    const soil = soilClassOf(garden, id);
    const days = fitCourse(climate, soil, span).flatMap(({ day, now, usual }) => {
      const share = now ?? usual;
      return share === undefined ? [] : [{ day, share }];
    });
    return { soil: `${soil.texture.name.toLowerCase()}${soil.raised ? ', raised beds' : ''}`, days };
  });
  return { freezes: { 32: freezeNights(climate, 32, span), 28: freezeNights(climate, 28, span) }, soils };
}

/** Means of a month's days, 0–1; absent where none is known. */
export interface MonthOdds {
  /** The first of its days that is shown. */
  from: Day;
  freezes: Readonly<Record<(typeof LIMITS_F)[number], number | undefined>>;
  /** One a soil, in the order of the soils. */
  fit: readonly (number | undefined)[];
}

/** The same by month: of each month that is shown, the mean of its days as they are drawn. */
export function monthOdds({ freezes, soils }: YearOdds, { from, to }: DaySpan): MonthOdds[] {
  const months: MonthOdds[] = [];
  for (let first = from; first <= to; ) {
    const next = nextMonth(first);
    const within = ({ day }: { day: Day }): boolean => day >= first && day < next && day <= to;
    months.push({
      from: first,
      freezes: { 32: meanShare(freezes[32].filter(within)), 28: meanShare(freezes[28].filter(within)) },
      fit: soils.map(({ days }) => meanShare(days.filter(within))),
    });
    first = next;
  }
  return months;
}

function nextMonth(day: Day): Day {
  return `${addDays(`${day.slice(0, 8)}01`, 31).slice(0, 8)}01`;
}

function meanShare(rows: readonly { share: number }[]): number | undefined {
  return rows.length === 0 ? undefined : rows.reduce((sum, { share }) => sum + share, 0) / rows.length;
}
