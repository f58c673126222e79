import { describe, expect, it } from 'vitest';
import { airTempNormC } from '../../../src/climate/air.ts';
import type { Climate } from '../../../src/climate/climate.ts';
import { withWeather } from '../../../src/climate/logged.ts';
import type { LoggedDay } from '../../../src/garden/weather.ts';
import { type Day, eachDay } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut, sown } from '../gardens.ts';

const TODAY = '2027-05-12';

/** Days so many degrees colder than usual. */
function colder(from: Day, to: Day, byC: number): LoggedDay[] {
  return eachDay(from, to).map((day) => {
    const { minC, maxC } = airTempNormC(milwaukee, day);
    return { day, kind: 'observed', tminC: minC - byC, tmaxC: maxC - byC, rainMm: 0 };
  });
}

const frost = (day: Day, tminC: number): LoggedDay => ({
  day,
  kind: day <= TODAY ? 'observed' : 'expected',
  tminC,
  tmaxC: 12,
});

const plantings = [
  setOut('tomato', '2027-05-12', { id: 'tomato' }),
  sown('carrot', '2027-04-05', { id: 'carrot', bedId: 'b' }),
  sown('lettuce-leaf', '2027-04-10', { id: 'lettuce', bedId: 'c' }),
];

function task(key: string, log: readonly LoggedDay[] = [], over: Climate = milwaukee): TaskDraft {
  const told = garden({ beds: ['a', 'b', 'c'].map((id) => bed(id)), plantings });
  return draft(draftsIn(told, withWeather(over, log, TODAY), '2027-03-20'), key);
}

const sentences = ({ reasons }: TaskDraft) => reasons.map(reasonSentence).join('\n');

describe('a cold spring in the weather log', () => {
  const cold = colder('2027-03-01', TODAY, 4);

  it('moves the setting out of tomatoes, and says from when to when', () => {
    const [usual, moved] = [task('set-out/'), task('set-out/', cold)];
    expect(moved.window.preferred > usual.window.preferred).toBe(true);
    expect(sentences(moved)).toMatch(
      /By past years alone the tomato could go in from ⟦2027-05-\d\d⟧; with this season's weather so far it is ⟦2027-05-\d\d⟧\./,
    );
    expect(rulesOf(moved)).toContain('plant.soil');
    expect(rulesOf(usual)).not.toContain('plant.this-season');
  });

  it('moves a carrot by its soil, and gives that day as the odds', () => {
    const [usual, moved] = [task('sow/planting:carrot'), task('sow/planting:carrot', cold)];
    expect(moved.window.earliest > usual.window.earliest).toBe(true);
    expect(moved.odds?.median).toBe(moved.window.earliest);
  });
});

describe('a late freeze', () => {
  it('that is expected holds tomatoes back until it is over, with the odds that say so', () => {
    const moved = task('set-out/', [frost('2027-05-20', -1.5)]);
    expect(moved.window.earliest).toBe('2027-05-20');
    expect([moved.odds?.early, moved.odds?.median, moved.odds?.late]).toEqual([
      '2027-05-20',
      '2027-05-20',
      '2027-05-20',
    ]);
    expect(rulesOf(moved)).toContain('plant.this-season');
  });

  it('of one degree holds back nothing that bears it', () => {
    for (const key of ['sow/planting:carrot', 'sow/planting:lettuce']) {
      expect(task(key, [frost('2027-05-20', -1.5)]).window, key).toEqual(task(key).window);
    }
  });

  it('of four degrees holds back lettuce, which it would take', () => {
    const moved = task('sow/planting:lettuce', [frost('2027-05-20', -4)]);
    // Seed is safe in the ground for a week before it.
    expect(moved.window.earliest).toBe('2027-05-13');
    expect(sentences(moved)).toContain('it still freezes to ⟦-2.2 tempC⟧ in no more than 50 of 100 years');
  });
});

describe('the odds of a planting', () => {
  it('are early, middle and late days over the years of the record', () => {
    const { odds } = task('set-out/');
    expect(odds?.years).toBe(30);
    expect((odds?.early ?? '') < (odds?.median ?? '') && (odds?.median ?? '') < (odds?.late ?? '')).toBe(true);
  });

  it('are those of its own freeze: 28 °F takes lettuce, 32 °F tomatoes', () => {
    expect((task('sow/planting:lettuce').odds?.late ?? '') < (task('set-out/').odds?.late ?? '')).toBe(true);
  });

  it('are none for beans of July, which no spring freeze holds back', () => {
    const told = garden({ plantings: [sown('snap-bean', '2027-07-26', { id: 'beans' })] });
    expect(draft(draftsIn(told), 'sow/planting:beans').odds).toBeUndefined();
  });

  it('give way to a class’s weeks where two freeze dates are all that is known, and the task says so', () => {
    const told = sentences(task('sow/planting:carrot', [], frostDates('05-10', '10-01')));
    expect(told).toContain('No record of past freezes is at hand for this place, so the weeks count in its stead.');
    expect(sentences(task('sow/planting:carrot'))).not.toContain('in its stead');
  });
});
