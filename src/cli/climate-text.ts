/**
 * A garden's climate: the odds of a freeze at three limits, the zone, and where both come from.
 */
import type { FreezeEvent, FreezeLimitF } from '../climate/climate.ts';
import { freezeOdds } from '../climate/freeze.ts';
import type { Odds } from '../climate/odds.ts';
import { seasonOf } from '../climate/season.ts';
import { wrapped } from '../digest/wrapped.ts';
import type { Day } from '../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../measures/quantity.ts';
import { celsius, type UnitSystem } from '../measures/units.ts';
import type { GardenView } from '../steward/steward.ts';
import { columns } from './output.ts';

const LIMITS: readonly FreezeLimitF[] = [32, 28, 24];

/** The climate as data: odds for the season that today falls in. */
export function climateJson({ garden, climate, plan: { today } }: GardenView): object {
  const { basis, origin, confidence, seasonTurn, zone, notes } = climate;
  const season = seasonOf(seasonTurn, today);
  const odds = (event: FreezeEvent, limitF: FreezeLimitF) => freezeOdds(climate, { event, limitF, season });
  return {
    garden: garden.id,
    today,
    basis,
    origin,
    confidence,
    season,
    freezes: LIMITS.map((limitF) => ({
      limitF,
      limitC: tenths(celsius(limitF)),
      lastSpring: odds('last-spring', limitF),
      firstAutumn: odds('first-autumn', limitF),
    })),
    ...(zone === undefined ? {} : { zone: { ...zone, meanYearlyMinimumC: tenths(zone.meanYearlyMinimumC) } }),
    ...(garden.place.hardinessZone === undefined ? {} : { zoneStated: garden.place.hardinessZone }),
    notes,
  };
}

/** The climate as lines of text, in the garden's units. */
export function climateLines(view: GardenView): string[] {
  const { garden, climate } = view;
  const { units } = garden.place;
  return [
    garden.name,
    ...wrapped(climate.origin),
    '',
    ...freezeTable(view, 'last-spring', 'Last freeze of spring'),
    '',
    ...freezeTable(view, 'first-autumn', 'First freeze of autumn'),
    '',
    ...wrapped(HOW_TO_READ),
    '',
    ...wrapped(zoneText(view)),
    ...(climate.notes.length === 0 ? [] : ['', 'What to know']),
    ...climate.notes.flatMap((note) => wrapped(readableIn(units, note), '  ', '    ')),
  ];
}

const HOW_TO_READ =
  'By the early day it has happened in one year of ten, by the middle day in five, by the late day in nine. Plant ' +
  'tender things after the late day of spring, and have them in before the early day of autumn.';

function freezeTable({ garden, climate, plan: { today } }: GardenView, event: FreezeEvent, heading: string): string[] {
  const { units } = garden.place;
  const season = seasonOf(climate.seasonTurn, today);
  const rows = LIMITS.map((limitF) => {
    const odds = freezeOdds(climate, { event, limitF, season });
    const days = [odds.early, odds.median, odds.late].map((day) => dayOrNone(day, units));
    return [limitText(limitF, units), ...days, yearsText(odds)];
  });
  return [heading, ...columns([['at or below', 'early', 'middle', 'late', ''], ...rows], '  ')];
}

function limitText(limitF: FreezeLimitF, units: UnitSystem): string {
  return units === 'us' ? `${limitF} °F` : `${tenths(celsius(limitF))} °C`;
}

function dayOrNone(day: Day | undefined, units: UnitSystem): string {
  return day === undefined ? 'no date' : formatDay(day, units);
}

function yearsText({ years, shareOfYears }: Odds): string {
  if (years === 0) return '';
  const having = Math.round(shareOfYears * years);
  return having === years ? `${years} years` : `comes in ${having} of ${years} years`;
}

function zoneText({ garden, climate: { zone } }: GardenView): string {
  const { hardinessZone, units } = garden.place;
  const stated = hardinessZone === undefined ? '' : ` The garden file says ${hardinessZone}.`;
  if (zone === undefined) return `Hardiness zone: not known from this climate.${stated}`;
  const coldest = formatQuantity({ value: zone.meanYearlyMinimumC, unit: 'tempC' }, units);
  return `Hardiness zone ${zone.zone}: the coldest night is ${coldest} on average of ${zone.winters} winters.${stated}`;
}

function tenths(value: number): number {
  return Math.round(value * 10) / 10 + 0;
}
