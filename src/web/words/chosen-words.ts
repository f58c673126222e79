/**
 * What was chosen for the beds, in words: covers, mulch, crops, and what is wished for.
 */
import { seasonTurnOf } from '../../climate/season.ts';
import { fullDay } from '../../digest/words.ts';
import type { ChosenFact } from '../../garden/fact-kinds.ts';
import type { Fact } from '../../garden/facts.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { seasonName } from '../../practices/seasons.ts';
import type { ToldReader } from './told-reader.ts';

/** What such a fact says, in one line. */
export function chosenInWords(fact: ChosenFact, reader: ToldReader): string {
  const { units, bedName } = reader;
  switch (fact.kind) {
    case 'stand-planned': {
      const what = `${coverName(fact.coverId)}, sown about ${fullDay(fact.sowOn, units)}`;
      return `Chosen for ${bedName(fact.bedId)}: ${what}${insteadWords(fact.instead)}`;
    }
    case 'stand-dropped':
      return `Taken out of the plan: ${coverName(fact.coverId)} in ${bedName(fact.bedId)}`;
    case 'mulch-planned': {
      const what = `a mulch of ${fact.mulch}, from ${fullDay(fact.from, units)}`;
      return `Chosen for ${bedName(fact.bedId)}: ${what}${insteadWords(fact.instead)}`;
    }
    case 'plantings-planned':
      return planInWords(fact, reader);
    case 'crop-wished':
      return `Wished for: ${cropName(fact.cropId)}, ${wishedInWords(fact.amount, units)}${seasonWished(fact, reader)}`;
    case 'wish-dropped':
      return `Wish taken off: ${cropName(fact.cropId)}${seasonWished(fact, reader)}`;
    default:
      return fact satisfies never;
  }
}

/** That a choice took the place of covers that were planned. */
function insteadWords(instead: readonly string[] = []): string {
  if (instead.length === 0) return '';
  return `, in place of ${instead.length === 1 ? 'a cover' : `${instead.length} covers`} planned before`;
}

/** Crops of a plan that are told one by one; the rest are a number. */
const MOST_TOLD = 6;

/** What is planned, bed by bed, and what is taken out. */
function planInWords(fact: CropPlan, { bedName, units }: ToldReader): string {
  const { planned, left } = planTold(fact, bedName, units);
  return [
    ...(planned.length === 0 ? [] : [`Planned: ${someOf(planned)}`]),
    ...(left.length === 0 ? [] : [`Taken out of the plan: ${someOf(left)}`]),
  ].join('. ');
}

type CropPlan = Extract<Fact, { kind: 'plantings-planned' }>;

/** All that a plan of crops plans, and all it takes out, each in words that begin small. */
export function planTold(
  { plantings, dropped, coversDropped = [] }: CropPlan,
  bedName: (bedId: string) => string,
  units: UnitSystem,
): { planned: string[]; left: string[] } {
  const crops = dropped
    .filter(({ id }) => !plantings.some((planting) => planting.id === id))
    .map(({ cropId, bedId }) => `${cropName(cropId)} in ${bedName(bedId)}`);
  const covers = coversDropped.map(
    ({ coverId, bedId }) => `${coverName(coverId)} in ${bedName(bedId)}, no time being left for it`,
  );
  return {
    planned: plantings.map(({ cropId, bedId, start, areaM2 }) => {
      const share = areaM2 === undefined ? '' : ` on ${formatQuantity({ value: areaM2, unit: 'm2' }, units)}`;
      const how = startWord(cropId, start.how);
      return `${cropName(cropId)} in ${bedName(bedId)}${share}, ${how} about ${fullDay(start.day, units)}`;
    }),
    left: [...crops, ...covers],
  };
}

function someOf(told: readonly string[]): string {
  const more = told.length - MOST_TOLD;
  return [...told.slice(0, MOST_TOLD), ...(more > 0 ? [`${more} more`] : [])].join('; ');
}

function wishedInWords(amount: Extract<Fact, { kind: 'crop-wished' }>['amount'], units: UnitSystem): string {
  if ('areaM2' in amount) return formatQuantity({ value: amount.areaM2, unit: 'm2' }, units);
  return `${amount.beds} ${amount.beds === 1 ? 'bed' : 'beds'}`;
}

function seasonWished({ season }: { season?: number | undefined }, { latitude }: ToldReader): string {
  if (season === undefined) return ', in every season';
  return ` in ${seasonName({ seasonTurn: seasonTurnOf(latitude) }, season)}`;
}

function cropName(cropId: string): string {
  return vegetableById(cropId).name.toLowerCase();
}
