/** What is neither brown nor green. */
import type { Feedstock } from '../shapes/feedstock.ts';

/** What is neither brown nor green. */
export const otherFeedstocks: readonly Feedstock[] = [
  {
    id: 'eggshells',
    name: 'Crushed eggshells',
    class: 'other',
    manure: false,
    cautions: ['Rinse and crush them; they count for nothing in the mix and rot slowly.'],
    sources: ['compost:S49'],
    marks: {},
  },
  {
    id: 'finished_compost',
    name: 'Finished compost',
    class: 'other',
    carbonToNitrogen: { usual: 10, low: 10, high: 20 },
    nitrogenPctDry: { usual: 2, low: 0.5, high: 3 },
    carbonPctDry: 20,
    moisturePctWet: { usual: 45 },
    densityKgPerM3: { usual: 650, low: 593, high: 712 },
    manure: false,
    cautions: ['A thin layer is enough: it brings organisms, not food.'],
    sources: ['compost:S5', 'compost:S16', 'compost:S38', 'compost:S43', 'compost:S44b', 'compost:S59'],
    marks: { carbonPctDry: 'derived', moisturePctWet: 'house default' },
  },
  {
    id: 'wood_ash',
    name: 'Wood ash',
    class: 'other',
    manure: false,
    cautions: [
      'Strongly alkaline: it drives off ammonia. Keep it out of the pile, and off eyes and skin.',
      'Never coal, briquette or treated-wood ash.',
    ],
    sources: ['compost:S19'],
    marks: {},
  },
];
