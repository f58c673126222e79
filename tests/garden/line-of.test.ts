import { describe, expect, it } from 'vitest';
import { linesIn } from '../../src/garden/line-of.ts';

const TEXT = `garden: { name: Hollow Lane }
beds:
  - name: North bed
    lengthM: 2.4
  - { name: South bed,
      lengthM: 3 }
plantings: []
`;

describe('the line of a problem', () => {
  const lineOf = linesIn(TEXT);

  it('is that of its key', () => {
    expect([lineOf('beds[0].lengthM'), lineOf('beds[1].lengthM'), lineOf('garden.name')]).toEqual([4, 6, 1]);
  });

  it('is that of the item where the key is missing', () => {
    expect([lineOf('beds[0].widthM'), lineOf('beds[1]'), lineOf('plantings[3].sow')]).toEqual([3, 5, 7]);
  });

  it('is not known of what stands nowhere in the text', () => {
    expect([lineOf('climate'), lineOf('the file')]).toEqual([undefined, undefined]);
  });

  it('is told already by a problem of the text itself', () => {
    expect(lineOf('line 12')).toBe(12);
  });

  it('can be asked of JSON, and of a text that cannot be read', () => {
    expect(linesIn('{\n "beds": [\n  { "name": "a" }\n ]\n}')('beds[0].name')).toBe(3);
    expect(linesIn('beds: [')('beds[0].name')).toBe(1);
    expect(linesIn('')('beds')).toBeUndefined();
  });
});
