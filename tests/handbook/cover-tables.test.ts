import { describe, expect, it } from 'vitest';
import { bloomModels } from '../../src/handbook/cover-blooms.ts';
import { coldLimits } from '../../src/handbook/cover-cold.ts';
import { coverCropById } from '../../src/handbook/cover-crops.ts';
import { coverMixById, coverMixes, lateSowingRates } from '../../src/handbook/cover-mixes.ts';
import type { BloomModel, CoverSituation } from '../../src/handbook/shapes/cover.ts';
import { daysBetween } from '../../src/measures/days.ts';

/** lb/ac in g/m², one digit. */
function gPerM2(lbPerAcre: number): number {
  return Math.round(((lbPerAcre * 453.59237) / 4046.8564224) * 10) / 10;
}

function bloom(coverId: string, situation: CoverSituation): BloomModel {
  const found = bloomModels.find((model) => model.coverId === coverId && model.situation === situation);
  if (found === undefined) throw new Error(`no bloom model for ${coverId}, ${situation}`);
  return found;
}

function partsOf(mixId: string): (string | number)[][] {
  return (coverMixById.get(mixId)?.parts ?? []).map((part) => [part.coverId, part.gPerM2]);
}

describe('mixes', () => {
  it('take the pairs New York publishes', () => {
    // Cornell: rye 70 with vetch 20–25, oats 80 with vetch 40, spring rye 60 with red clover 15 lb/ac.
    expect(partsOf('rye-vetch')).toEqual([
      ['cereal_rye', gPerM2(70)],
      ['hairy_vetch', gPerM2(22.5)],
    ]);
    expect(partsOf('oats-vetch')).toEqual([
      ['oats', gPerM2(80)],
      ['hairy_vetch', gPerM2(40)],
    ]);
    expect(partsOf('rye-red-clover')).toEqual([
      ['cereal_rye', gPerM2(60)],
      ['red_clover', gPerM2(15)],
    ]);
  });

  it('cut each part by a third where no pair is published', () => {
    // University of Wisconsin: rye alone 60 lb/ac, 40 in a mix.
    for (const [id, rate] of partsOf('oats-field-pea')) {
      const alone = coverCropById.get(String(id))?.usualGPerM2 ?? Number.NaN;
      expect(rate).toBeCloseTo((alone * 2) / 3, 1);
    }
    expect(coverMixById.get('oats-field-pea')?.marks.parts).toBe('derived');
  });

  it('share out the garden rate of pea, oats and vetch', () => {
    // University of Maine: 5 lb per 1000 sq ft in all; Cornell: 60, 25 and 15 %.
    const total = (5 * 453.59237) / 92.90304;
    expect(partsOf('oats-field-pea-vetch')).toEqual([
      ['oats', Math.round(total * 2.5) / 10],
      ['field_pea', Math.round(total * 6) / 10],
      ['hairy_vetch', Math.round(total * 1.5) / 10],
    ]);
  });

  it('are of two parts at least', () => {
    expect(coverMixes.filter((mix) => mix.parts.length < 2)).toEqual([]);
  });

  it('have an autumn in which all their parts may be sown, where all are autumn kinds', () => {
    for (const { id, parts } of coverMixes) {
      const rules = parts.flatMap(({ coverId }) => coverCropById.get(coverId)?.autumnSow ?? []);
      const from = Math.min(...rules.map((rule) => rule.earliestWeeks));
      const to = Math.max(...rules.map((rule) => rule.latestWeeks));
      expect(from, id).toBeGreaterThanOrEqual(to);
    }
  });
});

describe('late rye', () => {
  const steps = lateSowingRates.find((row) => row.coverId === 'cereal_rye')?.steps ?? [];

  it('follows the dates and rates of New York', () => {
    // Cornell, broadcast lb/ac, against the median first freeze at Geneva NY, 19 October (NOAA 1981–2010).
    const published = [
      ['2025-09-15', 85],
      ['2025-09-22', 140],
      ['2025-10-01', 200],
      ['2025-10-15', 250],
    ] as const;
    expect(steps).toEqual(
      published.map(([day, lb]) => ({
        weeksBeforeFreeze: Math.round((daysBetween(day, '2025-10-19') / 7) * 10) / 10,
        gPerM2: gPerM2(lb),
      })),
    );
  });

  it('takes more seed the later it is', () => {
    for (const [index, step] of steps.entries()) {
      const next = steps[index + 1];
      if (next) expect(next.gPerM2).toBeGreaterThan(step.gPerM2);
    }
  });
});

describe('bloom models', () => {
  it('are one a cover and situation', () => {
    const keys = bloomModels.map((model) => `${model.coverId} ${model.situation}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  it('each go by heat, by days or by the calendar', () => {
    for (const model of bloomModels) {
      const ways = [model.heat, model.daysFromSowing, model.byZone].filter((way) => way !== undefined);
      expect(ways.length, `${model.coverId} ${model.situation}`).toBe(1);
      expect(model.modelErrorDays).toBeGreaterThan(0);
    }
  });

  it('have their usual sum between the low and the high', () => {
    for (const { coverId, heat } of bloomModels) {
      if (!heat) continue;
      expect(heat.sum.low, coverId).toBeLessThanOrEqual(heat.sum.usual);
      expect(heat.sum.usual, coverId).toBeLessThanOrEqual(heat.sum.high);
    }
  });

  it('name a source wherever the figure is published or worked out', () => {
    const sourced = bloomModels.filter(({ provenance }) => provenance === 'published' || provenance === 'derived');
    expect(sourced.length).toBeGreaterThan(8);
    expect(sourced.filter((model) => model.sources.length === 0)).toEqual([]);
  });

  it('count rye from midwinter to the flowering that Wisconsin and Vermont saw', () => {
    expect(bloom('cereal_rye', 'overwintered')).toMatchObject({
      closingEvent: 'anthesis',
      heat: {
        from: 'midwinter',
        baseC: 4.4,
        method: 'mean-over-base',
        sum: { low: 400, usual: 450, high: 520 },
      },
      headsShowHeatBefore: { low: 70, high: 110 },
    });
  });

  it('put triticale between the heads of rye and the heads of wheat', () => {
    // Ohio State University: about a week after rye, a week before wheat.
    const rye = bloom('cereal_rye', 'overwintered');
    const ryeHeads = (rye.heat?.sum.usual ?? 0) - (rye.headsShowHeatBefore?.low ?? 0);
    const triticale = bloom('triticale', 'overwintered').heat?.sum.usual ?? 0;
    expect(triticale).toBeGreaterThan(ryeHeads);
    expect(triticale).toBeLessThan(bloom('winter_wheat', 'overwintered').heat?.sum.usual ?? 0);
  });

  it('have barley flower at 1426 °F units and sorghum boot at 1206', () => {
    // North Dakota small-grain table; Kansas State University eUpdate 661.
    expect(bloom('barley', 'spring-sown').heat?.sum.usual).toBe(Math.round((1426 * 5) / 9));
    expect(bloom('barley', 'spring-sown').heat?.method).toBe('small-grain');
    expect(bloom('sorghum_sudangrass', 'summer-sown').heat?.sum.low).toBe(Math.round((1206 * 5) / 9));
  });

  it('have field pea flower at nodes 12 to 16 of 0.027 to 0.037 a degree-day', () => {
    // Saskatchewan Pulse Growers for the nodes, Wilson & Robson 1996 for the rate; the ends are rounded to ten and less.
    const { low = 0, usual = 0, high = 0 } = bloom('field_pea', 'spring-sown').heat?.sum ?? {};
    expect(Math.abs(14 / 0.032 - usual)).toBeLessThan(5);
    expect(Math.abs(12 / 0.037 - low)).toBeLessThan(5);
    expect(Math.abs(16 / 0.027 - high)).toBeLessThan(5);
  });

  it('go by days for late mustard', () => {
    // Cornell: sown in late summer, mustard flowers in 4–6 weeks.
    expect(bloom('mustard', 'summer-sown').daysFromSowing).toEqual({
      low: 28,
      high: 42,
    });
  });

  it('let only early oats head in autumn', () => {
    // Cornell: sown earlier than 8–10 weeks before the freeze oats may head.
    expect(bloom('oats', 'summer-sown')).toMatchObject({
      sownWeeksBeforeFreeze: 8,
      daysFromSowing: { low: 8 * 7, high: 10 * 7 },
    });
  });

  it('are silent on rye sown in spring, white clover and frost-seeded clover', () => {
    const spoken = bloomModels.map((model) => `${model.coverId} ${model.situation}`);
    expect(spoken).not.toContain('cereal_rye spring-sown');
    expect(spoken).not.toContain('red_clover spring-sown');
    expect(spoken.filter((key) => key.startsWith('white_clover'))).toEqual([]);
  });
});

describe('cold limits', () => {
  it('hold no crop-model setting that would kill rye every winter', () => {
    const rye = coldLimits.filter((limit) => limit.coverId === 'cereal_rye');
    expect(Math.max(...rye.map((limit) => limit.tempC.high))).toBeLessThanOrEqual(-25);
  });

  it('keep the range of vetch by the origin of its seed', () => {
    // Wiering et al. 2018.
    expect(coldLimits).toContainEqual(
      expect.objectContaining({
        coverId: 'hairy_vetch',
        measure: 'half killed',
        tempC: { low: -16, high: -8.4 },
      }),
    );
  });

  it('tell seedlings and plants not yet hardened apart', () => {
    const tender = coldLimits.filter((limit) => limit.plants !== undefined);
    expect(tender.map((limit) => limit.coverId)).toContain('winter_wheat');
    expect(Math.min(...tender.map((limit) => limit.tempC.low))).toBeGreaterThanOrEqual(-16);
  });

  it('name a source unless remembered', () => {
    expect(
      coldLimits.filter(({ provenance, sources }) => (provenance === 'from memory') !== (sources.length === 0)),
    ).toEqual([]);
  });
});
