import { describe, expect, it } from 'vitest';
import type { Planting } from '../../../src/garden/garden.ts';
import { addDays } from '../../../src/measures/days.ts';
import { growsAgain } from '../../../src/practices/after-cut.ts';
import { cutWindow } from '../../../src/practices/cover-cropping/cut-window.ts';
import { settleDays } from '../../../src/practices/cover-cropping/settle.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { soilAwake } from '../../../src/practices/seasons.ts';
import { frostDates, garden, inputOf, milwaukee, setOut, sown } from '../gardens.ts';

function cutOf(coverId: string, sownOn: string, plantings: readonly Planting[] = [], climate = milwaukee) {
  return cutWindow(inputOf(garden({ plantings }), climate), 'a', coverParts(coverId), sownOn);
}

const rules = (cut: ReturnType<typeof cutOf>) => cut?.reasons.map(({ rule }) => rule);

describe('a cut that comes before bloom', () => {
  it('opens 14 days before its close and is best five days before it', () => {
    const cut = cutOf('cereal_rye', '2027-09-15');
    const latest = cut?.window.latest ?? '';
    expect(cut?.window).toEqual({ earliest: addDays(latest, -14), preferred: addDays(latest, -5), latest });
  });

  it('stays open for six days at the least, also for quick mustard', () => {
    // Four weeks to flower, and a month to be worth cutting: the last six days are left.
    expect(cutOf('mustard', '2027-08-15')?.window).toEqual({
      earliest: '2027-09-06',
      preferred: '2027-09-07',
      latest: '2027-09-12',
    });
  });

  it('gives buckwheat sown on 10 July a month and more, not 18 days', () => {
    const window = cutOf('buckwheat', '2027-07-10')?.window;
    expect(window && window.earliest >= '2027-08-01').toBe(true);
    expect(window && window.latest >= '2027-08-07').toBe(true);
  });

  it('is not asked for where winter ends the stand and no crop waits', () => {
    expect(cutOf('oats', '2027-09-05')).toBeUndefined();
  });
});

describe('a cut that comes before the next crop', () => {
  it('leaves 21 days before small seed and 14 before plants', () => {
    // Mustard does not grow again in earnest: no sheet is reckoned with.
    const [carrots, tomatoes] = [sown('carrot', '2027-06-01'), setOut('tomato', '2027-06-01')];
    expect(cutOf('mustard', '2027-04-01', [carrots])?.window.latest).toBe('2027-05-11');
    expect(settleDays(coverParts('mustard'), undefined)).toBe(21);
    expect(cutOf('mustard', '2027-04-01', [tomatoes])?.next?.cutBy).toBe('2027-05-18');
  });

  it('leaves 21 days before beans too, which seedcorn maggot eats, and 14 before garlic cloves', () => {
    const bean = cutOf('mustard', '2027-04-01', [sown('snap-bean', '2027-06-01')])?.next;
    const garlic = cutOf('mustard', '2027-08-01', [sown('garlic', '2027-10-20')])?.next;
    expect([bean?.cutBy, garlic?.cutBy]).toEqual(['2027-05-11', '2027-10-06']);
  });

  it('leaves a month where the cover grows again: ten days to see it, three weeks of sheet (cover:S39)', () => {
    const cut = cutOf('cereal_rye', '2027-09-15', [setOut('tomato', '2028-05-25')]);
    expect(cut?.window.latest).toBe('2028-04-24');
    expect(rules(cut)).toContain('cover-cut.next-sheet');
    expect(cut?.reasons.find(({ rule }) => rule === 'cover-cut.decides')?.saw.decides).toBe('what follows');
  });

  it('leaves no sheet after buckwheat, which one cut in flower ends', () => {
    expect([growsAgain(coverParts('buckwheat')), growsAgain(coverParts('cereal_rye'))]).toEqual([false, true]);
    const next = cutOf('buckwheat', '2027-06-10', [setOut('broccoli', '2027-08-05')]);
    expect(next?.reasons.find(({ rule }) => rule === 'cover-cut.next-wait')?.limit).toBe('2027-07-29');
  });

  it('is not asked of a stand that winter has ended by then', () => {
    expect(cutOf('oats', '2027-09-05', [sown('pea', '2028-04-10')])).toBeUndefined();
  });

  it('is asked of one that winter would end, where the crop comes first', () => {
    // Oats sown on 28 August, garlic on 15 October: 31 days before it are 14 September, too soon; cut as soon as grown.
    const cut = cutOf('oats', '2027-08-28', [setOut('garlic', '2027-10-15')]);
    expect(cut?.window.latest).toBe('2027-10-03');
    expect(rules(cut)).toContain('cover-cut.short');
  });

  it('is not asked of one that frost has ended by then', () => {
    // The median first freeze is 23 October; buckwheat of September does not seed before it.
    expect(cutOf('buckwheat', '2027-09-10', [setOut('garlic', '2027-11-01')])).toBeUndefined();
  });
});

describe('a cut before there is growth', () => {
  it('waits until a winter stand wakes, and says that the wait cannot be kept', () => {
    const cut = cutOf('cereal_rye', '2027-10-10', [sown('pea', '2028-04-10')]);
    const awake = soilAwake(milwaukee, 2028) ?? '';
    expect(awake > '2028-03-10').toBe(true);
    expect(cut?.window.latest).toBe(addDays(awake, 6));
    expect(rules(cut)).toEqual(expect.arrayContaining(['cover-cut.short', 'cover-cut.little-growth']));
  });

  it('never comes on or before the sowing, however soon the crop', () => {
    for (const day of ['2027-05-02', '2027-05-03', '2027-05-10', '2027-05-31']) {
      const window = cutOf('oats', '2027-05-01', [setOut('tomato', day)])?.window;
      expect(window && window.earliest > '2027-05-01' && window.earliest <= window.preferred).toBe(true);
      expect(window && window.preferred <= window.latest).toBe(true);
    }
  });

  it('comes before the crop goes in, where there is a day for it', () => {
    const window = cutOf('oats', '2027-05-01', [setOut('tomato', '2027-05-20')])?.window;
    expect(window?.latest).toBe('2027-05-19');
  });
});

describe('years, leap days and the other half of the world', () => {
  it('takes a stand sown on 29 February', () => {
    expect(cutOf('oats', '2028-02-29')?.window.latest.slice(0, 4)).toBe('2028');
  });

  it('cuts rye sown in March before it flowers in November, at latitude −43', () => {
    const south = frostDates('10-20', '04-20', -43);
    const input = inputOf(garden({ place: { latitude: -43, hardinessZone: '8a' } }), south);
    const window = cutWindow(input, 'a', coverParts('cereal_rye'), '2027-03-20')?.window;
    expect(window && window.earliest >= '2027-10-01' && window.latest <= '2027-12-20').toBe(true);
  });
});
