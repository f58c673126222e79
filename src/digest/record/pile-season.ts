/**
 * A pile's life as the record sums it up.
 */
import type { Garden, Pile } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { HOT_RECORD, hotRecord } from '../../practices/composting/hot-record.ts';
import type { PileSeason } from './shape.ts';

/** A pile with what went in, its heat, its turns and where its compost went. */
export function pileSeason(pile: Pile, garden: Garden): PileSeason {
  const { id, method, built, ingredients, turns, curingSince, finishedOn } = pile;
  const temperatures = temperaturesOf(pile, garden);
  return {
    ...{ id, name: garden.bins.find((bin) => bin.id === pile.binId)?.name ?? id, method },
    ...(built.happened ? { built: built.day } : {}),
    ingredients: ingredients.map(({ materialId, litres }) => ({
      what: feedstockById(materialId).name.toLowerCase(),
      litres,
    })),
    ...(temperatures === undefined ? {} : { temperatures }),
    turns: turns.length,
    ...(curingSince === undefined ? {} : { curingSince }),
    ...(finishedOn === undefined ? {} : { ready: finishedOn }),
    went: wentTo(pile, garden),
  };
}

function temperaturesOf(pile: Pile, { bins }: Garden): PileSeason['temperatures'] {
  const read = pile.readings.flatMap(({ on, tempC }) => (tempC === undefined ? [] : [{ on, tempC }]));
  const [first] = read;
  if (first === undefined) return undefined;
  const highest = read.reduce((most, reading) => (reading.tempC > most.tempC ? reading : most), first);
  const bin = bins.find(({ id }) => id === pile.binId);
  return { readings: read.length, first, highest, hotDays: hotRecord(pile, bin).days, hotFromC: HOT_RECORD.fromC };
}

function wentTo({ id }: Pile, { topdressed, beds }: Garden): PileSeason['went'] {
  return topdressed
    .filter(({ pileIds = [] }) => pileIds.includes(id))
    .map(({ on, bedId, litres, pileIds = [] }) => ({
      ...{ on, bed: bedId, bedName: beds.find((bed) => bed.id === bedId)?.name ?? bedId, litres },
      ...(pileIds.length > 1 ? { mixed: true as const } : {}),
    }));
}
