/**
 * What is kept out of a compost pile, and why.
 */
import { plain } from './feedstock-names.ts';
import type { SourceId } from './shapes/row.ts';

/** A kind of stuff that is refused. */
export interface KeptOut {
  id: string;
  /** What it is called in a sentence. */
  name: string;
  /** Words it is typed by, beside its id. */
  words: readonly string[];
  why: string;
  /** Where it goes instead. */
  instead: string;
  sources: readonly SourceId[];
}

/** Everything that is refused. Where a line has no source it is common practice or from memory. */
export const keptOut: readonly KeptOut[] = [
  {
    id: 'meat',
    name: 'meat, fish, bones, dairy and fat',
    words: ['fish', 'bones', 'bone', 'dairy', 'milk', 'cheese', 'butter', 'oil', 'cooking-oil', 'fat', 'grease'],
    why: 'They draw rats and dogs, smell, and rot slowly.',
    instead: 'Put them in the bin for waste, or where your town collects food.',
    sources: ['compost:S10', 'compost:S19', 'compost:S49', 'compost:S50'],
  },
  {
    id: 'dog-waste',
    name: 'dung of dogs, cats and other meat eaters, and pigs',
    words: [
      'cat-waste',
      'cat-litter',
      'dog-manure',
      'cat-manure',
      'pet-waste',
      'pig-manure',
      'pig-dung',
      'human-waste',
    ],
    why: 'It carries parasites and germs that harm people and that a garden pile does not kill for certain.',
    instead: 'Bag it for the waste.',
    sources: ['compost:S19', 'compost:S50'],
  },
  {
    id: 'diseased-plants',
    name: 'diseased plants',
    words: ['sick-plants', 'blighted-tops', 'diseased-tops', 'blight', 'clubroot'],
    why: 'A garden pile is rarely hot enough all through to kill what made them sick.',
    instead: 'Bag them for the waste, or burn them where that is allowed.',
    sources: ['compost:S19'],
  },
  {
    id: 'seeding-weeds',
    name: 'weeds with ripe seed',
    words: ['weeds-with-seed', 'weed-seed', 'weed-seeds', 'seedy-weeds'],
    why: 'Most weed seed outlives a pile that was not hot all through for weeks.',
    instead: 'Cut the heads off for the waste: the rest is soft-weeds.',
    sources: ['compost:S19'],
  },
  {
    id: 'running-weeds',
    name: 'weeds that grow again from a piece of root',
    words: ['quackgrass', 'couch-grass', 'bindweed', 'creeping-weeds', 'crabgrass', 'morning-glory', 'ground-elder'],
    why: 'A piece of root or runner is enough for a new plant.',
    instead: 'Dry the roots out in the sun until they are brittle, or bag them for the waste.',
    sources: ['compost:S60', 'compost:S61'],
  },
  {
    id: 'treated-clippings',
    name: 'clippings of a lawn treated with weedkiller',
    words: ['treated-grass', 'sprayed-grass', 'sprayed-clippings', 'treated-lawn'],
    why: 'What is left of the weedkiller can twist beans, peas and tomatoes for years.',
    instead: 'Leave them lying on the lawn.',
    sources: ['compost:S10', 'compost:S49'],
  },
  {
    id: 'treated-wood',
    name: 'treated or painted wood and its sawdust',
    words: ['painted-wood', 'plywood', 'particle-board', 'treated-sawdust'],
    why: 'It brings metals and glues into the soil.',
    instead: 'Take it to the tip; do not burn it.',
    sources: ['compost:S57'],
  },
  {
    id: 'coal-ash',
    name: 'ash of coal, briquettes or treated wood',
    words: ['briquette-ash', 'charcoal-ash', 'barbecue-ash'],
    why: 'It holds metals that stay in the soil.',
    instead: 'Let it go cold in a metal can, then into the waste.',
    sources: ['compost:S57'],
  },
  {
    id: 'glossy-paper',
    name: 'glossy, coated or receipt paper, and waxed board',
    words: ['magazines', 'receipts', 'waxed-cardboard', 'coated-paper'],
    why: 'Coatings and inks do not rot, and some harm.',
    instead: 'Put it with the waste paper where that takes it.',
    sources: [],
  },
  {
    id: 'black-walnut',
    name: 'leaves, husks and wood of black walnut',
    words: ['walnut-leaves', 'black-walnut-leaves', 'walnut-husks'],
    why: 'Juglone in them harms tomatoes and others.',
    instead: 'Leave them under the tree.',
    sources: [],
  },
];

const words: ReadonlyMap<string, KeptOut> = new Map(
  keptOut.flatMap((each) => [each.id, ...each.words].map((word) => [word, each] as const)),
);

/** What a word names that is kept out of a pile, in whatever spelling. */
export function keptOutNamed(word: string): KeptOut | undefined {
  return words.get(plain(word));
}
