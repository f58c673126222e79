/**
 * Fertility: soil samples in their round, and what a hungry crop or a poor soil wants beyond compost. Most gardens that
 * topdress every year want nothing more, and are told nothing.
 */
import type { Practice } from '../practice.ts';
import { boneMealDrafts } from './bone-meal-draft.ts';
import { feedDrafts } from './feed-draft.ts';
import { sampleDrafts } from './sample-draft.ts';
import { fertilitySentences } from './sentences.ts';

/** The fertility practice. */
export const fertility: Practice = {
  name: 'fertility',
  work: (input, found) => ({
    drafts: [...sampleDrafts(input, found), ...feedDrafts(input, found), ...boneMealDrafts(input)],
  }),
  sentences: fertilitySentences,
};
