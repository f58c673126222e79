import { describe, expect, test } from 'vitest';
import { moreLine, TRIAGE_LINES, triageOf } from '../../src/digest/triage.ts';
import { weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const TODAY = '2027-07-18';

/** Work whose window closed on a day. */
function closed(key: string, latest: string, parts: Partial<Wanted> = {}): Wanted {
  return { key, window: ['2027-07-01', '2027-07-02', latest], ...parts };
}

const titles = (wanted: readonly Wanted[]) => triageOf(planOf(TODAY, wanted)).lines.map(({ title }) => title);

describe('a triage', () => {
  test('puts first what holds up other work, last what is only to be known', () => {
    expect(
      titles([
        closed('look/a', '2027-07-16', { ifMissed: 'drop' }),
        closed('check/b', '2027-07-16', { ifMissed: 'still do', weight: 'check' }),
        closed('sow/c', '2027-07-16', { ifMissed: 'replace' }),
        closed('turn/d', '2027-07-16', { ifMissed: 'still do' }),
        closed('clear/e', '2027-07-10', { ifMissed: 'still do' }),
        {
          key: 'plant/e',
          window: ['2027-07-12', '2027-07-20', '2027-07-30'],
          after: [{ key: 'clear/e', minDays: 0 }],
        },
      ]),
    ).toEqual(['clear e', 'turn d', 'sow c', 'check b', 'look a']);
  });

  test('puts the latest closed first among equals', () => {
    const rows = ['2027-07-10', '2027-07-16', '2027-07-12'].map((day) => closed(`turn-${day}/a`, day));
    expect(titles(rows)).toEqual(['turn-2027-07-16 a', 'turn-2027-07-12 a', 'turn-2027-07-10 a']);
  });

  test('tells the same job on several beds in one line', () => {
    const note = { ifMissed: 'still do', missedNote: 'It has set seed.' } as const;
    const { lines } = triageOf(
      planOf(TODAY, [closed('cut/a', '2027-07-15', note), closed('cut/b', '2027-07-15', note)]),
    );
    expect(lines).toEqual([{ keys: ['cut/a', 'cut/b'], title: 'cut: a, b', latest: '2027-07-15', ...note }]);
  });

  test('tells each last day apart, where beds differ', () => {
    const note = { ifMissed: 'still do', missedNote: 'It has set seed.' } as const;
    const { lines } = triageOf(
      planOf(TODAY, [closed('cut/a', '2027-07-15', note), closed('cut/b', '2027-07-03', note)]),
    );
    expect(lines.map(({ title, latest }) => `${title} ${latest}`)).toEqual(['cut a 2027-07-15', 'cut b 2027-07-03']);
  });

  test.each([
    [7, 0, ''],
    [8, 1, 'And 1 more that can wait or is past.'],
    [11, 4, 'And 4 more that can wait or are past.'],
  ])('of %i jobs holds seven lines at most and counts the other %i', (count, more, words) => {
    const wanted = Array.from({ length: count }, (_, index) => closed(`job${index}/a`, '2027-07-15'));
    const triage = triageOf(planOf(TODAY, wanted));
    expect([triage.lines.length, triage.more, moreLine(triage)]).toEqual([TRIAGE_LINES, more, words]);
  });

  test('stands in the weekly list, the rest summed in one line', () => {
    const wanted = Array.from({ length: 9 }, (_, index) => closed(`job${index}/a`, '2027-07-05'));
    const text = weekListText(weekList(planOf(TODAY, wanted), hollowLane, TODAY), 'metric');
    const section = text.slice(text.indexOf('Window closed')).split('\n\n')[0] ?? '';
    expect(section.match(/closed 5 July/g)).toHaveLength(7);
    expect(section).toMatch(/And 2 more that can wait or are past\.\s*$/);
  });
});

describe('a week with a time away in it', () => {
  const away = (from: string, to: string) => ({ ...hollowLane, away: [{ from, to }] });

  test('keeps the hours of its work days at home', () => {
    expect(weekList(planOf(TODAY, []), away('2027-07-14', '2027-07-15'), TODAY).keptMinutes).toBe(60);
    expect(weekList(planOf(TODAY, []), away('2027-07-12', '2027-07-18'), TODAY).keptMinutes).toBe(0);
    expect(weekList(planOf(TODAY, []), away('2027-07-15', '2027-07-16'), TODAY).keptMinutes).toBe(120);
  });

  test('says from when to when, in the week it begins, ends or only passes', () => {
    const garden = away('2027-12-28', '2028-01-12');
    const told = (day: string) =>
      weekListText(weekList(planOf(TODAY, []), garden, day), 'metric').includes('Away from');
    expect(['2027-12-26', '2027-12-27', '2028-01-05', '2028-01-16', '2028-01-17'].map(told)).toEqual([
      false,
      true,
      true,
      true,
      false,
    ]);
  });

  test('with work in it and no work day at home says that', () => {
    const wanted: Wanted[] = [{ key: 'cut/a', window: ['2027-07-20', '2027-07-21', '2027-07-22'] }];
    const garden = away('2027-07-19', '2027-07-25');
    const text = weekListText(weekList(planOf(TODAY, wanted, undefined, garden), garden, '2027-07-20'), 'metric');
    expect(text).toContain('30 min to do, and no work day at home.');
  });
});
