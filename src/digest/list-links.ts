/**
 * What the weekly list of one member of the household leads to, where it is sent by mail.
 */
import type { TaskKey } from '../practices/draft.ts';

/** Addresses by which a task is answered with one tap, and the mail stopped. */
export interface ListLinks {
  /** The page that asks before a task is answered so. */
  answer(key: TaskKey, answer: 'done' | 'not-yet' | 'skip'): string;
  /** The page that asks before this member's mail is stopped; takes the one-click request of RFC 8058 as well. */
  stop: string;
}
