/**
 * How a row's warnings are written: each with the time it matters, so that a task shows only those it is about.
 */
import type { Caution } from './row.ts';

const at =
  (when: Caution['when']) =>
  (...texts: string[]): Caution[] =>
    texts.map((text) => ({ when, text }));

/** Matters whenever the plant or its seed is handled. */
export const always = at('always');
/** Matters when it is chosen, sown or set out. */
export const whenStarted = at('started');
/** Matters to what stands through winter, and to what was sown for it. */
export const overWinter = at('over winter');
/** Matters when it is cut, lifted, cleared or eaten, and to what follows it. */
export const whenEnded = at('ended');

/** The warnings that matter at some times, in words. */
export function cautionsAt(cautions: readonly Caution[], ...times: Caution['when'][]): string[] {
  return cautions.filter(({ when }) => times.includes(when)).map(({ text }) => text);
}
