/**
 * Small gardens of every make, for properties that must hold in all of them.
 */
import fc from 'fast-check';
import type { Climate } from '../../src/climate/climate.ts';
import { climateFromNormals } from '../../src/climate/from-normals.ts';
import type { Bed, Garden, Pile, Planting, SoilSqueeze, SoilTest, Stand, StandLook } from '../../src/garden/garden.ts';
import { COVERED } from '../../src/garden/stand-file.ts';
import { withoutAbsent } from '../../src/garden/without-absent.ts';
import { coverCrops } from '../../src/handbook/cover-crops.ts';
import { coverMixes } from '../../src/handbook/cover-mixes.ts';
import { feedstocks } from '../../src/handbook/feedstocks.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';
import { addDays, type Day } from '../../src/measures/days.ts';
import type { PracticeInput } from '../../src/practices/practice.ts';
import { inventedClimate } from '../climate/invented.ts';
import { NO_OFFSETS } from '../climate/real-data.ts';
import { bed, frostDates, garden, inputOf, milwaukee, pile } from './gardens.ts';

const { tmaxC, tminC } = milwaukee.normals;

const climates = {
  'a record': milwaukee,
  'freeze dates': frostDates('05-10', '10-01'),
  'a long season': frostDates('02-20', '12-10'),
  'a short season': frostDates('06-25', '08-20'),
  'monthly means': climateFromNormals({
    latitude: 44,
    longitude: -90,
    ...NO_OFFSETS,
    highC: tmaxC,
    lowC: tminC,
    precipMm: [],
  }),
  'no freeze date': inventedClimate(),
  'no warmth': inventedClimate({ normals: { tminC: Array(12).fill(-15), tmaxC: Array(12).fill(-3) } }),
  'the south': frostDates('10-20', '04-20', -43),
} as const satisfies Record<string, Climate>;

/** A garden on a day in a climate, the climate by its name so that a counterexample fits on a screen. */
export interface AnyCase {
  of: Garden;
  climate: keyof typeof climates;
  today: Day;
}

/** What the practices look at in a case. */
export function inputIn({ of, climate, today }: AnyCase): PracticeInput {
  const place = { ...of.place, latitude: climates[climate].latitude };
  return inputOf({ ...of, place }, climates[climate], today);
}

/** 29 February lies inside the span the days below are drawn from. */
const START: Day = '2027-11-15';
const dayNear = (from: number, to: number) => fc.integer({ min: from, max: to }).map((days) => addDays(START, days));
const later = (day: Day, most: number) => fc.integer({ min: 0, max: most }).map((days) => addDays(day, days));
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
/** Absent more often than not. */
const seldom = <T>(value: fc.Arbitrary<T>) => fc.oneof(fc.constant(undefined), fc.constant(undefined), value);

const bedIds = ['a', 'b', 'c'] as const;

const plantings: fc.Arbitrary<Planting> = fc
  .record({
    bedId: fc.constantFrom(...bedIds),
    cropId: fc.constantFrom(...vegetables.map(({ id }) => id)),
    how: fc.constantFrom('sow' as const, 'set-out' as const),
    day: dayNear(-500, 500),
  })
  .chain(({ bedId, cropId, how, day }) =>
    maybe(later(day, 250)).map((harvested) => ({
      id: `${cropId}-${day}-${bedId}-${how}`,
      bedId,
      cropId,
      start: { how, day, happened: false },
      ...(harvested === undefined ? {} : { lastHarvest: { day: harvested, happened: false } }),
    })),
  );

/** What is told of a cut stand one after another, in any order a gardener may tell it. */
const regrown = fc.array(
  fc.constantFrom(
    { what: 'grew-again' as const, answer: 'cut' as const },
    { what: 'grew-again' as const, answer: 'sheet' as const },
    { what: 'cut-again' as const },
    { what: 'sheet-laid' as const },
    { what: 'sheet-lifted' as const },
  ),
  { maxLength: 4 },
);

/** A look at a young stand, and what was sown into its thin places the day after. */
const lookedAt = fc.record({
  covered: fc.constantFrom(...COVERED),
  weedy: fc.boolean(),
  again: seldom(fc.constantFrom(...coverCrops.map(({ id }) => id))),
});

/** What a stand shows of a look at it, where it was sown long enough before the day it is. */
function seenYoung(day: Day, seen: { covered: StandLook['covered']; weedy: boolean; again: string | undefined }) {
  const { again, ...look } = seen;
  const on = addDays(day, 16);
  if (on >= START) return {};
  return {
    looked: [{ on, ...look }],
    ...(again === undefined ? {} : { resown: [{ on: addDays(on, 1), coverId: again }] }),
  };
}

const stands: fc.Arbitrary<Stand> = fc
  .record({
    bedId: fc.constantFrom(...bedIds),
    coverId: fc.constantFrom(...coverCrops.map(({ id }) => id), ...coverMixes.map(({ id }) => id)),
    day: dayNear(-400, 400),
  })
  .chain(({ bedId, coverId, day }) =>
    fc
      .record({
        cutOn: seldom(later(day, 200)),
        deadOn: seldom(later(day, 200)),
        looked: fc.boolean(),
        regrown,
        young: fc.option(lookedAt, { nil: undefined }),
      })
      .map(({ cutOn, deadOn, looked, regrown, young }) => ({
        id: `s-${bedId}-${coverId}-${day}`,
        bedId,
        coverId,
        sow: { day, happened: false },
        ...(day <= START && cutOn !== undefined ? { cutOn } : {}),
        ...(day <= START && deadOn !== undefined ? { deadOn } : {}),
        ...(young === undefined ? {} : seenYoung(day, young)),
        regrowthCheckedOn: looked && cutOn !== undefined ? [addDays(cutOn, 12)] : [],
        ...(!looked && cutOn !== undefined && regrown.length > 0
          ? { regrowth: regrown.map((told, at) => ({ on: addDays(cutOn, 12 + 10 * at), ...told })) }
          : {}),
      })),
  );

const readings = (from: Day) =>
  fc.record(
    {
      on: later(from, 120),
      tempC: fc.integer({ min: -10, max: 80 }),
      moisture: fc.constantFrom('dry' as const, 'damp' as const, 'wet' as const),
      smell: fc.constantFrom('earthy' as const, 'ammonia' as const, 'sour' as const),
    },
    { requiredKeys: ['on'] },
  );

const piles: fc.Arbitrary<Pile> = fc.oneof(dayNear(-120, 0), dayNear(-700, 200)).chain((built) =>
  fc
    .record({
      method: fc.constantFrom('hot' as const, 'hot' as const, 'cold' as const),
      ingredients: fc.array(
        fc.record({
          materialId: fc.constantFrom(...feedstocks.map(({ id }) => id)),
          litres: fc.integer({ min: 0, max: 900 }),
        }),
        { maxLength: 3 },
      ),
      readings: fc.array(readings(built), { maxLength: 4 }),
      turns: fc.array(later(built, 200), { maxLength: 6 }),
      curing: seldom(later(built, 300)),
      finished: seldom(later(built, 500)),
    })
    .map(({ curing, finished, ...parts }) =>
      pile(built, {
        id: `p-${built}`,
        ...parts,
        ...(curing === undefined || built > START ? {} : { curingSince: curing }),
        ...(finished === undefined || built > START ? {} : { finishedOn: finished }),
      }),
    ),
);

const textures = ['sandy_loam', 'loam', 'clay'] as const;

const beds: fc.Arbitrary<Bed[]> = fc
  .tuple(
    fc.integer({ min: 2, max: 200 }),
    fc.integer({ min: 2, max: 50 }),
    fc.boolean(),
    seldom(fc.constantFrom(...textures)),
  )
  .map(([length, width, raised, soilTexture]) =>
    bedIds.map((id) =>
      bed(id, {
        lengthM: length / 10,
        widthM: width / 10,
        // One bed of the three may lie at ground level, or hold soil of its own.
        ...(id === 'c' ? { raised, ...(soilTexture === undefined ? {} : { soilTexture }) } : {}),
      }),
    ),
  );

const soilTests: fc.Arbitrary<SoilTest[]> = fc.array(
  fc
    .record({
      on: dayNear(-1500, 0),
      bedId: seldom(fc.constantFrom(...bedIds)),
      organicMatterPercent: maybe(fc.integer({ min: 1, max: 9 })),
      phosphorusPpm: maybe(fc.constantFrom(3, 8, 15, 40)),
      ph: maybe(fc.constantFrom(5.5, 6.8, 7.6)),
    })
    .map(withoutAbsent),
  { maxLength: 2 },
);

/** One answer a soil and day: of two on a day the later word counts, so that their order is part of what was told. */
const soilSqueezes: fc.Arbitrary<SoilSqueeze[]> = fc.uniqueArray(
  fc.record({
    on: dayNear(100, 240),
    soilTexture: fc.constantFrom(...textures),
    answer: fc.constantFrom('crumbles' as const, 'smears' as const),
  }),
  { maxLength: 2, selector: ({ on, soilTexture }) => `${on} ${soilTexture}` },
);

const gardens: fc.Arbitrary<Garden> = fc
  .record({
    beds,
    plantings: fc.uniqueArray(plantings, { maxLength: 7, selector: ({ id }) => id }),
    stands: fc.uniqueArray(stands, { maxLength: 4, selector: ({ id }) => id }),
    piles: fc.uniqueArray(piles, { maxLength: 3, selector: ({ id }) => id }),
    topdressed: fc.array(
      fc.record({ bedId: fc.constantFrom(...bedIds), on: dayNear(-400, 0), litres: fc.integer({ min: 0, max: 300 }) }),
      { maxLength: 3 },
    ),
    compostBought: fc.array(fc.record({ on: dayNear(-300, 0), litres: fc.integer({ min: 0, max: 500 }) }), {
      maxLength: 2,
    }),
    soilTests,
    soilSqueezes,
    diseases: fc.array(
      fc.record({
        bedId: fc.constantFrom(...bedIds),
        cropId: fc.constantFrom(...vegetables.map(({ id }) => id)),
        disease: fc.constantFrom('clubroot', 'White rot', 'blight', 'something odd'),
        on: dayNear(-400, 300),
      }),
      { maxLength: 3 },
    ),
    habit: maybe(
      fc.record({
        depthMm: fc.integer({ min: 1, max: 150 }),
        season: fc.constantFrom('spring' as const, 'autumn' as const),
      }),
    ),
    seeds: fc.array(
      fc.record({
        plant: fc.record({
          kind: fc.constant('crop' as const),
          id: fc.constantFrom(...vegetables.map(({ id }) => id)),
        }),
        packedYear: fc.integer({ min: 2022, max: 2028 }),
      }),
      { maxLength: 12 },
    ),
    people: maybe(fc.integer({ min: 1, max: 7 })),
    zone: maybe(fc.constantFrom('3b', '5a', '6b', '8a', '10a')),
    frostRisk: fc.constantFrom(10 as const, 30 as const, 50 as const),
  })
  .map(({ habit, people, zone, frostRisk, ...parts }) =>
    garden({
      ...parts,
      startedOn: START,
      ...(habit === undefined ? {} : { topdressing: habit }),
      ...(people === undefined ? {} : { household: { people } }),
      place: { frostRisk, ...(zone === undefined ? {} : { hardinessZone: zone }) },
    }),
  );

/** Any small garden in any climate, on any day of the fourteen months after it began. */
export const anyCase: fc.Arbitrary<AnyCase> = fc.record({
  of: gardens,
  climate: fc.constantFrom(...(Object.keys(climates) as AnyCase['climate'][])),
  // A leap day, both ends of a year and midsummer come up more often than chance would have them.
  today: fc.oneof(
    later(START, 420),
    fc.constantFrom('2027-12-31', '2028-01-01', '2028-02-29', '2028-06-30', '2028-07-01', '2028-07-02'),
  ),
});
