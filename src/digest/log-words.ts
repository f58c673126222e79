/**
 * The logs a row of the garden file holds, counted in words: they go with it when it is taken out.
 */
import type { TellableRow } from './row-words.ts';

/** What an entry of each log is called, one and several. */
const LOGS: Readonly<Record<string, readonly (readonly [key: string, one: string, several: string])[]>> = {
  piles: [
    ['readings', 'look', 'looks'],
    ['turns', 'turn', 'turns'],
    ['notReady', 'look that found it unready', 'looks that found it unready'],
  ],
  coverStands: [
    ['seed', 'note of seed that went in', 'notes of seed that went in'],
    ['looked', 'look while it was young', 'looks while it was young'],
    ['resown', 'sowing of thin places', 'sowings of thin places'],
    ['seen', 'note of buds or flowers', 'notes of buds or flowers'],
    ['regrowthChecked', 'look after the cut', 'looks after the cut'],
    ['regrowth', 'note of its growing again', 'notes of its growing again'],
  ],
};

/** The logs of a row of a list: "2 looks and 3 turns"; nothing where they are empty. */
export function logsInWords(list: string, row: TellableRow): string | undefined {
  const counted = (LOGS[list] ?? []).flatMap(([key, one, several]) => {
    const log = row[key];
    const count = Array.isArray(log) ? log.length : 0;
    return count === 0 ? [] : `${count} ${count === 1 ? one : several}`;
  });
  const [last, ...others] = counted.reverse();
  return others.length === 0 ? last : `${others.reverse().join(', ')} and ${last}`;
}
