/**
 * What gardeners call the feedstocks.
 */
import { feedstocks } from './feedstocks.ts';
import type { Feedstock } from './shapes/feedstock.ts';

/** Everyday words for a feedstock, singular and plural where both are used. */
const EVERYDAY: Readonly<Record<string, readonly string[]>> = {
  leaves_dry_loose: ['dry-leaves', 'leaves', 'autumn-leaves', 'fall-leaves'],
  leaves_compacted_moist: ['packed-leaves', 'moist-leaves', 'wet-leaves'],
  leaves_maple: ['maple-leaves'],
  leaves_oak: ['oak-leaves'],
  straw_general: ['straw'],
  straw_wheat: ['wheat-straw'],
  straw_oat: ['oat-straw'],
  hay_nonlegume: ['hay', 'grass-hay'],
  hay_legume: ['legume-hay', 'alfalfa-hay', 'clover-hay'],
  dead_dry_stalks: ['dry-stalks', 'stalks', 'corn-stalks'],
  cover_rye_anthesis: ['flowering-rye', 'rye-in-flower'],
  cover_rye_vegetative: ['green-rye', 'young-rye'],
  cover_hairy_vetch: ['vetch', 'hairy-vetch'],
  pea_straw: ['pea-vines'],
  wood_chips_softwood: ['wood-chips', 'softwood-chips', 'pine-chips'],
  wood_chips_hardwood: ['hardwood-chips'],
  paper_shredded_mixed: ['paper', 'shredded-paper'],
  newspaper: ['newsprint', 'shredded-newspaper'],
  cardboard_corrugated: ['cardboard', 'shredded-cardboard'],
  twigs_shrub_trimmings: ['twigs', 'chipped-twigs', 'prunings', 'shrub-trimmings'],
  grass_clippings_fresh_loose: ['grass-clippings', 'clippings', 'grass', 'lawn-clippings'],
  grass_clippings_compacted: ['packed-grass', 'packed-grass-clippings'],
  kitchen_vegetable_scraps: ['kitchen-scraps', 'vegetable-scraps', 'food-scraps', 'scraps', 'peelings'],
  food_waste_mixed_plant: ['food-waste', 'plant-food-waste'],
  coffee_grounds: ['coffee'],
  tea_leaves_bags: ['tea', 'tea-leaves', 'tea-bags'],
  garden_green_trimmings: ['weeds', 'soft-weeds', 'green-trimmings', 'garden-waste'],
  potato_tops: ['tomato-tops', 'tomato-vines'],
  tree_trimmings_leafy_chipped: ['leafy-branches', 'chipped-branches'],
  yard_trimmings_mixed: ['yard-trimmings', 'yard-waste'],
  chicken_manure_fresh: ['chicken-manure', 'hen-manure', 'poultry-manure'],
  chicken_manure_litter: ['chicken-litter', 'chicken-bedding'],
  horse_manure_bedded: ['horse-manure'],
  cow_manure_solid: ['cow-manure', 'cattle-manure', 'dairy-manure'],
  finished_compost: ['compost'],
  wood_ash: ['ash', 'ashes', 'wood-ashes'],
};

const words: ReadonlyMap<string, Feedstock> = new Map(
  feedstocks.flatMap((material) =>
    [material.id.replaceAll('_', '-'), plain(material.name), ...(EVERYDAY[material.id] ?? [])].map(
      (word) => [word, material] as const,
    ),
  ),
);

/** Every word that names a feedstock, as it is typed: "dry-leaves". */
export const feedstockWords: readonly string[] = [...words.keys()];

/** The word a feedstock is typed by: its everyday one where it has one. */
export function feedstockWord({ id }: Pick<Feedstock, 'id'>): string {
  return EVERYDAY[id]?.[0] ?? id.replaceAll('_', '-');
}

/** The feedstock a word means, whatever its case and whether its parts are joined by spaces, hyphens or underscores. */
export function feedstockNamed(word: string): Feedstock | undefined {
  return words.get(plain(word));
}

/** A name as it is compared: small letters, parts joined by one hyphen. */
export function plain(word: string): string {
  return word
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
