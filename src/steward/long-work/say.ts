/**
 * What long work says of itself while it goes on.
 */

/**
 * Says what is being done, and how much of the whole is behind it, 0 to 1. Gives way to whoever else is to be answered: awaited
 * between pieces of long reckoning it keeps every other page served.
 */
export type Say = (words: string, share?: number) => Promise<void>;

/** For work that nobody follows. */
export const unsaid: Say = async () => {};
