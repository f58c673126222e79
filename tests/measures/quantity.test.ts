import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  dated,
  formatDay,
  formatQuantity,
  type QuantityUnit,
  quantity,
  quantitySpan,
  readableIn,
} from '../../src/measures/quantity.ts';
import type { UnitSystem } from '../../src/measures/units.ts';

const units = fc.constantFrom<QuantityUnit[]>(
  'mm',
  'cm',
  'm',
  'm2',
  'L',
  'sumL',
  'g',
  'kg',
  'tempC',
  'deltaC',
  'degreeDaysC',
  'gPerM2',
);
const systems = fc.constantFrom<UnitSystem[]>('us', 'metric');

describe('a sentence with marked amounts', () => {
  const sentence = `Spread ${quantity(13, 'mm')} over ${quantity(2.88, 'm2')} by ${dated('2027-10-30')}: ${quantity(37.44, 'L')}.`;

  it('reads in metric with the day first', () => {
    expect(readableIn('metric', sentence)).toBe('Spread 13 mm over 2.9 m² by 30 October: 37 L.');
  });

  it('reads in inches with the month first', () => {
    expect(readableIn('us', sentence)).toBe('Spread ½ in over 31 sq ft by October 30: 1.3 cu ft.');
  });

  it('tells the unit of a span once, unless its ends are told in different ones', () => {
    expect(readableIn('metric', quantitySpan(3.5, 10.5, 'gPerM2'))).toBe('3.5 to 10.5 g/m²');
    expect(readableIn('us', quantitySpan(3.5, 10.5, 'gPerM2'))).toBe('1.1 to 3.4 oz per 100 sq ft');
    expect(readableIn('metric', quantitySpan(-5.6, 0.4, 'gPerM2'))).toBe('-5.6 to 0.4 g/m²');
    expect(readableIn('us', quantitySpan(13, 51, 'mm'))).toBe('½ to 2 in');
    expect(() => quantitySpan(1, Number.NaN, 'mm')).toThrow('1 to NaN mm is no span.');
  });

  it('keeps the parts of a sum in cubic feet, also where the whole is yards', () => {
    const sum = `${quantity(900, 'sumL')} less ${quantity(100, 'sumL')}`;
    expect(readableIn('us', sum)).toBe('31.8 cu ft less 3.5 cu ft');
    expect(readableIn('metric', sum)).toBe('900 L less 100 L');
    expect(readableIn('us', quantity(900, 'L'))).toBe('1.2 cu yd');
  });

  it('leaves a text without marks as it is', () => {
    expect(readableIn('us', 'Dig nothing in (2027-10-30, 13 mm).')).toBe('Dig nothing in (2027-10-30, 13 mm).');
  });

  it('leaves no mark behind, whatever the amount', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), units, systems, (value, unit, system) => {
        expect(readableIn(system, `a ${quantity(value, unit)} b`)).not.toMatch(/[⟦⟧]|NaN|undefined/);
      }),
    );
  });

  it('refuses an amount that is no number, where it is marked', () => {
    expect(() => quantity(Number.NaN, 'mm')).toThrow(RangeError);
    expect(() => quantity(Number.POSITIVE_INFINITY, 'L')).toThrow('Infinity L');
  });
});

describe('a day in words', () => {
  it('stands in the order its reader uses', () => {
    expect(formatDay('2027-01-01', 'metric')).toBe('1 January');
    expect(formatDay('2028-02-29', 'us')).toBe('February 29');
    expect(formatDay('2027-12-31', 'us')).toBe('December 31');
  });
});

describe('an amount in metric', () => {
  it.each<[number, QuantityUnit, string]>([
    [12.7, 'mm', '13 mm'],
    [0.4, 'mm', '0.4 mm'],
    [0, 'mm', '0 mm'],
    [0.04, 'L', '0.04 L'],
    [712.4, 'degreeDaysC', '712 degree-days'],
    [2.54, 'cm', '2.5 cm'],
    [1.2345, 'm', '1.23 m'],
    [2.88, 'm2', '2.9 m²'],
    [4.26, 'L', '4.3 L'],
    [213.4, 'L', '213 L'],
    [4.26, 'g', '4.3 g'],
    [213.4, 'g', '213 g'],
    [1234, 'g', '1.23 kg'],
    [4.26, 'kg', '4.3 kg'],
    [48.8, 'kg', '49 kg'],
    [-2.22, 'tempC', '-2.2 °C'],
    [-0.04, 'tempC', '0 °C'],
    [1.5, 'deltaC', '1.5 °C'],
    [9.53, 'gPerM2', '9.5 g/m²'],
  ])('%d %s is %s', (value, unit, text) => {
    expect(formatQuantity({ value, unit }, 'metric')).toBe(text);
  });
});

describe('an amount in inches and pounds', () => {
  it.each<[number, QuantityUnit, string]>([
    [25.4, 'mm', '1 in'],
    [13, 'mm', '½ in'],
    [32, 'mm', '1 ¼ in'],
    [3, 'mm', '⅛ in'],
    [9.6, 'mm', '⅜ in'],
    [0.6, 'cm', '¼ in'],
    [45.72, 'cm', '18 in'],
    [-12.7, 'mm', '-½ in'],
    [0, 'mm', '0 in'],
    [0.4, 'mm', 'less than ⅛ in'],
    [2.4384, 'm', '8 ft'],
    [9.290304, 'm2', '100 sq ft'],
    [0.3, 'm2', '3.2 sq ft'],
    [28.316846592, 'L', '1 cu ft'],
    [764.554857984, 'L', '1 cu yd'],
    [0, 'L', '0 cu ft'],
    [0.01, 'L', '0.01 qt'],
    [1, 'L', '1.1 qt'],
    [3.785411784, 'L', '1 gal'],
    [10, 'L', '2.6 gal'],
    [14.2, 'L', '0.5 cu ft'],
    [2.4, 'g', '0.08 oz'],
    [28.35, 'g', '1 oz'],
    [400, 'g', '14 oz'],
    [907.18474, 'g', '2 lb'],
    [453.59237, 'g', '1 lb'],
    [640, 'g', '1 lb 7 oz'],
    [450, 'g', '1 lb'],
    [2, 'kg', '4 lb 7 oz'],
    [0.2, 'kg', '7.1 oz'],
    [0, 'kg', '0 lb'],
    [48.75, 'kg', '107 lb'],
    [0, 'tempC', '32 °F'],
    [-2.2222, 'tempC', '28 °F'],
    [55, 'tempC', '131 °F'],
    [10, 'deltaC', '18 °F'],
    [500, 'degreeDaysC', '900 degree-days'],
    // 1 lb per 1000 sq ft is 4.8824 g/m² (extension tables), so 1.6 oz per 100 sq ft.
    [4.8824, 'gPerM2', '1.6 oz per 100 sq ft'],
  ])('%d %s is %s', (value, unit, text) => {
    expect(formatQuantity({ value, unit }, 'us')).toBe(text);
  });

  it('never writes a real amount of seed, compost or depth as nothing', () => {
    const measured = fc.constantFrom<QuantityUnit[]>('mm', 'cm', 'm', 'L', 'm2', 'g', 'kg', 'gPerM2');
    fc.assert(
      fc.property(measured, systems, fc.double({ min: 1e-6, max: 500, noNaN: true }), (unit, system, value) => {
        expect(formatQuantity({ value, unit }, system)).not.toMatch(/^0 /);
      }),
    );
  });
});

it('a day of another year is never left without its year', () => {
  expect(formatDay('2027-04-18', 'metric', '2027-12-31')).toBe('18 April');
  expect(formatDay('2028-03-13', 'metric', '2027-12-31')).toBe('13 March 2028');
  expect(formatDay('2026-12-30', 'us', '2027-01-02')).toBe('December 30, 2026');
  expect(readableIn('us', `Built on ${dated('2026-03-14')}.`, '2027-05-12')).toBe('Built on March 14, 2026.');
});
