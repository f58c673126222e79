/**
 * What a mix still wants: browns, greens or water, from what is there.
 */
import { feedstockById } from '../../../handbook/feedstocks.ts';
import type { Feedstock } from '../../../handbook/shapes/feedstock.ts';
import type { Span } from '../../../handbook/shapes/row.ts';
import { type Limit, leastAddition } from './least-addition.ts';
import { type Mix, mixOf } from './mix.ts';
import { contentsOf, isReckoned, makeupOf, type Portion } from './portion.ts';
import { GOOD_START, type Target, WILL_DO } from './target.ts';

/** Something there to add, and how much of it at most where that is known. */
export interface AtHand {
  material: Feedstock;
  most?: Portion['amount'];
}

/** Why a target is out of reach. */
export type Hindrance = 'too rich' | 'too brown' | 'too wet';

/** An addition that reaches a good start, or at least what still composts, and the mix it makes. */
export interface Reached extends Addition {
  reach: 'good' | 'will do';
}

/** The answer. Where it cannot be had with what is there, `instead` is what would do it of common stuff, if any does. */
export type WhatToAdd = Reached | { reach: 'not'; hindrance: Hindrance; instead?: Reached };

/** Things of which all at once may be asked for; of more, up to three are put together. */
const ALL_OF = 6;
/** Straight-line limits besides the amounts at hand: more additions than that never need to be cut into. */
const ENOUGH = 3;

/**
 * What to add to a mix so that it begins well: the fewest things, and of those the least by volume, whatever water it
 * then lacks. Reckoned by the usual figures.
 *
 * @param atHand what is there to add; where nothing is named, more of what is in the mix
 */
export function whatToAdd(
  portions: readonly Portion[],
  atHand: readonly AtHand[] = more(portions),
  target: Target = GOOD_START,
): WhatToAdd {
  const things = atHand.filter(({ material }) => isReckoned(material));
  const found = firstReached(portions, things, target);
  if (found) return found;
  const instead = helpful(portions, firstReached(portions, [...things, ...COMMON], target));
  return {
    reach: 'not',
    hindrance: hindranceOf(portions, things, target),
    ...(instead === undefined ? {} : { instead }),
  };
}

/**
 * The first of the bands, best first, that can be reached. Dry enough goes before rich enough: a brown pile is only
 * slow, a wet one goes sour. House default.
 */
function firstReached(portions: readonly Portion[], things: readonly AtHand[], target: Target): Reached | undefined {
  const { carbonToNitrogen, moisturePct } = target;
  const good = within(portions, things, carbonToNitrogen, moisturePct);
  if (good) return { reach: 'good', ...good };
  const workable =
    within(portions, things, WILL_DO.carbonToNitrogen, moisturePct) ??
    within(portions, things, carbonToNitrogen, WILL_DO.moisturePct) ??
    within(portions, things, WILL_DO.carbonToNitrogen, WILL_DO.moisturePct);
  return workable && { reach: 'will do', ...workable };
}

/** Times its own volume that a mix may be told to take in before that is no help. House default. */
const NO_HELP_TIMES = 3;

function helpful(portions: readonly Portion[], found: Reached | undefined): Reached | undefined {
  if (found === undefined) return undefined;
  return volumeOf(found.add) <= NO_HELP_TIMES * mixOf(portions).whole.litres ? found : undefined;
}

/** Stuff most households can get, to say what would help. */
const COMMON: readonly AtHand[] = [
  'leaves_dry_loose',
  'straw_general',
  'grass_clippings_fresh_loose',
  'kitchen_vegetable_scraps',
].map((id) => ({ material: feedstockById(id) }));

function more(portions: readonly Portion[]): AtHand[] {
  return portions.map(({ material }) => ({ material }));
}

interface Addition {
  add: readonly Portion[];
  waterL: number;
  after: Mix;
}

/** A band with the figure aimed at in it, where one is. */
type Aim = Span & { usual?: number };

/** The fewest things that bring the mix into both bands: where that can be had, at the ratio aimed at. */
function within(portions: readonly Portion[], things: readonly AtHand[], ratio: Aim, wet: Aim): Addition | undefined {
  const most = things.length <= ALL_OF ? things.length : ENOUGH;
  const aims: Span[] = [...(ratio.usual === undefined ? [] : [{ low: ratio.usual, high: ratio.usual }]), ratio];
  for (let count = 0; count <= most; count += 1) {
    for (const aim of count === 0 ? [ratio] : aims) {
      const [found] = setsOf(things, count)
        .map((set) => additionOf(portions, set, aim, wet.high))
        .filter((add) => add !== undefined)
        .sort((a, b) => volumeOf(a) - volumeOf(b));
      if (found) return withWater(portions, found, wet);
    }
  }
  return undefined;
}

function volumeOf(portions: readonly Portion[]): number {
  return portions.reduce((sum, { material, amount }) => sum + contentsOf(amount, makeupOf(material)).litres, 0);
}

function setsOf<Item>(items: readonly Item[], count: number): Item[][] {
  if (count === 0) return [[]];
  return items.flatMap((item, at) => setsOf(items.slice(at + 1), count - 1).map((rest) => [item, ...rest]));
}

/** How much of each of some things brings the mix between two ratios and below a wetness; nothing where none does. */
function additionOf(
  portions: readonly Portion[],
  things: readonly AtHand[],
  ratio: Span,
  wettestPct: number,
): Portion[] | undefined {
  const have = mixOf(portions).whole;
  const each = things.map(({ material }) => contentsOf({ kg: 1 }, makeupOf(material)));
  const limits: Limit[] = [
    {
      of: each.map((kg) => ratio.low * kg.nitrogenKg - kg.carbonKg),
      most: have.carbonKg - ratio.low * have.nitrogenKg,
    },
    {
      of: each.map((kg) => kg.carbonKg - ratio.high * kg.nitrogenKg),
      most: ratio.high * have.nitrogenKg - have.carbonKg,
    },
    {
      of: each.map((kg) => kg.waterKg - wettestPct / 100),
      most: (wettestPct / 100) * have.wetKg - have.waterKg,
    },
    ...things.flatMap(({ material, most }, at) => {
      const kg = most && contentsOf(most, makeupOf(material)).wetKg;
      return kg === undefined ? [] : [{ of: things.map((_, other) => (other === at ? 1 : 0)), most: kg }];
    }),
  ];
  const kgs = leastAddition(
    each.map(({ litres }) => litres),
    limits,
  );
  return kgs && things.map(({ material }, at) => ({ material, amount: asLitres(material, kgs[at] ?? 0) }));
}

function asLitres(material: Feedstock, kg: number): { litres: number } {
  return { litres: contentsOf({ kg }, makeupOf(material)).litres };
}

/** The mix with its addition, watered to the wetness aimed at where it is drier than it should be (compost.md F7). */
function withWater(portions: readonly Portion[], add: Portion[], wet: Aim): Addition {
  const { waterKg, wetKg } = mixOf([...portions, ...add]).whole;
  const dry = 100 * waterKg < wet.low * wetKg;
  const share = (wet.usual ?? wet.low) / 100;
  const waterL = dry ? (share * wetKg - waterKg) / (1 - share) : 0;
  return { add, waterL, after: mixOf([...portions, ...add], waterL) };
}

/** What stands in the way: water where the ratio alone could be had, else the ratio. */
function hindranceOf(portions: readonly Portion[], things: readonly AtHand[], target: Target): Hindrance {
  if (within(portions, things, target.carbonToNitrogen, { low: 0, high: 100 })) return 'too wet';
  const { carbonKg, nitrogenKg } = mixOf(portions).whole;
  return carbonKg < target.carbonToNitrogen.low * nitrogenKg ? 'too rich' : 'too brown';
}
