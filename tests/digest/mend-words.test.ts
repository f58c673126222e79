import { describe, expect, it } from 'vitest';
import { mendInWords } from '../../src/digest/mend-words.ts';
import type { Edit } from '../../src/garden/edit.ts';
import { gardenFileOf } from '../../src/garden/export-garden-file.ts';
import { exampleFile, gardenOf, imported, ledgerOf } from '../garden/example-garden.ts';
import { mendOf } from '../garden/mends.ts';

const ledger = ledgerOf([
  '2027-06-01',
  imported(
    exampleFile({ soilTests: [{ on: '2027-05-02', bed: 'North bed' }], gear: [{ what: 'light-fabric', areaM2: 12 }] }),
  ),
]);
const file = gardenFileOf(gardenOf(ledger));
const names: Readonly<Record<string, string>> = {
  'north-bed': 'North bed',
  'south-bed': 'South bed',
  'left-bay': 'Left bay',
};

function told(units: 'metric' | 'us', ...edits: Edit[]): string {
  const fact = mendOf(ledger, edits);
  if (fact.kind !== 'garden-mended') throw new Error('That is no mend.');
  const named = (id: string): string => names[id] ?? id;
  return mendInWords(fact.edits, { bedName: named, binName: named, units });
}

const north = { ...file.beds[0], lengthM: 3 };

describe('a change in words', () => {
  it.each([
    ['metric', { list: 'beds', id: 'north-bed', row: north }, 'North bed changed: length from 2.4 m to 3 m'],
    ['us', { list: 'beds', id: 'north-bed', row: north }, 'North bed changed: length from 7.9 ft to 9.8 ft'],
    ['metric', { list: 'beds', id: 'south-bed' }, 'South bed taken out'],
    [
      'metric',
      { list: 'plantings', row: { bed: 'South bed', crop: 'kale', setOut: '2027-07-01' } },
      'Kale in South bed, set out 1 July 2027 added',
    ],
    [
      'us',
      { list: 'plantings', id: file.plantings[0]?.id, row: { ...file.plantings[0], lastHarvest: '2027-09-01' } },
      'Carrot in North bed, sown May 20, 2027 changed: last harvest from September 10, 2027 to September 1, 2027',
    ],
    [
      'metric',
      {
        list: 'piles',
        id: file.piles[0]?.id,
        row: { ...file.piles[0], readings: [{ on: '2027-05-09', tempC: 58, moisture: 'wet' }] },
      },
      'The pile in Left bay built 1 May 2027 changed: reading added (9 May 2027, 58 °C, wet)',
    ],
    [
      'metric',
      { list: 'soilTests', was: file.soilTests[0], row: { ...file.soilTests[0], ph: 6.4 } },
      'The soil test of North bed, 2 May 2027 changed: pH 6.4',
    ],
    ['metric', { list: 'gear', was: file.gear[0] }, '12 m² of light fabric taken out'],
    [
      'metric',
      { part: 'garden', row: { ...file.garden, hoursPerWeek: 6 } },
      'The garden changed: hours a week from 4 to 6',
    ],
    [
      'metric',
      { part: 'climate', row: { station: 'USW00014839' } },
      'The climate it is planned by changed from frost dates 10 May, 5 October to station USW00014839',
    ],
    ['metric', { days: [{ day: '2027-05-30', kind: 'observed', rainMm: 4 }] }, 'Weather of 30 May 2027 given anew'],
  ] as const)('%s: %j', (units, edit, words) => {
    expect(told(units, edit)).toBe(words);
  });

  it('says once what is said of many', () => {
    const both = file.beds.map((bed): Edit => ({ list: 'beds', id: bed.id, row: { ...bed, watered: true } }));
    expect(told('metric', ...both)).toBe('North bed, South bed changed: watered from no to yes');
  });

  it('says that a plan has come true', () => {
    const row = { ...file.plantings[0], planned: [] };
    expect(told('metric', { list: 'plantings', id: row.id, row })).toContain('changed: last harvest has happened');
  });
});
