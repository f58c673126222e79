import { describe, expect, it } from 'vitest';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { draft, draftsIn, frostDates, garden, milwaukee } from '../gardens.ts';

const closing = (parts: Parameters<typeof garden>[0] = {}, climate = milwaukee) =>
  draft(draftsIn(garden(parts), climate), 'close-down/garden/2027');

describe('hoses and tools', () => {
  it('are put away by the day before the freeze that comes in three years of ten', () => {
    const { window, odds, steps } = closing();
    // Milwaukee's first −2.2 °C: 1 November in three of ten years, 7 November in half of them.
    expect(window).toEqual({ earliest: '2027-10-11', preferred: '2027-10-25', latest: '2027-10-31' });
    expect(odds?.median).toBe('2027-11-07');
    expect(steps[0]).toContain('hoses');
  });

  it('go earlier where the household plans by fewer odds', () => {
    const cautious = closing({ place: { frostRisk: 10 } });
    expect(cautious.window.latest < closing().window.latest).toBe(true);
    expect(cautious.reasons.map(reasonSentence)[0]).toContain('in 10 years of a hundred');
  });

  it('are put away in April in the south', () => {
    const south = draftsIn(garden({ place: { latitude: -43 } }), frostDates('10-20', '04-20', -43));
    expect(draft(south, 'close-down/garden/2026').window.latest.slice(0, 7)).toMatch(/^2027-0[45]$/);
  });

  it('are left alone where it never freezes hard', () => {
    expect(draftsIn(garden(), inventedClimate()).filter(({ practice }) => practice === 'season-end')).toEqual([]);
  });

  it('take a look for slugs with them, and no task of its own', () => {
    expect(closing().steps.join(' ')).toContain('slugs');
    expect(draftsIn(garden()).filter(({ kind }) => /slug/.test(kind))).toEqual([]);
  });
});
