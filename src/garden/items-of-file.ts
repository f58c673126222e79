/**
 * A garden file's parts as the nouns of the garden.
 */
import type { Day } from '../measures/days.ts';
import type {
  Bed,
  BedFed,
  Bin,
  ClimateChoice,
  CompostBought,
  CropWish,
  DiseaseFound,
  Garden,
  MulchPlan,
  Pile,
  Place,
  Planting,
  Regrowth,
  SoilTest,
  Stand,
  Topdressed,
} from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import type { Household, Member, SeedPacket } from './household.ts';
import { itself, oldestFirst, onOf } from './oldest-first.ts';
import { weekdayNamed } from './weekday-names.ts';
import { withoutAbsent } from './without-absent.ts';

/** What tells a plan from something that happened: the day the file was read, and what was held before. */
export interface Held {
  readOn: Day;
  plantings: ReadonlyMap<string, Planting>;
  stands: ReadonlyMap<string, Stand>;
  piles: ReadonlyMap<string, Pile>;
}

/** What a garden held, by id. */
export function heldBefore(before: Garden | undefined): Omit<Held, 'readOn'> {
  const byId = <Item extends { id: string }>(items: readonly Item[] = []) =>
    new Map(items.map((item) => [item.id, item]));
  return { plantings: byId(before?.plantings), stands: byId(before?.stands), piles: byId(before?.piles) };
}

/** A date with whether it has happened. */
interface Dated {
  day: Day;
  happened: boolean;
}

/** What else the file says about a date: its key, the item's list of plans, what was held, and whether a log shows it. */
interface About {
  key: string;
  plans: readonly string[] | undefined;
  before: Dated | undefined;
  logged?: boolean;
}

/**
 * A date of the file with whether it has happened. A log that goes on from it shows that it has; else the file's own
 * list of plans says; else a date held before stays what it was; else what lies up to the day of reading has happened.
 */
function datedBy(day: Day, readOn: Day, { key, plans, before, logged = false }: About): Dated {
  if (logged) return { day, happened: true };
  if (plans !== undefined) return { day, happened: day <= readOn && !plans.includes(key) };
  return { day, happened: before?.day === day ? before.happened : day <= readOn };
}

/** Where the garden lies and how its household works. */
export function placeOf({ garden }: GardenFile): Place {
  const { id: _id, name: _name, workDays, ...rest } = garden;
  return withoutAbsent({ ...rest, workDays: [...new Set(workDays.map(weekdayNamed))].sort() });
}

/** What the climate is to be worked out from. */
export function climateChoiceOf({ climate }: GardenFile): ClimateChoice {
  if (climate.dailyRecord !== undefined) return { kind: 'daily-record', file: climate.dailyRecord };
  if (climate.station !== undefined) return { kind: 'station', station: climate.station };
  if (climate.frostDates !== undefined) return { kind: 'frost-dates', ...climate.frostDates };
  if (climate.monthlyNormals === undefined) return { kind: 'nearest' };
  const months = climate.monthlyNormals;
  return {
    kind: 'monthly-normals',
    highC: months.map((month) => month.highC),
    lowC: months.map((month) => month.lowC),
    precipMm: months.map((month) => month.precipMm),
  };
}

/** Who eats from the garden, and who does what in it. */
export function householdOf({ members = [], ...rest }: NonNullable<GardenFile['household']>): Household {
  return withoutAbsent({
    ...rest,
    ...(members.length === 0 ? {} : { members: members.map(memberOfFile) }),
  });
}

function memberOfFile({ id = '', mail, ...row }: FileMember): Member {
  return withoutAbsent({
    id,
    ...row,
    mail: mail && withoutAbsent({ ...mail, weekday: weekdayNamed(mail.weekday) }),
  });
}

type FileMember = NonNullable<NonNullable<GardenFile['household']>['members']>[number];

/** A planting of the file. */
export function plantingOf(row: GardenFile['plantings'][number], { readOn, plantings }: Held): Planting {
  const { id = '', lastHarvest, areaM2, planned: plans, meant, indoors } = row;
  const before = plantings.get(id);
  const sown = row.sow !== undefined;
  const about = { key: sown ? 'sow' : 'setOut', plans, before: before?.start };
  return {
    id,
    bedId: row.bed,
    cropId: row.crop,
    start: {
      how: sown ? 'sow' : 'set-out',
      ...datedBy(row.sow ?? row.setOut ?? readOn, readOn, about),
      ...(meant === undefined ? {} : { meant }),
    },
    ...(indoors === undefined ? {} : { indoorsOn: indoors }),
    ...(lastHarvest === undefined
      ? {}
      : { lastHarvest: datedBy(lastHarvest, readOn, { key: 'lastHarvest', plans, before: before?.lastHarvest }) }),
    ...(areaM2 === undefined ? {} : { areaM2 }),
  };
}

/** A cover stand of the file. */
export function standOf(row: GardenFile['coverStands'][number], { readOn, stands }: Held): Stand {
  const { id = '', planned: plans, cut, dead, seen, looked, resown, seed, regrowthChecked, regrowth } = row;
  const told = [...regrowthChecked, ...seen, ...looked, ...resown, ...seed, ...regrowth];
  const logged = cut !== undefined || dead !== undefined || told.length > 0;
  return {
    id,
    bedId: row.bed,
    coverId: row.cover ?? row.mix ?? '',
    sow: datedBy(row.sow, readOn, { key: 'sow', plans, before: stands.get(id)?.sow, logged }),
    ...(cut === undefined ? {} : { cutOn: cut }),
    regrowthCheckedOn: oldestFirst(regrowthChecked, itself),
    ...(regrowth.length === 0 ? {} : { regrowth: oldestFirst(regrowth, onOf).map(regrowthOf) }),
    ...(dead === undefined ? {} : { deadOn: dead }),
    ...(seen.length === 0
      ? {}
      : { seen: oldestFirst(seen, onOf).map(({ cover, ...stage }) => withoutAbsent({ coverId: cover, ...stage })) }),
    ...(looked.length === 0 ? {} : { looked: oldestFirst(looked, onOf) }),
    ...(resown.length === 0
      ? {}
      : { resown: oldestFirst(resown, onOf).map(({ on, cover, mix = '' }) => ({ on, coverId: cover ?? mix })) }),
    ...(seed.length === 0
      ? {}
      : { seed: oldestFirst(seed, onOf).map(({ cover, on, grams }) => ({ coverId: cover, on, grams })) }),
  };
}

function regrowthOf({ on, what, answer }: GardenFile['coverStands'][number]['regrowth'][number]): Regrowth {
  if (what !== 'grew-again') return { on, what };
  return answer === undefined ? { on, what } : { on, what, answer };
}

/** A pile of the file. */
export function pileOf(row: GardenFile['piles'][number], { readOn, piles }: Held): Pile {
  const { id = '', planned: plans, readings, turns, notReady, curingSince, finished, finishedLitres } = row;
  const logged = [...readings, ...turns].length > 0 || curingSince !== undefined || finished !== undefined;
  return {
    id,
    binId: row.bin,
    built: datedBy(row.built, readOn, { key: 'built', plans, before: piles.get(id)?.built, logged }),
    method: row.method,
    ingredients: row.ingredients.map(({ material, litres }) => ({ materialId: material, litres })),
    readings: oldestFirst(readings, onOf).map((reading) => withoutAbsent(reading)),
    turns: oldestFirst(turns, itself),
    ...(notReady.length === 0 ? {} : { notReady: oldestFirst(notReady, onOf) }),
    ...(curingSince === undefined ? {} : { curingSince }),
    ...(finished === undefined ? {} : { finishedOn: finished }),
    ...(finishedLitres === undefined ? {} : { finishedLitres }),
  };
}

/** A wish of the file. */
export function wishOf({ crop, beds, areaM2 = 0, year }: GardenFile['wishes'][number]): CropWish {
  const amount = beds === undefined ? { areaM2 } : { beds };
  return { cropId: crop, amount, ...(year === undefined ? {} : { season: year }) };
}

/** A packet of seed of the file. */
export function seedOf({ crop, cover, packed, grams, on }: GardenFile['seeds'][number]): SeedPacket {
  const plant = crop === undefined ? { kind: 'cover' as const, id: cover ?? '' } : { kind: 'crop' as const, id: crop };
  const held = grams === undefined || on === undefined ? {} : { held: { grams, on } };
  return { plant, packedYear: packed, ...held };
}

/** A bed of the file. */
export function bedOf({ id = '', ...row }: GardenFile['beds'][number]): Bed {
  return withoutAbsent({ id, ...row });
}

/** A bin of the file. */
export function binOf({ id = '', ...row }: GardenFile['bins'][number]): Bin {
  return withoutAbsent({ id, ...row });
}

/** A mulch planned in the file. */
export function mulchOf({ bed, ...row }: GardenFile['mulches'][number]): MulchPlan {
  return withoutAbsent({ bedId: bed, ...row });
}

/** A layer given, as the file tells it. */
export function topdressedOf({ bed, piles, material, ...row }: GardenFile['topdressed'][number]): Topdressed {
  return withoutAbsent({ bedId: bed, ...row, pileIds: piles, materialId: material });
}

/** A fertiliser strewn, as the file tells it. */
export function fedOf({ bed, fertiliser, planting, ...row }: GardenFile['fed'][number]): BedFed {
  return withoutAbsent({ bedId: bed, ...row, fertiliserId: fertiliser, plantingId: planting });
}

/** Compost bought, as the file tells it. */
export function boughtOf(row: GardenFile['compostBought'][number]): CompostBought {
  return withoutAbsent(row);
}

/** A soil test of the file. */
export function soilTestOf({ bed, ...test }: GardenFile['soilTests'][number]): SoilTest {
  return withoutAbsent({ ...test, bedId: bed });
}

/** A disease found, as the file tells it. */
export function diseaseOf({ bed, crop, disease, found }: GardenFile['diseases'][number]): DiseaseFound {
  return { bedId: bed, cropId: crop, disease, on: found };
}
