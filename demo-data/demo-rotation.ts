/**
 * The invented household's bed plans: what a bed carries in each year of its rotation, and which beds follow which.
 *
 * Dates are months and days of the year the programme is named after, or of the year before or after it. They suit a
 * place whose last freeze falls about 23 April and first about 23 October. Legumes stand ahead of hungry crops, and no
 * plant family comes back to a bed within its four years.
 */
import type { MonthDay } from '../src/measures/days.ts';

/** A day of the programme's own year, of the one before (-1) or of the one after (+1). */
export type Moment = MonthDay | readonly [yearsOn: -1 | 1, monthDay: MonthDay];

/** A crop of a programme. With `endOpen` its last harvest is left to be worked out until it has happened. */
export interface PlannedCrop {
  crop: string;
  sow?: Moment;
  setOut?: Moment;
  last: Moment;
  endOpen?: boolean;
  /** Sown again; `last` is then the last harvest of the first. */
  again?: { everyDays: number; times: number };
}

/** A cover of a programme: how it ends once its time has come. */
export interface PlannedCover {
  cover?: string;
  mix?: string;
  sow: Moment;
  cut?: Moment;
  dead?: Moment;
}

/** One year of a bed. */
export interface Programme {
  crops: readonly PlannedCrop[];
  covers: readonly PlannedCover[];
  /** The day compost goes on, ahead of the cover. */
  topdress: Moment;
}

const rye = (sow: MonthDay): PlannedCover => ({ cover: 'cereal_rye', sow, cut: [1, '04-30'] });
const ryeWithVetch: PlannedCover = { mix: 'rye-vetch', sow: '09-14', cut: [1, '05-07'] };
const oats = (sow: MonthDay): PlannedCover => ({ cover: 'oats', sow, dead: [1, '03-24'] });
const oatsWithPeas = (sow: MonthDay): PlannedCover => ({ mix: 'oats-field-pea', sow, dead: [1, '03-24'] });
const buckwheat = (sow: MonthDay, cut: MonthDay): PlannedCover => ({ cover: 'buckwheat', sow, cut });

/** Cabbage and beans, tomatoes, cucumbers, carrots. */
const cabbageTomatoCucumberCarrot: readonly Programme[] = [
  {
    crops: [
      { crop: 'cabbage', setOut: '04-08', last: '07-06' },
      { crop: 'snap-bean', sow: '07-08', last: '09-12', again: { everyDays: 14, times: 1 } },
    ],
    covers: [rye('10-01')],
    topdress: '09-28',
  },
  { crops: [{ crop: 'tomato', setOut: '06-03', last: '10-16' }], covers: [rye('10-19')], topdress: '10-18' },
  {
    crops: [{ crop: 'cucumber', setOut: '06-05', last: '09-16', endOpen: true }],
    covers: [oats('09-19')],
    topdress: '09-18',
  },
  { crops: [{ crop: 'carrot', sow: '04-22', last: '08-22' }], covers: [oatsWithPeas('08-30')], topdress: '08-26' },
];

/** Peas, sweet corn, onions and kale, summer squash after spring oats. */
const peaCornOnionSquash: readonly Programme[] = [
  {
    crops: [{ crop: 'pea', sow: '04-10', last: '07-01' }],
    covers: [buckwheat('07-06', '08-01'), ryeWithVetch],
    topdress: '09-09',
  },
  { crops: [{ crop: 'sweet-corn', sow: '06-12', last: '08-30' }], covers: [oatsWithPeas('09-02')], topdress: '09-01' },
  {
    crops: [
      { crop: 'onion-sets', sow: '04-12', last: '08-01' },
      { crop: 'kale', setOut: '08-05', last: '11-17' },
    ],
    covers: [],
    topdress: '08-03',
  },
  {
    crops: [{ crop: 'summer-squash', setOut: '06-18', last: '09-08' }],
    covers: [{ mix: 'oats-field-pea', sow: '04-06', cut: '05-15' }, oats('09-11')],
    topdress: '09-10',
  },
];

/** Garlic, lettuce and beet, peppers, dry beans. */
const garlicBeetPepperBean: readonly Programme[] = [
  {
    crops: [{ crop: 'garlic', sow: [-1, '11-14'], last: '07-12' }],
    covers: [buckwheat('07-16', '08-10'), oatsWithPeas('09-01')],
    topdress: '08-28',
  },
  {
    crops: [
      { crop: 'lettuce-leaf', sow: '04-10', last: '06-04' },
      { crop: 'beet', sow: '06-08', last: '09-03' },
    ],
    covers: [ryeWithVetch],
    topdress: '09-08',
  },
  { crops: [{ crop: 'pepper', setOut: '06-10', last: '10-08' }], covers: [rye('10-15')], topdress: '10-13' },
  { crops: [{ crop: 'dry-bean', sow: '06-05', last: '09-24' }], covers: [], topdress: '10-02' },
];

/** A bed with its rotation and the year of it that it is in during the anchor's season. */
export interface RotatingBed {
  name: string;
  lengthM: number;
  widthM: number;
  depthM: number;
  watered?: boolean;
  soilTexture?: 'sandy_loam';
  rotation: readonly Programme[];
  turn: number;
}

/** Beds of four by eight feet and their kin. */
const byFeet = (name: string, lengthFt: number, widthFt: number) => ({
  name,
  lengthM: Math.round(lengthFt * 30.48) / 100,
  widthM: Math.round(widthFt * 30.48) / 100,
  depthM: 0.3,
});

/** The beds that rotate. The two by the pump were filled with bought soil. */
export const rotatingBeds: readonly RotatingBed[] = [
  { ...byFeet('Gate bed', 8, 4), rotation: cabbageTomatoCucumberCarrot, turn: 0 },
  { ...byFeet('Wall bed', 10, 3), watered: true, rotation: cabbageTomatoCucumberCarrot, turn: 1 },
  { ...byFeet('Long bed', 16, 4), rotation: cabbageTomatoCucumberCarrot, turn: 2 },
  { ...byFeet('Plum bed', 8, 4), rotation: cabbageTomatoCucumberCarrot, turn: 3 },
  { ...byFeet('Upper bed', 12, 4), rotation: peaCornOnionSquash, turn: 0 },
  { ...byFeet('Middle bed', 12, 4), rotation: peaCornOnionSquash, turn: 1 },
  { ...byFeet('Lower bed', 12, 4), rotation: peaCornOnionSquash, turn: 2 },
  { ...byFeet('Shed bed', 6, 4), rotation: peaCornOnionSquash, turn: 3 },
  { ...byFeet('Pump bed', 8, 4), watered: true, soilTexture: 'sandy_loam', rotation: garlicBeetPepperBean, turn: 0 },
  { ...byFeet('Well bed', 8, 4), watered: true, soilTexture: 'sandy_loam', rotation: garlicBeetPepperBean, turn: 1 },
  { ...byFeet('Corner bed', 6, 3), rotation: garlicBeetPepperBean, turn: 3 },
];

/** The bed that is still to be made: it is to be there in the spring after the anchor's season, for beans. */
export const plannedBed = {
  ...byFeet('Lane bed', 8, 4),
  depthM: 0.305,
  pathsM2: 2.4,
  plannedFor: '04-25',
  crop: { crop: 'snap-bean', sow: '05-22', last: '08-20' },
} as const;

/** The bed that never changes: asparagus, planted six years before the anchor's season. */
export const asparagusBed = {
  ...byFeet('Asparagus bed', 12, 3),
  planted: '04-14',
  yearsAgo: 6,
  topdress: '11-05',
} as const;
