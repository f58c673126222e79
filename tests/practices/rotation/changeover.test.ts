import { describe, expect, it } from 'vitest';
import { vegetables } from '../../../src/handbook/vegetables.ts';
import { LIFTED } from '../../../src/practices/rotation/steps.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');

function clearing(parts: Parameters<typeof garden>[0], crop: string, over = climate) {
  return draft(draftsIn(garden(parts), over), `bed-clear/planting:${crop}`);
}

describe('clearing a crop', () => {
  it('opens with the last harvest, is best two days later and takes a week', () => {
    const clear = clearing({ plantings: [sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' })] }, 'lettuce');
    expect(clear.window).toEqual({ earliest: '2027-06-20', preferred: '2027-06-22', latest: '2027-06-27' });
    expect(clear.title).toBe('Clear the leaf lettuce from Bed A, leave the roots');
    // 3 m² at 2 minutes, and 5 to begin.
    expect(clear.effortMinutes).toBe(11);
  });

  it('closes when what follows goes in', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' }),
      setOut('broccoli', '2027-06-21', { harvested: '2027-09-15' }),
    ];
    expect(clearing({ plantings }, 'lettuce').window).toEqual({
      earliest: '2027-06-20',
      preferred: '2027-06-21',
      latest: '2027-06-21',
    });
  });

  it('is a single day where the next crop goes in on the day of the last harvest', () => {
    const plantings = [
      sown('lettuce-leaf', '2027-05-01', { harvested: '2027-06-20' }),
      setOut('broccoli', '2027-06-20', { harvested: '2027-09-15' }),
    ];
    const { earliest, latest } = clearing({ plantings }, 'lettuce').window;
    expect([earliest, latest]).toEqual(['2027-06-20', '2027-06-20']);
  });

  it('leaves the roots of legumes for the hungry crop that follows', () => {
    const plantings = [sown('pea', '2027-04-15', { harvested: '2027-07-05' }), setOut('broccoli', '2028-05-01')];
    expect(clearing({ plantings }, 'pea').steps).toContain(
      'Leave every root: they hold nitrogen for what follows, and broccoli is a hungry crop.',
    );
  });

  it('names a cover that comes before the next crop', () => {
    const plantings = [sown('pea', '2027-04-15', { harvested: '2027-07-05' }), setOut('broccoli', '2028-05-01')];
    const steps = clearing({ plantings, stands: [cover('oats', '2027-08-15')] }, 'pea').steps.join(' ');
    expect(steps).toContain('a cover of oats, from ⟦2027-08-15⟧');
  });

  it('names none that was skipped', () => {
    const parts = {
      plantings: [sown('pea', '2027-04-15', { harvested: '2027-07-05' })],
      stands: [cover('oats', '2027-08-15')],
      skipped: { 'cover-sow/stand:s': '2027-06-01' },
    };
    expect(clearing(parts, 'pea').steps.at(-1)).toContain('Nothing is planned here next');
  });

  it('works round another crop that stays in the bed, and round a cover sown under it', () => {
    const tomato = setOut('tomato', '2027-05-25', { harvested: '2027-09-20' });
    const lettuce = sown('lettuce-leaf', '2027-04-20', { harvested: '2027-06-20' });
    expect(clearing({ plantings: [lettuce, tomato] }, 'lettuce').steps.at(-1)).toBe('The tomato stays: work round it.');
    const under = { startedOn: '2027-09-10', plantings: [tomato], stands: [cover('cereal_rye', '2027-09-05')] };
    expect(clearing(under, 'tomato').steps.at(-1)).toBe('The winter rye stays: work round it.');
  });

  it('is not asked of what was cleared, nor of what was over long before the garden was brought in', () => {
    const past = garden({
      startedOn: '2027-07-01',
      plantings: [sown('pea', '2027-04-15', { harvested: '2027-06-30' })],
    });
    expect(draftsIn(past, climate).filter(({ practice }) => practice === 'rotation')).toEqual([]);
  });
});

describe('crops that are lifted', () => {
  it('are eased up with a fork, and the rest cut off at the soil line', () => {
    const garlic = clearing({ plantings: [setOut('garlic', '2026-10-15', { harvested: '2027-07-20' })] }, 'garlic');
    expect(garlic).toMatchObject({ title: 'Lift the last of the garlic in Bed A', job: { id: 'lift-crop' } });
    expect(garlic.supplies[0]?.what).toBe('digging fork');
    expect(garlic.cautions[0]).toContain('bent knees');
    const kale = clearing({ plantings: [sown('kale', '2027-05-15', { harvested: '2027-10-20' })] }, 'kale');
    expect(kale.steps).toContain(
      'Cut the plants off at the soil line. Do not pull or dig: the roots rot into channels for air and water.',
    );
    expect(kale.cautions[0]).toContain('Blades');
  });

  it('are all in the handbook', () => {
    const known = new Set(vegetables.map(({ id }) => id));
    expect([...LIFTED].filter((id) => !known.has(id))).toEqual([]);
  });
});

describe('why a crop is over', () => {
  it('is the freeze for tomatoes set out late, with its odds', () => {
    const clear = clearing({ plantings: [setOut('tomato', '2027-06-25')] }, 'tomato', milwaukee);
    const early = clearing({ plantings: [setOut('tomato', '2027-05-25')] }, 'tomato', milwaukee);
    // Median first freeze 23 October; 85 days and 56 of picking from 25 June pass it, from 25 May they do not.
    expect(clear.window.earliest).toBe('2027-10-23');
    expect(rulesOf(clear)).toEqual(['changeover.killed']);
    expect(clear.odds).toMatchObject({ median: '2027-10-23', years: 30 });
    expect(rulesOf(early)).toEqual(['changeover.maturity']);
    expect(early.odds).toBeUndefined();
  });

  it('is held to no freeze where none is known', () => {
    const none = { ...climate, freezes: { 32: NONE, 28: NONE, 24: NONE } };
    expect(rulesOf(clearing({ plantings: [setOut('tomato', '2027-06-25')] }, 'tomato', none))).toEqual([
      'changeover.maturity',
    ]);
  });
});

const NONE = { 'last-spring': { kind: 'none' }, 'first-autumn': { kind: 'none' } } as const;

describe('a family that comes back too soon', () => {
  const warned = (plantings: Parameters<typeof garden>[0], crop: string) => {
    const reason = clearing(plantings, crop).reasons.find(({ rule }) => rule === 'changeover.family-returns');
    return reason && reasonSentence(reason);
  };

  it('is warned of: kale two years after cabbage', () => {
    const plantings = [
      setOut('cabbage', '2026-05-01', { harvested: '2026-08-01' }),
      sown('carrot', '2027-05-01', { harvested: '2027-08-10' }),
      sown('kale', '2028-05-01'),
    ];
    expect(warned({ plantings }, 'carrot')).toBe(
      'Mind the rotation: kale would follow cabbage of the same family after 2 years; 3 years or more is the rule.',
    );
  });

  it('is allowed after its interval: broccoli three years after cabbage (veg:V36: 3–5 years)', () => {
    const plantings = [
      setOut('cabbage', '2025-05-01', { harvested: '2025-08-01' }),
      sown('carrot', '2027-05-01', { harvested: '2027-08-10' }),
      setOut('broccoli', '2028-05-01'),
    ];
    expect(warned({ plantings }, 'carrot')).toBeUndefined();
  });

  it('is named in the same year, and never of a lasting crop', () => {
    const twice = [sown('lettuce-leaf', '2027-04-20', { harvested: '2027-06-20' }), sown('lettuce-leaf', '2027-08-01')];
    expect(warned({ plantings: twice }, 'lettuce-leaf-2027-04-20')).toContain('in the same year');
    const lasting = [
      setOut('rhubarb', '2020-05-01', { bedId: 'b' }),
      sown('carrot', '2027-05-01', { bedId: 'b', harvested: '2027-08-10' }),
      setOut('asparagus', '2028-05-01', { bedId: 'b' }),
    ];
    expect(warned({ beds: [bed('b')], plantings: lasting }, 'carrot')).toBeUndefined();
  });
});
