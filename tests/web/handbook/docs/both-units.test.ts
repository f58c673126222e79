import { describe, expect, it } from 'vitest';
import { bothUnits } from '../../../../src/web/handbook/docs/both-units.ts';
import { docs } from '../../../../src/web/handbook/docs/docs.ts';

const both = (text: string) => bothUnits(text, (words) => words);

describe('figures of the handbook', () => {
  // An inch is 25.4 mm, a cubic foot 28.3168 L, 0 °C are 32 °F: by definition.
  it.each([
    ['a layer of 13 mm', 'a layer of 13 mm (½ in)'],
    ['51 to 76 mm of it', '51 to 76 mm (2 to 3 in) of it'],
    ['at 55–77 °C', 'at 55–77 °C (131–171 °F)'],
    ['down to −8.3 °C', 'down to −8.3 °C (17 °F)'],
    ['a night of 28 °F', 'a night of 28 °F (−2.2 °C)'],
    ['765 L or more', '765 L (1 cu yd) or more'],
    ['more than 1,000 km', 'more than 1,000 km (621 mi)'],
  ])('"%s" has the other units beside it', (text, told) => expect(both(text)).toBe(told));

  it.each([
    ['450 °C over 4.4 days', 'a sum over days'],
    ['309 °C·d', 'a sum over days'],
    ['2 °C colder', 'a difference'],
    ['43 °C (110 °F)', 'told already'],
    ['28 °F (−2.2 °C)', 'told already'],
    ['half an inch (12.7 mm)', 'told already'],
    ['15, 17 and 28 g/m²', 'the last of a list'],
    ['7 g/L', 'a strength'],
  ])('"%s" stays as it is: %s', (text) => expect(both(text)).toBe(text));

  it('stand in both units on the pages read in the garden, and as published on the others', () => {
    const count = (name: string) =>
      docs()
        .pages.get(name)
        ?.html.match(/class="other-units/g)?.length ?? 0;
    expect(count('topdressing')).toBeGreaterThan(10);
    expect(count('planting')).toBeGreaterThan(5);
    expect(count('climate')).toBe(0);
  });
});
