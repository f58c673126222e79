/**
 * When covers flower: for each kind and sowing the event its cut must come before, and how to reckon it.
 *
 * One model a kind and situation, chosen in this order: a published sum, one derived from published dates, days,
 * what is remembered. Sums from plant models that also need day length and cold are left out: used plainly they close
 * the cut window weeks early. No row means nothing is known to go by: look at the plants. So it is on purpose with
 * rye, wheat, triticale and radish sown out of season (no heads, or bolting), white clover (mow before seed),
 * frost-seeded red clover and spring-sown hairy vetch.
 *
 * The model error is our judgement of how far sources and sites scatter.
 */
import type { BloomModel } from './shapes/cover.ts';

const midwinterBase44 = { from: 'midwinter', baseC: 4.4, method: 'mean-over-base' } as const;
const smallGrain = { from: 'sowing', baseC: 0, upperC: 35, method: 'small-grain' } as const;

/** Stands that lived through the winter. */
const overwintered: readonly BloomModel[] = [
  {
    coverId: 'cereal_rye',
    situation: 'overwintered',
    closingEvent: 'anthesis',
    heat: { ...midwinterBase44, sum: { low: 400, usual: 450, high: 520 } },
    headsShowHeatBefore: { low: 70, high: 110 },
    modelErrorDays: 5,
    provenance: 'derived',
    sources: ['phenology:P20', 'phenology:P21', 'phenology:P23'],
  },
  {
    coverId: 'winter_wheat',
    situation: 'overwintered',
    closingEvent: 'heading',
    heat: { ...midwinterBase44, sum: { low: 415, usual: 480, high: 545 } },
    modelErrorDays: 7,
    provenance: 'derived',
    sources: ['phenology:P19'],
  },
  {
    // A week after rye and a week before wheat: midway between their heading sums, 360 and 480.
    coverId: 'triticale',
    situation: 'overwintered',
    closingEvent: 'heading',
    heat: { ...midwinterBase44, sum: { low: 400, usual: 420, high: 440 } },
    modelErrorDays: 7,
    provenance: 'derived',
    sources: ['phenology:OSU-spring-forage', 'phenology:P19', 'phenology:P20'],
  },
  {
    coverId: 'annual_ryegrass',
    situation: 'overwintered',
    closingEvent: 'heading',
    heat: { from: 'midwinter', baseC: 4, method: 'mean-over-base', sum: { low: 500, usual: 600, high: 700 } },
    modelErrorDays: 8,
    provenance: 'from memory',
    sources: [],
  },
  {
    coverId: 'austrian_winter_pea',
    situation: 'overwintered',
    closingEvent: 'first flowers',
    heat: { ...midwinterBase44, sum: { low: 430, usual: 500, high: 600 } },
    modelErrorDays: 9,
    provenance: 'from memory',
    sources: [],
  },
  {
    // The base is published, the sum comes from remembered dates.
    coverId: 'hairy_vetch',
    situation: 'overwintered',
    closingEvent: 'first flowers',
    heat: { from: 'midwinter', baseC: 4, method: 'mean-over-base', sum: { low: 500, usual: 550, high: 600 } },
    modelErrorDays: 8,
    provenance: 'from memory',
    sources: ['phenology:P6'],
  },
  {
    // Goes by the length of the day; dates of half bloom, against which bud and flower move together.
    coverId: 'crimson_clover',
    situation: 'overwintered',
    closingEvent: 'bud',
    byZone: [
      { zone: 5, daysFromMidwinter: { low: 145, high: 156 } },
      { zone: 6, daysFromMidwinter: { low: 135, high: 135 } },
      { zone: 7, daysFromMidwinter: { low: 125, high: 125 } },
    ],
    modelErrorDays: 8,
    provenance: 'from memory',
    sources: ['phenology:P7', 'phenology:P34'],
  },
  {
    coverId: 'red_clover',
    situation: 'overwintered',
    closingEvent: 'first flowers',
    heat: { from: 'midwinter', baseC: 5, method: 'mean-over-base', sum: { low: 350, usual: 420, high: 450 } },
    modelErrorDays: 6,
    provenance: 'derived',
    sources: ['cover:S35', 'phenology:P31'],
  },
];

/** Stands sown in spring. */
const springSown: readonly BloomModel[] = [
  {
    // 1426 °F units: awns show about 2.5 cm. Barley flowers before its heads are clear.
    coverId: 'barley',
    situation: 'spring-sown',
    closingEvent: 'first flowers',
    heat: { ...smallGrain, sum: { low: 792, usual: 792, high: 792 } },
    modelErrorDays: 4,
    provenance: 'published',
    sources: ['phenology:P2'],
  },
  {
    // The barley date and about five days.
    coverId: 'oats',
    situation: 'spring-sown',
    closingEvent: 'heading',
    heat: { ...smallGrain, sum: { low: 800, usual: 865, high: 930 } },
    modelErrorDays: 6,
    provenance: 'from memory',
    sources: ['phenology:P2'],
  },
  daysOnly('annual_ryegrass', 'spring-sown', 'heading', 60, 80),
  {
    // The flower shows at nodes 12 to 16, of which a degree-day makes 0.027 to 0.037: 14 at 0.032. Up: half of a food
    // pea's seed has sprouted, which is days before it shows and so asks for no later a cut.
    coverId: 'field_pea',
    situation: 'spring-sown',
    closingEvent: 'first flowers',
    heat: {
      from: 'sowing',
      up: { baseC: -1, upperC: 27.5, sum: 56 },
      baseC: 4.5,
      method: 'mean-over-base',
      sum: { low: 320, usual: 440, high: 590 },
    },
    modelErrorDays: 9,
    provenance: 'derived',
    sources: ['phenology:P11', 'phenology:P12', 'phenology:P33'],
  },
  { ...daysOnly('austrian_winter_pea', 'spring-sown', 'first flowers', 50, 60), provenance: 'house default' },
  daysOnly('common_vetch', 'spring-sown', 'first flowers', 60, 80),
  daysOnly('crimson_clover', 'spring-sown', 'first flowers', 63, 90),
  daysOnly('berseem_clover', 'spring-sown', 'first flowers', 60, 70),
  {
    coverId: 'fava_bell_bean',
    situation: 'spring-sown',
    closingEvent: 'first flowers',
    heat: {
      from: 'sowing',
      baseC: 0,
      upperC: 22.5,
      method: 'mean-over-base',
      sum: { low: 830, usual: 830, high: 1000 },
    },
    modelErrorDays: 7,
    provenance: 'published',
    sources: ['phenology:P9'],
  },
  {
    coverId: 'mustard',
    situation: 'spring-sown',
    closingEvent: 'first flowers',
    heat: { from: 'sowing', baseC: 5, method: 'mean-over-base', sum: { low: 280, usual: 350, high: 450 } },
    modelErrorDays: 7,
    provenance: 'derived',
    sources: ['cover:S4h', 'phenology:P15'],
  },
  daysOnly('oilseed_radish', 'spring-sown', 'first flowers', 40, 60),
  {
    ...daysOnly('phacelia', 'spring-sown', 'first flowers', 40, 70),
    provenance: 'derived',
    sources: ['phenology:P24'],
  },
];

/** Stands sown in summer, for the warm months or for winter to kill. */
const summerSown: readonly BloomModel[] = [
  {
    ...daysOnly('oats', 'summer-sown', 'heading', 56, 70),
    sownWeeksBeforeFreeze: 8,
    provenance: 'derived',
    sources: ['cover:S4c'],
  },
  { ...daysOnly('barley', 'summer-sown', 'heading', 56, 70), sownWeeksBeforeFreeze: 8, provenance: 'house default' },
  {
    // Base 7 °C makes the published 30 days from 1 July and 40 from 20 May agree, so it serves both sowings.
    coverId: 'buckwheat',
    situation: 'summer-sown',
    closingEvent: 'first flowers',
    grace: { days: 10, source: 'cover:S4a' },
    heat: { from: 'sowing', baseC: 7, method: 'mean-over-base', sum: { low: 370, usual: 410, high: 450 } },
    modelErrorDays: 4,
    provenance: 'derived',
    sources: ['cover:S4a'],
  },
  {
    // Published for grain sorghum, early to late kinds; the base is remembered. The height rule comes first.
    coverId: 'sorghum_sudangrass',
    situation: 'summer-sown',
    closingEvent: 'boot',
    heat: {
      from: 'sowing',
      baseC: 10,
      upperC: 37.8,
      method: 'raised-to-base',
      sum: { low: 670, usual: 670, high: 915 },
    },
    modelErrorDays: 7,
    provenance: 'from memory',
    sources: ['phenology:P17'],
  },
  {
    // A crop model's sums as its data file carries them. Long days can hold the flowers back further (36 to 145 days).
    coverId: 'cowpea',
    situation: 'summer-sown',
    closingEvent: 'first flowers',
    heat: {
      from: 'sowing',
      up: { baseC: 10, sum: 70 },
      baseC: 8,
      upperC: 28,
      method: 'mean-over-base',
      sum: { low: 660, usual: 660, high: 660 },
    },
    modelErrorDays: 12,
    provenance: 'secondary',
    sources: ['phenology:P3', 'phenology:P18'],
  },
  {
    ...daysOnly('mustard', 'summer-sown', 'first flowers', 28, 42, 7),
    provenance: 'published',
    sources: ['cover:S4e'],
  },
  daysOnly('berseem_clover', 'summer-sown', 'first flowers', 60, 90),
];

/** A model of remembered days from sowing, to be trusted at its lower end. */
function daysOnly(
  coverId: string,
  situation: BloomModel['situation'],
  closingEvent: BloomModel['closingEvent'],
  low: number,
  high: number,
  modelErrorDays = 10,
): BloomModel {
  return {
    coverId,
    situation,
    closingEvent,
    daysFromSowing: { low, high },
    modelErrorDays,
    provenance: 'from memory',
    sources: [],
  };
}

/** Every bloom model. */
export const bloomModels: readonly BloomModel[] = [...overwintered, ...springSown, ...summerSown];
