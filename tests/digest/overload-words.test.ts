/** Hollow Lane keeps two hours a week, on Wednesdays and Saturdays; 19 April 2027 is a Monday. */
import { describe, expect, test } from 'vitest';
import { weekList } from '../../src/digest/week-list.ts';
import { weekListText } from '../../src/digest/week-text.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { hollowLane, planOf, type Wanted } from './example.ts';

const TODAY = '2027-04-19';
const WEEK = ['2027-04-19', '2027-04-21', '2027-04-25'] as const;
const LATE = ['2027-04-01', '2027-04-03', '2027-04-24'] as const;

const sowing: Wanted = {
  key: 'sow/north',
  window: WEEK,
  title: 'Sow peas in North bed',
  effortMinutes: 80,
  practice: 'planting',
};
const mulching: Wanted = {
  key: 'mulch/south',
  window: WEEK,
  title: 'Mulch South bed',
  effortMinutes: 60,
  practice: 'mulching',
  missedNote: 'The bed dries out; mulch it when you can.',
};
const digging: Wanted = {
  key: 'lift/east',
  window: ['2027-04-19', '2027-04-24', '2027-05-30'],
  title: 'Lift East bed',
  effortMinutes: 60,
};

function sentencesOf(wanted: readonly Wanted[], garden: Garden = hollowLane): readonly string[] {
  return weekList(planOf(TODAY, wanted, undefined, garden), garden, TODAY).overloads.flatMap(
    ({ sentences }) => sentences,
  );
}

describe('a week that wants too much', () => {
  test('is told with its hours, what cannot wait, and what costs the season least to leave', () => {
    expect(sentencesOf([sowing, mulching])).toEqual([
      'Week of ⟦2027-04-19⟧: 2 h 20 min wanted, 2 h given.',
      'These two cannot wait: "Mulch South bed"; "Sow peas in North bed".',
      'Leave out "Mulch South bed". If it is left: The bed dries out; mulch it when you can.',
    ]);
  });

  test('is told what can wait until when, and that this is enough', () => {
    expect(sentencesOf([{ ...sowing, window: LATE }, digging])).toEqual([
      'Week of ⟦2027-04-19⟧: 2 h 20 min wanted, 2 h given.',
      'This one can wait: "Lift East bed", until ⟦2027-05-30⟧.',
      'This one cannot wait: "Sow peas in North bed".',
      'With "Lift East bed" put off, the rest fits.',
    ]);
  });

  test('is told what is too much when all that can wait is put off', () => {
    const sentences = sentencesOf([{ ...sowing, window: LATE, effortMinutes: 150 }, digging]);
    expect(sentences).toContain('With all that can wait put off, 30 min are still too much.');
    expect(sentences.at(-1)).toBe('Leave out "Sow peas in North bed". If it is left: Leave it this year.');
  });

  test("offers to hand work to nobody: the hours are the whole household's", () => {
    const members = [
      { id: 'wilma', name: 'Wilma', practices: ['mulching', 'cover-cropping'] as const },
      { id: 'jory', name: 'Jory', practices: ['planting'] as const },
    ];
    const garden = { ...hollowLane, household: { people: 2, members } };
    expect(sentencesOf([sowing, mulching], garden)).toEqual(sentencesOf([sowing, mulching]));
    expect(sentencesOf([sowing, mulching], garden).join(' ')).not.toContain('Jory');
  });

  test('counts what is put off without the start-up that stays with other beds', () => {
    const dig = (bed: string, last: string): Wanted => ({
      key: `dig/${bed}`,
      window: ['2027-04-19', '2027-04-21', last],
      title: `Dig ${bed} bed`,
      effortMinutes: 80,
      onceMinutes: 60,
    });
    const late = { ...sowing, window: LATE, effortMinutes: 80 };
    const sentences = sentencesOf([dig('east', '2027-04-25'), dig('west', '2027-05-30'), late]);
    expect(sentences[0]).toBe('Week of ⟦2027-04-19⟧: 3 h wanted, 2 h given.');
    expect(sentences).toContain('With all that can wait put off, 40 min are still too much.');
  });

  test('takes the look that rides with work out along with it', () => {
    const look: Wanted = {
      ...digging,
      key: 'look/east',
      weight: 'check',
      title: 'Look at East bed',
      effortMinutes: 10,
    };
    expect(sentencesOf([{ ...sowing, window: LATE, effortMinutes: 60 }, digging, look]).at(-1)).toBe(
      'With "Lift East bed" put off, the rest fits.',
    );
  });

  test('says where no later week has room for what is put off', () => {
    const lift = { ...digging, window: ['2027-04-19', '2027-04-24', '2027-05-02'] as const };
    const full: Wanted = {
      key: 'plant/east',
      window: ['2027-04-26', '2027-04-28', '2027-05-02'],
      title: 'Plant East bed',
      effortMinutes: 100,
    };
    expect(sentencesOf([{ ...sowing, window: LATE }, lift, full])).toContain(
      'But no week until ⟦2027-05-02⟧ has room for "Lift East bed".',
    );
  });

  test('tells late work apart from what cannot wait', () => {
    const window = ['2027-03-01', '2027-04-03', '2027-04-17'] as const;
    expect(sentencesOf([{ ...sowing, window, ifMissed: 'still do', effortMinutes: 150 }])).toContain(
      'This one is late and stays in sight: "Sow peas in North bed", until ⟦2027-06-16⟧.',
    );
  });

  test('says that its days have passed where that is why', () => {
    const told = (today: string) => {
      const plan = planOf(today, [sowing, mulching]);
      return weekList(plan, hollowLane, today).overloads[0]?.sentences[0];
    };
    expect(told('2027-04-22')).toBe('Week of ⟦2027-04-19⟧: 2 h 20 min wanted, 1 h left.');
    expect(told('2027-04-25')).toBe('Week of ⟦2027-04-19⟧: 2 h 20 min wanted, none of its hours are left.');
  });

  test('says of pinned work that it is pinned', () => {
    const garden = { ...hollowLane, pins: { 'lift/east': '2027-04-21' } };
    expect(sentencesOf([sowing, digging], garden)[1]).toBe(
      'These two cannot wait: "Lift East bed", which is pinned; "Sow peas in North bed".',
    );
  });

  test('says that nobody is at home where that is why, and whom to ask', () => {
    const garden = { ...hollowLane, away: [{ from: '2027-04-19', to: '2027-04-25' }] };
    const told = sentencesOf([sowing], garden);
    expect(told[0]).toBe('Week of ⟦2027-04-19⟧: 1 h 20 min wanted, nobody is at home on a work day.');
    expect(told.at(-1)).toBe(
      'Ask whoever minds the garden for "Sow peas in North bed", or leave it out. If it is left: Leave it this year.',
    );
  });
});

describe('the weekly list', () => {
  const ahead = planOf('2027-04-05', [sowing, mulching]);

  test('names the overloads ahead beside the current week, and beside another only its own', () => {
    const mondays = (weekOf: string) => weekList(ahead, hollowLane, weekOf).overloads.map(({ monday }) => monday);
    expect(mondays('2027-04-07')).toEqual(['2027-04-19']);
    expect(mondays('2027-04-14')).toEqual([]);
    expect(mondays('2027-04-21')).toEqual(['2027-04-19']);
  });

  test('has them in its text, with their days', () => {
    expect(weekListText(weekList(ahead, hollowLane, '2027-04-07'), 'metric')).toContain(
      'More than the hours\n  Week of 19 April: 2 h 20 min wanted, 2 h given. These two cannot wait:',
    );
  });

  test('tells a member only of weeks that hold their own work', () => {
    const members = [
      { id: 'wilma', name: 'Wilma', practices: ['mulching'] as const },
      { id: 'jory', name: 'Jory', practices: ['rotation'] as const },
    ];
    const garden = { ...hollowLane, household: { people: 2, members } };
    const told = (person: string) => weekList(ahead, garden, '2027-04-07', { person }).overloads.length;
    expect([told('Wilma'), told('Jory')]).toEqual([1, 0]);
  });
});
