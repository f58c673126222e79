/**
 * The fold: a garden as its ledger leaves it.
 */
import type { Day, Weekday } from '../measures/days.ts';
import type { Effect } from './effects.ts';
import type { Fact } from './facts.ts';
import type { ClimateChoice, DoneMark, Garden, Pile, Place, Planting, Stand } from './garden.ts';
import { type GardenFile, WEEKDAY_NAMES } from './garden-file.ts';
import type { LedgerEntry } from './ledger.ts';

/** Entries that still stand: neither undone nor themselves a taking-back. */
export function standingEntries(ledger: readonly LedgerEntry[]): LedgerEntry[] {
  const undone = undoneEntries(ledger);
  return ledger.filter((entry) => !undone.has(entry.entry) && entry.fact.kind !== 'entry-undone');
}

/** Numbers of the entries that have been taken back. Newest first, so that a taking-back can itself be taken back. */
export function undoneEntries(ledger: readonly LedgerEntry[]): Set<number> {
  const undone = new Set<number>();
  for (const { entry, fact } of [...ledger].reverse()) {
    if (fact.kind === 'entry-undone' && !undone.has(entry)) undone.add(fact.entry);
  }
  return undone;
}

/**
 * The garden a ledger adds up to.
 *
 * @returns nothing when no garden file stands in it
 */
export function projectGarden(ledger: readonly LedgerEntry[]): Garden | undefined {
  const standing = standingEntries(ledger);
  const last = standing.findLastIndex(({ fact }) => fact.kind === 'garden-imported');
  const imported = standing[last];
  const first = standing.find(({ fact }) => fact.kind === 'garden-imported');
  if (!imported || imported.fact.kind !== 'garden-imported' || !first) return undefined;
  const reported = imported.fact.prefer === 'file' ? standing.slice(last + 1) : standing;
  return reported.reduce(applyFact, gardenOfFile(imported.fact.file, imported.recordedOn, first.recordedOn));
}

/** A garden as its file alone tells it: dates up to the day it was read have happened, later ones are plans. */
export function gardenOfFile(file: GardenFile, readOn: Day, startedOn: Day): Garden {
  return {
    id: file.garden.id ?? '',
    name: file.garden.name,
    startedOn,
    place: placeOf(file),
    climate: climateChoiceOf(file),
    beds: file.beds.map(({ id = '', ...bed }) => withoutAbsent({ id, ...bed })),
    plantings: file.plantings.map((row) => plantingOf(row, readOn)),
    stands: file.coverStands.map((row) => standOf(row, readOn)),
    bins: file.bins.map(({ id = '', name, volumeL }) => ({ id, name, volumeL })),
    piles: file.piles.map((row) => pileOf(row, readOn)),
    ...(file.topdressing ? { topdressing: file.topdressing } : {}),
    topdressed: file.topdressed.map(({ bed, on, litres }) => ({ bedId: bed, on, litres })),
    compostBought: file.compostBought,
    away: file.away,
    done: [],
    skipped: {},
    pins: {},
  };
}

function placeOf({ garden }: GardenFile): Place {
  const { id: _id, name: _name, workDays, ...rest } = garden;
  const days = workDays.map((name) => (WEEKDAY_NAMES.indexOf(name) + 1) as Weekday);
  return withoutAbsent({ ...rest, workDays: [...new Set(days)].sort() });
}

function climateChoiceOf({ climate }: GardenFile): ClimateChoice {
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

function plantingOf(row: GardenFile['plantings'][number], readOn: Day): Planting {
  const start = row.sow ?? row.setOut ?? readOn;
  return {
    id: row.id ?? '',
    bedId: row.bed,
    cropId: row.crop,
    start: { how: row.sow === undefined ? 'set-out' : 'sow', day: start, happened: start <= readOn },
    ...(row.lastHarvest === undefined
      ? {}
      : { lastHarvest: { day: row.lastHarvest, happened: row.lastHarvest <= readOn } }),
  };
}

function standOf(row: GardenFile['coverStands'][number], readOn: Day): Stand {
  return {
    id: row.id ?? '',
    bedId: row.bed,
    coverId: row.cover ?? row.mix ?? '',
    sow: { day: row.sow, happened: row.sow <= readOn },
    ...(row.cut === undefined ? {} : { cutOn: row.cut }),
    regrowthCheckedOn: row.regrowthChecked,
    ...(row.dead === undefined ? {} : { deadOn: row.dead }),
  };
}

function pileOf(row: GardenFile['piles'][number], readOn: Day): Pile {
  return {
    id: row.id ?? '',
    binId: row.bin,
    built: { day: row.built, happened: row.built <= readOn },
    method: row.method,
    ingredients: row.ingredients.map(({ material, litres }) => ({ materialId: material, litres })),
    readings: row.readings.map((reading) => withoutAbsent(reading)),
    turns: row.turns,
    ...(row.curingSince === undefined ? {} : { curingSince: row.curingSince }),
    ...(row.finished === undefined ? {} : { finishedOn: row.finished }),
    ...(row.finishedLitres === undefined ? {} : { finishedLitres: row.finishedLitres }),
  };
}

/** A copy without the keys whose value is undefined, so that absence has one form. */
export function withoutAbsent<T extends object>(value: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(value).filter(([, held]) => held !== undefined)) as never;
}

function applyFact(garden: Garden, { entry, fact }: LedgerEntry): Garden {
  switch (fact.kind) {
    case 'task-done':
      return fact.makes.reduce<Garden>((state, effect) => applyEffect(state, effect, fact.on), {
        ...garden,
        done: [...garden.done, doneMark(fact, entry)],
      });
    case 'task-skipped':
      return { ...garden, skipped: { ...garden.skipped, [fact.key]: fact.on } };
    case 'day-pinned':
      return { ...garden, pins: { ...garden.pins, [fact.key]: fact.day } };
    case 'day-unpinned':
      return { ...garden, pins: Object.fromEntries(Object.entries(garden.pins).filter(([key]) => key !== fact.key)) };
    case 'pile-read': {
      const { kind: _kind, pileId, ...reading } = fact;
      return changePile(garden, pileId, (pile) => ({
        ...pile,
        readings: [...pile.readings, withoutAbsent(reading)],
      }));
    }
    case 'garden-imported':
    case 'entry-undone':
      return garden;
    default:
      return fact satisfies never;
  }
}

function doneMark(fact: Extract<Fact, { kind: 'task-done' }>, entry: number): DoneMark {
  const { key, on, practice, taskKind, title, job, subject, effortMinutes } = fact;
  return { key, on, practice, kind: taskKind, title, job, subject, effortMinutes, entry };
}

function applyEffect(garden: Garden, effect: Effect, on: Day): Garden {
  switch (effect.makes) {
    case 'stand-sown':
      return sowStand(garden, effect, on);
    case 'stand-cut':
      return changeStand(garden, effect.standId, (stand) => ({ ...stand, cutOn: on }));
    case 'regrowth-checked':
      return changeStand(garden, effect.standId, (stand) => ({
        ...stand,
        regrowthCheckedOn: [...stand.regrowthCheckedOn, on],
      }));
    case 'stand-dead':
      return changeStand(garden, effect.standId, (stand) => ({ ...stand, deadOn: on }));
    case 'bed-cleared':
      return {
        ...garden,
        plantings: garden.plantings.map((row) =>
          row.id === effect.plantingId ? { ...row, lastHarvest: { day: on, happened: true } } : row,
        ),
      };
    case 'pile-built':
      return changePile(garden, effect.pileId, (pile) => ({ ...pile, built: { day: on, happened: true } }));
    case 'pile-turned':
      return changePile(garden, effect.pileId, (pile) => ({ ...pile, turns: [...pile.turns, on] }));
    case 'pile-curing':
      return changePile(garden, effect.pileId, (pile) => ({ ...pile, curingSince: on }));
    case 'pile-finished':
      return changePile(garden, effect.pileId, (pile) => ({ ...pile, finishedOn: on }));
    case 'bed-topdressed':
      return { ...garden, topdressed: [...garden.topdressed, { bedId: effect.bedId, on, litres: effect.litres }] };
    case 'compost-bought':
      return { ...garden, compostBought: [...garden.compostBought, { on, litres: effect.litres }] };
    default:
      return effect satisfies never;
  }
}

function sowStand(garden: Garden, effect: Extract<Effect, { makes: 'stand-sown' }>, on: Day): Garden {
  const sow = { day: on, happened: true };
  if (garden.stands.some((stand) => stand.id === effect.standId)) {
    return changeStand(garden, effect.standId, (stand) => ({ ...stand, sow }));
  }
  const { standId: id, bedId, coverId } = effect;
  return { ...garden, stands: [...garden.stands, { id, bedId, coverId, sow, regrowthCheckedOn: [] }] };
}

function changeStand(garden: Garden, id: string, change: (stand: Stand) => Stand): Garden {
  return { ...garden, stands: garden.stands.map((stand) => (stand.id === id ? change(stand) : stand)) };
}

function changePile(garden: Garden, id: string, change: (pile: Pile) => Pile): Garden {
  return { ...garden, piles: garden.piles.map((pile) => (pile.id === id ? change(pile) : pile)) };
}
