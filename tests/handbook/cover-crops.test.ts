import { describe, expect, it } from 'vitest';
import { coverCropById, coverCrops } from '../../src/handbook/cover-crops.ts';
import type { CoverCrop } from '../../src/handbook/shapes/cover.ts';
import { addDays } from '../../src/measures/days.ts';
import { fahrenheit } from '../../src/measures/units.ts';

/** lb/ac and lb per 1000 sq ft in g/m², exact by definition of pound, acre and foot. */
const LB_PER_ACRE = 453.59237 / 4046.8564224;
const LB_PER_1000_SQ_FT = 453.59237 / 92.90304;

function cover(id: string): CoverCrop {
  const found = coverCropById.get(id);
  if (found === undefined) throw new Error(`no cover ${id}`);
  return found;
}

/** The autumn window around a first freeze, as days. */
function autumn(id: string, firstFreeze: string): { from: string; preferred: string; to: string } {
  const { autumnSow } = cover(id);
  if (autumnSow === undefined) throw new Error(`${id} is not sown in autumn`);
  const { earliestWeeks, preferredFromWeeks = earliestWeeks, latestWeeks } = autumnSow;
  const before = (weeks: number) => addDays(firstFreeze, -Math.round(weeks * 7));
  return {
    from: before(earliestWeeks),
    preferred: before(preferredFromWeeks),
    to: before(latestWeeks),
  };
}

describe('the cover crops', () => {
  it('are twenty-one', () => {
    expect(coverCrops).toHaveLength(21);
  });

  it('take between the least and the most of their rate, the middle unless a source says otherwise', () => {
    const offMiddle = coverCrops.filter(({ broadcastGPerM2: { low, high }, usualGPerM2 }) => {
      return Math.abs((low + high) / 2 - usualGPerM2) > 0.051;
    });
    // House choice for small beds: 1.0 lb per 1000 sq ft, the low end of Maine's garden rate.
    expect(offMiddle.map((row) => row.id)).toEqual(['hairy_vetch']);
    expect(cover('hairy_vetch').usualGPerM2).toBe(4.9);
    expect(cover('hairy_vetch').broadcastGPerM2).toEqual({
      low: 2.8,
      high: 7.3,
    });
  });

  it('are all sown somewhere in the year', () => {
    const never = coverCrops.filter((row) => !row.autumnSow && !row.springSow && row.warmDaysNeeded === undefined);
    expect(never).toEqual([]);
  });

  it('open their autumn window before they close it', () => {
    for (const { id, autumnSow } of coverCrops) {
      if (!autumnSow) continue;
      const { earliestWeeks, preferredFromWeeks = earliestWeeks, latestWeeks } = autumnSow;
      expect(earliestWeeks, id).toBeGreaterThanOrEqual(preferredFromWeeks);
      expect(preferredFromWeeks, id).toBeGreaterThan(latestWeeks);
    }
  });

  it('open their spring window before they close it', () => {
    for (const { id, springSow } of coverCrops) {
      if (springSow) expect(springSow.fromWeeks, id).toBeLessThan(springSow.toWeeks);
    }
  });

  it('give kinds that live through winter a zone, and kinds that die in it a temperature', () => {
    for (const { id, autumnSow, hardinessZoneMin, winterKillC } of coverCrops) {
      if (autumnSow?.fate === 'overwinters') expect(hardinessZoneMin, id).toBeDefined();
      if (autumnSow?.fate === 'winter-killed') {
        expect(winterKillC, id).toBeDefined();
        expect(hardinessZoneMin, id).toBeUndefined();
      }
    }
  });

  it('give every legume its inoculant and nothing else one', () => {
    expect(coverCrops.filter((row) => (row.form === 'legume') !== (row.inoculant !== undefined))).toEqual([]);
  });

  it('wait no longer for plants than for small seed', () => {
    expect(coverCrops.filter(({ waitDays }) => waitDays.transplant > waitDays.smallSeed)).toEqual([]);
  });

  it('count radish and mustard as cabbages and cereals as grasses in the rotation', () => {
    expect(cover('oilseed_radish').rotationGroup).toBe('cabbage');
    expect(cover('mustard').rotationGroup).toBe('cabbage');
    expect(cover('cereal_rye').rotationGroup).toBe('grass-corn');
  });
});

describe('seed rates', () => {
  it.each([
    // Cornell cover crop guide: rye on 15 September, oats, buckwheat, broadcast lb/ac.
    ['cereal_rye', 85, 9.5],
    ['cereal_rye', 140, 15.7],
    ['oats', 110, 12.3],
    ['oats', 140, 15.7],
    ['buckwheat', 70, 7.8],
  ])('%s at %d lb/ac is %d g/m²', (id, lbPerAcre, gPerM2) => {
    expect(Math.round(lbPerAcre * LB_PER_ACRE * 10) / 10).toBe(gPerM2);
    expect([cover(id).broadcastGPerM2.low, cover(id).broadcastGPerM2.high]).toContain(gPerM2);
  });

  it.each([
    // University of Maine garden rates, lb per 1000 sq ft.
    ['cereal_rye', 2, 9.8],
    ['oats', 2.5, 12.2],
    ['hairy_vetch', 1, 4.9],
    ['red_clover', 0.25, 1.2],
    ['crimson_clover', 0.5, 2.4],
    ['berseem_clover', 0.33, 1.6],
    ['sorghum_sudangrass', 1, 4.9],
  ])('%s at %d lb per 1000 sq ft is %d g/m², which its rate holds', (id, lb, gPerM2) => {
    expect(Math.round(lb * LB_PER_1000_SQ_FT * 10) / 10).toBe(gPerM2);
    // Both printed with one digit: a tenth either way is rounding.
    expect(gPerM2).toBeGreaterThanOrEqual(cover(id).broadcastGPerM2.low - 0.11);
    expect(gPerM2).toBeLessThanOrEqual(cover(id).broadcastGPerM2.high + 0.11);
  });
});

describe('autumn windows', () => {
  it('sows oats 30 to 40 days before the first freeze by preference', () => {
    // University of Maine: freeze on 1 October, sow 22 August to 1 September.
    expect(autumn('oats', '2025-10-01')).toMatchObject({
      preferred: '2025-08-22',
      to: '2025-09-01',
    });
  });

  it('sows hairy vetch no later than 30 days before a killing frost', () => {
    // Managing Cover Crops Profitably, 3rd ed., as quoted: frost 15 October, 31 August to 15 September.
    expect(autumn('hairy_vetch', '2025-10-15').to).toBe('2025-09-15');
  });

  it('sows crimson clover from about 60 days before a killing frost', () => {
    // USDA, Growing Crimson Clover: frost 15 October, about 16 August.
    expect(autumn('crimson_clover', '2025-10-15').from).toBe('2025-08-16');
  });

  it.each([
    // Corrected when the reference was audited against NOAA's medians of Geneva NY and Beltsville MD.
    ['oilseed_radish', 10, 7],
    ['mustard', 11, 7],
    ['winter_wheat', 5, 2],
    ['triticale', 6, 2],
    ['hairy_vetch', 8, 4.3],
  ])('%s is sown %d to %d weeks before the first freeze', (id, earliestWeeks, latestWeeks) => {
    expect(cover(id).autumnSow).toMatchObject({ earliestWeeks, latestWeeks });
  });

  it('prefers rye in the last five weeks and lets it go in up to the freeze', () => {
    expect(cover('cereal_rye').autumnSow).toMatchObject({
      preferredFromWeeks: 5,
      latestWeeks: 0,
    });
  });

  it('lets wheat wait for the Hessian fly', () => {
    // Ohio State University: after 22 September in northern Ohio, 2 to 4 weeks before the median first freeze there.
    const { latestWeeks = 0, earliestWeeks = 0 } = cover('winter_wheat').autumnSow ?? {};
    expect(latestWeeks).toBeLessThanOrEqual(2);
    expect(earliestWeeks).toBeGreaterThanOrEqual(4);
  });
});

describe('spring windows', () => {
  it('has none for covers that only head after a winter, nor for radish, which bolts', () => {
    for (const id of ['cereal_rye', 'winter_wheat', 'triticale', 'oilseed_radish']) {
      expect(cover(id).springSow, id).toBeUndefined();
    }
  });

  it('sows oats in the month before the last freeze', () => {
    // Cornell: April in central New York, where the median last freeze at Geneva is 28 April.
    expect(cover('oats').springSow).toEqual({ fromWeeks: -4, toWeeks: 0 });
  });

  it('frost-seeds red clover on frozen ground in February and March', () => {
    // Cornell, against 28 April at Geneva: 17 February to 31 March.
    const { fromWeeks = 0, toWeeks = 0, onFrozenSoil } = cover('red_clover').springSow ?? {};
    expect(addDays('2025-04-28', 7 * fromWeeks)).toBe('2025-02-17');
    expect(addDays('2025-04-28', 7 * toWeeks)).toBe('2025-03-31');
    expect(onFrozenSoil).toBe(true);
  });

  it('keeps frost-tender covers out of spring and asks for warm days instead', () => {
    const tender = coverCrops.filter((row) => row.frostTender);
    expect(tender.map(({ id, warmDaysNeeded }) => [id, warmDaysNeeded])).toEqual([
      ['sorghum_sudangrass', 60],
      ['cowpea', 60],
      ['buckwheat', 40],
    ]);
  });

  it('would rather have buckwheat sown by the date Cornell gives', () => {
    // 15 August at Geneva NY, median first freeze 19 October.
    expect(addDays('2025-10-19', -(cover('buckwheat').warmDaysPreferred ?? 0))).toBe('2025-08-15');
  });
});

describe('soil, cold and residue', () => {
  it.each([
    // Midwest Cover Crops Council, °F.
    ['cereal_rye', 34],
    ['crimson_clover', 42],
    ['berseem_clover', 42],
    ['red_clover', 42],
  ])('%s sprouts from %d °F', (id, tempF) => {
    expect(Math.round(fahrenheit(cover(id).soilMinC ?? Number.NaN))).toBe(tempF);
  });

  it('lets a night of 15 °F kill radish', () => {
    // University of Maryland: it dies at 17–20 °F.
    expect((15 - 32) / 1.8).toBeLessThan(cover('oilseed_radish').winterKillC ?? Number.NaN);
  });

  it('keeps rye alive at -31 °F and a bare vetch stand alive above 5 °F', () => {
    // University of Georgia; Managing Cover Crops Profitably, 3rd ed., as quoted.
    expect(cover('cereal_rye').winterKillC).toBe(-35);
    expect(cover('hairy_vetch').winterKillC).toBe(-15);
  });

  it('has the published carbon to nitrogen ratios', () => {
    // USDA NRCS 2011, Table 1: rye before heading 26, in flower 37, vetch 11, pea straw 29, oat straw 70.
    expect(cover('cereal_rye')).toMatchObject({
      carbonToNitrogenGreen: 26,
      carbonToNitrogenMature: 37,
    });
    expect(cover('hairy_vetch').carbonToNitrogenGreen).toBe(11);
    expect(cover('field_pea').carbonToNitrogenMature).toBe(29);
    expect(cover('oats').carbonToNitrogenMature).toBe(70);
    // USDA ARS Cover Crop Chart: 14–40.
    expect(cover('annual_ryegrass')).toMatchObject({
      carbonToNitrogenGreen: 14,
      carbonToNitrogenMature: 40,
    });
  });

  it('grows more carbon to nitrogen as it ages', () => {
    for (const { id, carbonToNitrogenGreen = 0, carbonToNitrogenMature = 0 } of coverCrops) {
      expect(carbonToNitrogenMature, id).toBeGreaterThan(carbonToNitrogenGreen);
    }
  });

  it('credits field pea with up to 150 lb of nitrogen an acre and grasses with none', () => {
    expect(Math.round(150 * 1.1209)).toBe(cover('field_pea').nitrogenKgPerHa?.high);
    expect(cover('cereal_rye').nitrogenKgPerHa).toEqual({ low: 0, high: 0 });
  });

  it('waits after rye, radish cut green and crimson worked in', () => {
    // Cornell 2–3 weeks after rye, Delaware at least 3; USDA 1938 2–3 weeks after crimson.
    for (const id of ['cereal_rye', 'oilseed_radish', 'crimson_clover']) {
      expect(cover(id).waitDays, id).toEqual({ smallSeed: 21, transplant: 14 });
    }
  });
});

describe('warnings', () => {
  it.each([
    ['hairy_vetch', /poisonous to livestock/],
    ['mustard', /[Nn]ever let it seed/],
    ['sorghum_sudangrass', /prussic acid/],
    ['fava_bell_bean', /G6PD/],
    ['cereal_rye', /seedlings/],
    ['phacelia', /skin/],
    ['annual_ryegrass', /may or may not/],
    ['crimson_clover', /may or may not/],
  ])('%s carries its warning', (id, words) => {
    expect(
      cover(id)
        .cautions.map(({ text }) => text)
        .join(' '),
    ).toMatch(words);
  });
});
