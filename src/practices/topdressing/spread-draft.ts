/**
 * Spreading a bed's layer.
 */

import { quantity } from '../../measures/quantity.ts';
import { MM_PER_INCH } from '../../measures/units.ts';
import { BARROW_KG, barrowLoads } from '../barrow.ts';
import { areaOf } from '../bed-timeline.ts';
import { BOUGHT_UNTESTED } from '../cautions.ts';
import type { BedLayer } from '../compost-layer.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { effortOverArea, SPREAD_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import { amongCropsTopdressKey, sampleKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';
import { ORDER_TO_SPREAD_DAYS } from './order-days.ts';
import type { SeasonOrder } from './order-draft.ts';
import { POOR_SOIL_STEP, poorSoilOf, poorSoilReasons } from './poor-soil.ts';
import type { Share } from './stock.ts';

/** Layer above which compost builds up salts and phosphorus year on year (Minnesota, compost:S36: about 1 in), mm. */
const CEILING_MM = MM_PER_INCH;
/** The rate at which a new bed is built up, mm: 2–3 in. Common practice. */
const BUILDING_MM = { low: Math.round(2 * MM_PER_INCH), high: Math.round(3 * MM_PER_INCH) } as const;

const MISSED: Readonly<Record<Share['half'], string>> = {
  autumn: 'The soil goes into winter without its layer: spread it in spring instead, before the first crop goes in.',
  spring: 'The crop starts without its layer: spread it between the rows, clear of the stems, or leave it for autumn.',
};

/** What to do where the order has not come when the bed cannot wait. */
const WITHOUT_COMPOST =
  'No tested compost in time? Spread what there is, let what follows go ahead, and give the rest in spring.';

/** Where it goes on among what grows. Common practice. */
const AMONG_SEEDLINGS = 'Seedlings too close to spread between? Wait until they stand a hand high.';

/** Spread the yearly layer on one bed. */
export function spreadDraft(input: PracticeInput, share: Share, orders: readonly SeasonOrder[]): TaskDraft {
  const { bed, litres, layer } = share;
  const soil = poorSoilOf(input.garden, bed);
  return {
    key: share.key,
    practice: 'topdressing',
    kind: 'topdress',
    job: { id: 'topdress', title: 'Topdress with compost' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Topdress ${bed.name}`,
    steps: [
      `Spread ${quantity(litres, 'L')} of finished compost over the bed, ${quantity(depthOf(share), 'mm')} deep: ${barrowLoads(litres)}.`,
      'Is there mulch or cut residue on the bed? Rake it aside first, and draw it back over the compost.',
      'Rake it level and leave it on top: worms and rain take it down. Dig nothing in.',
      'Keep it a hand off the stems of anything growing.',
      ...(share.key === amongCropsTopdressKey(bed.id, share.season) ? [AMONG_SEEDLINGS] : []),
      ...(soil === undefined ? [] : [POOR_SOIL_STEP[soil]]),
      ...(share.fromBins < litres ? [WITHOUT_COMPOST] : []),
    ],
    cautions: [...cautions(layer), ...(share.fromBins < litres ? [BOUGHT_UNTESTED] : [])],
    supplies: [
      { what: 'finished compost', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) },
      { what: 'barrow and rake' },
    ],
    window: share.window,
    ifMissed: 'still do',
    missedNote: MISSED[share.half],
    effortMinutes: effortOverArea(areaOf(bed), SPREAD_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['above-freezing'],
    after: [
      ...share.after,
      ...share.unproven.map((key) => ({ key, minDays: 0 })),
      ...waitsForOrder(share, orders),
      ...waitsForSample(input, share),
    ],
    confidence: knownAs(input.climate, 'derived'),
    reasons: [
      ...depthReasons(layer),
      ...poorSoilReasons(input.garden, bed, layer),
      volumeReason(share),
      ...thinnerReasons(share),
      ...share.reasons,
      supplyReason(share),
    ],
    makes: [{ makes: 'bed-topdressed', bedId: bed.id, litres, ...drawnFrom(share) }],
  };
}

/** The piles it is taken from, so that they are remembered once it is done. */
function drawnFrom({ drawn }: Share): { pileIds?: string[] } {
  const pileIds = [...new Set(drawn.flatMap(({ heap: { from } }) => (from.what === 'pile' ? [from.of] : [])))];
  return pileIds.length === 0 ? {} : { pileIds };
}

/** A layer that hangs on an order waits until what comes of it is tested. */
function waitsForOrder(share: Share, orders: readonly SeasonOrder[]): TaskDraft['after'] {
  const order = orders.find(({ season }) => season === share.season)?.draft;
  if (order === undefined || share.skipped || share.fromBins >= share.litres) return [];
  return [{ key: order.key, minDays: ORDER_TO_SPREAD_DAYS }];
}

/** A layer before winter goes on once the soil sample of that autumn is taken; it is not lost for want of one. */
function waitsForSample({ garden }: PracticeInput, { bed, half, season }: Share): TaskDraft['after'] {
  if (half !== 'autumn') return [];
  const own = garden.soilTests.some(({ bedId }) => bedId === bed.id);
  return [{ key: sampleKey(own ? bed.id : undefined, season - 1), minDays: 0, yields: true }];
}

function cautions({ depthMm }: BedLayer): string[] {
  return [
    `A full barrow weighs about ${quantity(BARROW_KG, 'kg')}: fill it to what you can push, and bend your knees.`,
    'Dusty compost carries mould spores: damp it, and wear a mask if your lungs or immunity are weak.',
    ...(depthMm > CEILING_MM
      ? [
          `${quantity(BUILDING_MM.low, 'mm')} to ${quantity(BUILDING_MM.high, 'mm')} is a rate for building up a new bed. More than ${quantity(CEILING_MM, 'mm')} a year on an established one gathers salts and phosphorus: test the soil before you repeat it.`,
        ]
      : []),
  ];
}

const DEPTH_RULES = {
  own: { rule: 'topdress.own-depth', source: "the garden's own plan" },
  bed: { rule: 'topdress.bed-depth', source: "the garden's own plan" },
  default: { rule: 'topdress.default-depth', source: 'veg:V17' },
  'rich soil': { rule: 'topdress.rich-soil', source: 'veg:V17' },
} as const;

/** What set the depth; a bed very high in phosphorus has no layer at all. */
function depthReasons({ by, depthMm, season, organicMatterPercent }: BedLayer): Reason[] {
  if (by === 'phosphorus') return [];
  const saw = { depthMm, season, ...(organicMatterPercent === undefined ? {} : { organicMatterPercent }) };
  return [{ ...DEPTH_RULES[by], saw, limit: CEILING_MM }];
}

/** The depth of what is spread: the layer's, or a touch less. */
function depthOf({ bed, litres, layer, thinner }: Share): number {
  return thinner === undefined ? layer.depthMm : Math.round((10 * litres) / areaOf(bed)) / 10;
}

function thinnerReasons({ litres, thinner, window }: Share): Reason[] {
  if (thinner === undefined) return [];
  if (thinner.comes !== undefined)
    return [{ rule: 'topdress.thinner-now', saw: { ...thinner, litres }, limit: window.latest, source: 'compost:S33' }];
  return [{ rule: 'topdress.thinner', saw: { ...thinner, litres }, source: 'house default' }];
}

function volumeReason({ bed, litres, thinner, layer: { depthMm } }: Share): Reason {
  const areaM2 = Math.round(areaOf(bed) * 100) / 100;
  return {
    rule: 'topdress.volume',
    saw: { areaM2, depthMm, litres: thinner?.fullLitres ?? litres },
    source: 'common practice',
  };
}

function supplyReason({ litres, fromBins, ready }: Share): Reason {
  return {
    rule: 'topdress.supply',
    saw: { litres, fromBins: Math.floor(fromBins), ...(ready === undefined ? {} : { ready }) },
    source: "the garden's own plan",
  };
}
