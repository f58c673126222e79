import { describe, expect, it } from 'vitest';
import { feedstockById, feedstocks } from '../../src/handbook/feedstocks.ts';

/** lb/yd³ in kg/m³. */
const LB_PER_CUBIC_YARD = 0.45359237 / 0.764554857984;

describe('the feedstocks', () => {
  it('are forty-three', () => {
    expect(feedstocks).toHaveLength(43);
  });

  it('are found by id, and a name that is none is refused with one that is', () => {
    expect(feedstockById('straw_oat').name).toBe('Oat straw');
    expect(() => feedstockById('straw')).toThrow('No feedstock is called "straw" in the handbook.');
  });

  it('agree on carbon: nitrogen times the ratio', () => {
    const off = feedstocks.filter(({ carbonToNitrogen, nitrogenPctDry, carbonPctDry = 0 }) => {
      if (!carbonToNitrogen || !nitrogenPctDry) return false;
      return Math.abs(carbonToNitrogen.usual * nitrogenPctDry.usual - carbonPctDry) > 0.01 * carbonPctDry;
    });
    expect(off).toEqual([]);
  });

  it('hold no more carbon than plants do', () => {
    for (const { id, carbonPctDry } of feedstocks) {
      if (carbonPctDry !== undefined) expect(carbonPctDry, id).toBeLessThanOrEqual(53);
    }
  });

  it('keep the usual figure inside the published range', () => {
    for (const { id, carbonToNitrogen, nitrogenPctDry, moisturePctWet, densityKgPerM3 } of feedstocks) {
      for (const figure of [carbonToNitrogen, nitrogenPctDry, moisturePctWet, densityKgPerM3]) {
        if (!figure) continue;
        expect(figure.usual, id).toBeGreaterThanOrEqual(figure.low ?? figure.usual);
        expect(figure.usual, id).toBeLessThanOrEqual(figure.high ?? figure.usual);
      }
    }
  });

  it('leave only ash, eggshells, tea and mixed trimmings without a ratio', () => {
    const bare = feedstocks.filter((row) => row.carbonToNitrogen === undefined).map((row) => row.id);
    expect(bare.toSorted()).toEqual(['eggshells', 'tea_leaves_bags', 'wood_ash', 'yard_trimmings_mixed']);
  });

  it('know how wet and heavy everything with a ratio is', () => {
    const unknown = feedstocks.filter((row) => row.carbonToNitrogen && !(row.moisturePctWet && row.densityKgPerM3));
    expect(unknown).toEqual([]);
  });
});

describe('published figures', () => {
  it.each([
    // USDA NRCS 2011, Table 1.
    ['cover_rye_vegetative', 26],
    ['cover_rye_anthesis', 37],
    ['rye_straw', 82],
    ['cover_hairy_vetch', 11],
  ])('%s has %d of carbon to one of nitrogen', (id, ratio) => {
    expect(feedstockById(id).carbonToNitrogen?.usual).toBe(ratio);
  });

  it.each([
    // On-Farm Composting Handbook and its metric copy.
    ['cardboard_corrugated', 259],
    ['chicken_manure_fresh', 1479],
    ['twigs_shrub_trimmings', 429],
    ['tree_trimmings_leafy_chipped', 1296],
  ])('%s weighs %d lb a cubic yard', (id, lb) => {
    expect(Math.abs((feedstockById(id).densityKgPerM3?.usual ?? 0) - lb * LB_PER_CUBIC_YARD)).toBeLessThan(1);
  });
});

describe('corrections and house defaults', () => {
  it.each([
    ['straw_general', 135],
    ['straw_oat', 135],
    ['finished_compost', 650],
    ['coffee_grounds', 450],
    ['pine_needles', 119],
    ['hay_nonlegume', 135],
    ['rabbit_manure', 400],
  ])('%s is taken at %d kg/m³', (id, kg) => {
    expect(feedstockById(id).densityKgPerM3?.usual).toBe(kg);
  });

  it('fixes carbon where the published pair is impossible', () => {
    // 0.24 % nitrogen at 442 to one would be 106 % carbon.
    expect(feedstockById('sawdust')).toMatchObject({
      carbonPctDry: 50,
      marks: { carbonPctDry: 'house default' },
    });
    expect(feedstockById('grass_clippings_fresh_loose').carbonPctDry).toBe(45);
  });

  it('says of every manure that raw it keeps off crops for 120 and 90 days', () => {
    const manures = feedstocks.filter((row) => row.manure);
    expect(manures.map((row) => row.id).toSorted()).toEqual([
      'chicken_manure_fresh',
      'chicken_manure_litter',
      'cow_manure_solid',
      'horse_manure_bedded',
      'rabbit_manure',
    ]);
    for (const { id, cautions } of manures) expect(cautions.join(' '), id).toMatch(/120 days.*90 days/);
  });

  it('warns of weedkiller in hay, straw, horse and cow manure', () => {
    for (const id of ['hay_nonlegume', 'straw_wheat', 'horse_manure_bedded', 'cow_manure_solid']) {
      expect(feedstockById(id).cautions.join(' '), id).toMatch(/weedkiller/);
    }
  });
});
