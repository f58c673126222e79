import { describe, expect, test } from 'vitest';
import type { Effect } from '../../../src/garden/effects.ts';
import type { PlannedTask } from '../../../src/schedule/plan.ts';
import { Form } from '../../../src/web/requests/form.ts';
import { askedAmounts, askedChoice, usedIn } from '../../../src/web/task/amounts.ts';
import { sampleTask } from '../sample-plan.ts';

const spread: Effect = { makes: 'bed-topdressed', bedId: 'north', litres: 47 };
const meal: Effect = { makes: 'bed-fed', bedId: 'north', fertiliserId: 'blood_meal', grams: 230 };

const doing = (kind: string, makes: Effect[]): PlannedTask => sampleTask('k', '2027-05-25', { kind, makes });
const sent = (fields: Record<string, string>): Form =>
  new Form(new Map(Object.entries(fields).map(([name, value]) => [name, [value]])));

describe('an amount asked for', () => {
  test('is in the reader’s unit, with what was planned filled in', () => {
    const asked = (units: 'us' | 'metric', effect: Effect) =>
      askedAmounts(doing('bone-meal', [effect]), units).map(
        ({ label, unit, planned }) => `${label}, ${unit}: ${planned}`,
      );
    expect(asked('metric', spread)).toEqual(['How much compost, L: 47']);
    expect(asked('us', spread)).toEqual(['How much compost, cu ft: 1.7']);
    expect(asked('metric', meal)).toEqual(['How much blood meal, g: 230']);
    expect(asked('us', meal)).toEqual(['How much blood meal, oz: 8.11']);
  });

  test('is of nothing where nothing is counted on', () => {
    expect(askedAmounts(doing('cut-cover', [{ makes: 'stand-cut', standId: 's' }]), 'us')).toEqual([]);
  });

  test('is kept as planned where the field was left alone, however it was rounded for it', () => {
    expect(usedIn(sent({ 'litres:k': '1.7' }), [doing('topdress', [spread])], 'us')).toEqual({});
    expect(usedIn(sent({}), [doing('topdress', [spread])], 'us')).toEqual({});
  });

  test('is read in that unit, with a comma or a point', () => {
    const used = usedIn(sent({ 'grams:k': '3,5' }), [doing('bone-meal', [meal])], 'us');
    // An ounce is 28.349523125 g (the international avoirdupois pound of 1959).
    expect(used.k?.grams).toBeCloseTo(99.2233, 4);
  });

  test.each(['a lot', '0', '-2', '1e999', '0x10', '1e3', '1,2,3', '1,100,000'])(
    'is refused under its task when it is %s',
    (typed) => {
      const form = sent({ 'litres:k': typed });
      expect(usedIn(form, [doing('topdress', [spread])], 'metric')).toEqual({});
      expect(form.problems[0]?.what).toBe(`"${typed}" is not an amount.`);
      expect(form.problems[0]?.mend).toBe('Give a number above 0, such as 47.');
    },
  );
});

describe('an amount with a comma', () => {
  const read = (typed: string) => {
    const form = sent({ 'litres:k': typed });
    return { used: usedIn(form, [doing('topdress', [spread])], 'metric'), problems: form.problems };
  };

  test.each(['1,100', '1,200', '12,500'])('before three figures is refused, since %s may be two amounts', (typed) => {
    const { used, problems } = read(typed);
    expect(used).toEqual({});
    const [thousands, tenths] = [typed.replace(',', ''), typed.replace(',', '.')];
    expect(problems[0]?.what).toBe(`"${typed}" may be ${thousands} or ${tenths}.`);
    expect(problems[0]?.mend).toBe(`Write ${thousands} or ${tenths}.`);
  });

  test.each([
    ['1100', 1100],
    ['1,5', 1.5],
    ['1,25', 1.25],
    ['0,125', 0.125],
    ['.5', 0.5],
    ['1.125', 1.125],
  ])('or a point is read where it can be one amount only: %s', (typed, litres) => {
    expect(read(typed)).toEqual({ used: { k: { litres } }, problems: [] });
  });
});

describe('seed of a mix', () => {
  const seed = (coverId: string, grams: number): Effect => ({ makes: 'seed-sown', standId: 's', coverId, grams });
  const sowing = doing('sow-cover', [
    { makes: 'stand-sown', standId: 's', bedId: 'north', coverId: 'oats-field-pea' },
    seed('oats', 266),
    seed('field_pea', 203),
  ]);

  test('is asked for by each of its kinds, in the reader’s unit', () => {
    const asked = askedAmounts(sowing, 'metric').map(({ label, unit, planned }) => `${label}, ${unit}: ${planned}`);
    expect(asked).toEqual(['How much oats seed, g: 266', 'How much field pea seed, g: 203']);
    expect(askedAmounts(sowing, 'us')[0]).toMatchObject({ unit: 'oz', planned: '9.38' });
    expect(new Set(askedAmounts(sowing, 'us').map(({ field }) => field)).size).toBe(2);
  });

  test('is kept where it was another than planned, each by itself', () => {
    const form = (oats: string, peas: string) => sent({ 'grams:oats:k': oats, 'grams:field_pea:k': peas });
    expect(usedIn(form('266', '180'), [sowing], 'metric')).toEqual({ k: { seed: { field_pea: 180 } } });
    expect(usedIn(form('300', '180'), [sowing], 'metric')).toEqual({ k: { seed: { oats: 300, field_pea: 180 } } });
    expect(usedIn(form('266', '203'), [sowing], 'metric')).toEqual({});
  });

  test('that is no amount is refused under its kind', () => {
    const form = sent({ 'grams:oats:k': 'a handful' });
    usedIn(form, [sowing], 'metric');
    expect(form.problems[0]?.where).toContain('How much oats seed');
  });
});

describe('a meal for a crop', () => {
  const fed = doing('feed-crop', [meal]);

  test('may be another than was planned: it is asked which, and how much of it', () => {
    expect(askedChoice(fed)?.choices.map(({ name }) => name)).toContain('cottonseed meal (6-2-1)');
    expect(askedAmounts(fed, 'metric')[0]?.label).toBe('How much of it');
    const used = usedIn(sent({ 'of:k': 'cottonseed_meal', 'grams:k': '450' }), [fed], 'metric');
    expect(used).toEqual({ k: { fertiliserId: 'cottonseed_meal', grams: 450 } });
  });

  test('that nobody knows is refused', () => {
    const form = sent({ 'of:k': 'moon_dust' });
    usedIn(form, [fed], 'metric');
    expect(form.problems[0]?.what).toBe('"moon_dust" is not one of the choices.');
  });

  test('is not asked which where only bone meal would do', () => {
    expect(askedChoice(doing('bone-meal', [meal]))).toBeUndefined();
  });
});
