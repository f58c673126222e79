import { describe, expect, it } from 'vitest';
import { type WeekList, weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { addDays, type Day, dayOf } from '../../src/measures/days.ts';
import { weekPage } from '../../src/web/week/week.tsx';
import { household } from './household.ts';

/** A garden file with a place and one bed, and nothing else that may be left out. */
function bareFile(south: boolean) {
  const place = south
    ? { latitude: -45.9, longitude: 170.3, timeZone: 'Pacific/Auckland' }
    : { latitude: 44.5, longitude: -88.1, timeZone: 'America/Chicago' };
  const frostDates = south
    ? { lastSpring: '11-01', firstAutumn: '04-10' }
    : { lastSpring: '05-10', firstAutumn: '09-28' };
  return checkGardenFile({
    garden: { id: 'new', name: 'New', ...place },
    climate: { frostDates },
    beds: [{ id: 'first', name: 'First bed', lengthM: 3, widthM: 1.2 }],
  });
}

/** Days on which a week's list names work: in the week, in the one after, or the next day that has any. */
function namedDays({ days, next, comes }: WeekList): Day[] {
  return [...days, ...next, ...(comes === undefined ? [] : [comes])].map(({ day }) => day);
}

/** The longest a list may have to look ahead: over a winter that freezes the ground. */
const WINTER_DAYS = 183;

const MONTHS = Array.from({ length: 12 }, (_, index) => dayOf(2027, index + 1, 15));

describe.each([
  ['north', false],
  ['south', true],
])('a place and one bed in the %s', (_name, south) => {
  it.each([...MONTHS, '2028-02-29'])('begun on %s gets a list that names work with its day', async (today) => {
    const { steward, garden } = await household(bareFile(south), `${today}T${south ? '00' : '12'}:00:00.000Z`);
    const view = await steward.view(garden);
    expect(view.plan.today).toBe(today);
    const list = weekList(view.plan, view.garden, today);
    const days = namedDays(list);
    expect(days.length).toBeGreaterThan(0);
    expect(days.some((day) => day <= addDays(today, WINTER_DAYS))).toBe(true);
    expect(weekListText(list, 'metric')).toContain('What grew in First bed before is not known.');
    expect(String(weekPage(view, today))).toContain('Not known yet');
    expect(view.plan.clashes).toEqual([]);
  });
});
