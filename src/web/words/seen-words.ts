/**
 * What was seen in the garden, in words: of piles, beds, covers and soil, and of the weather.
 */
import { FAILED_WORDS, STAGE_NOTES } from '../../digest/record/seen-words.ts';
import { fullDay } from '../../digest/words.ts';
import type { SeenFact } from '../../garden/fact-kinds.ts';
import type { Fact, WeatherTold } from '../../garden/facts.ts';
import { MEASURED_WORDS, type Measured } from '../../garden/weather-limits.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { capital } from '../../measures/capital.ts';
import { formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { coverName } from '../../practices/covers.ts';
import { COVERED_WORDS } from '../../practices/stand-cover.ts';
import { plain } from '../charts/amounts-drawn.ts';
import { unitOf } from '../fields/logged-fields.ts';
import type { ToldReader } from './told-reader.ts';

/** What such a fact says, in one line. */
export function seenInWords(fact: SeenFact, reader: ToldReader): string {
  const { units, day, bedName, standBed, pileBin } = reader;
  switch (fact.kind) {
    case 'pile-read':
      return pileReadInWords(fact, reader);
    case 'compost-not-ready': {
      const why = fact.failed.map((failure) => FAILED_WORDS[failure]).join(', ');
      return `The compost in ${pileBin(fact.pileId)} was not ready on ${day(fact.on)}: ${why}`;
    }
    case 'cold-night-told': {
      const low = formatQuantity({ value: fact.lowC, unit: 'tempC' }, units);
      return `Low ${fact.how} for the night of ${fullDay(fact.evening, units)}: ${low}`;
    }
    case 'soil-squeezed':
      return `Squeezed the ${fact.soilTexture.replaceAll('_', ' ')} on ${day(fact.on)}: it ${fact.answer}`;
    case 'disease-found': {
      const crop = vegetableById(fact.cropId).name;
      return `Found ${fact.disease} on the ${crop} in ${bedName(fact.bedId)} on ${day(fact.on)}`;
    }
    case 'stage-seen':
      return `${capital(STAGE_NOTES[fact.stage])} on the ${coverName(fact.coverId)} on ${day(fact.on)}`;
    case 'stand-looked': {
      const weeds = fact.weedy ? ', with weeds among it' : '';
      const green = `${COVERED_WORDS[fact.covered]} of the ground is green${weeds}`;
      return `Looked at the young cover in ${standBed(fact.standId)} on ${day(fact.on)}: ${green}`;
    }
    case 'regrowth-seen': {
      const todo = fact.answer === 'cut' ? 'to be cut again' : 'to go under a sheet';
      return `The ${coverName(fact.coverId)} in ${bedName(fact.bedId)} had grown again on ${day(fact.on)}: ${todo}`;
    }
    case 'weather-logged':
      return weatherInWords(fact.days, units);
    default:
      return fact satisfies never;
  }
}

function pileReadInWords(fact: Extract<Fact, { kind: 'pile-read' }>, { units, day, pileBin }: ToldReader): string {
  const temp = fact.tempC === undefined ? undefined : formatQuantity({ value: fact.tempC, unit: 'tempC' }, units);
  const signs = [fact.pests && 'pests at it', fact.slumped && 'slumped'];
  const seen = [temp, fact.moisture, fact.smell, ...signs].filter((part) => part !== undefined).join(', ');
  const hour = fact.at === undefined ? '' : ` at ${fact.at}`;
  return `Looked at the pile in ${pileBin(fact.pileId)} on ${day(fact.on)}${hour}: ${seen}`;
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
