import { describe, expect, it } from 'vitest';
import { heatOdds } from '../../../src/climate/heat.ts';
import { bloomModels } from '../../../src/handbook/cover-blooms.ts';
import { coverCropById } from '../../../src/handbook/cover-crops.ts';
import { addDays, daysBetween } from '../../../src/measures/days.ts';
import { endedByOneCut } from '../../../src/practices/after-cut.ts';
import { bloomClose } from '../../../src/practices/cover-cropping/bloom.ts';
import { deviationsBefore, givesOdds } from '../../../src/practices/cover-cropping/bloom-figure.ts';
import { coverParts } from '../../../src/practices/covers.ts';
import { reasonSentence } from '../../../src/schedule/explain.ts';
import { inventedClimate } from '../../climate/invented.ts';
import { frostDates, garden, inputOf, milwaukee } from '../gardens.ts';

function close(coverId: string, sown: string, hardinessZone?: string, climate = milwaukee) {
  const place = hardinessZone === undefined ? {} : { hardinessZone };
  return bloomClose(coverParts(coverId), sown, inputOf(garden({ place }), climate));
}

describe('a bloom that goes by heat', () => {
  it('closes 1.28 standard deviations before the median, the years’ spread and the model’s error taken together', () => {
    // Spring mustard: 350 units over 5 °C from sowing (cover:S4h), error 7 days.
    const count = { from: '2027-04-15', sum: 350, baseC: 5, method: 'mean-over-base' } as const;
    const { medianDay = '', spreadDays } = heatOdds(milwaukee, count);
    const found = close('mustard', '2027-04-15');
    expect(found?.close).toBe(addDays(medianDay, -1.28 * Math.sqrt(spreadDays ** 2 + 7 ** 2)));
    expect(found?.inFlower).toBe(false);
    expect(found?.reasons[0]).toMatchObject({ rule: 'cover-cut.bloom-heat', source: 'cover:S4h', limit: found?.close });
  });

  it('closes by the garden’s own risk, from one year in a hundred to the middle year, and says so', () => {
    const at = (bloomRiskPercent: number) =>
      bloomClose(coverParts('cereal_rye'), '2027-09-10', inputOf(garden({ place: { bloomRiskPercent } }), milwaukee));
    const closes = [1, 5, 10, 20, 50].map((percent) => at(percent)?.close ?? '');
    expect(closes).toEqual([...new Set(closes)].sort());
    expect(closes[4]).toBe(at(50)?.reasons[0]?.saw.median);
    const said = (percent: number) => at(percent)?.reasons.map(reasonSentence)[0];
    expect(said(10)).toContain('the last day with nine chances in ten that nothing has flowered.');
    expect(said(5)).toContain('the last day with 95 chances in 100 that nothing has flowered.');
  });

  it('takes so many deviations as a table of the normal curve has: 1.64, 1.28 and 0.84 at 5, 10 and 20 %', () => {
    expect([5, 10, 20].map((percent) => deviationsBefore(percent))).toEqual([1.64, 1.28, 0.84]);
  });

  it('counts an overwintered stand from the middle of winter, whenever it was sown', () => {
    const [early, late] = [close('cereal_rye', '2027-09-01'), close('cereal_rye', '2027-10-20')];
    expect(early?.close).toBe(late?.close);
    expect(early?.close.slice(0, 7)).toBe('2028-05');
  });

  it('names the heads that show before the flower, for rye', () => {
    const rules = close('cereal_rye', '2027-09-15')?.reasons.map(({ rule }) => rule);
    expect(rules).toEqual(['cover-cut.bloom-heat', 'cover-cut.heads']);
  });

  it('gives a cut by a remembered sum no odds and speaks of no chances, though a source stands beside it: vetch', () => {
    const { odds, reasons = [] } = close('hairy_vetch', '2027-09-10') ?? {};
    expect(odds).toBeUndefined();
    expect(reasons[0]).toMatchObject({ rule: 'cover-cut.bloom-recalled', source: 'from memory' });
    const [said = ''] = reasons.map(reasonSentence);
    expect(said).toContain('No figure is published for the first flowers of the hairy vetch, so no odds are given.');
    expect(said).not.toContain('chances');
  });

  it('has odds exactly where its sum is published or made of published ones, in either hemisphere', () => {
    const sownIn = { overwintered: '09-10', 'spring-sown': '04-15', 'summer-sown': '07-01' } as const;
    const byHeat = bloomModels.filter(({ heat }) => heat !== undefined);
    for (const model of byHeat) {
      const found = close(model.coverId, `2027-${sownIn[model.situation]}`);
      expect(found?.odds !== undefined, model.coverId).toBe(givesOdds(model));
    }
    expect(byHeat.filter((model) => !givesOdds(model)).map(({ coverId }) => coverId)).toContain('sorghum_sudangrass');
    const south = frostDates('10-20', '04-20', -43);
    const [rye, vetch] = ['cereal_rye', 'hairy_vetch'].map((id) => close(id, '2028-03-15', undefined, south));
    expect(rye?.odds?.median?.slice(0, 4)).toBe('2028');
    expect([vetch?.close.slice(0, 4), vetch?.odds]).toEqual(['2028', undefined]);
  });
});

describe('a bloom that goes by heat from coming up', () => {
  const pea = { sum: 440, baseC: 4.5, method: 'mean-over-base' } as const;
  const up = { sum: 56, baseC: -1, upperC: 27.5, method: 'mean-over-base' } as const;
  const middle = (target: Parameters<typeof heatOdds>[1], climate = milwaukee) => heatOdds(climate, target);

  it('counts field pea from the day after it is up, the years and the model’s 9 days taken together', () => {
    const { medianDay = '', spreadDays } = middle({ ...pea, from: '2027-04-10', before: up });
    const found = close('field_pea', '2027-04-10');
    expect(found?.flowers).toBe(medianDay);
    expect(found?.close).toBe(addDays(medianDay, -1.28 * Math.hypot(spreadDays, 9)));
    expect(found?.odds?.median).toBe(medianDay);
    expect(spreadDays).toBeGreaterThan(1);
  });

  it('counts the two sums one after the other: later than the second alone, sooner than both of the colder base', () => {
    const from = '2027-04-10';
    const both = middle({ ...pea, from, before: up }).medianDay ?? '';
    expect(both > (middle({ ...pea, from }).medianDay ?? '')).toBe(true);
    expect(both < (middle({ ...pea, from, sum: 440 + 56 }).medianDay ?? '')).toBe(true);
  });

  it('says from when it counts, and that figures are derived', () => {
    const [said = ''] = close('field_pea', '2027-04-10')?.reasons.map(reasonSentence) ?? [];
    expect(said).toContain('from its coming up (⟦56 degreeDaysC⟧ above ⟦-1 tempC⟧ after ⟦2027-04-10⟧) on');
    expect(said).toContain('figure derived');
  });

  it('serves monthly means too, north and south, half a year apart', () => {
    const north = close('cowpea', '2027-06-15', undefined, frostDates('05-01', '10-15'))?.flowers ?? '';
    const south = close('cowpea', '2027-12-15', undefined, frostDates('11-01', '04-15', -43))?.flowers ?? '';
    expect(daysBetween('2027-06-15', north)).toBeGreaterThan(36);
    expect(Math.abs(daysBetween('2027-06-15', north) - daysBetween('2027-12-15', south))).toBeLessThanOrEqual(3);
  });
});

describe('buckwheat, which may be cut until ten days after its first flowers (cover:S4a)', () => {
  it('closes ten days later than its first flowers would, the risk kept', () => {
    // Sown 10 July: 410 units over 7 °C, error 4 days.
    const count = { from: '2027-07-10', sum: 410, baseC: 7, method: 'mean-over-base' } as const;
    const { medianDay = '', spreadDays } = heatOdds(milwaukee, count);
    const found = close('buckwheat', '2027-07-10');
    expect(found?.close).toBe(addDays(medianDay, 10 - 1.28 * Math.hypot(spreadDays, 4)));
    expect(daysBetween('2027-07-10', found?.close ?? '')).toBeGreaterThanOrEqual(28);
    expect(found).toMatchObject({ inFlower: true, reasons: [{ rule: 'cover-cut.seed-heat', source: 'cover:S4a' }] });
  });

  it('is not asked for once the first freeze comes before its seed', () => {
    // The median first freeze is 23 October.
    expect(close('buckwheat', '2027-09-10')).toBeUndefined();
  });

  it('is the one cover that a single cut ends', () => {
    const once = [...coverCropById.values()].filter(endedByOneCut).map(({ id }) => id);
    expect(once).toEqual(['buckwheat']);
  });
});

describe('a bloom that goes by days', () => {
  it('is trusted at its lower end: common vetch 60 days after a spring sowing', () => {
    const found = close('common_vetch', '2027-04-10');
    expect(found?.close).toBe('2027-06-09');
    expect(found?.reasons[0]).toMatchObject({ rule: 'cover-cut.bloom-days', source: 'from memory' });
  });

  it('is 28 days for mustard sown in late summer (cover:S4e)', () => {
    expect(close('mustard', '2027-08-15')?.close).toBe('2027-09-12');
  });

  it('comes for oats only where they were sown more than eight weeks before the first freeze (cover:S4c)', () => {
    // Eight weeks before 23 October is 28 August.
    expect(close('oats', '2027-08-20')?.close).toBe('2027-10-15');
    expect(close('oats', '2027-08-28')).toBeUndefined();
    expect(close('oats', '2027-09-10')).toBeUndefined();
  });
});

describe('a bloom that goes by the length of the day', () => {
  it('is the zone’s calendar less the risk: crimson clover in zone 6 about 15 May (phenology:P34)', () => {
    const found = close('crimson_clover', '2027-08-20', '6b', frostDates('05-01', '10-15'));
    // 135 days from 1 January is 15 May (14 May in a leap year's count of days); 1.28 × 8 days before it.
    expect(found?.reasons[0]).toMatchObject({ rule: 'cover-cut.bloom-zone', saw: { median: '2028-05-14', zone: 6 } });
    expect(found?.close).toBe('2028-05-03');
  });

  it('is not given for a zone nobody has dates of, nor without a zone', () => {
    const climate = frostDates('05-01', '10-15');
    expect(close('crimson_clover', '2027-08-20', '9a', climate)).toBeUndefined();
    expect(close('crimson_clover', '2027-08-20', undefined, climate)).toBeUndefined();
  });
});

describe('no bloom', () => {
  it('is known of white clover, nor of rye sown in spring, which does not head', () => {
    expect(close('white_clover', '2027-08-20')).toBeUndefined();
    expect(close('cereal_rye', '2027-04-10')).toBeUndefined();
  });

  it('crashes a climate without freezes', () => {
    for (const id of coverCropById.keys()) {
      for (const sown of ['2027-02-28', '2028-02-29', '2027-09-01', '2027-12-31']) {
        expect(() => close(id, sown, undefined, inventedClimate())).not.toThrow();
      }
    }
  });
});

it('takes the earliest of a mix: rye before vetch', () => {
  const [mix, rye, vetch] = ['rye-vetch', 'cereal_rye', 'hairy_vetch'].map(
    (id) => close(id, '2027-09-15')?.close ?? '',
  );
  expect(mix).toBe(rye);
  expect((rye ?? '') < (vetch ?? '')).toBe(true);
});
