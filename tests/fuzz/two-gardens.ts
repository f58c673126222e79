/**
 * Two gardens of one household, as alike as two gardens can be: every id and name of the second is the first one's with a
 * mark before it, so that an address or a form of one can be turned into the other's.
 */
import { sampleFile } from '../web/sample-garden.ts';

/** The first garden. */
export const HITHER = 'mill-row';
/** What stands before every id of the second garden. */
export const ID_MARK = 'yon.';
/** What stands before every name of the second garden: shown under the first one's addresses, something has leaked. */
export const NAME_MARK = 'Quorndale';
export const YONDER = `${ID_MARK}${HITHER}`;

/** What is told of covers beyond the sample's own. */
const STANDS_WORKED: Readonly<Record<string, object>> = {
  'vetch-middle': { cut: '2027-04-09' },
  'oats-south': { sow: '2027-04-08' },
};

/** The file of the first garden: one row of every list at least. */
export function hitherFile() {
  const bare = sampleFile();
  return sampleFile({
    plantings: bare.plantings.map((row, at) => ({ ...row, id: `crop-${at}` })),
    // One that was cut and may grow again, one just up, and one still to be sown.
    coverStands: [
      ...bare.coverStands.map((row) => ({ ...row, ...STANDS_WORKED[row.id] })),
      { id: 'oats-wall', bed: 'wall', cover: 'oats', sow: '2027-04-28' },
    ],
    household: {
      people: 3,
      members: [
        {
          id: 'ida',
          name: 'Ida',
          practices: ['composting', 'planting'],
          mail: { to: 'ida@example.org', weekday: 'mon', hour: 7, tasks: 'own' },
        },
        { id: 'tove', name: 'Tove' },
      ],
    },
    wishes: [
      { crop: 'carrot', areaM2: 2, year: 2028 },
      { crop: 'tomato', beds: 1, year: 2028 },
    ],
    gear: [{ what: 'light-fabric', areaM2: 9 }],
    seeds: [
      { crop: 'carrot', packed: 2026 },
      { cover: 'oats', packed: 2025, grams: 400, on: '2027-01-10' },
    ],
    soilTests: [{ on: '2024-10-14', bed: 'north', organicMatterPercent: 5.2, ph: 6.7 }],
    mulches: [{ bed: 'wall', from: '2027-11-01', to: '2028-03-20', mulch: 'leaves' }],
    topdressed: [{ bed: 'wall', on: '2026-10-10', litres: 60 }],
    compostBought: [{ on: '2027-03-20', litres: 500 }],
    fed: [{ bed: 'wall', on: '2027-03-25', fertiliser: 'blood_meal', grams: 200 }],
    away: [{ from: '2027-07-01', to: '2027-07-10' }],
    soilSqueezes: [{ on: '2027-04-10', soilTexture: 'loam', answer: 'crumbles' }],
    diseases: [{ bed: 'wall', crop: 'spinach', disease: 'downy mildew', found: '2027-03-01' }],
    coldNights: [{ evening: '2027-04-12', lowC: -2, how: 'measured' }],
  });
}

/** Keys of a garden file whose values are ids, and those whose values are names. */
const IDS: ReadonlySet<string> = new Set(['id', 'bed', 'bin', 'planting']);
const NAMES: ReadonlySet<string> = new Set(['name']);

/** The same file as the second garden's. */
export function yonderFile(): object {
  return marked(hitherFile()) as object;
}

function marked(value: unknown, key = ''): unknown {
  if (Array.isArray(value)) return value.map((one) => marked(one, key));
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, held]) => [name, marked(held, name)]));
  if (IDS.has(key)) return `${ID_MARK}${value}`;
  return NAMES.has(key) ? `${NAME_MARK} ${value}` : value;
}

/** Every id of the first garden's file. */
export function hitherIds(): string[] {
  const found = new Set<string>();
  const look = (value: unknown, key = ''): void => {
    if (typeof value === 'object' && value !== null)
      for (const [name, held] of Object.entries(value)) look(held, Array.isArray(value) ? key : name);
    else if (IDS.has(key)) found.add(String(value));
  };
  look(hitherFile());
  return [...found];
}

/** The file of a garden that is in neither of them. */
export const NEW_FILE = JSON.stringify({
  garden: { id: 'third', name: 'Third', latitude: 43, longitude: -89, timeZone: 'America/Chicago' },
  climate: { frostDates: { lastSpring: '05-06', firstAutumn: '10-04' } },
  beds: [{ name: 'Only', lengthM: 2, widthM: 1 }],
});
