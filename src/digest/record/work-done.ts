/**
 * How much work a season was, by what each task is reckoned to take.
 */
import type { Garden } from '../../garden/garden.ts';
import { memberNames } from './names.ts';
import type { RecordRow } from './row.ts';
import type { WorkDone } from './shape.ts';

/** Minutes of the work done, in all and by practice, month and member. */
export function workDone(garden: Pick<Garden, 'household' | 'assigned'>, rows: readonly RecordRow[]): WorkDone {
  const worked = rows.filter(({ minutes = 0 }) => minutes > 0);
  const members = memberNames(garden);
  return {
    minutes: worked.reduce((sum, { minutes = 0 }) => sum + minutes, 0),
    byPractice: grouped(worked, ({ practice }) => practice).sort((a, b) => b.minutes - a.minutes),
    byMonth: grouped(worked, ({ on }) => on.slice(0, 'YYYY-MM'.length)).sort((a, b) => (a.of < b.of ? -1 : 1)),
    byMember: grouped(worked, ({ by = '', task = '' }) => {
      return [by, garden.assigned[task]].find((name) => name !== undefined && members.has(name));
    }),
  };
}

function grouped(rows: readonly RecordRow[], of: (row: RecordRow) => string | undefined): WorkDone['byMonth'] {
  const sums = new Map<string, number>();
  for (const row of rows) {
    const name = of(row);
    if (name !== undefined) sums.set(name, (sums.get(name) ?? 0) + (row.minutes ?? 0));
  }
  return [...sums].map(([name, minutes]) => ({ of: name, minutes }));
}
