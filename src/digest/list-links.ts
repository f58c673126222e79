/**
 * What the weekly list of one member of the household leads to, where it is sent by mail.
 */
import type { TaskKey } from '../practices/draft.ts';

/** What can be answered to a task with one tap. */
export type ListAnswer = 'done' | 'not-yet' | 'skip';

/** Addresses by which a task is answered with one tap, and the mail stopped. */
export interface ListLinks {
  /** The page that asks before a task is answered so; without an answer it asks which. */
  answer(key: TaskKey, answer?: ListAnswer): string;
  /** The page that asks before this member's mail is stopped; takes the one-click request of RFC 8058 as well. */
  stop: string;
}

/** The answers in the order they stand in, in words. */
export const ANSWER_WORDS: readonly (readonly [ListAnswer, string])[] = [
  ['done', 'Done'],
  ['not-yet', 'Not yet'],
  ['skip', 'Skip'],
];
