import { describe, expect, it } from 'vitest';
import type { Pile } from '../../../src/garden/garden.ts';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { activeEnd, heatEndOdds, stoodStillDays } from '../../../src/practices/composting/pile-life.ts';
import { draft, draftsIn, garden, milwaukee, pile } from '../gardens.ts';

const drafts = (parts: Partial<Pile>, startedOn: string) =>
  draftsIn(garden({ startedOn, piles: [pile('2027-05-10', parts)] }));

describe('the odds of being ready', () => {
  it('come out of every season of the record: later after a cold spring, earlier after a warm one', () => {
    const { early, median, late, years, shareOfYears } = heatEndOdds(pile('2027-05-10'), milwaukee);
    expect(years).toBeGreaterThanOrEqual(25);
    expect(shareOfYears).toBe(1);
    expect([early, median, late]).toEqual([early, median, late].sort());
    // 105 days of which hardly any is colder than 10 °C after the middle of May.
    expect(daysBetween('2027-05-10', median ?? '')).toBeGreaterThanOrEqual(105);
    expect(daysBetween('2027-05-10', late ?? '')).toBeLessThan(130);
  });

  it('reach over winter for a pile built in autumn', () => {
    const { median } = heatEndOdds(pile('2027-10-01'), milwaukee);
    expect(median).toBeDefined();
    expect((median ?? '') > '2028-06-01').toBe(true);
  });

  it('stand on the page of the look, with the curing added', () => {
    const look = draft(drafts({}, '2027-05-11'), 'pile-maturity/');
    const { median = '' } = heatEndOdds(pile('2027-05-10'), milwaukee);
    expect(look.odds?.median).toBe(addDays(median, 28));
  });

  it('hold in the south, half a year away, and on 29 February', () => {
    const { median } = heatEndOdds(pile('2028-02-29'), milwaukee);
    expect(median).toBeDefined();
  });
});

describe('a problem sets a pile back', () => {
  it('by the days from the look that found it to the turn that answered it', () => {
    const dry = pile('2027-05-10', { readings: [{ on: '2027-06-01', moisture: 'dry' }], turns: ['2027-06-11'] });
    expect(stoodStillDays(dry)).toBe(10);
    const [well, set] = [activeEnd(pile('2027-05-10'), milwaukee), activeEnd(dry, milwaukee)];
    expect(daysBetween(well?.usual ?? '', set?.usual ?? '')).toBe(10);
  });

  it('counts days once where two looks found it amiss, and none that no turn has answered', () => {
    const readings = [
      { on: '2027-06-01', moisture: 'wet' as const },
      { on: '2027-06-04', smell: 'sour' as const },
    ];
    expect(stoodStillDays(pile('2027-05-10', { readings, turns: ['2027-06-06'] }))).toBe(5);
    expect(stoodStillDays(pile('2027-05-10', { readings }))).toBe(0);
  });

  it('not where it was only warm or earthy', () => {
    const readings = [{ on: '2027-06-01', tempC: 58, smell: 'earthy' as const, moisture: 'damp' as const }];
    expect(stoodStillDays(pile('2027-05-10', { readings, turns: ['2027-06-08'] }))).toBe(0);
  });
});

describe('compost that is not ready', () => {
  const curing = { curingSince: '2027-08-25' };

  it('is looked at again after two weeks', () => {
    const again = draft(
      drafts({ ...curing, notReady: [{ on: '2027-09-20', failed: ['smells'] }] }, '2027-09-21'),
      'pile-maturity/',
    );
    expect(again.window).toEqual({ earliest: '2027-10-04', preferred: '2027-10-04', latest: '2027-10-18' });
    expect(again.reasons[0]?.rule).toBe('pile-maturity.again');
  });

  it('is turned and works on where it heats again, and is moved to cure under a key of its own', () => {
    const back = drafts({ turns: ['2027-08-18'], notReady: [{ on: '2027-09-20', failed: ['heats'] }] }, '2027-09-20');
    const turn = draft(back, 'pile-turn/');
    expect(turn.window.earliest).toBe('2027-09-20');
    expect(draft(back, 'pile-cure/').key).toBe('pile-cure/pile:p/again:1');
    expect(draft(back, 'pile-cure/').window.earliest >= '2027-10-04').toBe(true);
  });
});
