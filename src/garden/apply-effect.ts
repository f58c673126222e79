/**
 * What doing a task makes true of a garden.
 */
import { type Day, earliestOf, yearOf } from '../measures/days.ts';
import { tenth } from '../measures/tenth.ts';
import type { Effect } from './effects.ts';
import type { CompostBought, Garden, Pile, Planting } from './garden.ts';
import { harvestEnd } from './last-harvest.ts';
import { hasBed } from './plan-covers.ts';
import { withoutAbsent } from './without-absent.ts';
import { begun, changePile, changePlanting, changeStand, regrown, workPile, workStand } from './worked-on.ts';

/** The garden with an effect of work that was done on a day. What is about things no longer there changes nothing. */
export function applyEffect(garden: Garden, effect: Effect, on: Day): Garden {
  switch (effect.makes) {
    case 'stand-sown':
    case 'stand-resown':
    case 'seed-sown':
    case 'stand-cut':
    case 'regrowth-checked':
    case 'regrowth-worked':
    case 'stand-dead':
      return onStand(garden, effect, on);
    case 'pile-built':
    case 'pile-turned':
    case 'pile-curing':
    case 'pile-finished':
      return onPile(garden, effect, on);
    case 'planting-raised':
    case 'planting-started':
    case 'bed-cleared':
      return onPlanting(garden, effect, on);
    case 'bed-filled':
    case 'bed-topdressed':
    case 'bed-fed':
    case 'soil-sampled':
    case 'soil-squeezed':
      return onSoil(garden, effect, on);
    case 'seed-bought':
    case 'compost-bought':
    case 'compost-tested':
      return onStore(garden, effect, on);
    default:
      return effect satisfies never;
  }
}

/** An effect of some kinds. */
type EffectOf<Makes extends Effect['makes']> = Extract<Effect, { makes: Makes }>;

function onStand(garden: Garden, effect: Extract<Effect, { standId: string }>, on: Day): Garden {
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
    default:
      return effect satisfies never;
  }
}

function onPile(garden: Garden, effect: Extract<Effect, { pileId: string }>, on: Day): Garden {
  switch (effect.makes) {
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
    default:
      return effect satisfies never;
  }
}

function onPlanting(
  garden: Garden,
  effect: EffectOf<'planting-raised' | 'planting-started' | 'bed-cleared'>,
  on: Day,
): Garden {
  switch (effect.makes) {
    case 'bed-cleared':
      return clearBed(garden, effect.plantingId, on);
    case 'planting-started':
      return changePlanting(garden, effect.plantingId, (row) => ({
        ...row,
        start: { ...row.start, ...meantFor(row.start, on), day: on, happened: true },
      }));
    case 'planting-raised':
      return changePlanting(garden, effect.plantingId, (row) => ({ ...row, indoorsOn: on }));
    default:
      return effect satisfies never;
  }
}

type SoilEffect = EffectOf<'bed-filled' | 'bed-topdressed' | 'bed-fed' | 'soil-sampled' | 'soil-squeezed'>;

/** What is done to the soil of beds. */
function onSoil(garden: Garden, effect: SoilEffect, on: Day): Garden {
  switch (effect.makes) {
    case 'bed-filled':
      return {
        ...garden,
        beds: garden.beds.map((bed) => (bed.id === effect.bedId ? { ...bed, filledOn: on } : bed)),
      };
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

/** What is bought, and tried out before it is used. */
function onStore(
  garden: Garden,
  effect: EffectOf<'seed-bought' | 'compost-bought' | 'compost-tested'>,
  on: Day,
): Garden {
  switch (effect.makes) {
    case 'seed-bought': {
      const plant = { kind: 'cover', id: effect.coverId } as const;
      const packet = { plant, packedYear: yearOf(on), held: { grams: effect.grams, on } };
      return { ...garden, seeds: [...garden.seeds, packet] };
    }
    case 'compost-bought':
      return { ...garden, compostBought: [...garden.compostBought, { on, litres: effect.litres, ordered: true }] };
    case 'compost-tested':
      return testCompost(garden, effect.boughtOn, on);
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

/** A bed cleared late was not harvested late: a last harvest for an earlier day keeps it. */
function clearBed(garden: Garden, plantingId: string, on: Day): Garden {
  return changePlanting(garden, plantingId, (row) => ({
    ...row,
    start: begun(row.start, on),
    lastHarvest: { day: earliestOf(harvestEnd(row) ?? on, on), happened: true },
  }));
}
