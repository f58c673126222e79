/**
 * How many years seed keeps, dry and cool, before it wants a test; and what is bought of kinds that are not sown.
 *
 * Most figures are a relative guide as extension services print it; kinds it leaves out borrow those of a near
 * relation, a house default: green onion and chives from onion, pak choi and arugula from Chinese cabbage, fava bean
 * and edamame from bean, tomatillo from tomato, winter radish from radish. Herbs are from memory. Covers borrow in the same
 * way: peas, vetches and clovers from pea, beans and cowpea from bean, mustard from mustard greens, oilseed radish from radish,
 * grasses from sweet corn, the one grass of the guide. Buckwheat and phacelia have no relation in it: two years, as the grasses.
 */
import { fromMemory, type Row, type SourceId } from './shapes/row.ts';

/** Years that seed of some crops keeps. */
export interface SeedLife extends Row<'years'> {
  vegetableIds: readonly string[];
  years: number;
}

const guide: SourceId = 'veg:V81';
const quoted: SourceId = 'veg:V82';

const read = (years: number, ids: string): SeedLife => ({
  years,
  vegetableIds: ids.split(' '),
  sources: [guide],
  marks: {},
});
const secondHand = (years: number, ids: string): SeedLife => ({
  ...read(years, ids),
  sources: [quoted],
  marks: { years: 'secondary' },
});
const borrowed = (years: number, ids: string): SeedLife => ({
  ...read(years, ids),
  marks: { years: 'house default' },
});

/** Every crop that is grown from seed. */
export const seedLives: readonly SeedLife[] = [
  read(1, 'onion-seed parsnip'),
  secondHand(1, 'parsley'),
  borrowed(1, 'green-onion chives'),
  read(2, 'leek okra pepper sweet-corn'),
  read(3, 'snap-bean pole-bean dry-bean lima-bean broccoli carrot chinese-cabbage kohlrabi pea spinach'),
  secondHand(3, 'celery celeriac'),
  borrowed(3, 'pak-choi arugula fava-bean edamame'),
  { ...read(3, 'cilantro dill'), sources: [], marks: fromMemory('years') },
  read(4, 'beet swiss-chard brussels-sprouts cabbage cauliflower eggplant kale mustard-greens rutabaga turnip'),
  read(4, 'pumpkin summer-squash winter-squash watermelon tomato'),
  secondHand(4, 'radicchio fennel-bulb'),
  borrowed(4, 'tomatillo'),
  read(5, 'collards cucumber endive muskmelon radish'),
  borrowed(5, 'winter-radish'),
  { ...read(5, 'basil'), sources: [], marks: fromMemory('years') },
  read(6, 'lettuce-leaf lettuce-head'),
];

const byCrop: ReadonlyMap<string, SeedLife> = new Map(
  seedLives.flatMap((row) => row.vegetableIds.map((id) => [id, row] as const)),
);

/** How long a crop's seed keeps; nothing for a kind that is not grown from seed. */
export function seedLifeOf(cropId: string): SeedLife | undefined {
  return byCrop.get(cropId);
}

/** Years that seed of some covers keeps. */
export interface CoverSeedLife extends Row<'years'> {
  coverIds: readonly string[];
  years: number;
}

const lent = (years: number, ids: string): CoverSeedLife => ({
  years,
  coverIds: ids.split(' '),
  sources: [guide],
  marks: { years: 'house default' },
});

/** Every cover crop. */
export const coverSeedLives: readonly CoverSeedLife[] = [
  lent(2, 'cereal_rye winter_wheat triticale oats barley annual_ryegrass sorghum_sudangrass'),
  lent(3, 'field_pea austrian_winter_pea hairy_vetch common_vetch fava_bell_bean cowpea'),
  lent(3, 'crimson_clover red_clover white_clover berseem_clover'),
  lent(4, 'mustard'),
  lent(5, 'oilseed_radish'),
  { ...lent(2, 'buckwheat phacelia'), sources: [] },
];

const byCover: ReadonlyMap<string, CoverSeedLife> = new Map(
  coverSeedLives.flatMap((row) => row.coverIds.map((id) => [id, row] as const)),
);

/**
 * How long a cover's seed keeps.
 *
 * @throws {RangeError} for what is no cover crop of the handbook
 */
export function coverSeedLifeOf(coverId: string): CoverSeedLife {
  const life = byCover.get(coverId);
  if (life === undefined)
    throw new RangeError(`No seed life is known of "${coverId}": it is no cover crop of the handbook.`);
  return life;
}

/** What is bought of a crop that is not grown from seed, in words. Common practice. */
export const boughtAs: Readonly<Record<string, string>> = {
  'onion-sets': 'onion sets',
  shallot: 'shallot sets',
  garlic: 'garlic bulbs',
  potato: 'seed potatoes',
  'sweet-potato': 'sweet potato slips',
  asparagus: 'asparagus crowns',
  rhubarb: 'rhubarb crowns',
  'jerusalem-artichoke': 'Jerusalem artichoke tubers',
};
