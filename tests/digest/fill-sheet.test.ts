import { describe, expect, it } from 'vitest';
import { fillSheet } from '../../src/digest/fill-sheet.ts';
import { readableIn } from '../../src/measures/quantity.ts';

const told = (bed: { lengthM: number; widthM: number; depthM: number; pathsM2?: number }, more: object = {}) => {
  const sheet = fillSheet({ bed, ...more });
  const read = (texts: readonly string[]) => readableIn('metric', texts.join(' '), '');
  return { sum: read(sheet.sum), steps: read(sheet.steps), ask: read(sheet.ask), cautions: read(sheet.cautions) };
};
const bed = { lengthM: 2.4, widthM: 1.2, depthM: 0.3 };

describe('a fill told', () => {
  it('scoops all of a path that the bed has room for, and says so where it has not', () => {
    // 2 m² × 50.8 mm is 101 L of the 864 L; 50 m² would give 2,540 L.
    expect(told({ ...bed, pathsM2: 2 }).sum).toContain('2 m² of path, scooped 51 mm deep, give 101 L');
    const much = told({ ...bed, pathsM2: 50 });
    expect(much.sum).toContain('The bed has room for no more.');
    expect(much.sum).not.toContain('50 m² of path');
    expect(told({ ...bed, pathsM2: 2 }).sum).not.toContain('has room for no more');
  });

  it('speaks of compost only where some goes in', () => {
    expect(told({ ...bed, pathsM2: 2 }, { compostL: 100 }).steps).toContain('Keep the compost in the upper half');
    const rich = told({ ...bed, pathsM2: 2 }, { phosphorusPpm: 200 });
    expect(rich.steps).not.toContain('Keep the compost');
    expect(rich.ask).toContain('very rich in phosphorus already');
    expect(rich.ask).not.toMatch(/\b0 L\b/);
  });

  it('warns of a bed too wide to reach across', () => {
    expect(told(bed).cautions).not.toContain('reaches');
    expect(told({ ...bed, lengthM: 4, widthM: 3 }).cautions).toContain('Nobody reaches the middle of a bed 3 m wide');
  });
});
