import { describe, expect, it } from 'vitest';
import { addDays, daysBetween } from '../../../../src/measures/days.ts';
import { modelledBloom } from '../../../../src/practices/cover-cropping/bloom.ts';
import { bloomOdds } from '../../../../src/practices/cover-cropping/fit/bloom-odds.ts';
import type { BloomFigure } from '../../../../src/practices/cover-cropping/fit/fit.ts';
import { coverParts } from '../../../../src/practices/covers.ts';
import { recordClimate } from '../../../climate/real-data.ts';
import { cover, draft, draftsIn, frostDates, garden, inputOf, milwaukee } from '../../gardens.ts';

const atMilwaukee = inputOf(garden(), milwaukee);
const atBozeman = inputOf(garden(), recordClimate('bozeman', 2020));

function figure(coverId: string, sown: string, cutBy?: string, input = atMilwaukee): BloomFigure {
  const found = bloomOdds(input, coverParts(coverId), sown, cutBy);
  if (found === undefined || 'none' in found) throw new Error(`no figure for ${coverId}`);
  return found;
}

const lookFrom = (coverId: string, sown: string, input = atMilwaukee) => {
  const found = bloomOdds(input, coverParts(coverId), sown, undefined);
  return found && 'none' in found ? found.lookFrom : undefined;
};

describe('the flowers of rye', () => {
  const rye = figure('cereal_rye', '2026-09-15', '2027-05-20');

  it('are before a cut of 20 May in one year of ten at Milwaukee, and the middle day is 1 June', () => {
    expect(Math.abs(daysBetween('2027-06-01', rye.median ?? ''))).toBeLessThanOrEqual(1);
    expect(rye.riskAtCut).toBeGreaterThan(0.06);
    expect(rye.riskAtCut).toBeLessThan(0.1);
  });

  it('may be cut for at three risks: the higher the later', () => {
    const [five, ten, twenty] = rye.byRisk;
    expect(rye.byRisk.map(({ percent }) => percent)).toEqual([5, 10, 20]);
    expect(ten?.close).toBe(rye.close);
    // Years 6.6 days and model 5 are 8.3 together: 0.36 and 0.44 of it between the risks.
    expect(daysBetween(five?.close ?? '', ten?.close ?? '')).toBe(3);
    expect(daysBetween(ten?.close ?? '', twenty?.close ?? '')).toBeGreaterThanOrEqual(3);
  });

  it('are told at the garden’s own risk too, which the close is of', () => {
    const bold = figure(
      'cereal_rye',
      '2026-09-15',
      undefined,
      inputOf(garden({ place: { bloomRiskPercent: 30 } }), milwaukee),
    );
    expect(bold.byRisk.map(({ percent }) => percent)).toEqual([5, 10, 20, 30]);
    expect(bold.byRisk[3]?.close).toBe(bold.close);
  });

  it('are the likelier before the cut the later it is', () => {
    const risk = (cutBy: string) => figure('cereal_rye', '2026-09-15', cutBy).riskAtCut ?? Number.NaN;
    expect(risk('2027-06-01')).toBeCloseTo(0.5, 1);
    expect(risk('2027-04-20')).toBeLessThan(0.001);
    expect(risk('2027-06-20')).toBeGreaterThan(0.98);
  });

  it('say that the sum is derived', () => {
    expect(rye.origin.provenance).toBe('derived');
  });
});

describe('crimson clover', () => {
  it('goes by the calendar of its zone and has no odds', () => {
    const clover = figure('crimson_clover', '2026-08-25', '2027-05-01');
    // 15 May in zone 6, remembered.
    expect(clover.median).toBe('2027-05-15');
    expect([clover.byRisk, clover.riskAtCut]).toEqual([[], undefined]);
    expect(clover.origin.provenance).toBe('from memory');
  });
});

describe('kinds without a published figure', () => {
  it('are looked at for buds a week before the day that is only remembered: vetch', () => {
    const from = lookFrom('hairy_vetch', '2026-08-25');
    expect(from && from > '2027-05-01' && from < '2027-05-25', from).toBe(true);
  });

  it('are looked at a month after the soil wakes where nothing is remembered: white clover', () => {
    const from = lookFrom('white_clover', '2026-08-25');
    expect(from && from > '2027-04-10' && from < '2027-05-20', from).toBe(true);
  });

  it('are looked at from forty days on when sown in summer: peas of 1 August', () => {
    expect(lookFrom('field_pea', '2027-08-01')).toBe('2027-09-10');
  });

  it('say nothing of flowers that frost comes before', () => {
    expect(bloomOdds(atMilwaukee, coverParts('field_pea'), '2027-10-01', undefined)).toBe(undefined);
    expect(bloomOdds(atBozeman, coverParts('oats'), '2027-08-20', undefined)).toBe(undefined);
  });

  it('say nothing of rye sown in spring, which does not head', () => {
    expect(bloomOdds(atMilwaukee, coverParts('cereal_rye'), '2027-04-15', undefined)).toBe(undefined);
  });

  it('go before a part with a later figure in a mix: rye with vetch is looked at', () => {
    const mix = bloomOdds(atBozeman, coverParts('rye-vetch'), '2026-08-25', undefined);
    const rye = figure('cereal_rye', '2026-08-25', undefined, atBozeman);
    const vetch = lookFrom('hairy_vetch', '2026-08-25', atBozeman) ?? '';
    expect(mix).toMatchObject(vetch < rye.close ? { none: 'no published bloom figure', lookFrom: vetch } : rye);
  });

  it('hide no odds of another part: of rye with vetch the rye keeps its own, and the vetch has none', () => {
    const mix = bloomOdds(atMilwaukee, coverParts('rye-vetch'), '2026-09-15', '2027-05-20');
    const of = (cover: string) => mix?.parts?.find((part) => part.cover === cover)?.bloom;
    expect(of('winter rye')).toEqual(figure('cereal_rye', '2026-09-15', '2027-05-20'));
    expect(of('hairy vetch')).toMatchObject({ none: 'no published bloom figure' });
    expect(bloomOdds(atMilwaukee, coverParts('cereal_rye'), '2026-09-15', undefined)?.parts).toBeUndefined();
  });

  it('are told beside the part with odds in the south too', () => {
    const south = inputOf(garden({ place: { latitude: -43 } }), frostDates('10-20', '04-20', -43));
    const parts = bloomOdds(south, coverParts('rye-vetch'), '2028-03-15', undefined)?.parts ?? [];
    expect(parts.map(({ cover, bloom }) => [cover, 'none' in bloom]).sort()).toEqual([
      ['hairy vetch', true],
      ['winter rye', false],
    ]);
  });
});

describe('buckwheat, which may be cut in flower', () => {
  const wheat = figure('buckwheat', '2027-06-02', '2027-07-08');

  it('tells its first flowers and, ten days after them, its seed: the risks are of seed', () => {
    expect(wheat.seed).toBe(addDays(wheat.median ?? '', 10));
    const [, ten] = wheat.byRisk;
    expect(ten?.close).toBe(wheat.close);
    expect(wheat.close > (wheat.median ?? '') && wheat.close < (wheat.seed ?? '')).toBe(true);
    expect(wheat.riskAtCut).toBeGreaterThan(0.05);
    expect(wheat.riskAtCut).toBeLessThan(0.15);
  });

  it('has the same flowering day in what is chosen, in its cut task, and in what a stage seen is held against', () => {
    const stands = [cover('buckwheat', '2027-06-02')];
    const cut = draft(draftsIn(garden({ startedOn: '2027-05-20', stands })), 'cover-cut/stand:s');
    expect(cut.odds?.median).toBe(wheat.median);
    expect(modelledBloom('buckwheat', '2027-06-02', atMilwaukee)).toBe(wheat.median);
  });

  it('has its seed ten days after its flowers in the south too, over the New Year', () => {
    const south = inputOf(garden({ place: { latitude: -43 } }), frostDates('10-20', '04-20', -43));
    const found = figure('buckwheat', '2027-12-15', undefined, south);
    expect(found.median?.slice(0, 4)).toBe('2028');
    expect(daysBetween(found.median ?? '', found.seed ?? '')).toBe(10);
  });

  it('alone has a day for its seed: of rye the cut comes before the flowers', () => {
    expect(figure('cereal_rye', '2026-09-15').seed).toBeUndefined();
  });
});
