/**
 * From a garden back to its file: everything it was told and everything reported since, with every id, so that reading
 * the file again gives the same garden. Done marks, pins, and tasks skipped or put off are no part of it: they stay in the ledger.
 */
import { Document, isMap, isScalar, isSeq, Scalar, visit } from 'yaml';
import { coverMixById } from '../handbook/cover-mixes.ts';
import { isDay, isMonthDay } from '../measures/days.ts';
import type { BedFed, ClimateChoice, Garden, Pile, Place, Planting, Stand, Topdressed } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import type { Household } from './household.ts';
import { nameOfWeekday } from './weekday-names.ts';
import { withoutAbsent } from './without-absent.ts';

/** A garden as its file. Dates that have not happened are listed as plans, however long ago they lie. */
export function gardenFileOf(garden: Garden): GardenFile {
  return {
    garden: placeInFile(garden),
    climate: climateInFile(garden.climate),
    beds: garden.beds.map((bed) => ({ ...bed })),
    plantings: garden.plantings.map(plantingInFile),
    coverStands: garden.stands.map(standInFile),
    mulches: garden.mulches.map(({ bedId, ...mulch }) => ({ bed: bedId, ...mulch })),
    bins: garden.bins.map((bin) => ({ ...bin })),
    piles: garden.piles.map(pileInFile),
    ...(garden.topdressing ? { topdressing: { ...garden.topdressing } } : {}),
    topdressed: garden.topdressed.map((row) => topdressedInFile(garden, row)),
    fed: garden.fed.map((row) => fedInFile(garden, row)),
    compostBought: garden.compostBought.map((row) => ({ ...row })),
    away: garden.away.map(({ from, to }) => ({ from, to })),
    ...(garden.household ? { household: householdInFile(garden.household) } : {}),
    gear: garden.gear.map((cover) => ({ ...cover })),
    seeds: garden.seeds.map(({ plant, packedYear, held }) => ({ [plant.kind]: plant.id, packed: packedYear, ...held })),
    wishes: garden.wishes.map(({ cropId, amount, season }) => withoutAbsent({ crop: cropId, ...amount, year: season })),
    soilTests: garden.soilTests.map(({ bedId, ...test }) => withoutAbsent({ ...test, bed: bedId })),
    soilSqueezes: garden.soilSqueezes.map((squeeze) => ({ ...squeeze })),
    diseases: garden.diseases.map(({ bedId, cropId, disease, on }) => ({
      bed: bedId,
      crop: cropId,
      disease,
      found: on,
    })),
    coldNights: garden.coldNights.map((night) => ({ ...night })),
  };
}

/** A pile that is no longer in the garden is left out: the file could not name it. */
function topdressedInFile({ piles }: Garden, { bedId, pileIds = [], materialId, ...row }: Topdressed): FileTopdressed {
  const there = pileIds.filter((id) => piles.some((pile) => pile.id === id));
  return withoutAbsent({
    bed: bedId,
    ...row,
    piles: there.length === 0 ? undefined : there,
    material: materialId,
  });
}

/** A planting that is no longer in the garden is left out, as a pile is. */
function fedInFile(
  { plantings }: Garden,
  { bedId, fertiliserId, plantingId, ...row }: BedFed,
): GardenFile['fed'][number] {
  const planting = plantings.some(({ id }) => id === plantingId) ? plantingId : undefined;
  return withoutAbsent({ bed: bedId, ...row, fertiliser: fertiliserId, planting });
}

type FileTopdressed = GardenFile['topdressed'][number];

function householdInFile({ members, ...rest }: Household): NonNullable<GardenFile['household']> {
  if (members === undefined) return rest;
  const rows = members.map(({ id, name, practices, beds, mail }) =>
    withoutAbsent({
      id,
      name,
      practices: practices && [...practices],
      beds: beds && [...beds],
      mail: mail && { ...mail, weekday: nameOfWeekday(mail.weekday) },
    }),
  );
  return { ...rest, members: rows };
}

function placeInFile({ id, name, place }: Garden): GardenFile['garden'] {
  const workDays = place.workDays.map(nameOfWeekday);
  return { id, name, ...(place satisfies Place), workDays };
}

function climateInFile(choice: ClimateChoice): GardenFile['climate'] {
  switch (choice.kind) {
    case 'daily-record':
      return { dailyRecord: choice.file };
    case 'station':
      return { station: choice.station };
    case 'nearest':
      return { nearest: true };
    case 'monthly-normals': {
      const { highC, lowC, precipMm } = choice;
      const monthlyNormals = highC.map((high, month) => ({
        highC: high,
        lowC: lowC[month] ?? high,
        precipMm: precipMm[month] ?? 0,
      }));
      return { monthlyNormals };
    }
    case 'frost-dates':
      return { frostDates: { lastSpring: choice.lastSpring, firstAutumn: choice.firstAutumn } };
    default:
      return choice satisfies never;
  }
}

/** The list of an item's plans, or no list where it has none. */
function plans<Key extends string>(
  ...dates: [key: Key, dated: { happened: boolean } | undefined][]
): {
  planned?: Key[];
} {
  const planned = dates.flatMap(([key, dated]) => (dated?.happened === false ? [key] : []));
  return planned.length === 0 ? {} : { planned };
}

function plantingInFile({
  id,
  bedId,
  cropId,
  start,
  indoorsOn,
  lastHarvest,
  areaM2,
}: Planting): GardenFile['plantings'][number] {
  const key = start.how === 'sow' ? 'sow' : 'setOut';
  return {
    id,
    bed: bedId,
    crop: cropId,
    [key]: start.day,
    ...(start.meant === undefined ? {} : { meant: start.meant }),
    ...(indoorsOn === undefined ? {} : { indoors: indoorsOn }),
    ...(lastHarvest === undefined ? {} : { lastHarvest: lastHarvest.day }),
    ...(areaM2 === undefined ? {} : { areaM2 }),
    ...plans<'sow' | 'setOut' | 'lastHarvest'>([key, start], ['lastHarvest', lastHarvest]),
  };
}

function standInFile(stand: Stand): GardenFile['coverStands'][number] {
  const { id, bedId, coverId, sow, cutOn, regrowthCheckedOn, deadOn } = stand;
  const { regrowth = [], seen = [], looked = [], resown = [], seed = [] } = stand;
  return withoutAbsent({
    id,
    bed: bedId,
    ...coverInFile(coverId),
    sow: sow.day,
    cut: cutOn,
    regrowthChecked: [...regrowthCheckedOn],
    regrowth: regrowth.map((each) => ({ ...each })),
    dead: deadOn,
    seen: seen.map(({ coverId: cover, ...stage }) => ({ cover, ...stage })),
    looked: [...looked],
    resown: resown.map((again) => ({ ...coverInFile(again.coverId), on: again.on })),
    seed: seed.map(({ coverId: cover, ...sown }) => ({ cover, ...sown })),
    ...plans(['sow', sow]),
  });
}

function coverInFile(coverId: string): { mix: string } | { cover: string } {
  return coverMixById.has(coverId) ? { mix: coverId } : { cover: coverId };
}

function pileInFile(pile: Pile): GardenFile['piles'][number] {
  const { id, binId, built, method, curingSince, finishedOn, finishedLitres } = pile;
  return withoutAbsent({
    id,
    bin: binId,
    built: built.day,
    method,
    ingredients: pile.ingredients.map(({ materialId, litres }) => ({ material: materialId, litres })),
    readings: pile.readings.map((reading) => ({ ...reading })),
    turns: [...pile.turns],
    notReady: (pile.notReady ?? []).map(({ on, failed }) => ({ on, failed: [...failed] })),
    curingSince,
    finished: finishedOn,
    finishedLitres,
    ...plans(['built', built]),
  });
}

const HEADER = ` The garden as it stands, written by Loamtide. Change it and bring it back with:
   loamtide garden import FILE
 Keep the ids: they tell an old bed, planting, stand, pile or member from a new one.
 "planned" lists the dates of an item that have not happened yet. Every key is explained in docs/garden-file.md.`;

/** No line is broken: an item is a line, however long its name. */
const UNBROKEN = 0;

/** A garden file as YAML text. Empty lists are left out; dates stand in quotes, so that any YAML reader keeps them text. */
export function gardenFileText(file: GardenFile): string {
  const given = Object.entries(file).filter(([, value]) => value !== undefined);
  const document = new Document(withoutEmptyLists(Object.fromEntries(given)));
  document.commentBefore = HEADER;
  visit(document, {
    Scalar: (_, node) => {
      if (typeof node.value === 'string' && (isDay(node.value) || isMonthDay(node.value)))
        node.type = Scalar.QUOTE_DOUBLE;
    },
    Collection: (_, node) => {
      const values = isMap(node) ? node.items.map(({ value }) => value) : node.items;
      if (values.length > 0 && values.every(isShort)) node.flow = true;
    },
  });
  const garden = document.get('garden');
  if (isMap(garden)) garden.flow = false;
  return document.toString({ lineWidth: UNBROKEN, flowCollectionPadding: true });
}

/** A word, a figure, or a list of them: what fits on its item's line. */
function isShort(node: unknown): boolean {
  return isScalar(node) || (isSeq(node) && node.items.every((item) => isScalar(item)));
}

function withoutEmptyLists(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutEmptyLists);
  if (typeof value !== 'object' || value === null) return value;
  const kept = Object.entries(value).filter(
    ([, held]) => held !== undefined && !(Array.isArray(held) && held.length === 0),
  );
  return Object.fromEntries(kept.map(([key, held]) => [key, withoutEmptyLists(held)]));
}
