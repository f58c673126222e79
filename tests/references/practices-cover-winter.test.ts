/**
 * What winters do to covers, against figures and field reports published elsewhere.
 */
import { describe, expect, it } from 'vitest';
import { snowWarmingC } from '../../src/climate/crown.ts';
import { coldLimits, lethalRange } from '../../src/handbook/cover-cold.ts';
import { coverCropById } from '../../src/handbook/cover-crops.ts';
import { celsius } from '../../src/measures/units.ts';
import { countedWinters, ended, wintersThat } from '../../src/practices/cover-cropping/winter-odds.ts';
import { recordClimate } from '../climate/real-data.ts';
import { bed, garden, inputOf } from '../practices/gardens.ts';

function shares(coverId: string, name: 'milwaukee' | 'bozeman', raised = false) {
  const cover = coverCropById.get(coverId);
  const input = inputOf(garden({ beds: [bed('a', { raised })] }), recordClimate(name, 2020));
  const ends = (cover && countedWinters(cover, input)?.ends) ?? [];
  const share = (end: 'lives' | 'unsure' | 'dies') => wintersThat(end, ends) / ends.length;
  return { lives: share('lives'), unsure: share('unsure'), dies: share('dies') };
}

function range(coverId: string) {
  const cover = coverCropById.get(coverId);
  const found = cover && lethalRange(cover);
  if (found === undefined) throw new Error(`no range for ${coverId}`);
  return found.tempC;
}

describe('single figures', () => {
  it('wheat at −38 °C in the air: 7 cm of snow at 3.4 °C a centimetre keep it above −16 °C, none kills it (phenology:P40)', () => {
    const limit = coldLimits.find(({ coverId, tempC }) => coverId === 'winter_wheat' && tempC.low === -16)?.tempC;
    expect(limit && [ended(-38 + 7 * 3.4, limit), ended(-38, limit)]).toEqual(['lives', 'dies']);
  });

  it('our snow never warms more than the least published: 24 °C at 7 cm (phenology:P40), 22 °C at 13 cm', () => {
    // A column quoting North Dakota and USDA work has 17 to 19 °C at 5 to 8 cm, and 22 to 31 °C from 13 cm on.
    expect(snowWarmingC(7)).toBeLessThanOrEqual(24);
    expect(snowWarmingC(6.5)).toBeLessThanOrEqual(17);
    expect(snowWarmingC(8)).toBeLessThanOrEqual(19.5);
    expect(snowWarmingC(13)).toBe(22);
  });

  it('vetch with a crown at −12 °C may survive (LT50 −16 to −8.4 by origin of the seed, phenology:P48)', () => {
    expect(ended(-12, range('hairy_vetch'))).toBe('unsure');
  });

  it('pea seedlings live at −3 °C and mostly die at −6 °C (LT50 −4.5, phenology:P47)', () => {
    const seedlings = coldLimits.find(
      ({ coverId, plants }) => coverId === 'field_pea' && plants === 'seedlings',
    )?.tempC;
    expect(seedlings && [ended(-3, seedlings), ended(-6, seedlings)]).toEqual(['lives', 'dies']);
  });

  it('radish is killed by a January night of 15 °F (limit 17 to 20 °F, Maryland, cover:S16)', () => {
    expect(ended(celsius(15), range('oilseed_radish'))).toBe('dies');
    expect(ended(celsius(22), range('oilseed_radish'))).toBe('lives');
  });

  it('summer annuals are all dead after 23 °F (Pennsylvania, cover:S20)', () => {
    for (const coverId of ['sorghum_sudangrass', 'cowpea', 'buckwheat'])
      expect(ended(celsius(23), range(coverId)), coverId).toBe('dies');
  });
});

describe('records against field reports', () => {
  it('oats, peas, radish and mustard die every winter in zones 5 and 6 (oats, cover:S2a; radish, cover:S16)', () => {
    for (const coverId of ['oats', 'field_pea', 'oilseed_radish', 'mustard'])
      for (const name of ['milwaukee', 'bozeman'] as const) expect(shares(coverId, name).dies, coverId).toBe(1);
  });

  it('rye comes through nine winters in ten and more, raised or not (−31 °F, Georgia, cover:S28)', () => {
    for (const raised of [true, false])
      for (const name of ['milwaukee', 'bozeman'] as const)
        expect(shares('cereal_rye', name, raised).lives).toBeGreaterThanOrEqual(0.9);
  });

  it('crimson clover usually dies in Wisconsin, sometimes not (UW, cover:S24): safe in one winter in ten at most', () => {
    const { lives, dies } = shares('crimson_clover', 'milwaukee');
    expect(lives).toBeLessThanOrEqual(0.1);
    expect(dies).toBeLessThan(1);
  });

  it('vetch is neither safe nor lost: 13 to 73 % of plants lived over Minnesota (phenology:P48)', () => {
    for (const name of ['milwaukee', 'bozeman'] as const) {
      const { lives, unsure, dies } = shares('hairy_vetch', name, true);
      expect(dies).toBeLessThan(0.87);
      expect(lives).toBeLessThan(0.73);
      expect(unsure).toBeGreaterThan(0);
    }
  });

  it('snow is what makes Bozeman kinder to vetch than Milwaukee, for all its colder air (cover:S3: zone 3 under snow)', () => {
    expect(shares('hairy_vetch', 'bozeman').dies).toBeLessThan(shares('hairy_vetch', 'milwaukee').dies);
  });

  it('Austrian pea, with no snow to count on, usually dies in zone 6 (hardy to zone 7, cover:S2d)', () => {
    expect(shares('austrian_winter_pea', 'milwaukee').dies).toBeGreaterThan(0.5);
  });
});

describe('a figure down to which a kind was seen alive', () => {
  it('is the warm end: oats and mustard at −8.2 °C live, at −10 °C nobody can say, at −13 °C are dead (cover:S20)', () => {
    // Penn State: mostly alive down to 17 °F; −12 °C is remembered for oats, and Maryland’s for radish (phenology:P58).
    for (const coverId of ['oats', 'mustard'])
      expect(
        [-8.2, -10, -13].map((tempC) => ended(tempC, range(coverId))),
        coverId,
      ).toEqual(['lives', 'unsure', 'dies']);
    expect(celsius(17)).toBeCloseTo(range('oats').high, 1);
  });
});
