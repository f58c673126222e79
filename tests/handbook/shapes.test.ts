import { describe, expect, it } from 'vitest';
import { fromMemory, originOf, provenanceOf, type Row } from '../../src/handbook/shapes/row.ts';

type Field = 'sow' | 'soil' | 'rate' | 'depth' | 'cut';

const row: Row<Field> = {
  sources: ['cover:S4a', 'cover:S5'],
  marks: {
    ...fromMemory('soil'),
    rate: 'derived',
    depth: 'house default',
    cut: 'common practice',
  },
  readIn: { rate: 'cover:S5', soil: 'cover:S5' },
};

describe('how a figure is known', () => {
  it('is published unless marked', () => {
    expect(provenanceOf(row, 'sow')).toBe('published');
    expect(provenanceOf(row, 'rate')).toBe('derived');
    expect(provenanceOf(row, 'soil')).toBe('from memory');
  });
});

describe('where a figure comes from', () => {
  it('is the first source of the row', () => {
    expect(originOf(row, 'sow')).toBe('cover:S4a');
  });

  it('is the source named for it, also when worked out from it', () => {
    expect(originOf(row, 'rate')).toBe('cover:S5');
  });

  it('is ours when chosen, whatever the row lists', () => {
    expect(originOf(row, 'depth')).toBe('house default');
  });

  it('is memory when recalled, whatever the row lists', () => {
    expect(originOf(row, 'soil')).toBe('from memory');
  });

  it('is common practice when so marked', () => {
    expect(originOf(row, 'cut')).toBe('common practice');
  });

  it('is ours when no source is listed at all', () => {
    expect(originOf<'sow'>({ sources: [], marks: {} }, 'sow')).toBe('house default');
  });
});
