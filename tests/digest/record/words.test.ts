import { expect, it } from 'vitest';
import type { RecordRow } from '../../../src/digest/record/row.ts';
import { plannedInWords, rowInWords, tellerInWords } from '../../../src/digest/record/row-words.ts';
import { pileInWords } from '../../../src/digest/record/summary-words.ts';

const base = {
  season: 2027,
  on: '2027-04-18',
  about: 'bed',
  aboutId: 'a',
  aboutName: 'Bed A',
  origin: 'told',
} as const;
const words = (told: Partial<RecordRow>, units: 'us' | 'metric' = 'metric') =>
  rowInWords({ ...base, doing: 'done', ...told }, units, (id) => `bin of ${id}`);

it.each([
  [{ doing: 'sown', what: 'carrot', areaM2: 1.5 }, 'Carrot sown, on 1.5 m²'],
  [
    { doing: 'compost-spread', what: 'compost', litres: 38, piles: 'x y' },
    'Compost spread, 38 L, from bin of x and bin of y',
  ],
  [{ doing: 'fed', what: 'bone meal', grams: 120 }, 'Bone meal strewn, 120 g'],
  [
    { doing: 'cleared', what: 'kale', note: 'last harvest ⟦2026-12-30⟧' },
    'Kale cleared, last harvest 30 December 2026',
  ],
  [{ doing: 'pile-read', tempC: 58, note: 'damp' }, 'Looked at, 58 °C, damp'],
  [{ doing: 'away', to: '2028-01-03' }, 'Away, until 3 January 2028'],
  [{ doing: 'ordered', title: 'Order rye seed for ⟦2027-09-20⟧' }, 'Done: Order rye seed for 20 September 2027'],
  [{ doing: 'skipped', title: 'Cut the oats' }, 'Skipped: Cut the oats'],
  [{ doing: 'put-off', title: 'Cut the oats' }, 'Not yet: Cut the oats'],
] as const)('%j is told as "%s"', (told, said) => {
  expect(words(told)).toBe(said);
});

it('amounts are read in the units of the reader', () => {
  expect(words({ doing: 'compost-spread', what: 'compost', litres: 38 }, 'us')).toBe('Compost spread, 1.3 cu ft');
});

it('how a day lay to the plan is told with the year of the day planned', () => {
  const planned = (told: Partial<RecordRow>) => plannedInWords({ ...base, doing: 'done', ...told }, 'metric');
  expect(planned({})).toBeUndefined();
  expect(planned({ plannedFor: '2027-04-18' })).toBe('on the day planned');
  expect(planned({ plannedFor: '2027-04-16' })).toBe('planned for 16 April 2027, 2 days later');
  expect(planned({ plannedFor: '2027-04-19' })).toBe('planned for 19 April 2027, 1 day earlier');
  expect(planned({ doing: 'skipped', plannedFor: '2027-04-19' })).toBe('was planned for 19 April 2027');
  expect(planned({ lastDay: '2027-04-10' })).toBe('its last day was 10 April 2027');
  expect(planned({ lastDay: '2027-04-18' })).toBeUndefined();
});

it('a teller is named where it is a member, and a day of telling where it was another', () => {
  const teller = (told: Partial<RecordRow>) =>
    tellerInWords({ ...base, doing: 'done', ...told }, 'metric', new Set(['Ida']));
  expect(teller({ by: 'Ida', toldOn: '2027-04-18' })).toBe('by Ida');
  expect(teller({ by: 'web page', toldOn: '2027-04-18' })).toBeUndefined();
  expect(teller({ by: 'Ida', toldOn: '2027-04-20' })).toBe('by Ida, told 20 April 2027');
  expect(teller({ origin: 'garden-file' })).toBeUndefined();
});

it('a pile is told by its heat, its turns and where it went', () => {
  const reading = { on: '2027-05-02', tempC: 41 };
  const heat = { readings: 2, first: reading, highest: { on: '2027-05-05', tempC: 61 }, hotDays: 1, hotFromC: 55 };
  const pile = { id: 'p', name: 'Left bay', method: 'hot', built: '2027-05-01', ingredients: [], turns: 2 } as const;
  const went = [{ on: '2027-10-01', bed: 'a', bedName: 'Bed A', litres: 60, mixed: true as const }];
  expect(
    pileInWords({ ...pile, ingredients: [], temperatures: heat, went, ready: '2027-09-01' }, 'metric').join(' '),
  ).toBe(
    'A hot pile, built 1 May 2027. Read twice: 41 °C on 2 May 2027 at first, 61 °C on 5 May 2027 at most; 55 °C or more on ' +
      'one day. Turned twice. Ready 1 September 2027. Its compost went to Bed A (60 L with that of another pile, 1 October 2027).',
  );
});
