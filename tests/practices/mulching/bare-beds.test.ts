import { describe, expect, it } from 'vitest';
import type { Day } from '../../../src/measures/days.ts';
import type { TaskDraft } from '../../../src/practices/draft.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { bed, cover, draft, draftsIn, frostDates, garden, milwaukee, rulesOf, setOut, sown } from '../gardens.ts';

/** Hard frost (24 °F) on 13 November, soil at 18 °C on 22 June in the middle year. */
const bare = (parts: Parameters<typeof garden>[0], climate = milwaukee, today?: Day): TaskDraft[] =>
  draftsIn(garden(parts), climate, today).filter(({ kind }) => kind === 'mulch-bare-bed');

const late = sown('kale', '2027-07-15', { harvested: '2027-10-28' });
const onPeas = sown('pea', '2028-04-10');

describe('a bed that is free too late for any cover', () => {
  const [mulch] = bare({ plantings: [late, onPeas] });

  it('is mulched before the ground freezes, with litres and barrows', () => {
    expect(mulch?.key).toBe('mulch-bare/bed:a/2028');
    expect(mulch?.window).toEqual({ earliest: '2027-10-29', preferred: '2027-11-01', latest: '2027-11-13' });
    // 3 m² under 65 mm; a barrow is 75 L.
    expect(mulch?.supplies[0]).toMatchObject({ amount: { value: 195, unit: 'L' }, also: '3 barrow loads' });
  });

  it('is told why no cover fits', () => {
    expect(mulch && rulesOf(mulch)).toEqual([
      'cover-none.too-late',
      'cover-sow.gap',
      'mulch-bare.winter',
      'mulch-bare.amount',
    ]);
  });

  it('waits for the crop to be cleared and for the compost', () => {
    expect(mulch?.after.map(({ key }) => key)).toEqual([
      'bed-clear/planting:kale-2027-07-15',
      'topdress/bed:a/2028/before-winter',
    ]);
  });

  it('has two weeks where it is free only after the freeze', () => {
    const [after] = bare({ plantings: [sown('kale', '2027-07-15', { harvested: '2027-11-17' }), onPeas] });
    expect(after?.window).toEqual({ earliest: '2027-11-18', preferred: '2027-11-21', latest: '2027-12-02' });
  });

  it('is mulched though a cover is suggested for spring', () => {
    const [mulched] = bare({ plantings: [late, setOut('tomato', '2028-06-05')] });
    expect(mulched?.key).toBe('mulch-bare/bed:a/2028');
  });
});

describe('a bed mulched by choice between a crop and garlic', () => {
  const chosen = {
    startedOn: '2027-09-01',
    plantings: [sown('carrot', '2027-05-01', { harvested: '2027-09-14' }), setOut('garlic', '2027-11-10')],
    topdressing: { depthMm: 13, season: 'autumn' } as const,
    mulches: [{ bedId: 'a', mulch: 'leaves' as const, from: '2027-09-16' }],
  };
  const [mulch] = bare(chosen);

  it('does not wait for compost that comes later: it is raked back for that', () => {
    expect(mulch?.after.map(({ key }) => key)).toEqual(['bed-clear/planting:carrot-2027-05-01']);
    expect(mulch?.steps.some((step) => step.includes('rake the mulch back'))).toBe(true);
  });

  it('is told that September’s leaves are those of last autumn', () => {
    expect(mulch?.steps.some((step) => step.includes('last autumn'))).toBe(true);
    const [straw] = bare({ ...chosen, mulches: [{ bedId: 'a', mulch: 'straw', from: '2027-09-16' }] });
    expect(straw?.steps.some((step) => step.includes('last autumn'))).toBe(false);
  });
});

describe('a bed that is covered', () => {
  it.each([
    ['by a cover suggested in time', { plantings: [sown('pea', '2027-04-15', { harvested: '2027-08-15' }), onPeas] }],
    ['by rye that stands over winter', { stands: [cover('cereal_rye', '2027-09-25')] }],
    ['by oats that winter kills', { stands: [cover('oats', '2027-09-01')] }],
    ['by garlic', { plantings: [late, setOut('garlic', '2027-11-05', { harvested: '2028-07-10' })] }],
    ['by a crop that stays until spring', { plantings: [sown('parsnip', '2027-05-10', { harvested: '2028-04-01' })] }],
    ['by asparagus', { plantings: [setOut('asparagus', '2024-04-20')] }],
  ])('%s is not mulched for winter', (_how, parts) => {
    expect(bare(parts).filter(({ key }) => key === 'mulch-bare/bed:a/2028')).toEqual([]);
  });
});

describe('a sowing that does not come about', () => {
  const parts = { plantings: [sown('pea', '2027-04-15', { harvested: '2027-08-15' }), onPeas] };
  const suggested = draftsIn(garden(parts)).find(({ kind }) => kind === 'sow-cover')?.key ?? '';

  it('is answered by mulch at once where the gardener skips it', () => {
    const [mulch] = bare({ ...parts, skipped: { [suggested]: '2027-08-20' } });
    expect(mulch?.window).toEqual({ earliest: '2027-08-20', preferred: '2027-08-23', latest: '2027-09-03' });
    expect(mulch?.reasons[0]?.rule).toBe('cover-none.skipped');
  });

  it('is answered by mulch before the freeze once its time has passed', () => {
    const [mulch] = bare(parts, milwaukee, '2027-10-25');
    expect(mulch?.reasons[0]?.rule).toBe('cover-none.lapsed');
    expect(mulch?.window.latest).toBe('2027-11-13');
    expect(mulch && mulch.window.earliest > '2027-09-01').toBe(true);
  });

  it('is answered by mulch where it was planned and is skipped', () => {
    const planned = { stands: [cover('oats', '2027-09-01')], skipped: { 'cover-sow/stand:s': '2027-09-05' } };
    expect(bare(planned)[0]?.reasons[0]?.rule).toBe('cover-none.skipped');
  });
});

describe('ground that lies open in summer', () => {
  const peas = sown('pea', '2027-04-15', { harvested: '2027-07-01' });
  const next = (day: Day) => setOut('broccoli', day, { harvested: '2027-10-20' });
  const inSeason = (day: Day) => bare({ plantings: [peas, next(day)] }).filter(({ key }) => key.endsWith('in-season'));

  it('is mulched as soon as it is free, where four weeks or more are left', () => {
    const [mulch] = inSeason('2027-07-31');
    expect(mulch?.window).toEqual({ earliest: '2027-07-02', preferred: '2027-07-05', latest: '2027-07-16' });
    expect(mulch && rulesOf(mulch)[0]).toBe('cover-none.too-short');
    expect(inSeason('2027-07-29')).toEqual([]);
  });

  it('is left to warm in spring', () => {
    const spinach = sown('spinach', '2027-04-01', { harvested: '2027-05-05' });
    expect(
      bare({ plantings: [spinach, setOut('tomato', '2027-06-10')] }).filter(({ key }) => key.endsWith('in-season')),
    ).toEqual([]);
  });
});

describe('a planned cover that is refused', () => {
  it('is answered in every case, also where little time is left', () => {
    const parts = { plantings: [setOut('tomato', '2027-06-01')], stands: [cover('oats', '2027-04-20')] };
    const mulch = draft(draftsIn(garden(parts), frostDates('05-10', '10-01')), 'cover-no-window/');
    expect(mulch.window).toEqual({ earliest: '2027-04-20', preferred: '2027-04-23', latest: '2027-05-04' });
    expect(mulch.title).toBe('Mulch Bed A: no time for oats');
  });

  it('is not mulched for twice in one winter', () => {
    const keys = bare({ plantings: [late], stands: [cover('oats', '2027-12-01')] }).map(({ key }) => key);
    expect(keys).toContain('cover-no-window/stand:s');
    expect(keys).not.toContain('mulch-bare/bed:a/2028');
  });
});

describe('elsewhere', () => {
  it('the south mulches in May', () => {
    const climate = frostDates('10-20', '04-20', -43);
    const place = { latitude: -43 };
    const kale = sown('kale', '2027-12-15', { harvested: '2028-04-28' });
    const [mulch] = bare({ startedOn: '2027-07-01', place, plantings: [kale, sown('pea', '2028-10-05')] }, climate);
    expect(mulch?.key).toBe('mulch-bare/bed:a/2028');
    expect(mulch?.window).toMatchObject({ earliest: '2028-04-29', latest: '2028-05-13' });
  });

  it('a year with a 29 February counts on as any other', () => {
    const of = {
      startedOn: '2028-02-29',
      plantings: [sown('kale', '2028-07-15', { harvested: '2028-10-28' }), sown('pea', '2029-04-10')],
    };
    expect(bare(of)[0]?.window).toEqual({ earliest: '2028-10-29', preferred: '2028-11-01', latest: '2028-11-13' });
  });

  it('where it never freezes nothing is said', () => {
    const tropics = inventedClimate({ latitude: 10 });
    const plantings = [late, onPeas, setOut('garlic', '2027-10-15', { bedId: 'b' })];
    const kinds = draftsIn(garden({ beds: [bed('a'), bed('b')], plantings }), tropics)
      .filter(({ practice }) => practice === 'mulching')
      .map(({ kind }) => kind);
    expect(kinds).toEqual([]);
  });
});
