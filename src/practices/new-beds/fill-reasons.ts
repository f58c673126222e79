/**
 * Why a bed is filled when it is, and with what: its arithmetic as data.
 */
import { type BedFill, COMPOST_SHARE, NEW_BED_COMPOST_MM, SCOOPED_MM, SETTLING_SHARE } from '../bed-fill.ts';
import type { Reason } from '../draft.ts';
import type { BedFilling } from '../fill-window.ts';
import { VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';

/** Every reason of a filling, its day first, then its amounts in the order of the arithmetic. */
export function fillReasons(filling: BedFilling, fill: BedFill): Reason[] {
  return [...timeReasons(filling), ...amountReasons(filling, fill)];
}

function timeReasons({ bed, first, fit, freeze, window }: BedFilling): Reason[] {
  const goesIn = first === undefined ? {} : { next: first.what, day: first.day };
  return [
    {
      rule: 'bed-fill.planned-for',
      saw: { bed: bed.name, by: bed.plannedFor, ...goesIn },
      source: "the garden's own plan",
    },
    ...(fit === undefined
      ? []
      : [
          {
            rule: fit.day > bed.plannedFor ? 'bed-fill.fit-too-late' : 'bed-fill.fit',
            saw: { fit: fit.day, years: fit.years, by: bed.plannedFor },
            limit: window.latest,
            source: fit.years > 0 ? "the garden's climate" : 'house default',
          } as const,
        ]),
    ...(freeze === undefined
      ? []
      : [
          {
            rule: 'bed-fill.before-frost',
            saw: { freeze, by: bed.plannedFor },
            source: "the garden's climate",
          } as const,
        ]),
  ];
}

/** What a bed is filled with, step by step. */
export function amountReasons({ phosphorusPpm }: Pick<BedFilling, 'phosphorusPpm'>, fill: BedFill): Reason[] {
  const { areaM2, volumeL, paths, scoopedM2, topsoilL, topsoilMostL, restL, looseL, compostMostL, compostL, mixL } =
    fill;
  const compost: Reason =
    phosphorusPpm === undefined
      ? fill.compostBy === 'depth'
        ? {
            rule: 'bed-fill.compost-depth',
            saw: { areaM2: hundredth(areaM2), litres: compostMostL },
            limit: NEW_BED_COMPOST_MM,
            source: 'compost:S35',
          }
        : {
            rule: 'bed-fill.compost-share',
            saw: { volume: volumeL, litres: compostMostL },
            limit: 100 * COMPOST_SHARE,
            source: 'house default',
          }
      : {
          rule: 'bed-fill.phosphorus',
          saw: { ppm: phosphorusPpm },
          limit: VERY_HIGH_PHOSPHORUS_PPM,
          source: 'compost:S36',
        };
  return [
    {
      rule: 'bed-fill.volume',
      saw: { areaM2: hundredth(areaM2), depthMm: Math.round(volumeL / areaM2), litres: volumeL },
      source: 'common practice',
    },
    {
      rule: topsoilL === 0 ? 'bed-fill.no-topsoil' : 'bed-fill.topsoil',
      saw: {
        areaM2: hundredth(scoopedM2),
        lowMm: SCOOPED_MM.low,
        highMm: SCOOPED_MM.high,
        litres: topsoilL,
        most: topsoilMostL,
        measured: paths.measured ? 'yes' : 'no',
        spare: scoopedM2 < paths.areaM2 ? 'yes' : 'no',
      },
      source: 'common practice',
    },
    {
      rule: 'bed-fill.settling',
      saw: { rest: restL, litres: looseL },
      limit: 100 * SETTLING_SHARE,
      source: 'house default',
    },
    compost,
    ...(phosphorusPpm === undefined
      ? [
          {
            rule: 'bed-fill.free-compost',
            saw: { litres: compostL, most: compostMostL },
            source: "the garden's own plan",
          } as const,
        ]
      : []),
    { rule: 'bed-fill.mix', saw: { loose: looseL, compost: compostL, litres: mixL }, source: 'common practice' },
  ];
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
