/**
 * What a season adds up to, in words. Every day is written with its year.
 */
import { capital } from '../../measures/capital.ts';
import { formatQuantity, type QuantityUnit } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { fullDay } from '../words.ts';
import type { BedSeason, PileSeason, SeasonSummary } from './shape.ts';

const HOW = { sown: 'sown', planted: 'planted', 'set-out': 'set out' } as const;

/** A crop: "Garlic, planted October 12, 2026, last harvest July 15, 2027". */
export function cropInWords(crop: BedSeason['crops'][number], units: UnitSystem): string {
  const { what, how, from, lastHarvest, areaM2 } = crop;
  const share = areaM2 === undefined ? '' : ` on ${amount(areaM2, 'm2', units)}`;
  const end = lastHarvest === undefined ? '' : `, last harvest ${fullDay(lastHarvest, units)}`;
  return `${capital(what)}${share}, ${HOW[how]} ${fullDay(from, units)}${end}`;
}

/** A cover: "Oats, sown September 15, 2027, cut May 2, 2028". */
export function coverInWords({ what, sown, cut, dead }: BedSeason['covers'][number], units: UnitSystem): string {
  const ends = [
    ...(dead === undefined ? [] : [`seen dead ${fullDay(dead, units)}`]),
    ...(cut === undefined ? [] : [`cut ${fullDay(cut, units)}`]),
  ];
  return [capital(what), `sown ${fullDay(sown, units)}`, ...ends].join(', ');
}

/** What a bed was given, in a sentence; nothing where it was given nothing. */
export function givenInWords({ compostL, fedG }: BedSeason, units: UnitSystem): string | undefined {
  const given = [
    ...(compostL > 0 ? [`${amount(compostL, 'L', units)} of compost`] : []),
    ...(fedG > 0 ? [`${amount(fedG, 'g', units)} of meal`] : []),
  ];
  return given.length === 0 ? undefined : `${given.join(' and ')} in all`;
}

/** A pile's life in a few sentences. */
export function pileInWords(pile: PileSeason, units: UnitSystem): string[] {
  const { method, built, ingredients, temperatures: heat, turns, curingSince, ready, went } = pile;
  const on = (day: string): string => fullDay(day, units);
  const inIt = ingredients.map(({ what, litres }) => `${amount(litres, 'L', units)} of ${what}`).join('; ');
  return [
    ...(built === undefined ? [] : [`A ${method} pile, built ${on(built)}${inIt === '' ? '' : `, of ${inIt}`}.`]),
    ...(heat === undefined ? [] : [heatInWords(heat, units)]),
    ...(turns === 0 ? [] : [`Turned ${times(turns)}.`]),
    ...(curingSince === undefined ? [] : [`Curing since ${on(curingSince)}.`]),
    ...(ready === undefined ? [] : [`Ready ${on(ready)}.`]),
    ...(went.length === 0
      ? []
      : [
          `Its compost went to ${went
            .map(({ bedName, litres, on: day, mixed }) => {
              const with_ = mixed ? ' with that of another pile' : '';
              return `${bedName} (${amount(litres, 'L', units)}${with_}, ${on(day)})`;
            })
            .join(', ')}.`,
        ]),
  ];
}

/** The thermometer's readings: the first, the highest, and on how many days it was hot. */
function heatInWords(heat: NonNullable<PileSeason['temperatures']>, units: UnitSystem): string {
  const { readings, first, highest, hotDays, hotFromC } = heat;
  const read = (of: { on: string; tempC: number }): string =>
    `${amount(of.tempC, 'tempC', units)} on ${fullDay(of.on, units)}`;
  const seen = readings === 1 ? read(first) : `${read(first)} at first, ${read(highest)} at most`;
  const hot = amount(hotFromC, 'tempC', units);
  return `Read ${times(readings)}: ${seen}; ${hotDays === 0 ? `never ${hot} or more` : `${hot} or more on ${days(hotDays)}`}.`;
}

function times(count: number): string {
  return count === 1 ? 'once' : count === 2 ? 'twice' : `${count} times`;
}

function days(count: number): string {
  return count === 1 ? 'one day' : `${count} days`;
}

/** The freezes that were seen, in sentences. */
export function freezesInWords({ freezes }: SeasonSummary, units: UnitSystem): string[] {
  if (freezes === undefined) return [];
  const { nights, lastSpring, firstAutumn } = freezes;
  const told = (what: string, { on, tempC }: { on: string; tempC: number }): string =>
    `${what} ${fullDay(on, units)}, ${amount(tempC, 'tempC', units)}.`;
  if (nights === 0) return ['No freeze among the nights that were seen.'];
  return [
    ...(lastSpring === undefined ? [] : [told('Last freeze of spring seen:', lastSpring)]),
    ...(firstAutumn === undefined ? [] : [told('First freeze of autumn seen:', firstAutumn)]),
    `${nights} freezing ${nights === 1 ? 'night' : 'nights'} seen.`,
  ];
}

/** The weather that was logged, in sentences. */
export function weatherInWords({ weather }: SeasonSummary, units: UnitSystem): string[] {
  if (weather === undefined) return [];
  const { days: count, first, last, lowest, highest, rainMm, newSnowMm, wateringMm } = weather;
  const on = (day: string): string => fullDay(day, units);
  const water = [
    ...(rainMm === undefined ? [] : [`${amount(rainMm, 'mm', units)} of rain`]),
    ...(newSnowMm === undefined ? [] : [`${amount(newSnowMm / 10, 'cm', units)} of new snow`]),
    ...(wateringMm === undefined ? [] : [`${amount(wateringMm, 'mm', units)} of watering`]),
  ];
  const logged =
    count === 1 ? `One day was logged: ${on(first)}.` : `${count} days were logged, ${on(first)} to ${on(last)}.`;
  return [
    logged,
    ...(lowest === undefined ? [] : [`Coldest ${amount(lowest.tempC, 'tempC', units)}, ${on(lowest.on)}.`]),
    ...(highest === undefined ? [] : [`Warmest ${amount(highest.tempC, 'tempC', units)}, ${on(highest.on)}.`]),
    ...(water.length === 0 ? [] : [`${capital(water.join(', '))} in all on the days logged.`]),
  ];
}

function amount(value: number, unit: QuantityUnit, units: UnitSystem): string {
  return formatQuantity({ value, unit }, units);
}
