/**
 * Things counted in words.
 */

/** "1 bed", "3 beds". */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
