/**
 * Published figures in the units of either reader: the figure as it was published, the other units in brackets behind it.
 */
import { formatQuantity, type QuantityUnit } from '../../../measures/quantity.ts';
import { celsius, type UnitSystem } from '../../../measures/units.ts';

/** Units as the docs write them, with the unit a figure in them is kept in and what it is multiplied by for that. */
const UNITS: Readonly<Record<string, { unit: QuantityUnit; times: number }>> = {
  mm: { unit: 'mm', times: 1 },
  cm: { unit: 'cm', times: 1 },
  m: { unit: 'm', times: 1 },
  km: { unit: 'km', times: 1 },
  'm²': { unit: 'm2', times: 1 },
  L: { unit: 'L', times: 1 },
  litres: { unit: 'L', times: 1 },
  'm³': { unit: 'L', times: 1000 },
  kg: { unit: 'kg', times: 1 },
  g: { unit: 'g', times: 1 },
  'g/m²': { unit: 'gPerM2', times: 1 },
  '°C': { unit: 'tempC', times: 1 },
};

const NUMBER = '[−-]?\\d+(?:,\\d{3})*(?:\\.\\d+)?';

/**
 * A figure with its unit, or the two ends of a span. The last of a list is left alone, as the list would be told by half;
 * a unit of something else ("g/L", "°C·d") is none of these.
 */
const FIGURE = new RegExp(
  `(?<![\\w.,·°×−-])(?<!\\d(?:,| and| or| to| by) )(?<low>${NUMBER})(?:(?<between> to | and | or | by |–)(?<high>${NUMBER}))?[ \\u00a0]` +
    '(?<unit>g/m²|mm|cm|m²|m³|m|km|litres|L|kg|g|°C|°F)(?![\\w²³/·°])',
  'g',
);

/** What makes of degrees a difference, or a sum over days: those are no temperature of the other scale. */
const NO_TEMPERATURE = /^ (?:over|colder|warmer|cooler|apart|less|more)\b/;

/** The other units, as the docs write them. */
const OTHER = /°F|°C|\b(?:in|inch|inches|ft|foot|feet|gal|lb|oz|mi|quart|yard|mm|cm|kg)\b/;

/** Characters before a figure in which its other unit is looked for: it then stands in brackets behind that. */
const BEFORE = 30;

/** A text in which each figure has the other units in brackets, as `mark` writes those of a reader of such units. */
export function bothUnits(text: string, mark: (words: string, units: UnitSystem) => string): string {
  return text.replace(FIGURE, (found: string, ...rest) => {
    const [at, , { low = '', between, high, unit = '' }] = rest.slice(-3) as [number, string, Partial<Groups>];
    const [before, after] = [text.slice(Math.max(0, at - BEFORE), at), text.slice(at + found.length)];
    const isTold =
      (/\([^)]*$/.test(before) && OTHER.test(before)) || (/^ \(/.test(after) && OTHER.test(after.slice(0, BEFORE)));
    if (isTold || (unit.startsWith('°') && NO_TEMPERATURE.test(after))) return found;
    const units = unit === '°F' ? 'metric' : 'us';
    const words = unit === '°F' ? celsiusWords([low, high], between) : usWords([low, high], between, unit);
    return words === undefined ? found : `${found} ${mark(`(${words.replaceAll('-', '−')})`, units)}`;
  });
}

interface Groups {
  low: string;
  between: string;
  high: string;
  unit: string;
}

type Ends = readonly [string, string | undefined];

function usWords([low, high]: Ends, between: string | undefined, unit: string): string | undefined {
  const known = UNITS[unit];
  if (known === undefined) return undefined;
  const written = (text: string) => formatQuantity({ value: numberIn(text) * known.times, unit: known.unit }, 'us');
  return joined(written(low), high === undefined ? undefined : written(high), between);
}

function celsiusWords([low, high]: Ends, between: string | undefined): string {
  const written = (text: string) => formatQuantity({ value: celsius(numberIn(text)), unit: 'tempC' }, 'metric');
  return joined(written(low), high === undefined ? undefined : written(high), between);
}

/** Both ends with their unit once, where it is the same. */
function joined(low: string, high: string | undefined, between = ' to '): string {
  if (high === undefined) return low;
  const [, unit = ''] = / ([^\d⅛-⅞½¼¾].*)$/.exec(high) ?? [];
  const bare = unit !== '' && low.endsWith(` ${unit}`) ? low.slice(0, -unit.length - 1) : low;
  return `${bare}${between}${high}`;
}

function numberIn(text: string): number {
  return Number(text.replace('−', '-').replaceAll(',', ''));
}
