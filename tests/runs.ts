/**
 * How often a property is tried.
 */
import { inject } from 'vitest';

declare module 'vitest' {
  interface ProvidedContext {
    /** Whether there is time: only in `npm run test:long`. */
    thorough: boolean;
  }
}

/** A few runs in `npm test`, many of the same in `npm run test:long` (tests/long/properties.test.ts). */
export function runs(few: number, many: number): number {
  return inject('thorough') ? many : few;
}
