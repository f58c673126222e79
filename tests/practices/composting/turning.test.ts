import { describe, expect, it } from 'vitest';
import { meanAirStaysAbove } from '../../../src/climate/air.ts';
import type { Pile, PileReading } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import { doneHeating, nextTurn } from '../../../src/practices/composting/turn.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { draft, draftsIn, garden, milwaukee, pile } from '../gardens.ts';

/** A pile built on 10 May and last turned on 20 May, with what was read since. */
function worked(readings: readonly PileReading[], parts: Partial<Pile> = {}): Pile {
  return pile('2027-05-10', { turns: ['2027-05-20'], readings, ...parts });
}

const turn = (readings: readonly PileReading[], parts?: Partial<Pile>) => nextTurn(worked(readings, parts), milwaukee);

describe('without a thermometer', () => {
  it('a pile is turned every seven to ten days (compost:S46)', () => {
    expect(turn([])).toMatchObject({
      cause: 'calendar',
      window: { earliest: '2027-05-27', preferred: '2027-05-27', latest: '2027-05-30' },
      reasons: [{ rule: 'pile-turn.weekly', source: 'compost:S46' }],
    });
  });

  it('the days are counted from the building where it was never turned', () => {
    expect(turn([], { turns: [] }).window.earliest).toBe('2027-05-17');
  });

  it('they are counted from the newest turn, in whatever order the log has them', () => {
    expect(turn([], { turns: ['2027-05-28', '2027-05-20'] }).window.earliest).toBe('2027-06-04');
  });
});

describe('what a turn says', () => {
  const task = (built: Day, readings: readonly PileReading[] = []) =>
    draft(
      draftsIn(garden({ startedOn: '2027-09-11', piles: [pile(built, { turns: ['2027-09-05'], readings })] })),
      'pile-turn/',
    );

  it('names the winter in between, and the days it should cure and be ready', () => {
    // Air below 10 °C from 22 October to 29 April at Milwaukee.
    const steps = task('2027-09-01').steps.join(' ');
    expect(steps).toContain('It rests over winter, from about ⟦2027-10-22⟧ to ⟦2028-04-30⟧');
    expect(steps).toContain('should be ready about ⟦2028');
    expect(task('2027-07-01').steps.join(' ')).not.toContain('winter');
  });

  it('holds a good look against the calendar, and says where there was none', () => {
    const said = (readings: readonly PileReading[]) => {
      const [reason] = task('2027-09-01', readings).reasons;
      return reason && reasonSentence(reason);
    };
    expect(said([{ on: '2027-09-08', tempC: 52 }])).toContain('on ⟦2027-09-08⟧ it was ⟦52 tempC⟧ and well');
    expect(said([])).toContain('without a look at it');
  });
});

describe('the year of a hot pile', () => {
  it('shows its curing and the look whether it is ready, planned or built', () => {
    for (const startedOn of ['2027-05-01', '2027-05-21']) {
      const drafts = draftsIn(garden({ startedOn, piles: [pile('2027-05-20')] }));
      const [cure, look] = ['pile-cure/', 'pile-maturity/'].map((key) => draft(drafts, key));
      // 90, 105 and 120 days of heat, 21 to 28 of curing.
      expect(cure?.window).toEqual({ earliest: '2027-08-18', preferred: '2027-09-02', latest: '2027-09-17' });
      expect(look?.window).toEqual({ earliest: '2027-09-08', preferred: '2027-09-30', latest: '2027-10-15' });
      expect(look?.after).toEqual([{ key: 'pile-cure/pile:p', minDays: 21 }]);
    }
  });

  it('shows neither for a pile that was skipped', () => {
    const skipped = { 'pile-build/pile:p': '2027-05-02' };
    const drafts = draftsIn(garden({ startedOn: '2027-05-01', piles: [pile('2027-05-20')], skipped }));
    expect(drafts.filter(({ practice }) => practice === 'composting').map(({ kind }) => kind)).toEqual(['build-pile']);
  });
});

describe('in cold weather', () => {
  // The mean air at Milwaukee is below 10 °C from 22 October to 29 April (compost:S55: piles rest below 50 °F).
  const { from: wakes = '' } = meanAirStaysAbove(milwaukee, { season: 2028, tempC: 10 });

  it('a pile rests until the air is back at 10 °C on average', () => {
    const autumn = nextTurn(pile('2027-10-01', { turns: ['2027-11-10'] }), milwaukee);
    expect(autumn.window.earliest).toBe(wakes);
    expect(autumn.reasons.map(({ rule }) => rule)).toEqual(['pile-turn.weekly', 'pile-turn.rest']);
    expect(wakes).toBe('2028-04-30');
  });

  it('a pile above 40 °C works on, and is turned weekly', () => {
    const hot = pile('2027-10-01', { turns: ['2027-11-10'], readings: [{ on: '2027-11-10', tempC: 52 }] });
    expect(nextTurn(hot, milwaukee).window.earliest).toBe('2027-11-17');
  });

  it('a cool reading asks for no turn: turning would only let heat out', () => {
    const cool = pile('2027-10-01', { turns: ['2027-11-10'], readings: [{ on: '2027-12-20', tempC: 20 }] });
    expect(nextTurn(cool, milwaukee).window.earliest).toBe(wakes);
  });

  it('a cold reading is no sign that it has done heating', () => {
    const turns = ['2027-10-10', '2027-10-17', '2027-10-24', '2027-10-31'];
    expect(doneHeating(pile('2027-10-01', { turns, readings: [{ on: '2028-01-15', tempC: 4 }] }), milwaukee)).toBe(
      false,
    );
  });
});

describe('a reading', () => {
  it('of 60 °C or more asks for a turn within a day (compost:S9), and from 65 °C is overdue (compost:S7)', () => {
    expect(turn([{ on: '2027-05-24', tempC: 60 }])).toMatchObject({
      cause: 'too hot',
      window: { earliest: '2027-05-24', preferred: '2027-05-25', latest: '2027-05-25' },
      reasons: [{ source: 'compost:S9', limit: 60 }],
    });
    expect(turn([{ on: '2027-05-24', tempC: 65 }])).toMatchObject({
      window: { earliest: '2027-05-24', preferred: '2027-05-24', latest: '2027-05-24' },
      reasons: [{ source: 'compost:S7' }],
    });
    expect(turn([{ on: '2027-05-24', tempC: 59.9 }]).cause).toBe('calendar');
  });

  it('below 43 °C asks for one once the pile had five days to heat (compost:S27)', () => {
    expect(turn([{ on: '2027-05-25', tempC: 42 }]).cause).toBe('cooling');
    expect(turn([{ on: '2027-05-24', tempC: 42 }]).cause).toBe('calendar');
    expect(turn([{ on: '2027-05-25', tempC: 43 }]).cause).toBe('calendar');
  });

  it('of a sour or ammonia smell asks for browns and a turn', () => {
    expect([
      turn([{ on: '2027-05-23', smell: 'sour' }]).cause,
      turn([{ on: '2027-05-23', smell: 'ammonia' }]).cause,
    ]).toEqual(['sour', 'ammonia']);
    expect(turn([{ on: '2027-05-23', smell: 'earthy' }]).cause).toBe('calendar');
  });

  it('of a wet or dry handful asks for browns or water', () => {
    expect([
      turn([{ on: '2027-05-23', moisture: 'wet' }]).cause,
      turn([{ on: '2027-05-23', moisture: 'dry' }]).cause,
    ]).toEqual(['wet', 'dry']);
    expect(turn([{ on: '2027-05-23', moisture: 'damp' }]).cause).toBe('calendar');
  });

  it('of the day the pile was moved has been answered', () => {
    expect(turn([{ on: '2027-05-20', tempC: 66, smell: 'sour' }]).cause).toBe('calendar');
  });

  it('is put together with what was noted apart on its day, and gives way to a newer one', () => {
    const parts = [
      { on: '2027-05-23', tempC: 50 },
      { on: '2027-05-23', smell: 'sour' as const },
    ];
    expect(turn(parts).cause).toBe('sour');
    expect(turn([...parts, { on: '2027-05-25', tempC: 55, smell: 'earthy' }]).cause).toBe('calendar');
  });
});

describe('a pile that has done heating', () => {
  const turns = ['2027-05-20', '2027-05-27', '2027-06-03', '2027-06-10'];
  const coldAfter = (reading: Omit<PileReading, 'on'>, on = '2027-06-20') =>
    doneHeating(pile('2027-05-10', { turns, readings: [{ on, ...reading }] }), milwaukee);

  it('was turned four times and is below 38 °C five days after the last (compost:S47)', () => {
    expect(coldAfter({ tempC: 37 })).toBe(true);
    expect(coldAfter({ tempC: 38 })).toBe(false);
    expect(coldAfter({ tempC: 37 }, '2027-06-14')).toBe(false);
  });

  it('is not one that is dry: that wants water (compost:S8)', () => {
    expect(coldAfter({ tempC: 30, moisture: 'dry' })).toBe(false);
  });

  it('is moved to curing from the reading on', () => {
    const done = pile('2027-05-10', { turns, readings: [{ on: '2027-06-20', tempC: 30 }] });
    const cure = draft(draftsIn(garden({ startedOn: '2027-06-20', piles: [done] })), 'pile-cure/');
    expect(cure.window).toEqual({ earliest: '2027-06-20', preferred: '2027-06-20', latest: '2027-07-04' });
    expect(cure.reasons[0]).toMatchObject({ rule: 'pile-cure.no-heat', limit: 38, source: 'compost:S47' });
  });
});

describe('the task of turning', () => {
  const drafts = (of: Pile, startedOn = '2027-05-22') => draftsIn(garden({ startedOn, piles: [of] }));

  it('is the next one only, counted from the log', () => {
    expect(draft(drafts(worked([])), 'pile-turn/').key).toBe('pile-turn/pile:p/turn:2');
  });

  it('takes half an hour a cubic metre and five minutes to begin', () => {
    expect(draft(drafts(worked([])), 'pile-turn/').effortMinutes).toBe(23);
  });

  it('asks for a tenth of browns where it smells, and a can of water where it is dry', () => {
    const sour = draft(drafts(worked([{ on: '2027-05-22', smell: 'sour' }])), 'pile-turn/');
    const dry = draft(drafts(worked([{ on: '2027-05-22', moisture: 'dry' }])), 'pile-turn/');
    expect(sour.supplies[1]).toEqual({ what: 'dry leaves or straw', amount: { value: 60, unit: 'L' } });
    expect(dry.supplies[1]).toEqual({ what: 'water', amount: { value: 10, unit: 'L' } });
    expect(sour.cautions.join(' ')).toContain('mask');
  });

  it('is asked for when a garden is brought in with a turn long due', () => {
    expect(draft(drafts(worked([]), '2027-06-15'), 'pile-turn/').window.earliest).toBe('2027-05-27');
  });

  it('gives way to a cold pile’s look two months after nobody turned it', () => {
    expect(draft(drafts(worked([]), '2027-07-29'), 'pile-turn/').kind).toBe('turn-pile');
    const look = draft(drafts(worked([]), '2027-07-30'), 'pile-maturity/');
    expect(look.reasons[0]?.rule).toBe('pile-maturity.left-alone');
    expect(look.window).toEqual({
      earliest: '2028-05-09',
      preferred: '2028-05-09',
      latest: addDays('2027-05-10', 730),
    });
  });
});
