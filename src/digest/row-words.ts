/**
 * Rows of a garden file in words: what a change changed, what goes with something taken out.
 */

import { coverMixById } from '../handbook/cover-mixes.ts';
import { feedstocks } from '../handbook/feedstocks.ts';
import { fertilisers } from '../handbook/fertilisers.ts';
import { vegetables } from '../handbook/vegetables.ts';
import { isDay, isMonthDay } from '../measures/days.ts';
import { formatDay, formatQuantity, type QuantityUnit } from '../measures/quantity.ts';
import type { UnitSystem } from '../measures/units.ts';
import { coverName } from '../practices/covers.ts';
import { startWord } from '../practices/planting/planting-in-bed.ts';
import { fullDay } from './words.ts';

/** What rows are told with: names for the ids in them, and the reader's units. */
export interface RowReader {
  bedName: (bedId: string) => string;
  binName: (binId: string) => string;
  units: UnitSystem;
}

/** A row of a list of the garden file, or a row before it is known to be one. */
export type TellableRow = Readonly<Record<string, unknown>>;

/** A row of a list in a few words: "carrot in North bed, sown 20 May 2027". */
export function rowInWords(list: string, row: TellableRow, reader: RowReader): string {
  const { bedName, binName } = reader;
  const value = (key: string): string => valueInWords(key, row[key], reader);
  const inBed = row.bed === undefined ? '' : ` in ${bedName(String(row.bed))}`;
  switch (list) {
    case 'beds':
    case 'bins':
      return String(row.name);
    case 'plantings':
      return `${value('crop')}${inBed}, ${row.sow === undefined ? `set out ${value('setOut')}` : `${startWord(String(row.crop), 'sow')} ${value('sow')}`}`;
    case 'coverStands':
      return `${coverIn(row)}${inBed}, sown ${value('sow')}`;
    case 'piles':
      return `the pile in ${binName(String(row.bin))} built ${value('built')}`;
    case 'mulches':
      return `a mulch of ${value('mulch')}${inBed} from ${value('from')}`;
    case 'topdressed':
      return `${value('litres')} of ${row.material === undefined ? 'compost' : value('material')} on ${value('bed')}, ${value('on')}`;
    case 'fed':
      return `${value('grams')} of ${value('fertiliser')} on ${value('bed')}, ${value('on')}`;
    case 'compostBought':
      return `${value('litres')} of compost ${row.ordered === true ? 'ordered' : 'delivered'} ${value('on')}`;
    case 'away':
      return `away from ${value('from')} to ${value('to')}`;
    case 'gear':
      return `${value('areaM2')} of ${value('what')}`;
    case 'seeds':
      return `seed of ${row.crop === undefined ? coverIn(row) : value('crop')} packed for ${row.packed}`;
    case 'wishes':
      return `the wish for ${value('crop')}${row.year === undefined ? '' : ` in ${row.year}`}`;
    case 'soilTests':
      return `the soil test of ${row.bed === undefined ? 'the garden' : value('bed')}, ${value('on')}`;
    case 'soilSqueezes':
      return `the squeeze of ${value('soilTexture')} on ${value('on')}`;
    case 'diseases':
      return `${row.disease} on the ${value('crop')}${inBed}, found ${value('found')}`;
    case 'coldNights':
      return `the low of ${value('lowC')} ${row.how} for the night of ${value('evening')}`;
    default:
      return list;
  }
}

function coverIn({ cover, mix }: TellableRow): string {
  return coverName(String(cover ?? mix));
}

/** What a key of the file is called in a sentence, and the unit of its number. */
const KEYS: Readonly<Record<string, { word: string; unit?: QuantityUnit }>> = {
  elevationM: { word: 'height above the sea', unit: 'm' },
  timeZone: { word: 'time zone' },
  hardinessZone: { word: 'hardiness zone' },
  workDays: { word: 'days of work' },
  hoursPerWeek: { word: 'hours a week' },
  soilTexture: { word: 'soil' },
  frostRisk: { word: 'odds of a freeze planned by' },
  bloomRiskPercent: { word: 'odds of flowers at a cut' },
  frostOffsetDays: { word: 'days the frost-free season is shorter at each end' },
  tempOffsetC: { word: 'warmer than the record', unit: 'deltaC' },
  lengthM: { word: 'length', unit: 'm' },
  widthM: { word: 'width', unit: 'm' },
  depthM: { word: 'depth', unit: 'm' },
  topdressingMm: { word: 'yearly compost', unit: 'mm' },
  depthMm: { word: 'depth', unit: 'mm' },
  plannedFor: { word: 'day it is to be there' },
  filledOn: { word: 'day it was filled' },
  pathsM2: { word: 'paths beside it', unit: 'm2' },
  sow: { word: 'sowing' },
  setOut: { word: 'setting out' },
  meant: { word: 'day it was meant for' },
  indoors: { word: 'sowing indoors' },
  lastHarvest: { word: 'last harvest' },
  areaM2: { word: 'area', unit: 'm2' },
  planned: { word: 'still to come' },
  regrowthChecked: { word: 'looks that found nothing green' },
  regrowth: { word: 'growing again' },
  dead: { word: 'day seen dead' },
  seen: { word: 'stage seen' },
  looked: { word: 'look' },
  resown: { word: 'thin places sown again' },
  seed: { word: 'seed sown' },
  volumeL: { word: 'volume', unit: 'L' },
  ingredients: { word: 'ingredient' },
  readings: { word: 'reading' },
  turns: { word: 'turn' },
  notReady: { word: 'look that found it unready' },
  curingSince: { word: 'day it was moved to cure' },
  finished: { word: 'day it was finished' },
  finishedLitres: { word: 'compost there when it was measured', unit: 'L' },
  built: { word: 'building' },
  litres: { word: 'amount', unit: 'L' },
  grams: { word: 'amount', unit: 'g' },
  tempC: { word: 'temperature', unit: 'tempC' },
  lowC: { word: 'low', unit: 'tempC' },
  organicMatterPercent: { word: 'organic matter, percent' },
  phosphorusPpm: { word: 'phosphorus, ppm' },
  ph: { word: 'pH' },
  people: { word: 'people who eat from it' },
  clippingsL: { word: 'grass clippings in a week', unit: 'L' },
  coverCutsL: { word: 'cut covers carried to the pile in a year', unit: 'L' },
  dailyRecord: { word: 'daily record' },
  monthlyNormals: { word: 'monthly normals' },
  frostDates: { word: 'frost dates' },
  lastSpring: { word: 'last freeze of spring' },
  firstAutumn: { word: 'first freeze of autumn' },
};

/** What a key of the file is called in a sentence. */
export function keyInWords(key: string): string {
  return KEYS[key]?.word ?? key;
}

/** A value of the file in words, in the reader's units. */
export function valueInWords(key: string, value: unknown, reader: RowReader): string {
  const { units } = reader;
  const unit = KEYS[key]?.unit;
  if (Array.isArray(value)) return value.map((item) => valueInWords(key, item, reader)).join(', ');
  if (typeof value === 'object' && value !== null) return rowOfLog(value, reader);
  if (typeof value === 'number')
    return unit === undefined ? String(value).replace('-', '−') : formatQuantity({ value, unit }, units);
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value !== 'string') return 'not given';
  if (isDay(value)) return fullDay(value, units);
  if (isMonthDay(value)) return formatDay(`2028-${value}`, units);
  return namedIn(key, value, reader);
}

function rowOfLog(row: object, reader: RowReader): string {
  const parts = Object.entries(row).flatMap(([key, value]) => {
    if (value === undefined) return [];
    if (value === true) return [keyInWords(key)];
    return value === false ? [] : [valueInWords(key, value, reader)];
  });
  return parts.join(', ');
}

/** Keys whose value is one of the file's own words, and no name that somebody gave. */
const CHOSEN = ['soilTexture', 'what', 'answer', 'covered', 'stage', 'planned'];

function namedIn(key: string, value: string, { bedName, binName }: RowReader): string {
  switch (key) {
    case 'bed':
    case 'beds':
      return bedName(value);
    case 'bin':
      return binName(value);
    case 'crop':
      return vegetables.find(({ id }) => id === value)?.name.toLowerCase() ?? value;
    case 'cover':
    case 'mix':
      return coverMixById.has(value) || key === 'cover' ? coverName(value) : value;
    case 'material':
      return feedstocks.find(({ id }) => id === value)?.name.toLowerCase() ?? value;
    case 'fertiliser':
      return fertilisers.find(({ id }) => id === value)?.name.toLowerCase() ?? value;
    case 'planned':
      return keyInWords(value);
    default:
      return CHOSEN.includes(key) ? value.replaceAll(/[_-]/g, ' ') : value;
  }
}
