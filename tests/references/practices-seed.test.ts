/**
 * How long seed keeps and when it is ordered, against published lists and facts of common practice.
 */
import { describe, expect, it } from 'vitest';
import { boughtAs, seedLifeOf } from '../../src/handbook/seed-life.ts';
import { provenanceOf } from '../../src/handbook/shapes/row.ts';
import { vegetables } from '../../src/handbook/vegetables.ts';
import { draft, draftsIn, garden, setOut, sown } from '../practices/gardens.ts';

describe('seed', () => {
  // A list of 2023 in a Wisconsin newspaper (veg:V84), other than the guide the table was written from: within a year,
  // two for the kinds that the lists do not agree on.
  it.each([
    ['onion-seed', 1, 0],
    ['sweet-corn', 2, 0],
    ['pepper', 2, 0],
    ['snap-bean', 3, 0],
    ['carrot', 3, 0],
    ['pea', 3, 0],
    ['beet', 4, 0],
    ['winter-squash', 4, 0],
    ['tomato', 4, 0],
    ['cabbage', 5, 1],
    ['cucumber', 5, 0],
    ['lettuce-leaf', 5, 1],
    ['radish', 5, 0],
    ['broccoli', 5, 2],
    ['spinach', 5, 2],
  ])('of %s keeps about %i years (veg:V84, within %i)', (cropId, years, within) => {
    expect(Math.abs((seedLifeOf(cropId)?.years ?? 0) - years)).toBeLessThanOrEqual(within);
  });

  it('of no kind is said to keep longer than the longest published, lettuce’s six years (veg:V81)', () => {
    const years = vegetables.map(({ id }) => seedLifeOf(id)?.years ?? 0);
    expect(Math.max(...years)).toBe(6);
  });

  it('of every vegetable has a life, or the vegetable is bought as something else', () => {
    const neither = vegetables.filter(({ id }) => (seedLifeOf(id) === undefined) === (boughtAs[id] === undefined));
    expect(neither.map(({ id }) => id)).toEqual([]);
  });

  it('names its list only where the figure was read in one', () => {
    const unsourced = vegetables
      .flatMap(({ id }) => seedLifeOf(id) ?? [])
      .filter((row) => row.sources.length === 0 && provenanceOf(row, 'years') !== 'from memory');
    expect(unsourced).toEqual([]);
  });
});

describe('an order', () => {
  it('for a spring of cabbages and peas is sent in the dead of winter (common practice)', () => {
    const plantings = [setOut('cabbage', '2028-04-10'), sown('pea', '2028-04-12')];
    const { window } = draft(draftsIn(garden({ startedOn: '2027-06-01', plantings })), 'seed-order/garden/2028');
    expect(window.preferred > '2027-12-01' && window.preferred < '2028-02-15', window.preferred).toBe(true);
  });

  it('for garlic is sent before sellers close their lists in early September (common practice)', () => {
    const plantings = [sown('garlic', '2027-10-25')];
    const { window } = draft(draftsIn(garden({ startedOn: '2027-06-01', plantings })), 'garlic-order/garden/2027');
    expect(window.latest <= '2027-09-05', window.latest).toBe(true);
    expect(window.earliest >= '2027-07-01', window.earliest).toBe(true);
  });

  it('of seed potatoes leaves about four weeks to sprout them in the light (common practice)', () => {
    const { steps } = draft(draftsIn(garden({ plantings: [sown('potato', '2027-05-01')] })), 'seed-order/garden/2027');
    expect(steps.join(' ')).toContain('for 28 days before they are planted');
  });
});
