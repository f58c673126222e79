import { describe, expect, it } from 'vitest';
import { bed, draftsIn, frostDates, garden, milwaukee, setOut, sown } from '../gardens.ts';

const ideas = (parts: Parameters<typeof garden>[0], climate = milwaukee) =>
  draftsIn(garden(parts), climate).filter(({ kind }) => kind === 'sow-ideas');

describe('a garden with a bed and nothing planned', () => {
  const looks = ideas({});

  it('is told three times a season what can be sown, with keys that hold no date', () => {
    expect(looks.map(({ key }) => key).slice(0, 3)).toEqual([
      'sow-ideas/garden:2027-spring',
      'sow-ideas/garden:2027-summer',
      'sow-ideas/garden:2027-autumn',
    ]);
    expect(looks.every(({ weight }) => weight === 'check')).toBe(true);
  });

  it('never has two of them open at once', () => {
    const sorted = [...looks].sort((a, b) => (a.window.earliest < b.window.earliest ? -1 : 1));
    for (const [i, look] of sorted.entries()) {
      const next = sorted[i + 1];
      if (next) expect(look.window.latest < next.window.earliest, look.key).toBe(true);
    }
  });

  it('hears of cool kinds in spring, of beans once it is warm, of quick kinds for autumn, eight at the most', () => {
    const [spring, summer, autumn] = looks.map(({ steps }) => steps.join(' '));
    expect(spring).toContain('Radish: until');
    expect(spring).not.toContain('Cucumber');
    expect(summer).toContain('Snap bean');
    expect(autumn).toContain('Spinach');
    expect(autumn).not.toContain('Summer squash');
    for (const { steps } of looks) expect(steps.length).toBeLessThanOrEqual(9);
  });

  it('hears the same in the south, half a year on', () => {
    const south = ideas({ startedOn: '2027-07-02', place: { latitude: -43 } }, frostDates('10-20', '04-20', -43));
    expect(south[0]?.key).toBe('sow-ideas/garden:2027-spring');
    expect((south[0]?.window.earliest ?? '') > '2027-08-01').toBe(true);
  });
});

describe('no look is given', () => {
  it('where a crop is planned anywhere', () => {
    expect(ideas({ beds: [bed('a'), bed('b')], plantings: [sown('carrot', '2027-04-24')] })).toEqual([]);
  });

  it('where no bed is free', () => {
    const looks = ideas({ startedOn: '2027-05-30', plantings: [setOut('asparagus', '2024-05-01')] });
    expect(looks).toEqual([]);
  });
});
