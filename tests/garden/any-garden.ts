/**
 * Small gardens of every kind, as a gardener could write them.
 */
import fc from 'fast-check';
import { addDays } from '../../src/measures/days.ts';

const day = fc.integer({ min: 0, max: 900 }).map((n) => addDays('2026-01-01', n));
const laterThan = (from: string) => fc.nat(200).map((n) => addDays(from, n));
const litres = fc.integer({ min: 1, max: 900 });
const name = fc.stringMatching(/^[A-Za-z][A-Za-z0-9 ':#&*-]{0,18}[a-z]$/);

const climate = fc.oneof(
  fc.constant({ nearest: true }),
  fc.constant({ dailyRecord: 'weather.csv' }),
  fc.constant({ station: 'USW00014839' }),
  fc.constant({ frostDates: { lastSpring: '05-10', firstAutumn: '10-05' } }),
  fc
    .array(fc.record({ highC: fc.integer({ min: 0, max: 30 }), lowC: fc.constant(-1.5), precipMm: fc.nat(99) }), {
      minLength: 12,
      maxLength: 12,
    })
    .map((monthlyNormals) => ({ monthlyNormals })),
);

const place = fc.record(
  {
    name,
    latitude: fc.integer({ min: -60, max: 60 }),
    longitude: fc.double({ min: -180, max: 180, noNaN: true }),
    timeZone: fc.constantFrom('America/Chicago', 'Pacific/Auckland', 'Europe/Berlin'),
    elevationM: fc.nat(2000),
    hardinessZone: fc.constantFrom('4b', '10a'),
    units: fc.constantFrom('us', 'metric'),
    workDays: fc.uniqueArray(fc.constantFrom('mon', 'wed', 'sat', 'sun'), { minLength: 1 }),
    hoursPerWeek: fc.integer({ min: 1, max: 40 }),
    soilTexture: fc.constantFrom('loam', 'clay'),
    frostRisk: fc.constantFrom(10, 30, 50),
    bloomRiskPercent: fc.integer({ min: 1, max: 50 }),
    frostOffsetDays: fc.integer({ min: -10, max: 10 }),
    tempOffsetC: fc.constantFrom(-1.5, 0, 2),
  },
  { requiredKeys: ['name', 'latitude', 'longitude', 'timeZone'] },
);

const bed = fc.record(
  {
    lengthM: fc.constantFrom(1, 2.4, 3.05),
    widthM: fc.constantFrom(0.9, 1.22),
    depthM: fc.constant(0.3),
    raised: fc.boolean(),
    watered: fc.boolean(),
    soilTexture: fc.constant('silt_loam'),
  },
  { requiredKeys: ['lengthM', 'widthM'] },
);

const planting = (beds: string[]) =>
  fc
    .tuple(fc.constantFrom(...beds), fc.constantFrom('carrot', 'tomato', 'asparagus'), day, fc.boolean())
    .chain(([bedName, crop, start, sown]) =>
      fc.record(
        {
          bed: fc.constant(bedName),
          crop: fc.constant(crop),
          [sown ? 'sow' : 'setOut']: fc.constant(start),
          lastHarvest: laterThan(start),
          areaM2: fc.constantFrom(0.4, 0.75),
          planned: fc.subarray([sown ? 'sow' : 'setOut', 'lastHarvest']),
        },
        { requiredKeys: ['bed', 'crop', sown ? 'sow' : 'setOut'] },
      ),
    );

const stand = (beds: string[]) =>
  fc.tuple(fc.constantFrom(...beds), day, fc.boolean()).chain(([bedName, sow, mixed]) =>
    fc.record(
      {
        bed: fc.constant(bedName),
        [mixed ? 'mix' : 'cover']: fc.constant(mixed ? 'rye-vetch' : 'oats'),
        sow: fc.constant(sow),
        cut: laterThan(sow),
        dead: laterThan(sow),
        regrowthChecked: fc.array(laterThan(sow), { maxLength: 2 }),
        regrowth: fc.array(
          fc.oneof(
            fc.record(
              { on: laterThan(sow), what: fc.constant('grew-again'), answer: fc.constantFrom('cut', 'sheet') },
              { requiredKeys: ['on', 'what'] },
            ),
            fc.record({ on: laterThan(sow), what: fc.constantFrom('cut-again', 'sheet-laid', 'sheet-lifted') }),
          ),
          { maxLength: 3 },
        ),
        planned: fc.subarray(['sow']),
      },
      { requiredKeys: ['bed', mixed ? 'mix' : 'cover', 'sow'] },
    ),
  );

const pile = (bins: string[]) =>
  fc.tuple(fc.constantFrom(...bins), day).chain(([binName, built]) => {
    const reading = fc.record(
      {
        on: laterThan(built),
        tempC: fc.integer({ min: 5, max: 70 }),
        moisture: fc.constantFrom('dry', 'damp'),
        smell: fc.constant('sour'),
      },
      { requiredKeys: ['on'] },
    );
    return fc.record(
      {
        bin: fc.constant(binName),
        built: fc.constant(built),
        method: fc.constantFrom('hot', 'cold'),
        ingredients: fc.array(fc.record({ material: fc.constantFrom('leaves_oak', 'coffee_grounds'), litres }), {
          maxLength: 3,
        }),
        readings: fc.array(reading, { maxLength: 3 }),
        turns: fc.array(laterThan(built), { maxLength: 3 }),
        curingSince: fc.constant(addDays(built, 110)),
        finished: fc.constant(addDays(built, 140)),
        finishedLitres: litres,
        planned: fc.subarray(['built']),
      },
      { requiredKeys: ['bin', 'built', 'method'] },
    );
  });

const household = (beds: string[]) =>
  fc.record(
    {
      people: fc.integer({ min: 1, max: 9 }),
      clippingsL: fc.constant(40),
      coverCutsL: fc.constant(100),
      members: fc.uniqueArray(member(beds), { maxLength: 3, selector: (row) => row.name }),
    },
    { requiredKeys: [] },
  );

const member = (beds: string[]) =>
  fc.record(
    {
      name: name.filter((word) => word !== 'all'),
      practices: fc.uniqueArray(fc.constantFrom('planting', 'composting', 'frost-watch'), { minLength: 1 }),
      beds: fc.uniqueArray(fc.constantFrom(...beds), { minLength: 1 }),
      mail: fc.record(
        {
          to: fc.constant('ida@example.org'),
          from: fc.constant('garden@example.org'),
          weekday: fc.constantFrom('fri', 'sun'),
          hour: fc.integer({ min: 0, max: 23 }),
          tasks: fc.constantFrom('own', 'all'),
        },
        { requiredKeys: ['to', 'weekday', 'hour'] },
      ),
    },
    { requiredKeys: ['name'] },
  );

/** Plain data of a garden file that can be read. */
export const anyGardenData = fc
  .tuple(
    fc.uniqueArray(name, { minLength: 1, maxLength: 4, selector: (text) => text.toLowerCase() }),
    fc.uniqueArray(name, { minLength: 1, maxLength: 2, selector: (text) => text.toLowerCase() }),
  )
  .chain(([beds, bins]) =>
    fc.record({
      garden: place,
      climate,
      beds: fc.tuple(...beds.map((bedName) => bed.map((row) => ({ name: bedName, ...row })))),
      plantings: fc.array(planting(beds), { maxLength: 6 }),
      coverStands: fc.array(stand(beds), { maxLength: 4 }),
      bins: fc.constant(bins.map((binName) => ({ name: binName, volumeL: 760 }))),
      piles: fc.array(pile(bins), { maxLength: 3 }),
      topdressing: fc.option(fc.constant({ depthMm: 13, season: 'autumn' }), { nil: undefined }),
      topdressed: fc.array(
        fc.record({
          bed: fc.constantFrom(...beds),
          on: day,
          litres,
          material: fc.constantFrom(undefined, 'cow_manure_solid'),
        }),
        { maxLength: 3 },
      ),
      fed: fc.array(
        fc.record({
          bed: fc.constantFrom(...beds),
          on: day,
          fertiliser: fc.constantFrom('blood_meal', 'bone_meal'),
          grams: litres,
        }),
        { maxLength: 2 },
      ),
      compostBought: fc.array(fc.record({ on: day, litres }), { maxLength: 3 }),
      away: fc.array(
        day.chain((from) => fc.record({ from: fc.constant(from), to: laterThan(from) })),
        { maxLength: 2 },
      ),
      household: fc.option(household(beds), { nil: undefined }),
      gear: fc.array(fc.constant({ what: 'light-fabric', areaM2: 12 }), { maxLength: 2 }),
      wishes: fc.uniqueArray(fc.constantFrom({ crop: 'carrot', areaM2: 2.5 }, { crop: 'kale', beds: 1, year: 2028 }), {
        maxLength: 2,
      }),
      seeds: fc.array(
        fc.constantFrom(
          { crop: 'carrot', packed: 2024 },
          { cover: 'oats', packed: 2025 },
          { cover: 'oats', packed: 2025, grams: 500, on: '2025-08-01' },
        ),
        {
          maxLength: 2,
        },
      ),
      soilTests: fc.array(
        fc.record({ on: day, bed: fc.constantFrom(...beds), ph: fc.constant(6.5) }, { requiredKeys: ['on'] }),
        {
          maxLength: 2,
        },
      ),
      soilSqueezes: fc.array(
        fc.record({ on: day, soilTexture: fc.constant('loam'), answer: fc.constantFrom('crumbles', 'smears') }),
        { maxLength: 2 },
      ),
      diseases: fc.array(
        fc.record({
          bed: fc.constantFrom(...beds),
          crop: fc.constant('tomato'),
          disease: fc.constant('early blight'),
          found: day,
        }),
        { maxLength: 2 },
      ),
      mulches: fc.array(
        fc.record(
          { bed: fc.constantFrom(...beds), from: day, mulch: fc.constantFrom('leaves', 'straw') },
          { requiredKeys: ['bed', 'from', 'mulch'] },
        ),
        { maxLength: 2 },
      ),
      coldNights: fc.array(
        fc.record({ evening: day, lowC: fc.constantFrom(-2.5, 1), how: fc.constantFrom('expected', 'measured') }),
        { maxLength: 2 },
      ),
    }),
  );
