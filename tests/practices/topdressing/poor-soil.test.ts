import { describe, expect, it } from 'vitest';
import { soilCase } from '../../../src/digest/soil-case.ts';
import type { Bed, Garden, SoilTextureId } from '../../../src/garden/garden.ts';
import { readableIn } from '../../../src/measures/quantity.ts';
import { bedLayer } from '../../../src/practices/compost-layer.ts';
import { textureRow } from '../../../src/practices/soil-class.ts';
import { buildUpYears, heldWaterMm, poorSoilOf } from '../../../src/practices/topdressing/poor-soil.ts';
import { bed, draft, draftsIn, frostDates, garden, rulesOf } from '../gardens.ts';

const gardenOf = (own: Partial<Bed>, parts: Parameters<typeof garden>[0] = {}) =>
  garden({ startedOn: '2027-03-01', beds: [bed('a', own)], ...parts });
const layerOf = (of: Garden, climate?: ReturnType<typeof frostDates>) =>
  draft(draftsIn(of, climate), 'topdress/bed:a/2028');
const told = (of: Garden) => {
  const [first] = of.beds;
  return first === undefined ? '' : readableIn('metric', soilCase(of, first).join(' '));
};

describe('which soil is poor', () => {
  it.each<[SoilTextureId, string | undefined]>([
    ['sand', 'sandy'],
    ['loamy_sand', 'sandy'],
    ['sandy_loam', undefined],
    ['silt_loam', undefined],
    ['silt_clay_loam', 'clay'],
    ['silty_clay', 'clay'],
    ['clay', 'clay'],
  ])('%s', (soilTexture, kind) => {
    expect(poorSoilOf(garden(), bed('a', { soilTexture }))).toBe(kind);
  });

  it('is the garden’s where the bed names none, but not of a bed that was filled', () => {
    const clay = garden({ place: { soilTexture: 'clay' } });
    expect(poorSoilOf(clay, bed('a'))).toBe('clay');
    expect(poorSoilOf(clay, bed('a', { plannedFor: '2026-04-15', filledOn: '2026-04-10' }))).toBeUndefined();
  });
});

describe('a bed of sand', () => {
  it('holds 15 mm of rain in a spade’s depth, and loam 26', () => {
    // (0.07 + 0.17)/2 − (0.02 + 0.07)/2 = 0.075; (0.20 + 0.30)/2 − (0.07 + 0.17)/2 = 0.13; × 200 mm.
    expect([heldWaterMm(textureRow('sand')), heldWaterMm(textureRow('loam'))]).toEqual([15, 26]);
  });

  it('has the case spelled out: why, how much, how long, when to stop', () => {
    const words = told(gardenOf({ soilTexture: 'sand' }, { topdressing: { depthMm: 25, season: 'autumn' } }));
    expect(words).toContain('holds about 15 mm of rain for roots, of loam 26 mm');
    expect(words).toContain('Up to 25 mm a year');
    expect(words).toContain('from 2 % (nobody has tested it) to 5 % organic matter takes about 3 to 6 years');
    expect(words).toContain('at 25 ppm of phosphorus it ends');
    expect(words).not.toContain('like brick');
  });
});

describe('a bed of clay', () => {
  it('is never given sand, nor dug: its layer says so', () => {
    const layer = layerOf(gardenOf({ soilTexture: 'clay' }));
    expect(layer.steps.join(' ')).toContain('Mix no sand in');
    expect(layer.steps.join(' ')).toContain('turn nothing over');
    expect(layer.steps.join(' ')).toContain('Dig nothing in');
    expect(rulesOf(layer)).toEqual(
      expect.arrayContaining(['topdress.clay', 'topdress.build-up', 'topdress.build-up-rate', 'topdress.no-sand']),
    );
  });

  it('does so in the south as well', () => {
    const south = frostDates('10-05', '04-25', -43);
    const layers = draftsIn(gardenOf({ soilTexture: 'clay' }), south).filter(({ kind }) => kind === 'topdress');
    expect(layers.length).toBeGreaterThan(0);
    for (const layer of layers) expect(rulesOf(layer)).toContain('topdress.no-sand');
  });

  it('stops at very high phosphorus: no layer, and the page says why', () => {
    const rich = gardenOf({ soilTexture: 'clay' }, { soilTests: [{ on: '2026-10-10', phosphorusPpm: 27 }] });
    expect(draftsIn(rich).some(({ kind }) => kind === 'topdress')).toBe(false);
    expect(told(rich)).toContain('found 27 ppm of phosphorus, and 25 is very high: no more is built up');
    expect(told(rich)).not.toContain('Up to 25 mm');
  });

  it('is a closed case from 5 % organic matter on', () => {
    const enough = gardenOf({ soilTexture: 'clay' }, { soilTests: [{ on: '2026-10-10', organicMatterPercent: 5 }] });
    expect(told(enough)).toBe('');
    expect(rulesOf(layerOf(enough))).not.toContain('topdress.clay');
  });
});

describe('the years it takes', () => {
  it('are those from the test to 5 %, at half a percent to one a year', () => {
    expect(buildUpYears(2, 25)).toEqual({ low: 3, high: 6 });
    expect(buildUpYears(3.5, 25)).toEqual({ low: 2, high: 3 });
    // Half the depth, twice as long, and a little more for 12.5 is not 13: 3 × 25/13 = 5.8.
    expect(buildUpYears(2, 13)).toEqual({ low: 6, high: 12 });
  });
});

describe('the depth stays the household’s', () => {
  const habit = { topdressing: { depthMm: 13, season: 'autumn' } } as const;

  it('a habit of 13 mm is kept on clay, and what it comes to is told', () => {
    const of = gardenOf({ soilTexture: 'clay' }, habit);
    expect(bedLayer(of, 'a').depthMm).toBe(13);
    expect(told(of)).toContain('With the 13 mm it is given, about 6 to 12.');
    expect(told(of)).toContain('the depth of the bed, under The garden');
  });

  it('and is changed for one bed by its own key', () => {
    const of = gardenOf({ soilTexture: 'clay', topdressingMm: 25 }, habit);
    expect(bedLayer(of, 'a')).toMatchObject({ depthMm: 25, season: 'autumn', by: 'bed' });
    expect(bedLayer({ ...of, beds: [...of.beds, bed('b')] }, 'b')).toMatchObject({ depthMm: 13, by: 'own' });
    expect(rulesOf(layerOf(of))).toContain('topdress.bed-depth');
    expect(layerOf(of).steps[0]).toContain('⟦75 L⟧');
  });
});
