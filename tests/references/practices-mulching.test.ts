/**
 * Mulch against published figures and facts of common practice.
 */
import { describe, expect, it } from 'vitest';
import { daysBetween } from '../../src/measures/days.ts';
import {
  LITRES_PER_CUBIC_FOOT,
  LITRES_PER_CUBIC_YARD,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
} from '../../src/measures/units.ts';
import type { TaskDraft } from '../../src/practices/draft.ts';
import { mulchLitres } from '../../src/practices/mulch-layer.ts';
import { bed, draft, draftsIn, garden, setOut, sown } from '../practices/gardens.ts';

/** Inches of mulch a task's supply makes over its bed of 3 m². */
const inchesOf = ({ supplies }: TaskDraft): number => (supplies[0]?.amount?.value ?? 0) / 3 / MM_PER_INCH;

const drafts = draftsIn(
  garden({
    startedOn: '2027-05-01',
    beds: [bed('a'), bed('b'), bed('c')],
    plantings: [
      sown('kale', '2027-07-15', { harvested: '2027-10-28' }),
      sown('pea', '2028-04-10'),
      setOut('garlic', '2027-10-20', { bedId: 'b', harvested: '2028-07-10' }),
      setOut('tomato', '2027-05-28', { bedId: 'c', harvested: '2027-10-16' }),
    ],
  }),
);
const of = (keyStart: string): TaskDraft => draft(drafts, keyStart);

describe('depths of mulch', () => {
  it('are 2 to 3 in of leaves on bare beds over winter (Growing Healthy Soil, veg:V22)', () => {
    const inches = inchesOf(of('mulch-bare/bed:a'));
    expect(inches).toBeGreaterThanOrEqual(2);
    expect(inches).toBeLessThanOrEqual(3);
  });

  it('are 3 to 4 in of straw or leaves on garlic (Rosen, Minnesota, veg:V41)', () => {
    const inches = inchesOf(of('mulch-garlic/'));
    expect(inches).toBeGreaterThanOrEqual(3);
    expect(inches).toBeLessThanOrEqual(4);
  });

  it('are 2 to 4 in of straw between warm crops (Upham, Kansas State, veg:V44)', () => {
    const inches = inchesOf(of('mulch-warm/'));
    expect(inches).toBeGreaterThanOrEqual(2);
    expect(inches).toBeLessThanOrEqual(4);
  });

  it('of 3 in take a cubic yard for 108 sq ft, and 8 cu ft for a bed of 4 × 8 ft (geometry)', () => {
    const ofFeet = (squareFeet: number) => bed('x', { lengthM: squareFeet * M2_PER_SQUARE_FOOT, widthM: 1 });
    expect(mulchLitres(ofFeet(108), 3 * MM_PER_INCH) / LITRES_PER_CUBIC_YARD).toBeCloseTo(1, 2);
    expect(mulchLitres(ofFeet(32), 3 * MM_PER_INCH) / LITRES_PER_CUBIC_FOOT).toBeCloseTo(8, 1);
  });
});

describe('times of mulching at Milwaukee', () => {
  it('cover garlic three to five weeks after planting in the third week of October (common practice)', () => {
    const { earliest, latest } = of('mulch-garlic/').window;
    expect(daysBetween('2027-10-20', earliest)).toBeGreaterThanOrEqual(21);
    expect(daysBetween('2027-10-20', latest)).toBeLessThanOrEqual(42);
  });

  it('cover it before deep winter and uncover it in March or early April (common practice in Wisconsin)', () => {
    expect(of('mulch-garlic/').window.latest < '2027-12-15').toBe(true);
    expect(of('uncover-garlic/').window.earliest >= '2028-03-10').toBe(true);
    expect(of('uncover-garlic/').window.latest <= '2028-04-20').toBe(true);
  });

  it('cover bare beds after the leaves are down and before Thanksgiving week (common practice)', () => {
    const { preferred, latest } = of('mulch-bare/bed:a').window;
    expect(preferred >= '2027-10-20').toBe(true);
    expect(latest <= '2027-11-22').toBe(true);
  });

  it('mulch tomatoes in the middle of June or later, never at planting in May (common practice in the north)', () => {
    const { earliest } = of('mulch-warm/').window;
    expect(earliest >= '2027-06-10' && earliest <= '2027-07-05', earliest).toBe(true);
  });
});
