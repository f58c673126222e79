/**
 * Ledger entries as a reader would tell them.
 */

import { seasonTurnOf } from '../../climate/season.ts';
import { mendInWords } from '../../digest/mend-words.ts';
import { FAILED_WORDS, STAGE_NOTES } from '../../digest/record/seen-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { Effect } from '../../garden/effects.ts';
import type { DoneTask, Fact, WeatherTold } from '../../garden/facts.ts';
import type { Garden } from '../../garden/garden.ts';
import { MEASURED_WORDS, type Measured } from '../../garden/weather-limits.ts';
import { fertiliserById } from '../../handbook/fertilisers.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { seasonName } from '../../practices/seasons.ts';
import { COVERED_WORDS } from '../../practices/stand-cover.ts';
import { plain } from '../charts/amounts-drawn.ts';
import { unitOf } from '../fields/logged-fields.ts';
import { householdInWords } from './household-words.ts';

/**
 * What a fact says, in one line.
 *
 * @param beside a day the reader has in mind: days of another year are written with their year
 */
export function factInWords(
  fact: Fact,
  { beds, stands, piles, bins, place }: Pick<Garden, 'beds' | 'stands' | 'piles' | 'bins' | 'place'>,
  beside: Day,
): string {
  const { units } = place;
  const titles = ({ tasks }: { tasks: readonly { title: string }[] }): string =>
    tasks.map(({ title }) => readableIn(units, title, beside)).join('; ');
  const bedName = (bedId: string): string => beds.find(({ id }) => id === bedId)?.name ?? bedId;
  const standBed = (standId: string): string => bedName(stands.find(({ id }) => id === standId)?.bedId ?? standId);
  const pileBin = (pileId: string): string => {
    const binId = piles.find(({ id }) => id === pileId)?.binId;
    return bins.find(({ id }) => id === binId)?.name ?? pileId;
  };
  switch (fact.kind) {
    case 'garden-imported':
      return `Garden file brought in: ${fact.file.garden.name}`;
    case 'tasks-done':
      return `Done on ${formatDay(fact.on, units, beside)}: ${fact.tasks.map((task) => doneInWords(task, units, beside)).join('; ')}`;
    case 'tasks-skipped':
      return `Skipped: ${titles(fact)}`;
    case 'put-off':
      return `Put off past ${fullDay(fact.on, units)}: ${titles(fact)}`;
    case 'day-pinned':
      return `Pinned to ${fullDay(fact.day, units)}: ${readableIn(units, fact.title, beside)}`;
    case 'day-unpinned':
      return `No longer pinned: ${readableIn(units, fact.title, beside)}`;
    case 'pile-read':
      return pileReadInWords(fact, pileBin(fact.pileId), units, beside);
    case 'compost-not-ready': {
      const why = fact.failed.map((failure) => FAILED_WORDS[failure]).join(', ');
      return `The compost in ${pileBin(fact.pileId)} was not ready on ${formatDay(fact.on, units, beside)}: ${why}`;
    }
    case 'cold-night-told': {
      const low = formatQuantity({ value: fact.lowC, unit: 'tempC' }, units);
      return `Low ${fact.how} for the night of ${fullDay(fact.evening, units)}: ${low}`;
    }
    case 'away-told':
      return `Away from ${fullDay(fact.from, units)} to ${fullDay(fact.to, units)}`;
    case 'soil-squeezed':
      return `Squeezed the ${fact.soilTexture.replaceAll('_', ' ')} on ${formatDay(fact.on, units, beside)}: it ${fact.answer}`;
    case 'disease-found': {
      const crop = vegetableById(fact.cropId).name;
      return `Found ${fact.disease} on the ${crop} in ${bedName(fact.bedId)} on ${formatDay(fact.on, units, beside)}`;
    }
    case 'stage-seen':
      return `${capital(STAGE_NOTES[fact.stage])} on the ${coverName(fact.coverId)} on ${formatDay(fact.on, units, beside)}`;
    case 'stand-looked':
      return standLookedInWords(fact, standBed(fact.standId), formatDay(fact.on, units, beside));
    case 'regrowth-seen':
      return regrowthInWords(fact, bedName(fact.bedId), formatDay(fact.on, units, beside));
    case 'stand-planned':
      return (
        `Chosen for ${bedName(fact.bedId)}: ${coverName(fact.coverId)}, sown about ${fullDay(fact.sowOn, units)}` +
        insteadWords(fact.instead)
      );
    case 'stand-dropped':
      return `Taken out of the plan: ${coverName(fact.coverId)} in ${bedName(fact.bedId)}`;
    case 'mulch-planned':
      return (
        `Chosen for ${bedName(fact.bedId)}: a mulch of ${fact.mulch}, from ${fullDay(fact.from, units)}` +
        insteadWords(fact.instead)
      );
    case 'plantings-planned':
      return planInWords(fact, bedName, units);
    case 'crop-wished':
      return `Wished for: ${cropName(fact.cropId)}, ${wishedInWords(fact.amount, units)}${seasonWished(fact, place)}`;
    case 'wish-dropped':
      return `Wish taken off: ${cropName(fact.cropId)}${seasonWished(fact, place)}`;
    case 'weather-logged':
      return weatherInWords(fact.days, units);
    case 'member-kept':
    case 'member-gone':
    case 'mail-stopped':
    case 'people-told':
      return householdInWords(fact, { bedName, units });
    case 'task-assigned':
      return `Given to ${fact.to ?? 'nobody in particular'}: ${titles(fact)}`;
    case 'garden-mended': {
      const binName = (binId: string): string => bins.find(({ id }) => id === binId)?.name ?? binId;
      return mendInWords(fact.edits, { bedName, binName, units });
    }
    case 'entry-undone':
      return `Took back entry ${fact.entry}`;
    default:
      return fact satisfies never;
  }
}

type FactOf<Kind extends Fact['kind']> = Extract<Fact, { kind: Kind }>;

function pileReadInWords(fact: FactOf<'pile-read'>, bin: string, units: UnitSystem, beside: Day): string {
  const temp = fact.tempC === undefined ? undefined : formatQuantity({ value: fact.tempC, unit: 'tempC' }, units);
  const signs = [fact.pests && 'pests at it', fact.slumped && 'slumped'];
  const seen = [temp, fact.moisture, fact.smell, ...signs].filter((part) => part !== undefined).join(', ');
  const hour = fact.at === undefined ? '' : ` at ${fact.at}`;
  return `Looked at the pile in ${bin} on ${formatDay(fact.on, units, beside)}${hour}: ${seen}`;
}

function standLookedInWords({ covered, weedy }: FactOf<'stand-looked'>, bed: string, day: string): string {
  const weeds = weedy ? ', with weeds among it' : '';
  return `Looked at the young cover in ${bed} on ${day}: ${COVERED_WORDS[covered]} of the ground is green${weeds}`;
}

function regrowthInWords({ coverId, answer }: FactOf<'regrowth-seen'>, bed: string, day: string): string {
  const todo = answer === 'cut' ? 'to be cut again' : 'to go under a sheet';
  return `The ${coverName(coverId)} in ${bed} had grown again on ${day}: ${todo}`;
}

/** A task that was done, with what was used where later work counts on it. */
function doneInWords({ title, makes }: DoneTask, units: UnitSystem, beside: Day): string {
  const told = readableIn(units, title, beside);
  const used = [...new Set(makes.flatMap((effect) => usedInWords(effect, units)))];
  const news = used.filter((words) => !told.includes(words));
  return news.length === 0 ? told : `${told} (${news.join(', ')})`;
}

function usedInWords(effect: Effect, units: UnitSystem): string[] {
  if (effect.makes === 'bed-fed' && effect.grams > 0)
    return [
      `${formatQuantity({ value: effect.grams, unit: 'g' }, units)} of ${fertiliserById(effect.fertiliserId).name}`,
    ];
  if (!('litres' in effect) || !effect.litres) return [];
  const amount = formatQuantity({ value: effect.litres, unit: 'L' }, units);
  return [effect.makes === 'pile-built' ? `${amount} in all` : `${amount} of compost`];
}

/** That a choice took the place of covers that were planned. */
function insteadWords(instead: readonly string[] = []): string {
  if (instead.length === 0) return '';
  return `, in place of ${instead.length === 1 ? 'a cover' : `${instead.length} covers`} planned before`;
}

/** Crops of a plan that are told one by one; the rest are a number. */
const MOST_TOLD = 6;

/** What is planned, bed by bed, and what is taken out. */
function planInWords(fact: CropPlan, bedName: (bedId: string) => string, units: UnitSystem): string {
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

function seasonWished({ season }: { season?: number | undefined }, { latitude }: Garden['place']): string {
  if (season === undefined) return ', in every season';
  return ` in ${seasonName({ seasonTurn: seasonTurnOf(latitude) }, season)}`;
}

function cropName(cropId: string): string {
  return vegetableById(cropId).name.toLowerCase();
}

/** A day's weather, or how many days and which. */
function weatherInWords(days: readonly WeatherTold[], units: UnitSystem): string {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return 'Weather';
  const word = first.kind === 'expected' ? 'Weather expected' : 'Weather';
  if (days.length > 1)
    return `${word} of ${days.length} days, ${fullDay(first.day, units)} to ${fullDay(last.day, units)}`;
  const told = MEASURED.flatMap((measured) => {
    const value = first[measured];
    const { of, digits, name } = unitOf(measured, units);
    return value === undefined ? [] : [`${MEASURED_WORDS[measured]} ${plain(of(value), Math.max(1, digits))} ${name}`];
  });
  return `${word} of ${fullDay(first.day, units)}: ${told.join(', ')}`;
}

const MEASURED = Object.keys(MEASURED_WORDS) as Measured[];
