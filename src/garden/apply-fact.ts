/**
 * What each fact does to a garden.
 */
import { AT_WORK_C } from '../handbook/pile-heat.ts';
import { type Day, earliestOf, yearOf } from '../measures/days.ts';
import { tenth } from '../measures/tenth.ts';
import type { Effect } from './effects.ts';
import type { DoneTask, Fact } from './facts.ts';
import type {
  CompostBought,
  CropWish,
  DoneMark,
  Garden,
  NotReady,
  Pile,
  PileReading,
  Planting,
  Regrowth,
  Stand,
} from './garden.ts';
import { withAssigned, withMember, withoutMail, withoutMember, withPeople } from './household-changes.ts';
import { harvestEnd } from './last-harvest.ts';
import type { LedgerEntry } from './ledger.ts';
import { hasBed, planMulch, planStandIn, withoutPlanned } from './plan-covers.ts';
import { planCropsIn } from './plan-crops.ts';
import { withLogged } from './weather.ts';
import { withoutAbsent } from './without-absent.ts';

/** The garden once a fact is true. Lists only grow at their end; what is about things no longer there changes nothing. */
export function applyFact(garden: Garden, { entry, fact }: LedgerEntry): Garden {
  switch (fact.kind) {
    case 'tasks-done':
      return markDone(garden, fact, entry);
    case 'tasks-skipped': {
      const skipped = fact.tasks.map(({ key }) => [key, fact.on]);
      return { ...garden, skipped: { ...garden.skipped, ...Object.fromEntries(skipped) } };
    }
    case 'put-off':
      return putOffTasks(garden, fact);
    case 'day-pinned':
      return { ...without(garden, 'putOff', [fact.key]), pins: { ...garden.pins, [fact.key]: fact.day } };
    case 'day-unpinned':
      return without(garden, 'pins', [fact.key]);
    case 'pile-read':
      return readPile(garden, fact);
    case 'compost-not-ready':
      return changePile(garden, fact.pileId, (pile) => notReadyYet(pile, fact));
    case 'cold-night-told': {
      const { kind: _kind, ...night } = fact;
      return { ...garden, coldNights: [...garden.coldNights, night] };
    }
    case 'away-told':
      return { ...garden, away: [...garden.away, { from: fact.from, to: fact.to }] };
    case 'soil-squeezed': {
      const { kind: _kind, ...squeeze } = fact;
      return { ...garden, soilSqueezes: [...garden.soilSqueezes, squeeze] };
    }
    case 'disease-found': {
      const { kind: _kind, ...found } = fact;
      return hasBed(garden, found.bedId) ? { ...garden, diseases: [...garden.diseases, found] } : garden;
    }
    case 'weather-logged':
      return { ...garden, weather: withLogged(garden.weather, fact.days.map(withoutAbsent)) };
    case 'stage-seen': {
      const { kind: _kind, standId, ...seen } = fact;
      return workStand(garden, standId, seen.on, (stand) => ({ seen: [...(stand.seen ?? []), withoutAbsent(seen)] }));
    }
    case 'stand-looked': {
      const { standId, on, covered, weedy, task } = fact;
      return workStand(settled(garden, task, on, entry), standId, on, ({ looked = [] }) => ({
        looked: [...looked, { on, covered, weedy }],
      }));
    }
    case 'regrowth-seen': {
      const { standId, on, answer, task } = fact;
      return regrown(settled(garden, task, on, entry), standId, { on, what: 'grew-again', answer });
    }
    case 'stand-planned':
      return planStandIn(garden, fact);
    case 'stand-dropped':
      return withoutPlanned(garden, [fact.standId]);
    case 'mulch-planned':
      return planMulch(garden, fact);
    case 'plantings-planned':
      return planCropsIn(garden, fact);
    case 'crop-wished': {
      const { kind: _kind, ...wish } = fact;
      return { ...garden, wishes: [...wishesBut(garden, wish), withoutAbsent(wish)] };
    }
    case 'wish-dropped':
      return { ...garden, wishes: wishesBut(garden, fact) };
    case 'member-kept':
      return withMember(garden, fact);
    case 'member-gone':
      return withoutMember(garden, fact);
    case 'mail-stopped':
      return withoutMail(garden, fact);
    case 'people-told':
      return withPeople(garden, fact);
    case 'task-assigned':
      return withAssigned(garden, fact);
    case 'garden-imported':
    case 'garden-mended':
    case 'entry-undone':
      return garden;
    default:
      return fact satisfies never;
  }
}

/** The garden with tasks done, and what doing them makes true. */
function markDone(garden: Garden, { on, tasks }: Extract<Fact, { kind: 'tasks-done' }>, entry: number): Garden {
  const marks = tasks.map((task) => doneMark(task, on, entry));
  const marked = { ...garden, done: [...garden.done, ...marks] };
  return tasks.flatMap(({ makes }) => makes).reduce<Garden>((state, effect) => applyEffect(state, effect, on), marked);
}

/** The garden with a reading of a pile. One that heats again while it cures is not ready yet. */
function readPile(garden: Garden, { kind: _kind, pileId, ...reading }: Extract<Fact, { kind: 'pile-read' }>): Garden {
  const seen = withoutAbsent(reading);
  const read = workPile(garden, pileId, reading.on, ({ readings }) => ({ readings: [...readings, seen] }));
  return changePile(read, pileId, (pile) =>
    heatsInCuring(pile, seen) ? notReadyYet(pile, { on: reading.on, failed: ['heats'] }) : pile,
  );
}

/** The garden with tasks put off past a day. A pin on a day up to it holds no longer: the later word counts. */
function putOffTasks(garden: Garden, { on, tasks }: Extract<Fact, { kind: 'put-off' }>): Garden {
  const keys = tasks.map(({ key }) => key);
  const early = keys.filter((key) => (garden.pins[key] ?? on) <= on);
  const put = Object.fromEntries(keys.map((key) => [key, on]));
  return { ...without(garden, 'pins', early), putOff: { ...garden.putOff, ...put } };
}

/** The garden with no pin on some tasks, or none of them put off. */
function without(garden: Garden, told: 'pins' | 'putOff', keys: readonly string[]): Garden {
  return { ...garden, [told]: Object.fromEntries(Object.entries(garden[told]).filter(([key]) => !keys.includes(key))) };
}

/** The wishes less the one of a crop and season. */
function wishesBut(
  { wishes }: Garden,
  { cropId, season }: { cropId: string; season?: number | undefined },
): CropWish[] {
  return wishes.filter((wish) => wish.cropId !== cropId || wish.season !== season);
}

/** The garden with the task marked done that asked for what was told. */
function settled(garden: Garden, task: DoneTask | undefined, on: Day, entry: number): Garden {
  return task === undefined ? garden : { ...garden, done: [...garden.done, doneMark(task, on, entry)] };
}

function doneMark(task: DoneTask, on: Day, entry: number): DoneMark {
  const { key, practice, taskKind, title, job, subject, effortMinutes, onceMinutes } = task;
  return withoutAbsent({ key, on, practice, kind: taskKind, title, job, subject, effortMinutes, onceMinutes, entry });
}

function applyEffect(garden: Garden, effect: Effect, on: Day): Garden {
  switch (effect.makes) {
    case 'stand-sown':
      return sowStand(garden, effect, on);
    case 'stand-resown':
      return workStand(garden, effect.standId, on, ({ resown = [] }) => ({
        resown: [...resown, { on, coverId: effect.coverId }],
      }));
    case 'seed-sown': {
      const { standId, coverId, grams } = effect;
      return workStand(garden, standId, on, ({ seed = [] }) => ({ seed: [...seed, { coverId, on, grams }] }));
    }
    case 'seed-bought': {
      const plant = { kind: 'cover', id: effect.coverId } as const;
      const packet = { plant, packedYear: yearOf(on), held: { grams: effect.grams, on } };
      return { ...garden, seeds: [...garden.seeds, packet] };
    }
    case 'stand-cut':
      return workStand(garden, effect.standId, on, () => ({ cutOn: on }));
    case 'regrowth-checked':
      return workStand(garden, effect.standId, on, ({ regrowthCheckedOn }) => ({
        regrowthCheckedOn: [...regrowthCheckedOn, on],
      }));
    case 'regrowth-worked':
      return regrown(garden, effect.standId, { on, what: effect.what });
    case 'stand-dead':
      return workStand(garden, effect.standId, on, () => ({ deadOn: on }));
    case 'bed-cleared':
      return clearBed(garden, effect.plantingId, on);
    case 'bed-filled':
      return {
        ...garden,
        beds: garden.beds.map((bed) => (bed.id === effect.bedId ? { ...bed, filledOn: on } : bed)),
      };
    case 'pile-built':
      return changePile(garden, effect.pileId, (pile) => ({
        ...builtOf(pile, effect.litres),
        built: { day: on, happened: true },
      }));
    case 'pile-turned':
      return workPile(garden, effect.pileId, on, ({ turns }) => ({ turns: [...turns, on] }));
    case 'pile-curing':
      return workPile(garden, effect.pileId, on, () => ({ curingSince: on }));
    case 'pile-finished':
      return workPile(garden, effect.pileId, on, () =>
        withoutAbsent({ finishedOn: on, finishedLitres: effect.litres }),
      );
    case 'bed-topdressed': {
      const { makes: _makes, ...spread } = effect;
      if (!hasBed(garden, effect.bedId)) return garden;
      return { ...garden, topdressed: [...garden.topdressed, withoutAbsent({ ...spread, on })] };
    }
    case 'bed-fed': {
      const { makes: _makes, ...strewn } = effect;
      if (!hasBed(garden, effect.bedId)) return garden;
      return { ...garden, fed: [...garden.fed, withoutAbsent({ ...strewn, on })] };
    }
    case 'compost-bought':
      return { ...garden, compostBought: [...garden.compostBought, { on, litres: effect.litres, ordered: true }] };
    case 'compost-tested':
      return testCompost(garden, effect.boughtOn, on);
    case 'planting-started':
      return changePlanting(garden, effect.plantingId, (row) => ({
        ...row,
        start: { ...row.start, ...meantFor(row.start, on), day: on, happened: true },
      }));
    case 'planting-raised':
      return changePlanting(garden, effect.plantingId, (row) => ({ ...row, indoorsOn: on }));
    case 'soil-sampled':
      return sampleSoil(garden, effect.bedId, on);
    case 'soil-squeezed': {
      const { soilTexture, answer } = effect;
      return { ...garden, soilSqueezes: [...garden.soilSqueezes, { on, soilTexture, answer }] };
    }
    default:
      return effect satisfies never;
  }
}

/** The garden with a soil sample taken: of one bed, or of the whole of it. */
function sampleSoil(garden: Garden, bedId: string | undefined, on: Day): Garden {
  if (bedId !== undefined && !hasBed(garden, bedId)) return garden;
  return { ...garden, soilTests: [...garden.soilTests, withoutAbsent({ on, bedId })] };
}

/** A pile built of more or less than was planned holds more or less of each thing. */
function builtOf(pile: Pile, litres: number | undefined): Pile {
  const planned = pile.ingredients.reduce((sum, each) => sum + each.litres, 0);
  if (litres === undefined || planned === 0) return pile;
  const ingredients = pile.ingredients.map((each) => ({ ...each, litres: tenth((each.litres * litres) / planned) }));
  return { ...pile, ingredients };
}

/** The day a crop was meant to go in on, kept where it went in on another. */
function meantFor({ day, happened }: Planting['start'], on: Day): { meant?: Day } {
  return happened || day === on ? {} : { meant: day };
}

function regrown(garden: Garden, standId: string, told: Regrowth): Garden {
  return workStand(garden, standId, told.on, ({ regrowth = [] }) => ({ regrowth: [...regrowth, told] }));
}

/** Whether a thermometer finds a pile at work after the day it was moved to cure. */
function heatsInCuring({ curingSince, finishedOn }: Pile, { on, tempC }: PileReading): boolean {
  if (curingSince === undefined || finishedOn !== undefined) return false;
  return on > curingSince && tempC !== undefined && tempC >= AT_WORK_C;
}

/** A pile that heats again was moved to cure too soon, and works on. */
function notReadyYet(pile: Pile, { on, failed }: NotReady): Pile {
  const notReady = [...(pile.notReady ?? []), { on, failed }];
  const { curingSince: _curing, ...working } = pile;
  return failed.includes('heats') ? { ...working, notReady } : { ...pile, notReady };
}

function testCompost(garden: Garden, boughtOn: Day, on: Day): Garden {
  const isIt = (row: CompostBought): boolean => row.on === boughtOn && row.tested === undefined;
  if (!garden.compostBought.some(isIt)) return garden;
  return {
    ...garden,
    compostBought: garden.compostBought.map((row) => (isIt(row) ? { ...row, tested: on } : row)),
  };
}

function sowStand(garden: Garden, effect: Extract<Effect, { makes: 'stand-sown' }>, on: Day): Garden {
  const sow = { day: on, happened: true };
  if (garden.stands.some((stand) => stand.id === effect.standId)) {
    return changeStand(garden, effect.standId, (stand) => ({ ...stand, sow }));
  }
  const { standId: id, bedId, coverId } = effect;
  if (!hasBed(garden, bedId)) return garden;
  return { ...garden, stands: [...garden.stands, { id, bedId, coverId, sow, regrowthCheckedOn: [] }] };
}

/** Work on a thing shows that it was there: planned or not, it began on its day, or on the day of the work if earlier. */
function begun<Start extends { day: Day; happened: boolean }>(start: Start, workedOn: Day): Start {
  return { ...start, day: earliestOf(start.day, workedOn), happened: true };
}

/** A bed cleared late was not harvested late: a last harvest for an earlier day keeps it. */
function clearBed(garden: Garden, plantingId: string, on: Day): Garden {
  return changePlanting(garden, plantingId, (row) => ({
    ...row,
    start: begun(row.start, on),
    lastHarvest: { day: earliestOf(harvestEnd(row) ?? on, on), happened: true },
  }));
}

function changePlanting(garden: Garden, id: string, change: (planting: Planting) => Planting): Garden {
  return { ...garden, plantings: garden.plantings.map((row) => (row.id === id ? change(row) : row)) };
}

function workStand(garden: Garden, id: string, on: Day, change: (stand: Stand) => Partial<Stand>): Garden {
  return changeStand(garden, id, (stand) => ({ ...stand, sow: begun(stand.sow, on), ...change(stand) }));
}

function workPile(garden: Garden, id: string, on: Day, change: (pile: Pile) => Partial<Pile>): Garden {
  return changePile(garden, id, (pile) => ({ ...pile, built: begun(pile.built, on), ...change(pile) }));
}

function changeStand(garden: Garden, id: string, change: (stand: Stand) => Stand): Garden {
  return { ...garden, stands: garden.stands.map((stand) => (stand.id === id ? change(stand) : stand)) };
}

function changePile(garden: Garden, id: string, change: (pile: Pile) => Pile): Garden {
  return { ...garden, piles: garden.piles.map((pile) => (pile.id === id ? change(pile) : pile)) };
}
