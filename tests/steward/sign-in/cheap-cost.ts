import type { ScryptCost } from '../../../src/steward/sign-in/password-hash.ts';

/** A hash made in no time, for tests that are not about what a guess costs. RFC 7914, 2: N is a power of two above one. */
export const CHEAP: ScryptCost = { logN: 4, r: 8, p: 1 };
