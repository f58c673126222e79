/**
 * What the climate is worked out from: weather stations, own freeze dates, own monthly means. A long record of daily weather
 * is brought in on the Weather log page.
 */
import type { Garden } from '../../../garden/garden.ts';
import { MONTHS } from '../../../measures/quantity.ts';
import { gardenPath } from '../../addresses/addresses.ts';
import { distanceWords, optionDetail, optionWords } from '../../climate/climate-words.ts';
import type { Field } from '../../fields/field.ts';
import type { About, EditKind, RowOf } from './kind.ts';

type Row = RowOf<'climate'>;

const CLIMATE = {
  of: 'climate',
  stays: true,
  word: 'climate',
  mends: {
    '': 'Choose one thing that it is worked out from.',
    id: 'Choose one of the nearest, or give the id of a station of the table, such as USW00014839.',
  },
  docs: 'climate',
  datesFrom: ['climate', 'freezes'],
  back: ({ id }: Garden) => `${gardenPath(id)}#climate`,
} as const;

/** What stands for a station that is named by its id. */
const BY_ID = 'another';

/** From weather stations nearby: together, or one of them. */
export const climateKind: EditKind<'climate'> = {
  ...CLIMATE,
  list: 'climate',
  note:
    'The built-in table holds 5,687 stations of the United States with the freezes and monthly means of 1981 to 2010. ' +
    'Every day that hangs on the climate is worked out anew; you may see first what moves.',
  titleOf: () => 'The climate, from weather stations',
  fields: (about) => [whichStation(about), stationId(about)],
  fieldOf: (key) => (key === 'station' ? 'id' : key === 'nearest' ? 'from' : key),
  rowIn(form, about) {
    const { from, id } = form.read([whichStation(about), stationId(about)]) as { from?: string; id?: string };
    const chosen = about.around?.options.find(({ value }) => value === from);
    if (chosen !== undefined) return chosen.climate;
    if (from !== BY_ID) return {};
    if (id === undefined)
      form.refuse({ name: 'id', label: ID_LABEL }, 'It is empty.', 'Give the id of a station, such as USW00014839.');
    return { station: id?.toUpperCase() };
  },
};

function whichStation({ row, around = { options: [] }, view }: About<Row>): Field {
  const { units } = view.garden.place;
  const told = row?.nearest ? 'nearest' : row?.station === undefined ? undefined : `station:${row.station}`;
  const isOffered = around.options.some(({ value }) => value === told);
  const chosen = told === undefined || isOffered ? told : BY_ID;
  return {
    name: 'from',
    label: 'Worked out from',
    as: 'choice',
    open: true,
    required: true,
    ...(around.options.length > 0 || around.nearestKm === undefined
      ? {}
      : {
          hint: `The nearest station is ${distanceWords(around.nearestKm, units)} away, and none says anything of this garden.`,
        }),
    ...(chosen === undefined ? {} : { value: chosen }),
    options: [
      ...around.options.map((each) => ({
        value: each.value,
        words: optionWords(each),
        more: optionDetail(each, units),
      })),
      { value: BY_ID, words: 'Another station', more: 'by its id, below' },
    ],
  };
}

const ID_LABEL = 'The id of another station';

function stationId({ row }: About<Row>): Field {
  return {
    name: 'id',
    label: ID_LABEL,
    as: 'text',
    required: false,
    ...(row?.station === undefined ? {} : { value: row.station }),
    hint: 'As NOAA writes it, such as USW00014839. Used only where another station is chosen above.',
  };
}

/** From the gardener's own freeze dates. */
export const frostDatesKind: EditKind<'climate'> = {
  ...CLIMATE,
  list: 'frost-dates',
  note:
    'For a place with no weather station near it. Freezes then come as your dates say, spread as they are in most ' +
    'places; the warmth of the soil and of the year is reckoned from them, and is less sure.',
  titleOf: () => 'The climate, from your own freeze dates',
  fields: ({ view }) => [
    {
      name: 'frostDates.lastSpring',
      label: 'The last freeze of spring, in the middle of the years',
      as: 'month-day',
      required: true,
      hint: `The day by which it is over in half of the years: ${view.garden.place.units === 'us' ? '32 °F (0 °C)' : '0 °C (32 °F)'} at the height of a thermometer.`,
    },
    {
      name: 'frostDates.firstAutumn',
      label: 'The first freeze of autumn, in the middle of the years',
      as: 'month-day',
      required: true,
      hint: 'The day by which it has come in half of the years.',
    },
  ],
  rowIn(form, about) {
    const read = form.read(this.fields(about));
    return {
      frostDates: { lastSpring: read['frostDates.lastSpring'], firstAutumn: read['frostDates.firstAutumn'] },
    };
  },
};

/** What is asked of a month. */
const OF_MONTH = [
  { key: 'highC', label: 'mean high', as: 'temp', example: -2.1 },
  { key: 'lowC', label: 'mean low', as: 'temp', example: -10.4 },
  { key: 'precipMm', label: 'rain', as: 'depth', example: 47 },
] as const;

/** From monthly means, as an almanac prints them. */
export const monthlyMeansKind: EditKind<'climate'> = {
  ...CLIMATE,
  list: 'monthly-means',
  note:
    'For a place outside the United States: an almanac or a weather service prints them. Freezes are reckoned from the ' +
    'lows, the warmth of the soil from both. Snow counts as the water it melts to.',
  titleOf: () => 'The climate, from monthly means',
  fields: () =>
    MONTHS.flatMap((month, at) =>
      OF_MONTH.map(
        ({ key, label, as, example }): Field => ({
          name: `monthlyNormals.${at}.${key}`,
          label: `${month}, ${label}`,
          as,
          example,
          required: true,
        }),
      ),
    ),
  fieldOf: (key) => key.replace(/\[(\d+)\]/, '.$1'),
  rowIn(form, about) {
    const read = form.read(this.fields(about));
    const months = MONTHS.map((_, at) =>
      Object.fromEntries(OF_MONTH.map(({ key }) => [key, read[`monthlyNormals.${at}.${key}`]])),
    );
    return { monthlyNormals: months };
  },
};
