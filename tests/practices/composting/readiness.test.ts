import { describe, expect, it } from 'vitest';
import type { Pile } from '../../../src/garden/garden.ts';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { activeEnd, heatEndOdds } from '../../../src/practices/composting/heat-end.ts';
import { composting } from '../../../src/practices/composting/index.ts';
import { setbacksOf, stoodStillDays } from '../../../src/practices/composting/setbacks.ts';
import { doneHeating } from '../../../src/practices/composting/turn.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { draft, draftsIn, garden, inputOf, milwaukee, pile } from '../gardens.ts';

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

const stood = (parts: Partial<Pile>, built = '2027-05-10') =>
  stoodStillDays(setbacksOf(pile(built, parts), milwaukee), milwaukee);
const end = (parts: Partial<Pile> = {}, built = '2027-05-10') => activeEnd(pile(built, parts), milwaukee)?.usual ?? '';

describe('a problem sets a pile back', () => {
  it('by the days from the look that found it to the turn that answered it', () => {
    const dry = { readings: [{ on: '2027-06-01', moisture: 'dry' as const }], turns: ['2027-06-11'] };
    expect(stood(dry)).toBe(10);
    expect(daysBetween(end(), end(dry))).toBe(10);
  });

  it('counts days once where two looks found it amiss', () => {
    const readings = [
      { on: '2027-06-01', moisture: 'wet' as const },
      { on: '2027-06-04', smell: 'sour' as const },
    ];
    expect(stood({ readings, turns: ['2027-06-06'] })).toBe(5);
  });

  it('until the answer is due where nobody has turned it yet: two days for a sour one, a week for a slumped one', () => {
    expect(stood({ readings: [{ on: '2027-06-01', smell: 'sour' }] })).toBe(2);
    expect(stood({ readings: [{ on: '2027-06-01', slumped: true }] })).toBe(7);
  });

  it('until a look that found it well again, if that came before the turn', () => {
    const readings = [
      { on: '2027-06-01', moisture: 'dry' as const },
      { on: '2027-06-04', moisture: 'damp' as const },
    ];
    expect(stood({ readings, turns: ['2027-06-11'] })).toBe(3);
  });

  it('not where it was only warm or earthy, nor in the days of its winter rest', () => {
    const well = [{ on: '2027-06-01', tempC: 58, smell: 'earthy' as const, moisture: 'damp' as const }];
    expect(stood({ readings: well, turns: ['2027-06-08'] })).toBe(0);
    const inWinter = { readings: [{ on: '2027-12-01', smell: 'sour' as const }], turns: ['2028-02-01'] };
    expect(stood(inWinter, '2027-09-20')).toBe(0);
  });

  it('stalls it where it is cold in warm weather before its fourth turn; after that it is done', () => {
    const cold = (turns: readonly string[]) =>
      stood({ turns: [...turns, '2027-06-20'], readings: [{ on: '2027-06-15', tempC: 30 }] });
    expect(cold(['2027-05-20', '2027-05-27', '2027-06-05'])).toBe(5);
    expect(cold(['2027-05-20', '2027-05-27', '2027-06-03', '2027-06-09'])).toBe(0);
    // Five days after it was moved it has not had its time to heat (Cornell: 4 to 5 days).
    expect(cold(['2027-06-11'])).toBe(0);
  });

  it.each([{ smell: 'ammonia' as const }, { pests: true as const }, { smell: 'sour' as const }])(
    'and keeps it at work two to six weeks after the answer, late in its life: %j',
    (sign) => {
      const late = { readings: [{ on: '2027-08-18', ...sign }], turns: ['2027-08-19'] };
      const { low, usual, high } = activeEnd(pile('2027-05-10', late), milwaukee) ?? { low: '', usual: '', high: '' };
      expect([low, usual, high].map((day) => daysBetween('2027-08-19', day))).toEqual([14, 28, 42]);
      expect(heatEndOdds(pile('2027-05-10', late), milwaukee).early).toBe('2027-09-16');
      const look = draft(drafts(late, '2027-08-20'), 'pile-maturity/');
      const told = look.reasons.find(({ rule }) => rule === 'pile-maturity.set-back');
      expect(told && reasonSentence(told)).toContain('14 to 42 days more');
    },
  );
});

describe('a pile amiss while it cures', () => {
  const curing = { curingSince: '2027-08-25', turns: ['2027-08-18'] };

  it('is turned with browns, and cures anew from that turn', () => {
    const sour = { ...curing, readings: [{ on: '2027-09-10', smell: 'sour' as const }] };
    const all = drafts(sour, '2027-09-10');
    const turn = draft(all, 'pile-turn/');
    expect(turn.window.latest).toBe('2027-09-12');
    expect(turn.steps.at(-1)).toContain('it cures for 21 to 28 days from this turn on');
    expect(draft(all, 'pile-maturity/').window.earliest).toBe(addDays('2027-09-12', 21));
    expect(all.some(({ key }) => key.startsWith('pile-cure/'))).toBe(false);
    const turned = drafts({ ...sour, turns: [...curing.turns, '2027-09-11'] }, '2027-09-12');
    expect(draft(turned, 'pile-maturity/').window.earliest).toBe(addDays('2027-09-11', 21));
    expect(turned.some(({ key }) => key.startsWith('pile-turn/'))).toBe(false);
  });

  it('and counts from the last day it was found warm again (43 °C, compost:S27); slumping and dryness do no harm', () => {
    const look = (reading: object) =>
      draft(drafts({ ...curing, readings: [{ on: '2027-09-10', ...reading }] }, '2027-09-10'), 'pile-maturity/').window
        .earliest;
    expect(look({ tempC: 43 })).toBe(addDays('2027-09-10', 21));
    expect([look({ tempC: 42.9 }), look({ slumped: true }), look({ moisture: 'dry' })]).toEqual(
      Array(3).fill(addDays('2027-08-25', 21)),
    );
  });

  it('is not counted on before the look after a vain one', () => {
    const notReady = [{ on: '2027-10-01', failed: ['coarse' as const] }];
    const of = garden({ startedOn: '2027-10-02', piles: [pile('2027-05-10', { ...curing, notReady })] });
    const nothing = { coverSowings: [], coverStands: [], uncovered: [], thinStands: [], compostSupply: [] };
    expect(composting.work(inputOf(of), nothing).found?.compostSupply?.[0]?.ready).toBe('2027-10-29');
  });
});

describe('a pile that nobody turns', () => {
  const cold = (parts: Partial<Pile>, today: string) => drafts({ method: 'cold', ...parts }, today);

  it('is turned where it went sour or drew pests, not because it is cool, dry or has sunk', () => {
    const asks = (reading: object) =>
      cold({ readings: [{ on: '2027-07-01', ...reading }] }, '2027-07-01').some(({ kind }) => kind === 'turn-pile');
    expect([asks({ smell: 'sour' }), asks({ pests: true })]).toEqual([true, true]);
    expect([asks({ tempC: 18 }), asks({ moisture: 'dry' }), asks({ slumped: true })]).toEqual([false, false, false]);
  });

  it('is ready later by the days it stood still', () => {
    const readings = [{ on: '2027-07-01', smell: 'sour' as const }];
    const look = draft(cold({ readings, turns: ['2027-07-11'] }, '2027-07-12'), 'pile-maturity/');
    expect(look.window.earliest).toBe(addDays('2027-05-10', 365 + 10));
  });
});

it('a pile that is sour and cold after four turns is mended before it is left to cure', () => {
  const turns = ['2027-05-20', '2027-05-27', '2027-06-03', '2027-06-10'];
  const cold = (smell: 'sour' | 'earthy') =>
    doneHeating(pile('2027-05-10', { turns, readings: [{ on: '2027-06-16', tempC: 30, smell }] }), milwaukee);
  expect([cold('earthy'), cold('sour')]).toEqual([true, false]);
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
