import { describe, expect, test } from 'vitest';
import { weekList } from '../../src/digest/week-list.ts';
import { type WeekSheet, weekSheet } from '../../src/digest/week-sheet.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const SUNDAY = '2027-04-18';
/** With hours enough for any week, so that none is told to be too full. */
const roomyLane = { ...hollowLane, place: { ...hollowLane.place, hoursPerWeek: 40 } };
const own = "the garden's own plan" as const;
const LONG = 'wear gloves and a mask, and stop before your back does; '.repeat(3);

/** So many jobs of one week, each with a caution of its own, a reason and things to have. */
function busy(entries: number, days = 3): WeekSheet {
  const wanted = Array.from({ length: entries }, (_, index): Wanted => {
    const day = `2027-04-${20 + (index % days)}`;
    return {
      key: `job${index}/north`,
      window: [day, day, day],
      needs: ['dry-day'],
      cautions: [`Job ${index}: ${LONG}`],
      supplies: [{ what: `thing ${index}` }],
      reasons: [{ rule: 'changeover.last-harvest', saw: { crop: 'garlic', day }, source: own }],
    };
  });
  const next: Wanted = { key: 'later/south', window: ['2027-04-28', '2027-04-28', '2027-05-20'] };
  const plan = planOf(SUNDAY, [...wanted, next], undefined, roomyLane);
  return weekSheet(weekList(plan, roomyLane, '2027-04-19'), 'metric');
}

const kindsIn = ({ days }: WeekSheet, kind: string) =>
  days.flatMap(({ entries }) => entries.flatMap(({ notes }) => notes.filter((note) => note.kind === kind)));

const shape = (sheet: WeekSheet) => [sheet.size, sheet.leftOut] as const;

describe('as a week fills', () => {
  test('a calm one stands in large letters with everything on it', () => {
    const sheet = busy(3);
    expect(shape(sheet)).toEqual(['large', []]);
    expect(kindsIn(sheet, 'why')).toHaveLength(3);
    expect(sheet.sections.map(({ name }) => name)).toEqual(['at-hand', 'next']);
  });

  test('the letters shrink one step first, then the reasons go, then they shrink once more, then the week after goes', () => {
    const seen = Array.from({ length: 20 }, (_, index) =>
      shape(busy(index + 1))
        .flat()
        .join(', '),
    );
    expect([...new Set(seen)]).toEqual([
      'large',
      'middle',
      'middle, the reasons',
      'small, the reasons',
      'small, the reasons, the week after',
    ]);
  });

  test('no task and nothing that can hurt is ever left off, however many there are', () => {
    for (const entries of [3, 9, 14, 30]) {
      const sheet = busy(entries);
      expect(sheet.days.flatMap((day) => day.entries)).toHaveLength(entries);
      expect(kindsIn(sheet, 'caution')).toHaveLength(entries);
      expect(kindsIn(sheet, 'last-day')).toHaveLength(entries);
    }
  });
});

test('what was not there in the first place is not called left out', () => {
  expect(busy(30).leftOut).not.toContain('what moved');
});
