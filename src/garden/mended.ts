/**
 * A garden with what it was told changed: what no edit touches stays the very same, marks and logs of the ledger with it.
 */
import type { Day } from '../measures/days.ts';
import { gardenFileOf } from './export-garden-file.ts';
import type { Garden } from './garden.ts';
import type { GardenFile } from './garden-file.ts';
import {
  bedOf,
  binOf,
  boughtOf,
  climateChoiceOf,
  diseaseOf,
  fedOf,
  heldBefore,
  householdOf,
  mulchOf,
  pileOf,
  placeOf,
  plantingOf,
  seedOf,
  soilTestOf,
  standOf,
  topdressedOf,
  wishOf,
} from './items-of-file.ts';
import { mendedFile } from './mended-file.ts';
import { oldestFirst, onOf } from './oldest-first.ts';
import type { StoredEdit } from './stored-edit.ts';
import { type LoggedDay, withDaysAnew, withoutDays } from './weather.ts';
import { withoutAbsent } from './without-absent.ts';

/**
 * The garden with edits folded in.
 *
 * @param readOn the day they were told: a date up to it that is no listed plan has happened
 */
export function mended(garden: Garden, edits: readonly StoredEdit[], readOn: Day): Garden {
  const was = gardenFileOf(garden);
  const is = mendedFile(was, edits);
  const { topdressing: _topdressing, household: _household, ...rest } = garden;
  const held = { readOn, ...heldBefore(garden) };
  const weather = edits.reduce(weatherMended, garden.weather);
  return {
    ...rest,
    ...ofPlace(garden, was, is),
    ...part(is.topdressing, was.topdressing, garden.topdressing, 'topdressing', (row) => row),
    ...part(is.household, was.household, garden.household, 'household', householdOf),
    beds: nouns(was.beds, garden.beds, is.beds, bedOf),
    plantings: nouns(was.plantings, garden.plantings, is.plantings, (row) => plantingOf(row, held)),
    stands: nouns(was.coverStands, garden.stands, is.coverStands, (row) => standOf(row, held)),
    bins: nouns(was.bins, garden.bins, is.bins, binOf),
    piles: nouns(was.piles, garden.piles, is.piles, (row) => pileOf(row, held)),
    ...withRows(garden, was, is),
    weather,
  };
}

function ofPlace(garden: Garden, was: GardenFile, is: GardenFile): Pick<Garden, 'name' | 'place' | 'climate'> {
  return {
    name: is.garden.name,
    place: is.garden === was.garden ? garden.place : placeOf(is),
    climate: is.climate === was.climate ? garden.climate : climateChoiceOf(is),
  };
}

type Rows = Pick<
  Garden,
  | 'mulches'
  | 'topdressed'
  | 'fed'
  | 'compostBought'
  | 'away'
  | 'gear'
  | 'seeds'
  | 'wishes'
  | 'soilTests'
  | 'soilSqueezes'
  | 'diseases'
  | 'coldNights'
>;

/** The lists of rows without ids, those of dated things oldest first again where a row is new in them. */
function withRows(garden: Garden, was: GardenFile, is: GardenFile): Rows {
  const fromOf = ({ from }: { from: Day }): Day => from;
  return {
    mulches: dated(nouns(was.mulches, garden.mulches, is.mulches, mulchOf), garden.mulches, fromOf),
    topdressed: dated(nouns(was.topdressed, garden.topdressed, is.topdressed, topdressedOf), garden.topdressed, onOf),
    fed: dated(nouns(was.fed, garden.fed, is.fed, fedOf), garden.fed, onOf),
    compostBought: dated(
      nouns(was.compostBought, garden.compostBought, is.compostBought, boughtOf),
      garden.compostBought,
      onOf,
    ),
    away: dated(
      nouns(was.away, garden.away, is.away, ({ from, to }) => ({ from, to })),
      garden.away,
      fromOf,
    ),
    gear: nouns(was.gear, garden.gear, is.gear, (row) => row),
    seeds: nouns(was.seeds, garden.seeds, is.seeds, seedOf),
    wishes: nouns(was.wishes, garden.wishes, is.wishes, wishOf),
    soilTests: dated(nouns(was.soilTests, garden.soilTests, is.soilTests, soilTestOf), garden.soilTests, onOf),
    soilSqueezes: dated(
      nouns(was.soilSqueezes, garden.soilSqueezes, is.soilSqueezes, (row) => row),
      garden.soilSqueezes,
      onOf,
    ),
    diseases: dated(nouns(was.diseases, garden.diseases, is.diseases, diseaseOf), garden.diseases, onOf),
    coldNights: dated(
      nouns(was.coldNights, garden.coldNights, is.coldNights, (row) => row),
      garden.coldNights,
      ({ evening }) => evening,
    ),
  };
}

/** The nouns of a list: those whose rows are the same as before, and those of new rows made anew. */
function nouns<Row extends object, Noun>(
  was: readonly Row[],
  held: readonly Noun[],
  is: readonly Row[],
  made: (row: Row) => Noun,
): readonly Noun[] {
  if (is === was) return held;
  const known = new Map(was.map((row, at) => [row, held[at]]));
  return is.map((row) => known.get(row) ?? made(row));
}

function dated<Item>(items: readonly Item[], held: readonly Item[], dayOf: (item: Item) => Day): readonly Item[] {
  return items === held ? held : oldestFirst(items, dayOf);
}

function part<Row, Noun, Key extends string>(
  is: Row | undefined,
  was: Row | undefined,
  held: Noun | undefined,
  key: Key,
  made: (row: Row) => Noun,
): { [name in Key]?: Noun } {
  const noun = is === was || is === undefined ? undefined : made(is);
  const kept = is === was ? held : noun;
  return (kept === undefined ? {} : { [key]: kept }) as { [name in Key]?: Noun };
}

function weatherMended(log: readonly LoggedDay[], edit: StoredEdit): readonly LoggedDay[] {
  if (edit.how === 'days') return withDaysAnew(log, edit.days.map(withoutAbsent));
  return edit.how === 'days-gone' ? withoutDays(log, edit.days) : log;
}
