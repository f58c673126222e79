import { describe, expect, it } from 'vitest';
import type { Garden } from '../../../src/garden/garden.ts';
import type { Day } from '../../../src/measures/days.ts';
import { standSpans } from '../../../src/practices/cover-cropping/fit/stand-spans.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { doneMark } from '../../schedule/drafts.ts';
import {
  bed,
  cover,
  draft,
  draftsIn,
  frostDates,
  garden,
  inputOf,
  milwaukee,
  rulesOf,
  setOut,
  sown,
} from '../gardens.ts';

/** Median freezes 10 May and 1 October: oats are sown 6 August to 1 September, rye 20 August to 1 October. */
const climate = frostDates('05-10', '10-01');
const keys = (of: ReturnType<typeof draftsIn>) => of.map(({ key }) => key).filter((key) => key.includes('stand:s'));

describe('a planned stand', () => {
  it('is sown on the planned day where that lies in its window', () => {
    const sow = draft(draftsIn(garden({ stands: [cover('oats', '2027-08-20')] }), climate), 'cover-sow/stand:s');
    expect(sow.window).toEqual({ earliest: '2027-08-06', preferred: '2027-08-20', latest: '2027-09-01' });
    expect(rulesOf(sow)[0]).toBe('cover-sow.planned');
  });

  it('is moved into its window where it lies within six weeks of it', () => {
    const late = draft(draftsIn(garden({ stands: [cover('oats', '2027-10-10')] }), climate), 'cover-sow/stand:s');
    const early = draft(draftsIn(garden({ stands: [cover('oats', '2027-07-10')] }), climate), 'cover-sow/stand:s');
    expect([late.window.preferred, early.window.preferred]).toEqual(['2027-09-01', '2027-08-06']);
  });

  it('is not what comes after itself where it is moved to an earlier day', () => {
    const alone = (sow: string) =>
      standSpans(inputOf(garden({ stands: [cover('oats', sow)] }), climate), 'a').map(({ ends }) => ends);
    expect(alone('2027-10-10')).toEqual(alone('2027-09-01'));
  });

  it('is refused, and mulch offered, where it lies farther off', () => {
    const drafts = draftsIn(garden({ stands: [cover('cereal_rye', '2027-05-20')] }), climate);
    expect(keys(drafts)).toEqual(['cover-no-window/stand:s']);
    expect(rulesOf(draft(drafts, 'cover-no-window/'))[0]).toBe('cover-sow.not-then');
  });

  it('waits for the crop before it to be over, and for the compost that goes under it', () => {
    const crop = sown('carrot', '2027-05-01', { harvested: '2027-08-15' });
    const sow = draft(
      draftsIn(garden({ plantings: [crop], stands: [cover('oats', '2027-08-10')] }), climate),
      'cover-sow/stand:s',
    );
    expect(sow.window.earliest).toBe('2027-08-16');
    expect(sow.after.map(({ key }) => key)).toEqual([
      'bed-clear/planting:carrot-2027-05-01',
      'topdress/bed:a/2028/before-winter',
    ]);
  });

  it('is refused where the crop stands until its last day is past', () => {
    const crop = setOut('tomato', '2027-05-25', { harvested: '2027-10-05' });
    const drafts = draftsIn(garden({ plantings: [crop], stands: [cover('cereal_rye', '2027-09-20')] }), climate);
    const mulch = draft(drafts, 'cover-no-window/');
    // The bed is free on the 6th; hard frost comes about the 23rd.
    expect(mulch.window).toEqual({ earliest: '2027-10-06', preferred: '2027-10-09', latest: '2027-10-23' });
    // 3 m² under 65 mm of leaves.
    expect(mulch.supplies[0]?.amount).toEqual({ value: 195, unit: 'L' });
  });

  it('is refused where it could not grow a month and settle before the next crop', () => {
    // Oats in spring: 30 days and a month to see and finish regrowth, before tomatoes on 1 June: sown by 1 April.
    const next = setOut('tomato', '2027-06-01');
    const drafts = draftsIn(garden({ plantings: [next], stands: [cover('oats', '2027-04-20')] }), climate);
    expect(keys(drafts)).toEqual(['cover-no-window/stand:s']);
  });

  it('needs no time to settle where winter ends it first', () => {
    const next = sown('pea', '2028-04-10');
    const sow = draft(
      draftsIn(garden({ plantings: [next], stands: [cover('oats', '2027-08-20')] }), climate),
      'cover-sow/stand:s',
    );
    expect(sow.window.latest).toBe('2027-09-01');
  });

  it('is refused where its window had closed before the garden was brought in', () => {
    const late = garden({ startedOn: '2027-10-05', stands: [cover('oats', '2027-10-10')] });
    expect(rulesOf(draft(draftsIn(late, climate), 'cover-no-window/'))[0]).toBe('cover-sow.closed');
  });

  it('asks for its seed five to two weeks before its day, or at once where the garden is brought in later', () => {
    const early = draft(draftsIn(garden({ stands: [cover('oats', '2027-08-20')] }), climate), 'cover-order/stand:s');
    expect(early.window).toEqual({ earliest: '2027-07-16', preferred: '2027-07-16', latest: '2027-08-06' });
    const late = garden({ startedOn: '2027-08-10', stands: [cover('oats', '2027-08-20')] });
    expect(draft(draftsIn(late, climate), 'cover-order/stand:s').window).toEqual({
      earliest: '2027-08-10',
      preferred: '2027-08-10',
      latest: '2027-08-13',
    });
  });

  it('is only for seed at hand where the garden was brought in too late to order any, and says until when post still comes', () => {
    // Oats to be sown on 20 August, until 1 September: seed takes two weeks, so that it is ordered by 6 or by 18 August.
    const stands = [cover('oats', '2027-08-20')];
    const first = (startedOn: Day, parts: Partial<Garden> = {}) =>
      draft(draftsIn(garden({ startedOn, stands, ...parts }), climate), 'cover-sow/stand:s').steps[0];
    const onlyIf = 'Sow it on this day only if you have the seed, or can buy it nearby';
    expect(first('2027-08-06')).toMatch(/^Weigh out the seed/);
    expect(first('2027-08-07')).toBe(
      `${onlyIf}. Seed ordered by post by ⟦2027-08-18⟧ still comes in time: it may be sown until ⟦2027-09-01⟧.`,
    );
    expect(first('2027-08-19')).toBe(`${onlyIf}: what is ordered by post comes too late for it.`);
    const pins = { 'cover-sow/stand:s': '2027-08-12' };
    expect(first('2027-08-07', { pins })).toBe(`${onlyIf}: what is ordered by post comes too late for it.`);
    const order = draft(draftsIn(garden({ startedOn: '2027-08-07', stands }), climate), 'cover-order/stand:s');
    expect(first('2027-08-07', { done: [doneMark(order, '2027-08-07')] })).toMatch(/^Weigh out the seed/);
  });

  it('says that it would have little time to grow before its seed is ordered', () => {
    const next = setOut('tomato', '2028-05-25');
    const of = garden({ startedOn: '2027-07-05', plantings: [next], stands: [cover('cereal_rye', '2027-09-10')] });
    const order = draft(draftsIn(of, climate), 'cover-order/stand:s');
    expect(rulesOf(order)).toEqual(['cover-order.lead', 'cover-cut.little-growth']);
    expect(order.steps.join(' ')).toContain('Think before you order');
  });

  it('orders no seed and looks at no plants once its time to be sown is over, and says of none that it was sown', () => {
    const of = garden({ startedOn: '2027-07-25', stands: [cover('cereal_rye', '2027-09-10')] });
    const kinds = (today: Day) =>
      draftsIn(of, climate, today)
        .filter(({ key }) => key.includes('stand:s'))
        .map(({ kind }) => kind);
    expect(kinds('2027-10-01')).toEqual(expect.arrayContaining(['order-cover-seed', 'check-stand']));
    expect(kinds('2027-10-02')).not.toEqual(expect.arrayContaining(['order-cover-seed']));
    expect(kinds('2027-10-02')).not.toEqual(expect.arrayContaining(['check-stand']));
    const [reason] = draft(draftsIn(of, climate), 'cover-check/stand:s').reasons;
    expect(reason && reasonSentence(reason)).toMatch(/^To be sown about ⟦2027-09-10⟧/);
  });

  it('is looked at two to three weeks after its sowing, wherever in its window that is', () => {
    const check = draft(draftsIn(garden({ stands: [cover('oats', '2027-08-20')] }), climate), 'cover-check/');
    expect(check.window).toEqual({ earliest: '2027-08-20', preferred: '2027-09-03', latest: '2027-09-22' });
    expect(check.after).toEqual([{ key: 'cover-sow/stand:s', minDays: 14, maxDays: 21 }]);
  });
});

describe('what the gardener did or decided', () => {
  const planned = { startedOn: '2027-07-25', stands: [cover('cereal_rye', '2027-09-10')] };

  it('reckons from the pinned day', () => {
    const pinned = draftsIn(garden({ ...planned, pins: { 'cover-sow/stand:s': '2027-09-28' } }), climate);
    expect(draft(pinned, 'cover-check/').window.preferred).toBe('2027-10-12');
  });

  it('asks for nothing more of a sowing that was skipped, and suggests nothing in its place', () => {
    const skipped = draftsIn(garden({ ...planned, skipped: { 'cover-sow/stand:s': '2027-08-01' } }), climate);
    expect(skipped.map(({ key }) => key).filter((key) => key.startsWith('cover-'))).toEqual(['cover-sow/stand:s']);
  });

  it('lets a sowing nobody marked go two weeks after its window, with all that would have followed', () => {
    const [soon, later] = ['2027-10-15', '2027-10-16'].map((today) => keys(draftsIn(garden(planned), climate, today)));
    expect(soon).toContain('cover-cut/stand:s');
    expect(later).toEqual([]);
  });

  it('takes a stand for gone once a crop went in after it', () => {
    const grown = garden({
      startedOn: '2027-06-10',
      plantings: [setOut('tomato', '2027-05-25')],
      stands: [cover('cereal_rye', '2026-09-20')],
    });
    expect(keys(draftsIn(grown, climate))).toEqual([]);
  });

  it('keeps a stand sown under a crop that was there before it', () => {
    const under = garden({
      startedOn: '2027-09-15',
      plantings: [setOut('tomato', '2027-05-25', { harvested: '2027-09-25' })],
      stands: [cover('cereal_rye', '2027-09-10')],
    });
    expect(keys(draftsIn(under, climate))).toContain('cover-cut/stand:s');
  });

  it('asks for one look at regrowth after a cut, and none after it was made', () => {
    const cut = garden({
      startedOn: '2027-05-10',
      stands: [cover('cereal_rye', '2026-09-20', { cutOn: '2027-05-08' })],
    });
    const look = draft(draftsIn(cut, climate), 'cover-regrowth/');
    expect(look).toMatchObject({
      key: 'cover-regrowth/stand:s/check:1',
      window: { earliest: '2027-05-18', preferred: '2027-05-18', latest: '2027-05-22' },
      after: [],
    });
    const [stand] = cut.stands;
    const looked = { ...cut, stands: stand ? [{ ...stand, regrowthCheckedOn: ['2027-05-18'] }] : [] };
    expect(keys(draftsIn(looked, climate))).toEqual([]);
  });

  it('asks nothing more of a dead stand', () => {
    const dead = garden({ startedOn: '2027-04-01', stands: [cover('oats', '2026-09-01', { deadOn: '2027-03-25' })] });
    expect(keys(draftsIn(dead, climate))).toEqual([]);
  });
});

describe('where no freeze date is known', () => {
  const nowhere = inventedClimate();

  it('keeps the gardener’s own day, and says that nothing is reckoned', () => {
    const sow = draft(draftsIn(garden({ stands: [cover('oats', '2027-09-10')] }), nowhere), 'cover-sow/stand:s');
    expect(sow.window).toEqual({ earliest: '2027-09-10', preferred: '2027-09-10', latest: '2027-09-17' });
    expect(rulesOf(sow)).toContain('cover-sow.no-dates');
    expect(sow.confidence).toBe('assumed');
  });

  it('suggests nothing and looks for no winter kill', () => {
    const drafts = draftsIn(garden({ beds: [bed('a'), bed('b')], stands: [cover('oats', '2027-09-10')] }), nowhere);
    expect(drafts.filter(({ key }) => key.includes('first-') || key.startsWith('cover-dead'))).toEqual([]);
  });
});

describe('a look whether winter killed a stand', () => {
  const look = (
    coverId: string,
    day: string,
    plantings: Parameters<typeof garden>[0] = {},
    place = { hardinessZone: '5b' },
  ) =>
    draftsIn(garden({ startedOn: '2027-04-01', ...plantings, place, stands: [cover(coverId, day)] }), climate).filter(
      ({ key }) => key.startsWith('cover-dead-check/stand:s'),
    );

  it('comes six to three weeks before the last freeze', () => {
    // Median last freeze 10 May.
    expect(look('oats', '2027-08-20')[0]?.window).toEqual({
      earliest: '2028-03-29',
      preferred: '2028-04-05',
      latest: '2028-04-19',
    });
  });

  it('comes before a crop that goes in earlier', () => {
    expect(look('oats', '2027-08-20', { plantings: [sown('pea', '2028-04-01')] })[0]?.window).toEqual({
      earliest: '2028-03-24',
      preferred: '2028-03-31',
      latest: '2028-03-31',
    });
  });

  it('is not made where the stand is sure to live, or was sown in spring', () => {
    expect(look('cereal_rye', '2027-09-10')).toEqual([]);
    expect(look('oats', '2027-04-20')).toEqual([]);
    expect(look('buckwheat', '2027-07-10')).toEqual([]);
  });

  it('is made where it may or may not live: vetch under cold without snow', () => {
    expect(look('hairy_vetch', '2027-08-20')[0]?.reasons[0]).toMatchObject({
      saw: { killC: -15, yearlyMinimumC: -25 },
      source: 'cover:S1',
    });
  });

  it('says in how many winters on record it got so cold', () => {
    const [check] = draftsIn(
      garden({ startedOn: '2027-07-25', stands: [cover('oats', '2027-09-10')] }),
      milwaukee,
    ).filter(({ key }) => key.startsWith('cover-dead-check/'));
    // Every winter at Milwaukee passes −12 °C, the cold end of what kills oats (from memory).
    expect(check?.reasons[0]?.saw).toMatchObject({ killC: -12, winters: 29, cold: 29 });
  });
});

it('follows the planned stand through the year in keys that do not move with its dates', () => {
  const [one, other] = ['2027-08-22', '2027-08-30'].map((day) =>
    keys(draftsIn(garden({ startedOn: '2027-07-25', stands: [cover('rye-vetch', day)] }), climate)),
  );
  expect(one).toEqual(other);
  expect(one).toEqual([
    'cover-order/stand:s',
    'cover-sow/stand:s',
    'cover-check/stand:s',
    'cover-cut/stand:s',
    'cover-regrowth/stand:s/check:1',
  ]);
});
