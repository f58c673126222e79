/**
 * What a garden is told to be, in sentences: where it lies, how it is worked, what its climate comes from.
 */
import type { Climate } from '../../climate/climate.ts';
import { freezeOdds } from '../../climate/freeze.ts';
import { usualOf } from '../../climate/logged.ts';
import { seasonOf } from '../../climate/season.ts';
import { weekdayWord } from '../../digest/words.ts';
import type { Place } from '../../garden/garden.ts';
import { soilTextureById } from '../../handbook/soil-textures.ts';
import { vegetables } from '../../handbook/vegetables.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import { M_PER_FOOT, type UnitSystem } from '../../measures/units.ts';
import { bedLayer } from '../../practices/compost-layer.ts';
import { hasOdds, VERY_TENDER_PERCENT } from '../../practices/planting/first-day.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { inARow } from '../frame/words.ts';

/** Degrees are shown to the hundredth: about a kilometre. */
const DEGREE_DIGITS = 2;

/** Where a garden lies, and what is known of its height and its nearness to frost. */
export function placeWords({ garden: { place, name } }: GardenView): string[] {
  const { elevationM, frostOffsetDays, tempOffsetC, units, timeZone } = place;
  const height = elevationM === undefined ? '' : `, ${aboveTheSea(elevationM, units)}`;
  return [
    `${name} lies at ${degrees(place.latitude, 'north', 'south')}, ${degrees(place.longitude, 'east', 'west')}${height}. ` +
      `Its days begin by the clock of ${timeZone.replaceAll('_', ' ')}.`,
    ...(elevationM === undefined
      ? ['How high it lies is not told, so stations nearby are taken as they are, however far above or below it.']
      : []),
    ...(frostOffsetDays === 0 ? [] : [offsetDaysWords(frostOffsetDays)]),
    ...(tempOffsetC === 0
      ? []
      : [
          `It is taken as ${formatQuantity({ value: Math.abs(tempOffsetC), unit: 'deltaC' }, units)} ` +
            `${tempOffsetC < 0 ? 'colder' : 'warmer'} than where its weather was measured.`,
        ]),
  ];
}

/** A height in whole metres or feet, as a map has it. */
function aboveTheSea(elevationM: number, units: UnitSystem): string {
  const height = Math.round(Math.abs(elevationM) / (units === 'us' ? M_PER_FOOT : 1));
  return `${height} ${units === 'us' ? 'ft' : 'm'} ${elevationM < 0 ? 'below' : 'above'} the sea`;
}

function degrees(value: number, above: string, below: string): string {
  return `${Math.abs(Number(value.toFixed(DEGREE_DIGITS)))}° ${value < 0 ? below : above}`;
}

function offsetDaysWords(days: number): string {
  const count = Math.abs(days) === 1 ? 'one day' : `${Math.abs(days)} days`;
  return days > 0
    ? `It is a cold spot: the last freeze is taken ${count} later than measured, and the first ${count} sooner.`
    : `It is a warm spot: the last freeze is taken ${count} sooner than measured, and the first ${count} later.`;
}

/** The zone that is told and the one the climate gives. */
export function zoneWords({ garden: { place }, climate: { zone } }: GardenView): string {
  const told = place.hardinessZone;
  if (told !== undefined && zone !== undefined && zone.zone !== told)
    return `You take its hardiness zone to be ${told}; by its climate it is ${zone.zone}.`;
  if (told !== undefined) return `Its hardiness zone is ${told}, as you told it.`;
  if (zone !== undefined) return `Its hardiness zone is ${zone.zone}, by its climate.`;
  return 'Its hardiness zone is not told, and this climate gives no winter lows to work it out from.';
}

/** The usual freezes of a garden: nothing where its climate gives no dates. */
export function freezeWords({ climate, plan: { today }, garden }: GardenView): string | undefined {
  const { units } = garden.place;
  const season = seasonOf(climate.seasonTurn, today);
  const odds = (event: 'last-spring' | 'first-autumn') => freezeOdds(usualOf(climate), { event, limitF: 32, season });
  const [spring, autumn] = [odds('last-spring'), odds('first-autumn')];
  if (spring.median === undefined || autumn.median === undefined) return undefined;
  const day = (of: Day): string => formatDay(of, units);
  const [late, early] = [spring.late, autumn.early];
  return (
    `In half of the years the last freeze of spring is over by ${day(spring.median)}` +
    `${late === undefined ? '' : `, in nine of ten by ${day(late)}`}. The first of autumn has come by ` +
    `${day(autumn.median)} in half of them${early === undefined ? '' : `, and by ${day(early)} in one of ten`}.`
  );
}

/** Which days the household works, how long, and in which units the garden's own texts are written. */
export function workWords({ workDays, hoursPerWeek }: Place, units: UnitSystem): string {
  const days = inARow(workDays.map((day) => `${weekdayWord(day)}s`));
  const hours = hoursPerWeek === 1 ? 'one hour' : `${hoursPerWeek} hours`;
  const written = units === 'us' ? 'inches, gallons and °F' : 'metres, litres and °C';
  return (
    `You work here on ${days}, ${hours} a week in all. Calendars, mail and these pages are written in ${written}; ` +
    'a reader may choose others for their own browser.'
  );
}

/** What is held for kinds that bear no cold at all, whatever risk the household takes. */
export function veryTenderWords(climate: Climate): string {
  const [first = '', ...others] = VERY_TENDER.map((name) => name.toLowerCase());
  const kinds = `The tenderest kinds (${[first, ...others].join(', ')})`;
  return hasOdds(climate)
    ? `${kinds} wait until no more than ${VERY_TENDER_PERCENT} of 100 years still have one.`
    : `${kinds} go by their weeks from the middle date instead: how far years differ is assumed here.`;
}

const VERY_TENDER = vegetables.filter(({ frostClass }) => frostClass === 'very-tender').map(({ name }) => name);

/** The soil, and the chances the household takes with frost and with a cover's seed. */
export function careWords({ soilTexture, frostRisk, bloomRiskPercent }: Place, climate: Climate): string[] {
  const soil = soilTextureById.get(soilTexture)?.name.toLowerCase() ?? soilTexture;
  return [
    `The soil is ${soil}, but where a bed has its own.`,
    `Tender crops go out on the day after which a freeze still comes in ${frostRisk} of 100 years. ${veryTenderWords(climate)}`,
    `Covers are cut before more than ${bloomRiskPercent} of 100 would have flowered.`,
  ];
}

/** The yearly layer of compost, as told or as it is taken. */
export function layerWords({ garden }: GardenView): string {
  const { units } = garden.place;
  const { depthMm, season } = bedLayer(
    { beds: [], soilTests: [], ...(garden.topdressing && { topdressing: garden.topdressing }) },
    '',
  );
  const layer = formatQuantity({ value: depthMm, unit: 'mm' }, units);
  return garden.topdressing === undefined
    ? `Nothing is told of a yearly layer of compost: each bed is given ${layer} in ${season}, and half of that where a test finds the soil rich.`
    : `Each bed is given ${layer} of compost a year, in ${season}.`;
}

/** Where the climate comes from, in a sentence of its own. */
export function climateWords({ climate, garden }: GardenView): string {
  return readableIn(garden.place.units, climate.origin);
}
