/**
 * What a climate can be taken from, in words.
 */
import type { Day } from '../../measures/days.ts';
import { formatDay, formatQuantity, quantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { ClimateOption } from './climate-choices.ts';

/** What it is. */
export function optionWords({ near }: ClimateOption): string {
  return near === undefined ? 'The mean of the six nearest, nearer ones weighing more' : nameOf(near);
}

/** A station by its name and state. */
export function nameOf({ station }: NonNullable<ClimateOption['near']>): string {
  return `${station.name}, ${station.state}`;
}

/** How far and how high it lies, and the dates it gives. */
export function optionDetail({ near, dates }: ClimateOption, units: UnitSystem): string {
  const median = ({ median: day }: { median?: Day }) => (day === undefined ? 'no date' : formatDay(day, units));
  const ends = dates === undefined ? '' : `${median(dates.spring)} to ${median(dates.autumn)} by even odds`;
  if (near === undefined) return `each brought to the garden’s height where that is known; ${ends}`;
  return [`${distanceWords(near.distanceKm, units)} away`, heightApart(near, units), noDates(near) ?? ends].join('; ');
}

function heightApart({ station, heightDifferenceM }: NonNullable<ClimateOption['near']>, units: UnitSystem): string {
  if (heightDifferenceM === undefined) return `${heightWords(station.elevationM, units)} above the sea`;
  if (Math.round(heightDifferenceM) === 0) return 'as high as the garden';
  const apart = heightWords(Math.abs(heightDifferenceM), units);
  return `${apart} ${heightDifferenceM > 0 ? 'higher' : 'lower'} than the garden`;
}

function noDates({ station }: NonNullable<ClimateOption['near']>): string | undefined {
  if (station.yearRoundFreeze) return 'a freeze can come there in any month, so it has no dates';
  return station.wrapsYear ? 'too mild to have dates' : undefined;
}

/** A distance on the map, in whole miles or kilometres. */
export function distanceWords(distanceKm: number, units: UnitSystem): string {
  return formatQuantity({ value: distanceKm, unit: 'km' }, units);
}

/** A height, in whole feet or metres. */
export function heightWords(heightM: number, units: UnitSystem): string {
  const metres = units === 'us' ? heightM : Math.round(heightM);
  return readableIn(units, quantity(metres, 'm')).replace(/\.\d+/, '');
}
