/**
 * Work marked done in an order it cannot have been done in: before what it waits for, or before the thing was there.
 */
import { fullDay } from '../../digest/words.ts';
import type { Effect } from '../../garden/effects.ts';
import type { Garden, Pile, Planting, Stand } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { type Day, latestOf } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { TaskKey } from '../../practices/draft.ts';
import type { PlannedTask } from '../../schedule/plan.ts';

/** Something that came before, and the day it did. */
interface Before {
  what: string;
  on: Day;
}

/**
 * What speaks against a task having been done on a day: the latest of all that came before it.
 *
 * @param together keys marked in the same breath, all on that day
 */
export function orderProblems(garden: Garden, task: PlannedTask, on: Day, together: readonly TaskKey[]): Problem[] {
  const before = [...awaited(garden, task, together), ...task.makes.flatMap((effect) => beforeEffect(garden, effect))];
  const [last] = before.filter((each) => each.on > on).sort((a, b) => (a.on > b.on ? -1 : 1));
  if (last === undefined) return [];
  const { units } = garden.place;
  const title = readableIn(units, task.title, on);
  const first = fullDay(last.on, units);
  return [
    {
      where: title,
      what: `It cannot have been done on ${fullDay(on, units)}: ${last.what} on ${first}.`,
      mend: `Give a day from ${first} on; or, if that day is the wrong one, take it back first and mark it on its own.`,
    },
  ];
}

/**
 * Work that what comes after it cannot have come before. Compost may be spread on a crop that stands, a cover be sown
 * under one, and soil be worked that nobody squeezed: that is no good order, and yet happens.
 */
const COMES_FIRST: ReadonlySet<string> = new Set([
  'sow-cover',
  'cut-cover',
  'cut-again',
  'lay-sheet',
  'build-pile',
  'turn-pile',
  'cure-pile',
  'fill-bed',
  'start-indoors',
  'harden-off',
  'sow-crop',
  'set-out',
  'mulch-garlic',
  'cover-beds',
]);

/** What it waits for that was marked done and cannot but come first. */
function awaited({ done, place }: Garden, { after }: PlannedTask, together: readonly TaskKey[]): Before[] {
  return after.flatMap(({ key, yields }) => {
    const mark = yields || together.includes(key) ? undefined : done.findLast((each) => each.key === key);
    if (mark === undefined || !COMES_FIRST.has(mark.kind)) return [];
    return [{ what: `"${readableIn(place.units, mark.title, mark.on)}" was done`, on: mark.on }];
  });
}

/** What the garden knows to have come before an effect. */
function beforeEffect(garden: Garden, effect: Effect): Before[] {
  const of = <T extends { id: string }>(items: readonly T[], id: string): T | undefined =>
    items.find((each) => each.id === id);
  switch (effect.makes) {
    case 'stand-cut':
    case 'stand-dead':
    case 'stand-resown':
      return sown(of(garden.stands, effect.standId));
    case 'regrowth-checked':
    case 'regrowth-worked':
      return cut(of(garden.stands, effect.standId));
    case 'bed-cleared':
      return started(of(garden.plantings, effect.plantingId));
    case 'planting-started': {
      const planting = of(garden.plantings, effect.plantingId);
      return [...filled(garden, planting?.bedId), ...raised(planting)];
    }
    case 'stand-sown':
    case 'bed-topdressed':
    case 'bed-fed':
      return filled(garden, effect.bedId);
    case 'pile-turned':
    case 'pile-curing':
      return worked(of(garden.piles, effect.pileId));
    case 'pile-finished': {
      const pile = of(garden.piles, effect.pileId);
      const cures = pile?.curingSince;
      return [...worked(pile), ...(cures === undefined ? [] : [{ what: 'the pile was moved to cure', on: cures }])];
    }
    case 'compost-tested':
      return [{ what: 'it was bought', on: effect.boughtOn }];
    default:
      return [];
  }
}

function sown(stand: Stand | undefined): Before[] {
  return stand?.sow.happened ? [{ what: 'the cover was sown', on: stand.sow.day }] : [];
}

function cut(stand: Stand | undefined): Before[] {
  const last = stand?.regrowth?.at(-1);
  return [
    ...sown(stand),
    ...(stand?.cutOn === undefined ? [] : [{ what: 'the cover was cut', on: stand.cutOn }]),
    ...(last === undefined ? [] : [{ what: REGROWTH[last.what], on: last.on }]),
  ];
}

const REGROWTH = {
  'grew-again': 'it was seen to have grown again',
  'cut-again': 'it was cut again',
  'sheet-laid': 'the sheet was laid',
  'sheet-lifted': 'the sheet was lifted',
} as const;

function started(planting: Planting | undefined): Before[] {
  return planting?.start.happened ? [{ what: 'the crop went in', on: planting.start.day }] : [];
}

function raised(planting: Planting | undefined): Before[] {
  const on = planting?.indoorsOn;
  return on === undefined ? [] : [{ what: 'its plants were sown under a roof', on }];
}

function filled({ beds }: Garden, bedId: string | undefined): Before[] {
  const on = beds.find(({ id }) => id === bedId)?.filledOn;
  return on === undefined ? [] : [{ what: 'the bed was filled', on }];
}

function worked(pile: Pile | undefined): Before[] {
  if (!pile?.built.happened) return [];
  const [first, ...turns] = [pile.built.day, ...pile.turns];
  const last = latestOf(first, ...turns);
  return [{ what: last === first ? 'the pile was built' : 'the pile was last turned', on: last }];
}
