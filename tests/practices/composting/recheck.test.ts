import { describe, expect, it } from 'vitest';
import type { Pile, PileReading } from '../../../src/garden/garden.ts';
import { nextTurn } from '../../../src/practices/composting/turn.ts';
import { draft, draftsIn, garden, milwaukee, pile } from '../gardens.ts';

const sour: PileReading = { on: '2027-06-01', smell: 'sour' };

function draftsOf(parts: Partial<Pile>, today = '2027-06-03') {
  return draftsIn(garden({ startedOn: today, piles: [pile('2027-05-10', parts)] }));
}

const recheck = (parts: Partial<Pile>) => draftsOf(parts).find(({ key }) => key.startsWith('pile-recheck/'));

describe('a sour pile', () => {
  it('is turned within two days, with litres of dry browns', () => {
    const turn = draft(draftsOf({ readings: [sour] }, '2027-06-01'), 'pile-turn/');
    expect(turn.window.latest).toBe('2027-06-03');
    expect(turn.supplies).toContainEqual(
      expect.objectContaining({ what: 'dry leaves or straw', amount: { value: expect.any(Number), unit: 'L' } }),
    );
  });

  it('is smelt again three days after that turn', () => {
    expect(recheck({ readings: [sour], turns: ['2027-06-02'] })?.window).toEqual({
      earliest: '2027-06-05',
      preferred: '2027-06-05',
      latest: '2027-06-08',
    });
  });

  it('is left alone once somebody has looked', () => {
    const looked: PileReading = { on: '2027-06-05', smell: 'earthy' };
    expect(recheck({ readings: [sour, looked], turns: ['2027-06-02'] })).toBeUndefined();
  });

  it('asks again under another key after the next turn', () => {
    const again = recheck({
      readings: [sour, { on: '2027-06-05', smell: 'sour' }],
      turns: ['2027-06-02', '2027-06-06'],
    });
    expect(again?.key).toBe('pile-recheck/pile:p/turn:2');
  });

  it('is not asked for after a turn that answered nothing of the kind', () => {
    expect(recheck({ readings: [{ on: '2027-06-01', tempC: 62 }], turns: ['2027-06-02'] })).toBeUndefined();
    expect(recheck({ readings: [], turns: ['2027-06-02'] })).toBeUndefined();
  });
});

describe('pests and a slumped pile', () => {
  const turn = (reading: Omit<PileReading, 'on'>, on = '2027-06-01') =>
    nextTurn(pile('2027-05-10', { turns: ['2027-05-20'], readings: [{ on, ...reading }] }), milwaukee);

  it('pests are answered in three days, with scraps covered and a closed bin named (compost:S58)', () => {
    expect(turn({ pests: true })).toMatchObject({ cause: 'pests', window: { latest: '2027-06-04' } });
    const task = draft(draftsOf({ readings: [{ on: '2027-06-01', pests: true }] }), 'pile-turn/');
    expect(task.steps.join(' ')).toContain('closed bin with a lid');
    expect(task.cautions.join(' ')).toContain('gloves and a mask');
  });

  it('a slumped pile is loosened within a week, and in winter rest is left closed', () => {
    expect(turn({ slumped: true })).toMatchObject({ cause: 'slumped', window: { latest: '2027-06-08' } });
    expect(turn({ slumped: true }, '2027-12-20').cause).toBe('calendar');
  });

  it('heat and a bad smell come before either', () => {
    expect(turn({ tempC: 66, pests: true, slumped: true }).cause).toBe('too hot');
    expect(turn({ smell: 'sour', pests: true }).cause).toBe('sour');
  });
});

describe('a thermometer that tells by itself', () => {
  const probe: PileReading = { on: '2027-06-02', tempC: 52 };

  it('does not take back what was smelt the day before', () => {
    const smelt = nextTurn(pile('2027-05-10', { turns: ['2027-05-20'], readings: [sour, probe] }), milwaukee);
    expect(smelt).toMatchObject({ cause: 'sour', window: { earliest: '2027-06-01' } });
    const reason = smelt.reasons[0];
    expect(reason?.saw.on).toBe('2027-06-01');
  });

  it('does not take back pests, dryness or slumping, but a later look by hand does', () => {
    const cause = (...readings: PileReading[]) =>
      nextTurn(pile('2027-05-10', { turns: ['2027-05-20'], readings }), milwaukee).cause;
    expect(cause({ on: '2027-06-01', pests: true }, probe)).toBe('pests');
    expect(cause({ on: '2027-06-01', moisture: 'dry' }, probe)).toBe('dry');
    expect(cause({ on: '2027-06-01', slumped: true }, probe)).toBe('slumped');
    expect(cause({ on: '2027-06-01', pests: true }, { on: '2027-06-03', smell: 'earthy' })).toBe('calendar');
    expect(cause({ on: '2027-06-01', moisture: 'dry' }, { on: '2027-06-03', moisture: 'damp' })).toBe('calendar');
  });

  it('does not answer for a nose after the turn', () => {
    const after: PileReading = { on: '2027-06-04', tempC: 48 };
    expect(recheck({ readings: [sour, after], turns: ['2027-06-02'] })?.key).toBe('pile-recheck/pile:p/turn:1');
  });

  it('is not asked where the newest look before the turn found it well again', () => {
    const well = (parts: Partial<PileReading>): PileReading => ({ on: '2027-06-03', ...parts });
    const lookedAt = (reading: PileReading) => recheck({ readings: [sour, reading], turns: ['2027-06-04'] });
    expect(lookedAt(well({ smell: 'earthy', moisture: 'damp' }))).toBeUndefined();
    // A handful does not take back what was smelt.
    expect(lookedAt(well({ moisture: 'damp' }))?.kind).toBe('recheck-pile');
    const wet: PileReading = { on: '2027-06-01', smell: 'sour', moisture: 'wet' };
    const still = recheck({ readings: [wet, well({ smell: 'earthy' })], turns: ['2027-06-04'] });
    expect(still?.reasons[0]?.saw.sign).toBe('was too wet');
  });
});
