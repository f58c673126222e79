/**
 * What several materials come to when they are mixed: how rich and how wet, as bands, because no two heaps are alike.
 *
 * Everything goes by dry mass. Ratios are never averaged: a litre of wet scraps holds far less carbon than a litre of
 * leaves weighs up.
 */
import {
  type Band,
  type Contents,
  contentsOf,
  isReckoned,
  makeupOf,
  type Portion,
  spanOf,
  type Varying,
} from './portion.ts';

/** A mix worked out. */
export interface Mix {
  portions: readonly Portion[];
  /** Water poured on, litres. */
  addedWaterL: number;
  /** What is in it all together, by the usual figures. */
  whole: Contents;
  /** Carbon to one of nitrogen. Absent where nothing in the mix has a ratio. */
  carbonToNitrogen?: Band;
  /** Water as a share of the whole weight, percent. */
  moisturePct?: Band;
  /** Litres by class. */
  brownsL: number;
  greensL: number;
  /** Materials with no published ratio: they are in the pile but not in the arithmetic. */
  leftOut: readonly Portion[];
}

const NOTHING: Contents = { litres: 0, wetKg: 0, waterKg: 0, dryKg: 0, carbonKg: 0, nitrogenKg: 0 };

/** Several contents put together. */
function sumOf(parts: readonly Contents[]): Contents {
  return parts.reduce(
    (sum, part) => ({
      litres: sum.litres + part.litres,
      wetKg: sum.wetKg + part.wetKg,
      waterKg: sum.waterKg + part.waterKg,
      dryKg: sum.dryKg + part.dryKg,
      carbonKg: sum.carbonKg + part.carbonKg,
      nitrogenKg: sum.nitrogenKg + part.nitrogenKg,
    }),
    NOTHING,
  );
}

/** Carbon to one of nitrogen of a whole. */
function ratioOf({ carbonKg, nitrogenKg }: Contents): number {
  return carbonKg / nitrogenKg;
}

/** Water of a whole, percent of its weight. */
function moistureOf({ waterKg, wetKg }: Contents): number {
  return (100 * waterKg) / wetKg;
}

/** The mix of some portions and of water poured on them, a kilogram a litre. */
export function mixOf(portions: readonly Portion[], addedWaterL = 0): Mix {
  const reckoned = portions.filter(({ material, amount }) => isReckoned(material) && sizeOf(amount) > 0);
  const contents = reckoned.map(({ material, amount }) => contentsOf(amount, makeupOf(material)));
  const whole = watered(sumOf(contents), addedWaterL);
  const litresOfClass = (kind: 'brown' | 'green'): number =>
    sumOf(contents.filter((_, at) => reckoned[at]?.material.class === kind)).litres;
  return {
    portions,
    addedWaterL,
    whole,
    ...(reckoned.length === 0
      ? {}
      : {
          carbonToNitrogen: ratioBand(reckoned, contents),
          moisturePct: moistureBand(reckoned, contents, addedWaterL),
        }),
    brownsL: litresOfClass('brown'),
    greensL: litresOfClass('green'),
    leftOut: portions.filter(({ material }) => !isReckoned(material)),
  };
}

function sizeOf(amount: Portion['amount']): number {
  return 'kg' in amount ? amount.kg : amount.litres;
}

function watered(whole: Contents, addedWaterL: number): Contents {
  return { ...whole, wetKg: whole.wetKg + addedWaterL, waterKg: whole.waterKg + addedWaterL };
}

/** A ratio strays by factors: how far each figure moves it is put together as logarithms. */
function ratioBand(portions: readonly Portion[], contents: readonly Contents[]): Band {
  const usual = ratioOf(sumOf(contents));
  const { down, up } = strayOf(portions, contents, (whole) => Math.log(ratioOf(whole) / usual));
  return { low: usual * Math.exp(-down), usual, high: usual * Math.exp(up) };
}

function moistureBand(portions: readonly Portion[], contents: readonly Contents[], waterL: number): Band {
  const usual = moistureOf(watered(sumOf(contents), waterL));
  const { down, up } = strayOf(portions, contents, (whole) => moistureOf(watered(whole, waterL)) - usual);
  return { low: Math.max(0, usual - down), usual, high: Math.min(100, usual + up) };
}

const VARYING: readonly Varying[] = ['carbonToNitrogen', 'moisturePctWet', 'densityKgPerM3'];

/**
 * How far a result strays: each figure of each portion is put to either end of its span, the others left as usual, and
 * the moves are added as those of errors that know nothing of each other, by their squares.
 */
function strayOf(
  portions: readonly Portion[],
  contents: readonly Contents[],
  move: (whole: Contents) => number,
): { down: number; up: number } {
  const moves = portions.flatMap(({ material, amount }, at) => {
    const others = sumOf(contents.filter((_, other) => other !== at));
    const usual = makeupOf(material);
    return VARYING.map((figure) => {
      const { low, high } = spanOf(material, figure);
      return [low, high].map((value) => move(sumOf([others, contentsOf(amount, { ...usual, [figure]: value })])));
    });
  });
  return {
    down: Math.hypot(...moves.map((ends) => Math.min(0, ...ends))),
    up: Math.hypot(...moves.map((ends) => Math.max(0, ...ends))),
  };
}
