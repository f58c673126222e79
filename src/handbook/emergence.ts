/**
 * Days from sowing to emergence, sown 13 mm deep in soil held at one temperature (agro:S45).
 *
 * Only temperatures at which a kind came up are listed: in colder or hotter soil it was not seen to, or not tested.
 * Kinds with no figures of their own borrow those of a near relation, a house default, as for germination
 * temperatures.
 */
import type { SourceId } from './shapes/row.ts';

/** How long seed of some kinds takes to come up. */
export interface EmergenceDays {
  vegetableIds: readonly string[];
  /** Soil temperature, °C, and days to emergence there, coldest first. */
  byTempC: readonly (readonly [tempC: number, days: number])[];
}

/** Where the days are read. */
export const EMERGENCE_SOURCE: SourceId = 'agro:S45';

/** Soil temperatures of the trial's columns, °C. */
const COLUMNS_C = [0, 5, 10, 15, 20, 25, 30, 35, 40] as const;

/** A row as it is printed; a dash where nothing came up or nothing was tried. */
function row(vegetableIds: string, printed: string): EmergenceDays {
  const cells = printed.split(' ');
  return {
    vegetableIds: vegetableIds.split(' '),
    byTempC: COLUMNS_C.flatMap((tempC, i) => {
      const days = Number(cells[i]);
      return Number.isNaN(days) ? [] : [[tempC, days] as const];
    }),
  };
}

/** Every kind with days to emergence: at 0, 5, 10 … 40 °C. */
export const emergenceDays: readonly EmergenceDays[] = [
  row('lima-bean', '- - - 31 18 7 7 - -'),
  row('snap-bean pole-bean dry-bean edamame', '- - - 16 11 8 6 6 -'),
  row('beet swiss-chard', '- 42 17 10 6 5 5 5 -'),
  row(
    'cabbage broccoli brussels-sprouts kale collards kohlrabi chinese-cabbage pak-choi mustard-greens arugula rutabaga',
    '- - 15 9 6 5 4 - -',
  ),
  row('cauliflower', '- - 20 10 6 5 5 - -'),
  row('carrot', '- 51 17 10 7 6 6 9 -'),
  row('celery celeriac', '- 41 16 12 7 - - - -'),
  row('sweet-corn', '- - 22 12 7 4 4 3 -'),
  row('cucumber summer-squash winter-squash pumpkin', '- - - 13 6 4 3 3 -'),
  row('eggplant', '- - - - 13 8 5 - -'),
  row('lettuce-leaf lettuce-head endive radicchio', '49 15 7 4 3 2 3 - -'),
  row('muskmelon', '- - - - 8 4 3 - -'),
  row('okra', '- - - 27 17 13 7 6 7'),
  row('onion-seed green-onion leek chives', '136 31 13 7 5 4 4 13 -'),
  row('parsley cilantro dill fennel-bulb', '- - 29 17 14 13 12 - -'),
  row('parsnip', '172 57 27 19 14 15 32 - -'),
  row('pea fava-bean', '- 36 14 9 8 6 6 - -'),
  row('pepper basil', '- - - 25 13 8 8 9 -'),
  row('radish winter-radish', '- 29 11 6 4 4 3 - -'),
  row('spinach', '63 23 12 7 6 5 6 - -'),
  row('tomato tomatillo', '- - 43 14 8 6 6 9 -'),
  row('turnip', '- - 5 3 2 1 1 1 3'),
  row('watermelon', '- - - - 12 5 4 3 -'),
];

/** Days to emergence by vegetable id. */
export const emergenceByVegetable: ReadonlyMap<string, EmergenceDays> = new Map(
  emergenceDays.flatMap((days) => days.vegetableIds.map((id) => [id, days] as const)),
);
