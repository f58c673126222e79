/** Warnings that several feedstocks share. */

/** Raw manure and harvest: 7 CFR 205.203(c), compost:S23; 120 days whenever in doubt. */
export const MANURE_WAIT =
  'Raw manure: keep it off crops for 120 days before harvest where the edible part touches soil, 90 days elsewhere, unless it went through a logged hot pile.';

/** Persistent weedkillers in straw, hay and manure (compost:S33). */
export const HERBICIDE =
  'It may carry weedkiller that outlives the heap: grow beans in it first and use none that twists them.';
