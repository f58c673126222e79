/**
 * A garden's climate: the odds of a freeze at three limits, the zone, and where both come from.
 */
import type { FreezeEvent, FreezeLimitF } from '../../climate/climate.ts';
import type { Odds } from '../../climate/odds.ts';
import { seasonOf } from '../../climate/season.ts';
import { FREEZES_TOLD, freezesTold } from '../../digest/climate-told.ts';
import { wrapped } from '../../digest/wrapped.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import { celsius, type UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { columns } from './output.ts';

/** What of a garden its climate is told from. */
type ClimateView = Pick<GardenView, 'garden' | 'climate'> & { plan: Pick<GardenView['plan'], 'today'> };

/** The climate as data: the usual odds, and those of the season that today falls in where its weather moved them. */
export function climateJson({ garden, climate, plan: { today } }: ClimateView): object {
  const { basis, origin, confidence, seasonTurn, zone, notes } = climate;
  const season = seasonOf(seasonTurn, today);
  const odds = (event: FreezeEvent, limitF: FreezeLimitF) => {
    const { usual, now } = freezesTold(climate, { event, limitF, season });
    return { ...usual, ...(now === undefined ? {} : { thisSeason: now }) };
  };
  return {
    garden: garden.id,
    today,
    basis,
    origin,
    confidence,
    season,
    freezes: FREEZES_TOLD.map((limitF) => ({
      limitF,
      limitC: tenth(celsius(limitF)),
      lastSpring: odds('last-spring', limitF),
      firstAutumn: odds('first-autumn', limitF),
    })),
    ...(zone === undefined ? {} : { zone: { ...zone, meanYearlyMinimumC: tenth(zone.meanYearlyMinimumC) } }),
    ...(garden.place.hardinessZone === undefined ? {} : { zoneStated: garden.place.hardinessZone }),
    notes,
  };
}

/** The climate as lines of text, in the garden's units. */
export function climateLines(view: ClimateView): string[] {
  const { garden, climate } = view;
  const { units } = garden.place;
  return [
    garden.name,
    ...wrapped(readableIn(units, climate.origin)),
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
  'The tables tell what is usual. By the early day it has happened in one year of ten, by the middle day in five, by the ' +
  'late day in nine. Plant ' +
  'tender things after the late day of spring, and have them in before the early day of autumn.';

function freezeTable({ garden, climate, plan: { today } }: ClimateView, event: FreezeEvent, heading: string): string[] {
  const { units } = garden.place;
  const season = seasonOf(climate.seasonTurn, today);
  const found = FREEZES_TOLD.map((limitF) => ({ limitF, ...freezesTold(climate, { event, limitF, season }) }));
  const rows = found.map(({ limitF, usual: { early, median, late, ...odds } }) => [
    limitText(limitF, units),
    ...[early, median, late].map((day) => dayOrNone(day, units)),
    yearsText(odds),
  ]);
  const moved = found.flatMap(({ limitF, now }) =>
    now ? [`${limitText(limitF, units)}: ${seasonText(now, units)}`] : [],
  );
  return [
    heading,
    ...columns([['at or below', 'early', 'middle', 'late', ''], ...rows], '  '),
    ...(moved.length === 0 ? [] : wrapped(`This season, by its own weather: ${moved.join('; ')}.`, '  ', '  ')),
  ];
}

function seasonText({ early, median, late }: Odds, units: UnitSystem): string {
  if (early !== undefined && early === late) return formatDay(early, units);
  return [early, median, late].map((day) => dayOrNone(day, units)).join(', ');
}

function limitText(limitF: FreezeLimitF, units: UnitSystem): string {
  return units === 'us' ? `${limitF} °F` : `${tenth(celsius(limitF))} °C`;
}

function dayOrNone(day: Day | undefined, units: UnitSystem): string {
  return day === undefined ? 'no date' : formatDay(day, units);
}

function yearsText({ years, shareOfYears }: Pick<Odds, 'years' | 'shareOfYears'>): string {
  if (years === 0) return '';
  const having = Math.round(shareOfYears * years);
  return having === years ? `${years} years` : `comes in ${having} of ${years} years`;
}

function zoneText({ garden, climate: { zone } }: ClimateView): string {
  const { hardinessZone, units } = garden.place;
  const stated = hardinessZone === undefined ? '' : ` The garden file says ${hardinessZone}.`;
  if (zone === undefined) return `Hardiness zone: not known from this climate.${stated}`;
  const coldest = formatQuantity({ value: zone.meanYearlyMinimumC, unit: 'tempC' }, units);
  return `Hardiness zone ${zone.zone}: the coldest night is ${coldest} on average of ${zone.winters} winters.${stated}`;
}
