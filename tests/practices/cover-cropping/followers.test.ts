import { describe, expect, it } from 'vitest';
import { firstFollower, nextStand } from '../../../src/practices/cover-cropping/followers.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { cover, draft, draftsIn, frostDates, garden, inputOf, setOut, sown } from '../gardens.ts';

/** Median freezes 10 May and 1 October. */
const climate = frostDates('05-10', '10-01');
type Parts = Parameters<typeof garden>[0];

function follower(coverId: string, sownOn: string, parts: Parts) {
  const found = firstFollower(inputOf(garden(parts), climate), 'a', coverParts(coverId), sownOn);
  return found && [found.what, found.from, found.cutBy, found.reason.rule];
}

describe('what waits for the bed of a stand', () => {
  it('is the crop that goes in after it', () => {
    expect(follower('mustard', '2027-04-20', { plantings: [setOut('tomato', '2027-06-10')] })).toEqual([
      'tomato',
      '2027-06-10',
      '2027-05-27',
      'cover-cut.next-wait',
    ]);
  });

  it('is the cover planned next, a week after a cut in flower (cover:S5)', () => {
    expect(follower('buckwheat', '2027-06-20', { stands: [cover('oats', '2027-08-15')] })).toEqual([
      'oats',
      '2027-08-15',
      '2027-08-08',
      'cover-cut.next-cover',
    ]);
  });

  it('is the one of the two that asks for the earlier cut', () => {
    const parts = { plantings: [sown('carrot', '2027-08-20')], stands: [cover('oats', '2027-08-15')] };
    // Carrots want three weeks of settling: 30 July.
    expect(follower('buckwheat', '2027-06-20', parts)?.slice(0, 3)).toEqual(['carrot', '2027-08-20', '2027-07-30']);
  });

  it('is nothing that comes after frost or winter has ended the stand', () => {
    expect(follower('buckwheat', '2027-08-10', { stands: [cover('red_clover', '2028-03-10')] })).toBeUndefined();
    const place = { hardinessZone: '5b' };
    expect(follower('oats', '2027-08-20', { place, plantings: [sown('pea', '2028-04-15')] })).toBeUndefined();
  });

  it('is no clover broadcast among what stands, and no sowing that was skipped', () => {
    expect(follower('cereal_rye', '2026-09-10', { stands: [cover('red_clover', '2027-03-10')] })).toBeUndefined();
    const skipped = { stands: [cover('oats', '2027-08-15')], skipped: { 'cover-sow/stand:s': '2027-06-01' } };
    expect(follower('buckwheat', '2027-06-20', skipped)).toBeUndefined();
  });

  it('is the nearest of several covers, whatever their order in the file', () => {
    const stands = [cover('cereal_rye', '2027-09-10', { id: 'rye' }), cover('oats', '2027-08-15', { id: 'oats' })];
    for (const order of [stands, [...stands].reverse()]) {
      expect(nextStand(inputOf(garden({ stands: order }), climate), 'a', '2027-06-20')?.id).toBe('oats');
    }
  });
});

describe('two covers planned one after the other', () => {
  const stands = [cover('buckwheat', '2027-06-20', { id: 'first' }), cover('oats', '2027-08-15', { id: 'second' })];
  const drafts = draftsIn(garden({ startedOn: '2027-06-01', stands }), climate);

  it('leave the first a month to grow and a week to be out of the way', () => {
    // 37 days before 15 August.
    expect(draft(drafts, 'cover-sow/stand:first').window.latest).toBe('2027-07-09');
  });

  it('have the first cut before the second is sown', () => {
    const cut = draft(drafts, 'cover-cut/stand:first');
    expect(cut.window.latest <= '2027-08-08').toBe(true);
    expect(cut.steps.join(' ')).toContain('Next here: oats on ⟦2027-08-15⟧');
  });

  it('are not refused where the plan leaves less than that', () => {
    const close = [cover('buckwheat', '2027-07-20', { id: 'first' }), cover('oats', '2027-08-15', { id: 'second' })];
    const sow = draft(draftsIn(garden({ startedOn: '2027-06-01', stands: close }), climate), 'cover-sow/stand:first');
    expect(sow.window).toMatchObject({ preferred: '2027-07-20', latest: '2027-07-20' });
  });
});

it('does not make clover broadcast in March wait for the cut of the rye it goes under', () => {
  const stands = [
    cover('cereal_rye', '2026-09-10', { id: 'rye' }),
    cover('red_clover', '2027-03-20', { id: 'clover' }),
    cover('oats', '2027-08-15', { id: 'oats' }),
  ];
  const drafts = draftsIn(garden({ startedOn: '2027-02-20', stands }), climate);
  expect(draft(drafts, 'cover-sow/stand:clover').after).toEqual([]);
  expect(draft(drafts, 'cover-sow/stand:oats').after).toContainEqual({ key: 'cover-cut/stand:rye', minDays: 0 });
});

describe('warnings', () => {
  const stand = {
    startedOn: '2027-06-01',
    place: { hardinessZone: '5b' },
    stands: [cover('hairy_vetch', '2027-08-20')],
  };
  const drafts = draftsIn(garden(stand), climate);

  it('of sowing for winter are shown where it is sown, and those of cutting where it is cut', () => {
    const [sow, cut] = ['cover-sow/stand:s', 'cover-cut/stand:s'].map((key) => draft(drafts, key).cautions.join(' '));
    expect(sow).toContain('Bare of snow it may die');
    expect(sow).not.toContain('vines wind round tools');
    expect(cut).toContain('vines wind round tools');
    expect(cut).not.toContain('Bare of snow');
    for (const text of [sow, cut]) expect(text).toContain('poisonous to livestock');
  });

  it('of winter are not shown in spring', () => {
    const spring = draftsIn(garden({ stands: [cover('oats', '2027-04-20')] }), climate);
    expect(draft(spring, 'cover-sow/stand:s').cautions).toEqual([]);
  });
});
