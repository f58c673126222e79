/**
 * Planting: seed tested and ordered in time.
 */
import type { Practice } from '../practice.ts';
import { seedDrafts } from './seed-drafts.ts';
import { seedSentences } from './seed-sentences.ts';

/** The planting practice. */
export const planting: Practice = {
  name: 'planting',
  work: (input) => ({ drafts: seedDrafts(input) }),
  sentences: seedSentences,
};
