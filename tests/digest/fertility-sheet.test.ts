import { describe, expect, it } from 'vitest';
import { fertilitySheet, figureOf, type LedgerTold, toldSeasons } from '../../src/digest/fertility-sheet.ts';
import type { Garden } from '../../src/garden/garden.ts';
import { readableIn } from '../../src/measures/quantity.ts';
import { frostDates, garden, inputOf, setOut, sown } from '../practices/gardens.ts';

const climate = frostDates('05-10', '10-01');
const metric = (text: string): string => readableIn('metric', text, '');

function told(parts: Parameters<typeof garden>[0]): LedgerTold {
  const of: Garden = garden({ topdressing: { depthMm: 6, season: 'autumn' }, ...parts });
  const [first] = fertilitySheet(inputOf(of, climate));
  if (first === undefined) throw new Error('No bed has a crop.');
  return first;
}

describe('a ledger told', () => {
  const tomato = { plantings: [setOut('tomato', '2027-05-25')] };

  it('says what it comes to, with what each side gives', () => {
    const { outcome, band, ways } = told(tomato);
    expect(band).toBe('short');
    expect(metric(outcome)).toBe(
      '14.6 g/m² wanted, 5.5 g/m² given by the usual figures and 7.1 g/m² at best: short by 9.1 g/m², and short even at best.',
    );
    expect(ways.map(({ fertiliser }) => fertiliser.name)).toContain('alfalfa meal');
  });

  it('of a bed that is only low names no meal, and a legume ahead as the way', () => {
    const soilTests = [{ on: '2026-10-01', organicMatterPercent: 9 }];
    const { band, ways, notes } = told({ ...tomato, soilTests });
    expect([band, ways]).toEqual(['low', []]);
    expect(notes.join(' ')).toContain('A legume or a legume cover');
  });

  it('of peas alone says that nothing is wanted', () => {
    expect(told({ plantings: [sown('pea', '2027-04-15')] }).outcome).toContain('gathers its own');
  });

  it('tells of phosphorus that stops compost and everything that brings more of it', () => {
    const soilTests = [{ on: '2026-10-01', phosphorusPpm: 40 }];
    const { notes, lines, ways } = told({ ...tomato, soilTests });
    expect(notes[0]).toContain('40 ppm of phosphorus, which is very high');
    expect(lines.some(({ of }) => of.includes('compost'))).toBe(false);
    expect(ways.every(({ fertiliser }) => fertiliser.phosphate === 0)).toBe(true);
  });

  it('gives a span beside a figure only where there is one', () => {
    expect(metric(figureOf({ low: 2, usual: 2, high: 2 }))).toBe('2 g/m²');
    expect(metric(figureOf({ low: 3.5, usual: 7, high: 10.5 }))).toBe('7 g/m² (3.5 to 10.5 g/m²)');
  });

  it('covers the running season and the next, in the south from July', () => {
    expect(toldSeasons(inputOf(garden({ startedOn: '2027-12-31' }), climate))).toEqual([2027, 2028]);
    const south = frostDates('10-05', '04-20', -43);
    expect(toldSeasons(inputOf(garden({ startedOn: '2028-02-29' }), south))).toEqual([2027, 2028]);
  });
});
