/**
 * Raw manure and the harvest against the rule as published, and against dates worked out from it by hand.
 */
import { describe, expect, it } from 'vitest';
import { clearOfSoil } from '../../src/handbook/soil-contact.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';
import { daysBetween } from '../../src/measures/days.ts';
import { harvestFrom, manureWaitDays, rawManureOf, spreadBy } from '../../src/practices/manure.ts';
import { hotLog } from '../practices/manure-piles.ts';

const NO_BINS = { bins: [] };

describe('the last day for raw manure (7 CFR 205.203(c); dates reckoned in the reference, check V16 of composting)', () => {
  it('before lettuce picked on 15 July 2025 is 17 March: 120 days', () => {
    expect(spreadBy('2025-07-15', 'lettuce-leaf')).toBe('2025-03-17');
  });

  it('before tomatoes on stakes picked that day is 16 April: 90 days', () => {
    expect(spreadBy('2025-07-15', 'tomato')).toBe('2025-04-16');
  });
});

describe('the first harvest after raw manure (7 CFR 205.203(c)(1); check 21 of rotation and fertility)', () => {
  it('spread on 1 November: carrots from 1 March, tomatoes from 30 January, over New Year', () => {
    expect(harvestFrom('2026-11-01', 'carrot')).toBe('2027-03-01');
    expect(harvestFrom('2026-11-01', 'tomato')).toBe('2027-01-30');
  });

  it('spread on 15 April: carrots from 13 August', () => {
    expect(harvestFrom('2027-04-15', 'carrot')).toBe('2027-08-13');
  });

  it('counts 29 February as a day: the same autumn’s carrots are free a calendar day sooner', () => {
    expect(harvestFrom('2027-11-01', 'carrot')).toBe('2028-02-29');
    expect(daysBetween('2027-11-01', '2028-02-29')).toBe(120);
  });

  it('is the same rule in the south, where lettuce of 15 January wants the bed dressed by 17 September', () => {
    expect(spreadBy('2027-01-15', 'lettuce-leaf')).toBe('2026-09-17');
  });
});

describe('crops that touch soil', () => {
  it('are those Utah State names: carrot, potato, radish and leaves (FAQ 518)', () => {
    for (const crop of ['carrot', 'potato', 'radish', 'lettuce-leaf', 'spinach', 'kale', 'swiss-chard'])
      expect(manureWaitDays(crop), crop).toBe(120);
  });

  it('and the melon Colorado State names; its corn is clear of it', () => {
    expect([manureWaitDays('watermelon'), manureWaitDays('sweet-corn')]).toEqual([120, 90]);
  });

  it('are all that the handbook does not list as clear', () => {
    const clear = vegetables.filter(({ id }) => manureWaitDays(id) === 90).map(({ id }) => id);
    expect(clear.sort()).toEqual(clearOfSoil.map(({ vegetableId }) => vegetableId).sort());
  });
});

describe('what frees compost made with manure (40 CFR 503 appendix B; 7 CFR 205.203(c)(2); checks V12, V13, V15)', () => {
  it('15 days at 55 °C and 5 turns among them', () => {
    expect(rawManureOf(NO_BINS, hotLog({ days: 15, turns: 5 }))).toBeUndefined();
  });

  it('three days on end in a closed bin, and not in an open one (check V14)', () => {
    const log = hotLog({ days: 4, turns: 0 });
    const bins = [{ id: 'bin', name: 'Drum', volumeL: 1000, closed: true as const }];
    expect(rawManureOf({ bins }, log)).toBeUndefined();
    expect(rawManureOf({ bins: bins.map(({ closed: _, ...bin }) => bin) }, log)?.manure).toBeDefined();
  });

  it.each([
    ['14 days', { days: 14, turns: 5 }],
    ['4 turns', { days: 15, turns: 4 }],
    ['54 °C', { days: 15, turns: 5, tempC: 54 }],
    ['78 °C, above 170 °F', { days: 15, turns: 5, tempC: 78 }],
  ])('not %s', (_, log) => {
    expect(rawManureOf(NO_BINS, hotLog(log))?.manure).toBe('horse manure with bedding');
  });
});
