/**
 * Fields as a gardener types them: what is kept of them, and what is said of what cannot be used.
 */
import { describe, expect, test } from 'vitest';
import type { UnitSystem } from '../../../src/measures/units.ts';
import { EditForm } from '../../../src/web/fields/edit-form.ts';
import type { AnyField } from '../../../src/web/fields/field.ts';
import { textsOf } from '../../../src/web/fields/shown.ts';
import { Form } from '../../../src/web/requests/form.ts';

const SIDES: AnyField[] = [
  { name: 'lengthM', label: 'Length', as: 'length', example: 2.4 },
  { name: 'depthM', label: 'Depth', as: 'depth', example: 0.3 },
  { name: 'topdressingMm', label: 'Layer', as: 'depth', example: 25 },
];

interface Sent {
  fields: readonly AnyField[];
  sent: Record<string, string | string[]>;
  units?: UnitSystem;
  row?: object;
}

function read({ fields, sent, units = 'metric', row }: Sent) {
  const form = new Form(new Map(Object.entries(sent).map(([name, texts]) => [name, [texts].flat()])));
  const from = { row, fields, texts: textsOf(fields, row, units) };
  const editForm = new EditForm({ form, units, of: 'beds', from });
  return { row: editForm.row(fields, row), problems: editForm.problems };
}

describe('an amount', () => {
  test.each([
    ['metric', '2.4', 2.4],
    ['metric', '2,4', 2.4],
    ['metric', '240 cm', 2.4],
    ['metric', '8 ft', 2.4384],
    ['us', '8', 2.4384],
    ['us', '8 ft 6 in', 2.5908],
    ['us', `8'6"`, 2.5908],
    ['us', '96 in', 2.4384],
    ['us', '2.4 m', 2.4],
  ] as const)('typed by a %s reader as %s is kept as %s metres', (units, text, metres) => {
    // 1 ft is 0.3048 m by definition (international yard and pound, 1959).
    expect(read({ fields: SIDES, sent: { lengthM: text }, units }).row).toEqual({ lengthM: metres });
  });

  test.each([
    ['metric', '30', '25', 0.3, 25],
    ['us', '12', '1', 0.3048, 25.4],
    ['us', '30 cm', '25 mm', 0.3, 25],
  ] as const)(
    'of soil and of a layer is deep in a %s reader’s own unit',
    (units, depth, layer, depthM, topdressingMm) => {
      const sent = { lengthM: '2', depthM: depth, topdressingMm: layer };
      expect(read({ fields: SIDES, sent, units }).row).toMatchObject({ depthM, topdressingMm });
    },
  );

  test.each([
    ['metric', '210', 210],
    ['metric', '0', 0],
    ['metric', '-7', -7],
    ['us', '−23', -7.0104],
    ['us', '- 0 ft', 0],
    ['us', '-7 m', -7],
  ] as const)('of height typed by a %s reader as %s may lie below the sea', (units, text, elevationM) => {
    const fields: AnyField[] = [{ name: 'elevationM', label: 'Above the sea', as: 'height' }];
    expect(read({ fields, sent: { elevationM: text }, units })).toEqual({ row: { elevationM }, problems: [] });
  });

  test.each([
    ['metric', '-1', -1],
    ['us', '-1.8', -1],
    ['us', '-1 C', -1],
    ['metric', '1.8 °F', 1],
    ['us', '0', 0],
  ] as const)('of warmth typed by a %s reader as %s is a difference, not a temperature', (units, text, tempOffsetC) => {
    const fields: AnyField[] = [{ name: 'tempOffsetC', label: 'Warmer', as: 'warmth' }];
    expect(read({ fields, sent: { tempOffsetC: text }, units }).row.tempOffsetC).toBeCloseTo(tempOffsetC, 9);
  });

  test('that nobody touched is kept to the last digit, whoever reads it in feet', () => {
    const row = { lengthM: 2.4, depthM: 0.305, topdressingMm: 13 };
    const shown = Object.fromEntries(textsOf(SIDES, row, 'us'));
    expect(shown).toEqual({ lengthM: ['7.87'], depthM: ['12.01'], topdressingMm: ['0.51'] });
    expect(read({ fields: SIDES, sent: shown, units: 'us', row }).row).toEqual(row);
  });

  test('that is left empty is taken out', () => {
    const row = { lengthM: 2.4, depthM: 0.3, name: 'North bed' };
    expect(read({ fields: SIDES, sent: { lengthM: '2.4', depthM: '' }, row }).row).toEqual({
      lengthM: 2.4,
      name: 'North bed',
    });
  });

  test('that cannot be is told with its ends and an example in the reader’s unit, all at once', () => {
    const sent = { lengthM: '900', depthM: 'deep', topdressingMm: '1,200' };
    expect(
      read({ fields: SIDES, sent, units: 'us' }).problems.map(({ where, what, mend }) => [where, what, mend]),
    ).toEqual([
      ['Length', '"900" cannot be.', 'Give a length from 0.66 to 656.16 ft, such as 8.'],
      ['Depth', '"deep" is not a depth.', 'Give a depth from 1.97 to 118.11 in, such as 12.'],
      ['Layer', '"1,200" is not a depth.', 'Give a depth from 0.04 to 5.9 in, such as 1.'],
    ]);
  });

  test('that has to be given is asked for', () => {
    expect(read({ fields: SIDES, sent: {} }).problems).toMatchObject([
      { field: 'lengthM', what: 'It is empty.', mend: 'Give a length from 0.2 to 200 m, such as 2.4.' },
    ]);
  });

  test('is not taken for another kind of amount', () => {
    const fields: AnyField[] = [
      { name: 'litres', label: 'Compost', as: 'volume' },
      { name: 'grams', label: 'Seed', as: 'grams' },
      { name: 'lowC', label: 'Low', as: 'temp' },
    ];
    const wrong = read({ fields, sent: { litres: '30 kg', grams: '2 L', lowC: '3 mm' } }).problems;
    expect(wrong.map(({ what }) => what)).toEqual([
      '"30 kg" is not a volume.',
      '"2 L" is not a weight.',
      '"3 mm" is not a temperature.',
    ]);
    // 1 cu ft is 28.316846592 L and 1 oz 28.349523125 g by definition; 30 °F is -1.1 °C.
    const us = read({ fields, sent: { litres: '2', grams: '1 lb', lowC: '30' }, units: 'us' }).row;
    expect(us).toMatchObject({ litres: 56.633693184, grams: 453.59237 });
    expect(us.lowC).toBeCloseTo(-1.11, 2);
  });
});

describe('a day', () => {
  const fields: AnyField[] = [{ name: 'plannedFor', label: 'The day', as: 'day' }];

  test('is 29 February in a leap year', () => {
    expect(read({ fields, sent: { plannedFor: '2028-02-29' } }).row).toEqual({ plannedFor: '2028-02-29' });
  });

  test('is not 29 February in any other year, and it says why', () => {
    expect(read({ fields, sent: { plannedFor: '2027-02-29' } }).problems).toMatchObject([
      { what: '"2027-02-29" is not a date: that month has 28 days.', field: 'plannedFor' },
    ]);
  });

  test('of every year is chosen as a month and a day', () => {
    const yearly: AnyField[] = [{ name: 'lastSpring', label: 'Last freeze', as: 'month-day' }];
    const sent = (month: string, day: string) => ({ 'lastSpring:month': month, 'lastSpring:day': day });
    expect(read({ fields: yearly, sent: sent('02', '29') }).row).toEqual({ lastSpring: '02-29' });
    expect(read({ fields: yearly, sent: sent('06', '31') }).problems).toHaveLength(1);
    expect(read({ fields: yearly, sent: sent('', '') }).row).toEqual({});
  });
});

describe('a choice', () => {
  const soil: AnyField = {
    name: 'soilTexture',
    label: 'Soil',
    as: 'choice',
    options: [
      { value: 'loam', words: 'loam' },
      { value: 'clay', words: 'clay' },
    ],
  };

  test('is one of those offered', () => {
    expect(read({ fields: [soil], sent: { soilTexture: 'clay' } }).row).toEqual({ soilTexture: 'clay' });
    expect(read({ fields: [soil], sent: { soilTexture: 'peat' } }).problems).toMatchObject([
      { what: '"peat" is not one of those that can be chosen.', mend: 'Choose one of those offered.' },
    ]);
  });

  test('that is a box says no, or leaves the key out', () => {
    const boxes: AnyField[] = [
      { name: 'raised', label: 'Raised', as: 'check' },
      { name: 'closed', label: 'Closed', as: 'check', unticked: 'absent' },
    ];
    expect(read({ fields: boxes, sent: {}, row: { raised: true, closed: true } }).row).toEqual({ raised: false });
    expect(read({ fields: boxes, sent: { raised: 'yes', closed: 'yes' } }).row).toEqual({ raised: true, closed: true });
  });
});

describe('a log within a row', () => {
  const seen: AnyField = {
    name: 'seen',
    label: 'Flowers seen',
    as: 'rows',
    one: 'a stage',
    fields: () => [
      { name: 'on', label: 'The day', as: 'day', required: true },
      { name: 'modelled', label: 'As reckoned', as: 'day' },
    ],
  };
  const turns: AnyField = {
    name: 'turns',
    label: 'Turns',
    as: 'rows',
    one: 'a turn',
    plain: true,
    fields: () => [{ name: 'on', label: 'The day', as: 'day' }],
  };
  const row = {
    seen: [{ on: '2027-05-01', stage: 'in-bloom' }, { on: '2027-05-20' }],
    turns: ['2027-04-13', '2027-04-20'],
  };
  const shown = Object.fromEntries(textsOf([seen, turns], row, 'metric'));

  test('sent back untouched is the very log', () => {
    expect(read({ fields: [seen, turns], sent: shown, row }).row).toEqual(row);
  });

  test('has entries added, changed and taken out in one form, and keeps what the form does not show', () => {
    const sent = {
      ...shown,
      'seen[0].on': '2027-05-02',
      'seen[1].gone': 'yes',
      'seen[2].on': '2027-06-01',
      'turns[2].on': '2027-04-27',
    };
    expect(read({ fields: [seen, turns], sent, row }).row).toEqual({
      seen: [{ on: '2027-05-02', stage: 'in-bloom' }, { on: '2027-06-01' }],
      turns: ['2027-04-13', '2027-04-20', '2027-04-27'],
    });
  });

  test('says which entry is wrong', () => {
    const sent = { ...shown, 'seen[1].on': '', 'seen[1].modelled': '2027-05-21', 'turns[1].on': 'Tuesday' };
    expect(read({ fields: [seen, turns], sent, row }).problems).toMatchObject([
      { field: 'seen[1].on', what: 'It is empty.' },
      { field: 'turns[1].on', what: '"Tuesday" is not a date.' },
    ]);
  });
});
