/**
 * The practices of the house, in the one order they are worked through. Adding one is a folder and a line here.
 */

import { composting } from './composting/index.ts';
import { coverCropping } from './cover-cropping/index.ts';
import type { TaskDraft } from './draft.ts';
import type { Findings, Practice, PracticeInput, Sentence } from './practice.ts';
import { rotation } from './rotation/index.ts';
import { topdressing } from './topdressing/index.ts';

/** Every practice, each seeing what those before it found. */
export const practices: readonly Practice[] = [rotation, coverCropping, composting, topdressing];

/**
 * Every task the garden wants in the span worked out. Windows that had closed before the garden was first brought in
 * are history and left out, as are windows that open after the span.
 */
export function draftsOf(input: PracticeInput): TaskDraft[] {
  let found: Findings = { coverSowings: [], compostSupply: [] };
  const drafts: TaskDraft[] = [];
  for (const practice of practices) {
    const result = practice.work(input, found);
    drafts.push(...result.drafts);
    found = { ...found, ...result.found };
  }
  const { startedOn } = input.garden;
  return drafts.filter(({ window }) => window.latest >= startedOn && window.earliest <= input.until);
}

/** The sentence of a rule. */
export function sentenceOf(rule: string): Sentence | undefined {
  return practices.find((practice) => rule in practice.sentences)?.sentences[rule];
}
