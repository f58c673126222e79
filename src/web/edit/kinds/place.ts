/**
 * The garden itself: where it lies, how its household works there, its soil and how careful the plan is.
 */

import { weekdayWord } from '../../../digest/words.ts';
import type { Garden } from '../../../garden/garden.ts';
import { WEEKDAY_NAMES, weekdayNamed } from '../../../garden/weekday-names.ts';
import { gardenPath } from '../../addresses/addresses.ts';
import type { Option } from '../../fields/field.ts';
import { SOIL_OPTIONS } from '../../fields/options.ts';
import type { EditKind } from './kind.ts';

const GARDEN = {
  of: 'garden',
  stays: true,
  word: 'garden',
  back: ({ id }: Garden) => gardenPath(id),
} as const;

/** Half zones there are, coldest first. */
const HALF_ZONES: readonly Option[] = Array.from({ length: 13 }, (_, at) => at + 1).flatMap((zone) =>
  ['a', 'b'].map((half) => ({ value: `${zone}${half}`, words: `${zone}${half}` })),
);

/** Where the garden lies. */
export const placeKind: EditKind<'garden'> = {
  ...GARDEN,
  list: 'place',
  docs: 'climate',
  note: 'Days of freezes, of warm soil and of light are all worked out for this place.',
  titleOf: ({ name }) => `Where ${name} lies`,
  fields: ({ row, view: { climate } }) => [
    { name: 'name', label: 'What the garden is called', as: 'text', hint: 'It heads every page, calendar and list.' },
    {
      name: 'latitude',
      label: 'Degrees north',
      as: 'number',
      example: 44.5,
      hint: 'Less than 0 in the south. It says how long the days are and in which months winter comes, and with the next finds the weather stations nearby.',
    },
    { name: 'longitude', label: 'Degrees east', as: 'number', example: -88.1, hint: 'Less than 0 in the west.' },
    {
      name: 'elevationM',
      label: 'Above the sea',
      as: 'height',
      example: 210,
      hint: 'The freezes of stations higher up or lower down are corrected by it. Leave it empty where you do not know it: nothing is corrected then.',
    },
    {
      name: 'timeZone',
      label: 'Its clock',
      as: 'choice',
      options: zoneOptions(row?.timeZone),
      hint: 'When its days begin, and when the reminders of a calendar ring. No day of the plan hangs on it.',
    },
    {
      name: 'hardinessZone',
      label: 'Its hardiness zone',
      as: 'choice',
      options: HALF_ZONES,
      hint: `Which covers live through the winter goes by it. ${climate.zone === undefined ? 'Your climate gives no winter lows to work it out from: give it if you know it, or leave it open.' : `Leave it open to have it worked out from the climate: ${climate.zone.zone}.`}`,
    },
    {
      name: 'frostOffsetDays',
      label: 'Days its season between freezes is shorter, at each end',
      as: 'number',
      example: 5,
      hint: 'More than 0 in a hollow that cold air runs into, less than 0 by a warm wall. The last freeze of spring moves later by so many days, and the first of autumn sooner.',
    },
    {
      name: 'tempOffsetC',
      label: 'Warmer than where its weather was measured',
      as: 'warmth',
      example: -1,
      hint: 'Less than 0 where it is colder. When the soil warms, when covers flower and what winter kills go by it.',
    },
  ],
};

/** Zones as clocks name them, under their part of the world; the one that is told always among them. */
function zoneOptions(told: string | undefined): Option[] {
  const known = Intl.supportedValuesOf('timeZone');
  const zones = told === undefined || known.includes(told) ? known : [told, ...known];
  return zones.map((zone) => {
    const [part = '', ...within] = zone.split('/');
    const words = (within.length === 0 ? zone : within.join(', ')).replaceAll('_', ' ');
    return { value: zone, words, group: within.length === 0 ? 'Others' : part };
  });
}

/** When its household works, and in what its texts are written. */
export const workKind: EditKind<'garden'> = {
  ...GARDEN,
  list: 'work',
  docs: 'how-a-day-is-chosen',
  note: 'Work is laid on these days, as far as its windows allow, and no week is given more than its hours while it can be helped.',
  titleOf: ({ name }) => `How you work in ${name}`,
  fields: () => [
    {
      name: 'workDays',
      required: true,
      label: 'Days you work in the garden',
      as: 'many',
      options: WEEKDAY_NAMES.map((name) => ({ value: name, words: weekdayWord(weekdayNamed(name)) })),
      hint: 'Work falls on other days only where it cannot wait for these.',
    },
    {
      name: 'hoursPerWeek',
      required: true,
      label: 'Hours a week, of all of you together',
      as: 'number',
      example: 4,
      hint: 'With fewer, work is spread over more weeks; what cannot wait then stands on This week as more than the hours.',
    },
    {
      name: 'units',
      required: true,
      label: 'Units',
      as: 'choice',
      open: true,
      options: [
        { value: 'metric', words: 'Metres, litres, °C; 18 April' },
        { value: 'us', words: 'Inches, gallons, °F; April 18' },
      ],
      hint: 'Calendars, mail and printed sheets are written in them. Nothing in the plan changes.',
    },
  ],
};

/** Soil, and the chances the plan takes. */
export const careKind: EditKind<'garden'> = {
  ...GARDEN,
  list: 'care',
  docs: 'planting',
  note: 'What the ground is, and how much you leave to chance.',
  titleOf: ({ name }) => `The soil of ${name}, and how careful the plan is`,
  fields: () => [
    {
      name: 'soilTexture',
      required: true,
      label: 'The soil',
      as: 'choice',
      options: SOIL_OPTIONS,
      hint: 'Fine soil stays wet for longer: when it is fit to be worked, and how soon it dries out, go by it. A bed with another soil says so itself.',
    },
    {
      name: 'frostRisk',
      required: true,
      label: 'Tender crops are planned so that a freeze still comes in',
      as: 'choice',
      open: true,
      isNumber: true,
      options: [
        { value: '10', words: 'one year of ten: later in spring, sooner home in autumn' },
        { value: '30', words: 'three years of ten' },
        { value: '50', words: 'five years of ten: sooner out, with covers at hand' },
      ],
      hint: 'Beans, sweet corn and their like move by it. Tomatoes, squash and all that bears no cold wait until it is one year of ten, where the odds are known.',
    },
    {
      name: 'bloomRiskPercent',
      required: true,
      label: 'Covers of a hundred that may have flowered when they are cut',
      as: 'number',
      example: 10,
      hint: 'With fewer they are cut sooner, with less grown; with more, one seeds itself now and then.',
    },
  ],
};
