import { describe, expect, it } from 'vitest';
import { radiationAboveAirMj, referenceEvaporationMm } from '../../src/climate/evaporation.ts';
import { frozenGroundIndex, isThawed } from '../../src/climate/frozen-ground.ts';
import { singleSineUnits } from '../../src/climate/single-sine.ts';
import { freshSnowWaterMm, lyingSnowCm, meltMm, rainAndSnowMm } from '../../src/climate/snow.ts';
import { surfaceAfter } from '../../src/climate/surface.ts';
import { depletionAfter, layerWaterOf } from '../../src/climate/top-layer.ts';
import { soilTextureById } from '../../src/handbook/soil-textures.ts';

const soil = (id: string, raised = false) => {
  const texture = soilTextureById.get(id);
  if (texture === undefined) throw new Error(id);
  return layerWaterOf({ texture, raised });
};

/** Days of a reference evaporation, without rain, until a soil that was full is fit to work. */
function daysToFit(id: string, raised: boolean, referenceMm: number): number {
  const layer = soil(id, raised);
  let depletion = -layer.aboveMm;
  let days = 0;
  for (; depletion < layer.fitMm; days += 1) depletion = depletionAfter(depletion, 0, referenceMm, layer);
  return days;
}

describe('single sine', () => {
  it('is the plain mean where the day stays between base and limit', () => {
    expect(singleSineUnits(10, 20, 4.4, 30)).toBeCloseTo(10.6);
  });

  it('is never below what the plain mean counts, nor above the raised one', () => {
    for (const [tmin, tmax] of [
      [-2, 8],
      [0, 12],
      [4, 5],
    ] as const) {
      const sine = singleSineUnits(tmin, tmax, 4.4);
      expect(sine).toBeGreaterThanOrEqual(Math.max(0, (tmin + tmax) / 2 - 4.4));
      expect(sine).toBeLessThanOrEqual((Math.max(tmin, 4.4) + Math.max(tmax, 4.4)) / 2 - 4.4);
    }
  });

  it('counts nothing of a day that is all below the base', () => {
    expect(singleSineUnits(-9, 4, 4.4)).toBe(0);
  });

  it('counts a day without range as its mean', () => {
    expect(singleSineUnits(7, 7, 4.4)).toBeCloseTo(2.6);
  });
});

describe('evaporation', () => {
  it('has no sun in the polar night and none of its warmth in deep cold', () => {
    expect(radiationAboveAirMj(80, 355)).toBe(0);
    expect(referenceEvaporationMm({ tminC: -40, tmaxC: -25 }, 5)).toBe(0);
  });

  it('is the same in the south half a year on, but for the sun being nearer in January', () => {
    const [north, south] = [radiationAboveAirMj(43, 172), radiationAboveAirMj(-43, 355)];
    expect(south / north).toBeGreaterThan(1);
    expect(south / north).toBeLessThan(1.08);
  });
});

describe('rain and snow', () => {
  it('is told apart by the mean where snow was not measured', () => {
    expect(rainAndSnowMm({ rainMm: 8 }, 0.9)).toEqual({ rainMm: 0, snowMm: 8 });
    expect(rainAndSnowMm({ rainMm: 8 }, 1.1)).toEqual({ rainMm: 8, snowMm: 0 });
  });

  it('goes by the snow that was measured, with or without its water', () => {
    expect(rainAndSnowMm({ rainMm: 8, newSnowMm: 0 }, -3)).toEqual({ rainMm: 8, snowMm: 0 });
    expect(rainAndSnowMm({ rainMm: 8, newSnowMm: 40 }, 3)).toEqual({ rainMm: 0, snowMm: 8 });
    expect(rainAndSnowMm({ newSnowMm: 150 }, 0)).toEqual({ rainMm: 0, snowMm: 15 });
  });

  it('holds less water when it is cold', () => {
    expect(freshSnowWaterMm(130, -8)).toBeCloseTo(10);
  });

  it('melts by the mean, and no more than there is', () => {
    expect(meltMm(20, -1)).toBe(0);
    expect(meltMm(3, 4)).toBe(3);
  });

  it('settles to a third of its depth in water', () => {
    expect(lyingSnowCm(30)).toBe(9);
  });
});

describe('frozen ground', () => {
  it('freezes in a week at -10 °C when bare and not under a foot of snow', () => {
    const weekOf = (snowCm: number) =>
      Array.from({ length: 7 }).reduce<number>((index) => frozenGroundIndex(index, -10, snowCm), 0);
    expect(isThawed(weekOf(0))).toBe(false);
    expect(isThawed(weekOf(30))).toBe(true);
  });

  it('thaws in warm days once the snow is gone', () => {
    expect(isThawed([8, 8, 8].reduce((index, meanC) => frozenGroundIndex(index, meanC, 0), 80))).toBe(true);
    expect(isThawed([8, 8, 8].reduce((index, meanC) => frozenGroundIndex(index, meanC, 15), 80))).toBe(false);
  });
});

describe('the top layer', () => {
  it('dries sooner in sand than in loam and in loam than in clay, and sooner in a raised bed', () => {
    const days = (raised: boolean) => ['sandy_loam', 'loam', 'silty_clay'].map((id) => daysToFit(id, raised, 2.5));
    expect(days(false)).toEqual([...days(false)].sort((a, b) => a - b));
    expect(days(true).every((raised, at) => raised <= (days(false)[at] ?? 0))).toBe(true);
  });

  it('never holds more than its pores nor less than evaporation leaves', () => {
    const loam = soil('loam');
    expect(depletionAfter(0, 500, 0, loam)).toBeCloseTo(-loam.aboveMm + loam.drainedMm);
    let depletion = 0;
    for (let day = 0; day < 400; day += 1) depletion = depletionAfter(depletion, 0, 8, loam);
    expect(depletion).toBeLessThanOrEqual(loam.mostMm);
    expect(depletion).toBeGreaterThan(0.95 * loam.mostMm);
  });

  it('slows down once the wet of the surface is gone', () => {
    const silt = soil('silt_loam');
    const drop = (from: number) => depletionAfter(from, 0, 3, silt) - from;
    expect(drop(2)).toBeCloseTo(3.45);
    expect(drop(20)).toBeLessThan(2);
  });
});

describe('snow on the ground', () => {
  const cold = { tminC: -1, tmaxC: 3, rainMm: 16, newSnowMm: 178 };
  const lying = (snowWaterMm: number, day: Parameters<typeof surfaceAfter>[1]) =>
    surfaceAfter({ snowWaterMm, frostIndex: 0 }, day, 30).snowWaterMm;

  it('is gone where none was measured lying, however much was reckoned', () => {
    expect(lying(40, { tminC: -1, tmaxC: 3, rainMm: 0, snowDepthMm: 0 })).toBe(0);
  });

  it('holds no more water than ripe snow of the depth that was read, and no less than fresh snow', () => {
    // 45 % of 50 mm (ripe snow, from memory), and a tenth of 150 mm (agro:S25).
    const calm = { tminC: -1, tmaxC: 1, rainMm: 0 };
    expect(lying(40, { ...calm, snowDepthMm: 50 })).toBeCloseTo(22.5);
    expect(lying(0, { ...calm, snowDepthMm: 150 })).toBeCloseTo(15);
    expect(lying(20, { ...calm, snowDepthMm: 60 })).toBeCloseTo(20);
  });

  it('gives the water of what was reckoned too much to the ground', () => {
    const after = surfaceAfter(
      { snowWaterMm: 40, frostIndex: 0 },
      { tminC: -1, tmaxC: 1, rainMm: 0, snowDepthMm: 50 },
      30,
    );
    expect(after.wetMm).toBeCloseTo(17.5);
  });

  it('lies where it fell after the depth was read: the old snow is gone, the new is not', () => {
    // 178 mm of new snow hold 17.8 mm of water (1:10 from −2.2 °C up, agro:S25), and 1 °C melts 2.7 mm (agro:S19).
    expect(lying(40, { ...cold, snowDepthMm: 0 })).toBeCloseTo(lying(0, cold));
    expect(lying(40, { ...cold, snowDepthMm: 0 })).toBeGreaterThan(10);
  });
});
