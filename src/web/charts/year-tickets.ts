/**
 * Marks and words beneath a strip, set in as many lines as keep them clear of each other.
 */
import { ROW_WIDTH, textWidth } from './year-frame.ts';

/** A mark from one place to another, with a word or none. */
export interface Ticket {
  from: number;
  to: number;
  text?: string;
}

/** A ticket on its line, with where its word stands. */
export type PlacedTicket<T extends Ticket> = T & {
  line: number;
  word?: { x: number; anchor: 'start' | 'end' };
};

/** Paper between a mark and its word, and between two tickets. */
const BESIDE = 3;
const APART = 4;

/**
 * Every ticket on the first line on which it has room, the first given nearest to the strip. The word stands behind its
 * mark, or before it at the right edge.
 */
export function ticketsPlaced<T extends Ticket>(tickets: readonly T[]): PlacedTicket<T>[] {
  const lines: { left: number; right: number }[][] = [];
  return tickets.map((ticket) => {
    const { word, ...extent } = extentOf(ticket);
    const isFree = (taken: { left: number; right: number }) =>
      extent.right + APART <= taken.left || taken.right + APART <= extent.left;
    const free = lines.findIndex((line) => line.every(isFree));
    const line = free < 0 ? lines.length : free;
    lines[line] = [...(lines[line] ?? []), extent];
    return { ...ticket, line, ...(word === undefined ? {} : { word }) };
  });
}

/** How many lines placed tickets take. */
export function linesOf(placed: readonly { line: number }[]): number {
  return placed.reduce((most, { line }) => Math.max(most, line + 1), 0);
}

function extentOf({ from, to, text }: Ticket): {
  left: number;
  right: number;
  word?: PlacedTicket<Ticket>['word'];
} {
  if (text === undefined) return { left: from, right: to };
  const width = textWidth(text) + BESIDE;
  if (to + width <= ROW_WIDTH) return { left: from, right: to + width, word: { x: to + BESIDE, anchor: 'start' } };
  return { left: from - width, right: to, word: { x: from - BESIDE, anchor: 'end' } };
}
