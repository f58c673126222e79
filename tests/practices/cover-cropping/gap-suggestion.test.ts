import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import { addDays, type Day } from '../../../src/measures/days.ts';
import {
  cover,
  draft,
  draftsIn,
  frostDates,
  milwaukee,
  rulesOf,
  setOut,
  sown,
  garden as zoneless,
} from '../gardens.ts';

/** Median freezes 10 May and 1 October: buckwheat is suggested until 28 July, oats until 1 September, rye until 1 October. */
const climate = frostDates('05-10', '10-01');

/** Gardens of zone 5, so that it is known what winter kills. */
const garden: typeof zoneless = (parts = {}) => zoneless({ ...parts, place: { hardinessZone: '5b', ...parts.place } });

/** Covers suggested, with their windows, in key order. */
function suggestions(of: Garden, over = climate, today: Day = of.startedOn) {
  return draftsIn(of, over, today)
    .filter(({ key, kind }) => kind === 'sow-cover' && key.includes('stand:a-'))
    .map(({ key, window }) => `${key.split('stand:a-')[1]} ${window.earliest} ${window.latest}`);
}

const until = (crop: string, harvested: Day) => sown(crop, '2027-04-15', { harvested });

describe('a gap in the warm months', () => {
  it('gets buckwheat where it opens at least 28 days before buckwheat’s last suggested day', () => {
    // 65 days before 1 October (Cornell: 15 August at Geneva, whose first freeze is 19 October) is 28 July.
    expect(suggestions(garden({ plantings: [until('carrot', '2027-06-29')] }))).toEqual([
      'after-carrot-2027-04-15-2027-summer-buckwheat 2027-06-30 2027-07-28',
    ]);
    expect(suggestions(garden({ plantings: [until('carrot', '2027-06-30')] }))[0]).toContain('autumn');
  });

  it('gets oats, not buckwheat for three days, where it opens on 17 August at Milwaukee', () => {
    const carrots = [until('carrot', '2027-08-16'), sown('pea', '2028-04-10')];
    expect(suggestions(garden({ plantings: carrots }), milwaukee)).toEqual([
      expect.stringContaining('2027-autumn-oats 2027-08-28 2027-09-23'),
    ]);
  });

  it('gets buckwheat before a planned cover, its cut and a week before that one’s sowing', () => {
    const plantings = [until('carrot', '2027-06-15')];
    const found = suggestions(garden({ plantings, stands: [cover('cereal_rye', '2027-09-10')] }));
    // Rye may go in from 20 August; 40 days of growth and 7 to settle before it.
    expect(found).toEqual(['after-carrot-2027-04-15-2027-summer-buckwheat 2027-06-16 2027-07-04']);
  });
});

describe('a gap before winter', () => {
  it('gets oats, which winter kills, where an early crop is next', () => {
    const plantings = [until('carrot', '2027-07-31'), sown('carrot', '2028-04-20')];
    expect(suggestions(garden({ plantings }))).toEqual([
      'after-carrot-2027-04-15-2027-autumn-oats 2027-08-06 2027-09-01',
    ]);
  });

  it('gets no legume beside one, whose root rots peas would keep alive', () => {
    const plantings = [until('pea', '2027-07-31'), sown('carrot', '2028-04-20')];
    expect(suggestions(garden({ plantings }))).toEqual(['after-pea-2027-04-15-2027-autumn-oats 2027-08-06 2027-09-01']);
  });

  it('gets rye with vetch before a hungry crop six weeks after the last freeze (cover:S5), and what winter kills before one of May', () => {
    // At Geneva, New York, 10 June is 43 days after its last freeze.
    const geneva = frostDates('04-28', '10-19');
    const [late, early] = [setOut('tomato', '2028-06-12'), setOut('cabbage', '2028-04-25')].map((next) =>
      suggestions(garden({ plantings: [until('carrot', '2027-08-20'), next] }), geneva),
    );
    expect(late?.[0]).toContain('autumn-rye-vetch');
    expect(early?.[0]).toContain('autumn-oats');
  });

  it('gets no cabbage kin where nobody has chosen what follows, though radish could go in first', () => {
    // Oilseed radish may be sown from 23 July, oats with peas from 6 August.
    expect(suggestions(garden({ plantings: [until('carrot', '2027-07-16')] }))[0]).toContain('autumn-oats');
  });

  it('gets rye where oats come too late, if the bed is not wanted early', () => {
    const plantings = [until('carrot', '2027-09-10'), setOut('cabbage', '2028-06-20')];
    expect(suggestions(garden({ plantings }))[0]).toContain('autumn-cereal_rye 2027-09-11 2027-10-01');
  });

  it('gets no rye that would have to be cut before it has grown', () => {
    for (const day of ['2028-05-01', '2028-05-20', '2028-06-05', '2028-06-20']) {
      const of = garden({
        startedOn: '2027-08-01',
        plantings: [until('carrot', '2027-09-10'), setOut('cabbage', day)],
      });
      const rye = draftsIn(of, climate).find(({ key }) => key.startsWith('cover-sow/') && key.includes('cereal_rye'));
      const stands = [cover('cereal_rye', '2027-09-15')];
      const cut = draft(draftsIn({ ...of, stands }, climate), 'cover-cut/stand:s');
      expect(rye === undefined, day).toBe(rulesOf(cut).includes('cover-cut.little-growth'));
    }
  });

  it('gets nothing where rye comes too late', () => {
    const plantings = [until('carrot', '2027-10-01'), setOut('cabbage', '2028-06-20')];
    expect(suggestions(garden({ plantings }))).toEqual([]);
  });

  it('gets nothing before garlic, for which no stand would be grown and gone', () => {
    const plantings = [until('carrot', '2027-08-31'), setOut('garlic', '2027-10-15')];
    expect(suggestions(garden({ plantings }))).toEqual([]);
  });
});

describe('a gap in spring', () => {
  it('gets a legume of spring where there is time to grow, cut and finish it', () => {
    const found = suggestions(garden({ plantings: [setOut('cabbage', '2027-07-15')] }));
    expect(found[0]).toContain('first-2027-spring-crimson_clover');
  });

  it('gets nothing before crops of May', () => {
    expect(suggestions(garden({ plantings: [setOut('tomato', '2027-05-25', { harvested: '2027-10-05' })] }))).toEqual(
      [],
    );
  });
});

describe('a bed that holds a cover', () => {
  it('gets nothing more while its residue lies and the next crop is near', () => {
    const kept = (tomato: Day) =>
      suggestions(
        garden({
          startedOn: '2027-09-05',
          stands: [cover('oats', '2027-08-15')],
          plantings: [setOut('tomato', tomato)],
        }),
        milwaukee,
      );
    expect(kept('2028-05-28')).toEqual([]);
    expect(kept('2028-07-10')).toEqual([expect.stringContaining('2028-spring')]);
  });

  it('gets no suggestion beside one with no end', () => {
    const stands = [cover('white_clover', '2027-08-01')];
    expect(suggestions(garden({ startedOn: '2027-08-05', stands }))).toEqual([]);
  });

  it('gets its next one after the cut of rye and a month to finish it', () => {
    const stands = [cover('cereal_rye', '2027-09-01')];
    const of = garden({ startedOn: '2027-09-05', stands });
    const { latest } = draft(draftsIn(of, climate), 'cover-cut/stand:s').window;
    expect(suggestions(of)).toEqual([`first-2028-summer-buckwheat ${addDays(latest, 31)} 2028-07-28`]);
  });

  it('gets the next one once the first is cut and settled', () => {
    // Buckwheat cut on 10 July wants a week before another cover.
    const stands = [cover('buckwheat', '2027-06-05', { cutOn: '2027-07-10' })];
    expect(suggestions(garden({ startedOn: '2027-07-10', stands }))).toEqual([
      expect.stringContaining('2027-autumn-oats '),
    ]);
  });

  it('is not held by a stand of an earlier gap that nobody marked as cut', () => {
    const of = garden({
      startedOn: '2027-07-01',
      plantings: [setOut('cabbage', '2027-05-20', { harvested: '2027-07-31' })],
      stands: [cover('cereal_rye', '2026-09-20')],
    });
    expect(suggestions(of)).toHaveLength(1);
  });

  it('is not held by a planned stand nobody sowed, two weeks after its last day', () => {
    const of = garden({
      startedOn: '2027-06-01',
      stands: [cover('oats', '2027-08-20')],
    });
    const [before, after] = ['2027-09-15', '2027-09-16'].map((today) => suggestions(of, climate, today));
    expect(before).toEqual([expect.stringContaining('2028-spring')]);
    expect(after).toEqual([expect.stringMatching(/2027-autumn-(cereal_rye|winter_wheat)/)]);
  });
});

describe('a suggestion', () => {
  const of = garden({ startedOn: '2027-06-01', plantings: [until('carrot', '2027-06-15')] });

  it('says why this cover, and that it is one', () => {
    const sow = draft(draftsIn(of, climate), 'cover-sow/');
    expect(rulesOf(sow)[0]).toBe('cover-sow.suggested');
    expect(sow.steps.at(-1)).toContain('This is a suggestion');
  });

  it('stays the same, word for word and day for day, until its window closes', () => {
    const on = (today: Day) => draftsIn(of, climate, today).find(({ key }) => key.startsWith('cover-sow/'));
    const first = on('2027-06-01');
    for (const today of ['2027-06-15', '2027-06-30', '2027-07-01', '2027-07-02', '2027-07-28'])
      expect(on(today)).toEqual(first);
    expect(on('2027-07-29')?.key).toContain('autumn');
  });

  it('brings its seed order and its cut, and the layer of spring waits for that', () => {
    const rye = garden({ startedOn: '2027-07-01', plantings: [until('carrot', '2027-09-10')] });
    const drafts = draftsIn(rye, climate).filter(({ key }) => key.includes('cereal_rye'));
    const [order, sow, cut] = ['cover-order/', 'cover-sow/', 'cover-cut/'].map((key) => draft(drafts, key));
    expect(order?.window.latest).toBe(addDays(sow?.window.preferred ?? '', -14));
    expect(cut?.after[0]).toEqual({ key: sow?.key, minDays: 0 });
    expect(cut?.after[1]).toMatchObject({ key: expect.stringMatching(/^squeeze-test/), yields: true });
    const skipped = draftsIn({ ...rye, skipped: { [sow?.key ?? '']: '2027-07-02' } }, climate);
    expect(skipped.filter(({ key }) => key.includes('cereal_rye')).map(({ kind }) => kind)).toEqual(['sow-cover']);
  });

  it('is only for seed at hand inside two weeks of its sowing', () => {
    // To be sown on 16 June.
    const on = (parts: Partial<Garden>) =>
      draftsIn({ ...of, ...parts }, climate).filter(({ key }) => key.includes('summer-buckwheat'));
    expect(draft(on({}), 'cover-sow/').steps[0]).toBe(
      'No seed ordered by ⟦2027-06-02⟧? Then sow it only if you have the seed, or can buy it nearby.',
    );
    const late = on({ startedOn: '2027-06-03' });
    expect(late.map(({ kind }) => kind)).not.toContain('order-cover-seed');
    expect(draft(late, 'cover-sow/').steps[0]).toContain('what is ordered now comes too late');
    const [order] = on({}).filter(({ kind }) => kind === 'order-cover-seed');
    const done = [{ key: order?.key ?? '', on: '2027-06-01' } as Garden['done'][number]];
    expect(draft(on({ done }), 'cover-sow/').steps[0]).toContain('Weigh out the seed');
  });

  it('made over New Year is the same on both sides of it', () => {
    const wait = garden({ startedOn: '2027-12-01', plantings: [setOut('cabbage', '2028-07-15')] });
    const [old, young] = ['2027-12-31', '2028-01-01'].map((today) => draftsIn(wait, climate, today));
    const sow = (drafts: typeof old) => drafts?.filter(({ kind }) => kind === 'sow-cover');
    expect(sow(old)).toEqual(sow(young));
    expect(sow(old)).toHaveLength(1);
  });

  it('is not made twice for one that was sown, cut and is over', () => {
    const id = 'a-after-carrot-2027-04-15-2027-summer-buckwheat';
    const again = garden({
      ...of,
      startedOn: '2027-07-15',
      stands: [cover('buckwheat', '2027-06-18', { id, cutOn: '2027-07-14' })],
    });
    expect(suggestions(again)).toEqual([expect.stringContaining('2027-autumn-oats ')]);
  });

  it('is suggested at latitude −43 in its own seasons', () => {
    const south = frostDates('10-20', '04-20', -43);
    const plantings = [sown('carrot', '2027-10-15', { harvested: '2028-01-31' }), sown('carrot', '2028-10-25')];
    const found = suggestions(
      garden({ startedOn: '2027-11-01', place: { latitude: -43, hardinessZone: '6a' }, plantings }),
      south,
    );
    expect(found).toEqual([expect.stringContaining('2027-autumn-oilseed_radish 2028-02-10 2028-03-02')]);
  });
});
