/**
 * A garden on an evening before a cold night.
 */
import type { Climate } from '../../../src/climate/climate.ts';
import type { ColdNight, Garden } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { frostWatch } from '../../../src/practices/frost-watch/index.ts';
import { bed, frostDates, garden, inputOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 25 September. */
export const climate = frostDates('05-10', '09-25');

export const EVENING = '2027-09-18';

/** Tomatoes, snap beans, leaf lettuce and carrots, in beds of 3 m², on an evening of September. */
export function september(parts: Parameters<typeof garden>[0] = {}): Garden {
  return garden({
    startedOn: '2027-09-01',
    beds: ['a', 'b', 'c', 'd'].map((id) => bed(id)),
    plantings: [
      setOut('tomato', '2027-05-28', { bedId: 'a' }),
      sown('snap-bean', '2027-07-10', { bedId: 'b' }),
      sown('lettuce-leaf', '2027-08-10', { bedId: 'c' }),
      sown('carrot', '2027-06-20', { bedId: 'd' }),
    ],
    ...parts,
  });
}

export function expected(lowC: number, evening: Day = EVENING): ColdNight {
  return { evening, lowC, how: 'expected' };
}

export function measured(lowC: number, evening: Day = EVENING): ColdNight {
  return { evening, lowC, how: 'measured' };
}

/** What frost watch alone wants. */
export function watched(of: Garden, over: Climate = climate, today: Day = EVENING): TaskDraft[] {
  return [...frostWatch.work(inputOf(of, over, today), NOTHING_FOUND).drafts];
}

const NOTHING_FOUND = { coverSowings: [], coverStands: [], compostSupply: [], uncovered: [], thinStands: [] };

/** The evening's task of a garden, if the night asks for one. */
export function tonight(of: Garden, over: Climate = climate, today: Day = EVENING): TaskDraft | undefined {
  return watched(of, over, today).find(({ kind }) => kind === 'cover-beds');
}
