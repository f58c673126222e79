import { describe, expect, it } from 'vitest';
import type { Garden, Planting } from '../../../src/garden/garden.ts';
import { vegetables } from '../../../src/handbook/vegetables.ts';
import type { Day } from '../../../src/measures/days.ts';
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

  describe('of a legume', () => {
    const pea = sown('pea', '2027-04-15', { harvested: '2027-07-05' });
    const rootsBefore = (crop: Planting, parts?: Parameters<typeof garden>[0]) =>
      clearing({ plantings: [pea, crop], ...parts }, 'pea').steps.find((step) => /^Leave (every|the) root/.test(step));

    it('leaves the roots for the hungry crop that follows, by its name and year', () => {
      const kept =
        'Leave the roots for the sweet corn that follows in 2028: it is a hungry crop, and they hold nitrogen.';
      expect(rootsBefore(sown('sweet-corn', '2028-05-20'))).toBe(kept);
      expect(rootsBefore(sown('sweet-corn', '2028-05-20'), { stands: [cover('oats', '2027-08-15')] })).toBe(kept);
    });

    it('says what the follower makes of them where it is not hungry', () => {
      expect(rootsBefore(sown('carrot', '2028-04-25'))).toMatch(/carrot that follows in 2028/);
      expect(rootsBefore(sown('snap-bean', '2028-05-20'))).toMatch(
        /though the snap bean that follows in 2028 makes its own/,
      );
    });

    it('counts garlic to the year it grows in', () => {
      expect(rootsBefore(sown('garlic', '2027-10-20'))).toMatch(/garlic that follows in 2028/);
    });

    it('names none where none is planned, or it is years off', () => {
      const none = /No crop is planned here within a year; a hungry one would use it\.$/;
      expect(clearing({ plantings: [pea] }, 'pea').steps.join('\n')).toMatch(new RegExp(none.source, 'm'));
      expect(rootsBefore(sown('sweet-corn', '2029-05-20'))).toMatch(none);
    });

    it('names the season over New Year in the south', () => {
      const south = frostDates('10-10', '04-25', -40);
      const beans = sown('snap-bean', '2027-11-10', { harvested: '2028-02-20' });
      const plantings = [beans, sown('sweet-corn', '2028-11-15')];
      const { steps } = clearing({ plantings, startedOn: '2027-09-01' }, 'snap-bean', south);
      expect(steps.join(' ')).toContain('sweet corn that follows in 2028/29: it is a hungry crop');
    });
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

  it('is not asked of what was marked as cleared, nor of what something else followed', () => {
    const plantings = [sown('pea', '2027-04-15', { harvested: '2027-06-30' })];
    const clears = (parts: Parameters<typeof garden>[0]) =>
      draftsIn(garden({ startedOn: '2027-07-08', plantings, ...parts }), climate).filter(
        ({ kind }) => kind === 'clear-bed',
      );
    const mark = { key: 'bed-clear/planting:pea-2027-04-15', on: '2027-07-01' } as Garden['done'][number];
    expect(clears({})).toHaveLength(1);
    expect(clears({ done: [mark] })).toEqual([]);
    expect(clears({ stands: [cover('buckwheat', '2027-07-05')] })).toEqual([]);
    expect(clears({ plantings: [...plantings, sown('carrot', '2027-07-05')] }).map(({ key }) => key)).not.toContain(
      mark.key,
    );
  });

  it('is asked for a week where the harvest was in for up to four weeks when the garden was brought in', () => {
    const plantings = [sown('pea', '2027-04-15', { harvested: '2027-06-30' })];
    const on = (startedOn: Day) =>
      draftsIn(garden({ startedOn, plantings }), climate).find(({ kind }) => kind === 'clear-bed');
    expect(on('2027-07-20')?.window).toEqual({ earliest: '2027-07-20', preferred: '2027-07-20', latest: '2027-07-27' });
    expect(on('2027-07-20')?.reasons[0]?.rule).toBe('changeover.harvested');
    expect(on('2027-07-29')).toBeUndefined();
  });

  it('takes no worked-out harvest for a fact: two months later it still asks', () => {
    // Carrots of 1 May are reckoned to be over on 12 August.
    const on = (startedOn: Day) =>
      draftsIn(garden({ startedOn, plantings: [sown('carrot', '2027-05-01')] }), climate).find(({ key }) =>
        key.startsWith('bed-clear/'),
      );
    expect(on('2027-10-11')?.reasons[0]?.rule).toBe('changeover.maturity');
    expect(on('2027-10-12')).toBeUndefined();
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

  it('keep their tops until they are dry where they are bulbs to be stored', () => {
    const steps = (crop: string) => clearing({ plantings: [sown(crop, '2027-04-20')] }, crop).steps.join(' ');
    for (const crop of ['onion-sets', 'onion-seed', 'shallot']) {
      expect(steps(crop), crop).toContain('Leave the tops on');
      expect(steps(crop), crop).not.toContain('Chop the healthy tops');
    }
    expect(steps('carrot')).toContain('Chop the healthy tops into the compost');
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

  it('is counted by seasons, not by days: kale in autumn two seasons after cabbage of spring', () => {
    // 14 April 2026 to 20 November 2028 is 951 days: 2.6 years, and two seasons.
    const plantings = [
      setOut('cabbage', '2026-04-14', { harvested: '2026-08-01' }),
      sown('carrot', '2027-05-01', { harvested: '2027-08-10' }),
      sown('kale', '2028-11-20'),
    ];
    expect(warned({ plantings }, 'carrot')).toContain('after 2 years');
  });

  it('is warned of where nothing is cleared any more', () => {
    const plantings = [setOut('cabbage', '2026-05-01', { harvested: '2026-08-01' }), sown('kale', '2028-05-01')];
    const check = draft(draftsIn(garden({ startedOn: '2027-06-01', plantings }), climate), 'rotation-check/');
    expect(check).toMatchObject({ weight: 'check', window: { earliest: '2028-04-03', latest: '2028-04-30' } });
    expect(rulesOf(check)).toEqual(['changeover.family-returns']);
    const later = [...plantings, sown('carrot', '2027-05-01', { harvested: '2027-08-10' })];
    const carried = draftsIn(garden({ startedOn: '2027-06-01', plantings: later }), climate);
    expect(carried.filter(({ kind }) => kind === 'check-rotation')).toEqual([]);
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
    const lettuce = sown('lettuce-leaf', '2027-04-20', { harvested: '2027-06-20' });
    const kin = [lettuce, sown('endive', '2027-07-20')];
    expect(warned({ plantings: kin }, 'lettuce-leaf-2027-04-20')).toContain('in the same year');
    const sownTwice = [lettuce, sown('lettuce-leaf', '2027-08-01')];
    expect(warned({ plantings: sownTwice }, 'lettuce-leaf-2027-04-20')).toBeUndefined();
    const lasting = [
      setOut('rhubarb', '2020-05-01', { bedId: 'b' }),
      sown('carrot', '2027-05-01', { bedId: 'b', harvested: '2027-08-10' }),
      setOut('asparagus', '2028-05-01', { bedId: 'b' }),
    ];
    expect(warned({ beds: [bed('b')], plantings: lasting }, 'carrot')).toBeUndefined();
  });
});
