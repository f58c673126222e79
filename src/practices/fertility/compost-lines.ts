/**
 * What compost gives: this season's layer, layers of the seasons before it, and raw manure that was laid on.
 */

import type { Climate } from '../../climate/climate.ts';
import type { Bed, Garden, Pile, Topdressed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import type { Day } from '../../measures/days.ts';
import { tenth } from '../../measures/tenth.ts';
import { areaOf } from '../bed-timeline.ts';
import { bedLayer, COMPOST_KG_PER_M3 } from '../compost-layer.ts';
import { amongCropsTopdressKey, autumnTopdressKey, springTopdressKey } from '../keys.ts';
import { manuresAmong } from '../manure.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { testsOf } from '../soil-test.ts';
import { type Grams, type LedgerLine, seen, times } from './ledger-line.ts';

/** Dry share of finished compost, 0–1. From memory. */
const COMPOST_DRY = 0.55;
/** Nitrogen in its dry matter, 0–1: the middle of 0.5 to 3 % (veg:V17). */
const COMPOST_NITROGEN = 0.015;
/** Shares of compost's nitrogen a crop gets in the first season, 0–1, of plants alone and with manure in it. From memory. */
const FIRST_SEASON: Readonly<Record<'plants' | 'manure', Grams>> = {
  plants: { low: 0.05, usual: 0.1, high: 0.15 },
  manure: { low: 0.1, usual: 0.15, high: 0.25 },
};
/** The share in each later season: a few percent. From memory; the ends are a house default. */
const LATER: Grams = { low: 0.01, usual: 0.03, high: 0.05 };
/** Earlier seasons whose layers are still counted. House default: after that they count as the soil's own. */
const SEASONS_COUNTED = 3;
/** Nitrogen of raw manure, g in a kg as it is: 5 lb in a ton, cautious, where it is worked in (veg:V15). */
const MANURE_G_PER_KG = 2.5;

/** Nitrogen of a layer of compost in all, g/m². */
function wholeNitrogen(depthMm: number): number {
  return depthMm * COMPOST_KG_PER_M3 * COMPOST_DRY * COMPOST_NITROGEN;
}

/** Nitrogen of a layer of compost in its first season, g/m². A layer of 1 mm is a litre to the square metre. */
export function compostNitrogen(depthMm: number, made: 'plants' | 'manure' = 'plants'): Grams {
  return times(FIRST_SEASON[made], wholeNitrogen(depthMm));
}

/** The lines of compost and manure, those that give nothing left out. */
export function compostLines(
  input: PracticeInput,
  found: Pick<Findings, 'compostBalance'>,
  bed: Bed,
  season: number,
): LedgerLine[] {
  return [
    ...firstSeason(layerOf(input, found, bed, season)),
    ...earlier(input, bed, season),
    ...rawManure(input, bed, season),
  ];
}

function firstSeason({ depthMm, made, spread }: Layer): LedgerLine[] {
  if (depthMm === 0) return [];
  const gives = compostNitrogen(depthMm, made);
  const share = FIRST_SEASON[made];
  return [
    {
      side: 'give',
      of: spread ? 'compost spread for this season' : 'compost of the usual layer',
      gPerM2: gives,
      reason: {
        rule: made === 'manure' ? 'ledger.compost-with-manure' : 'ledger.compost',
        saw: {
          depthMm: tenth(depthMm),
          wholeGPerM2: tenth(wholeNitrogen(depthMm)),
          percentDry: Math.round(100 * COMPOST_DRY),
          percentNitrogen: 100 * COMPOST_NITROGEN,
          percentLow: Math.round(100 * share.low),
          percentUsual: Math.round(100 * share.usual),
          percentHigh: Math.round(100 * share.high),
          ...seen(gives),
        },
        source: 'from memory',
      },
    },
  ];
}

interface Layer {
  depthMm: number;
  made: 'plants' | 'manure';
  spread: boolean;
}

/** Compost on a bed for a season: what was spread; else the layer it is still to be given, none where that was skipped. */
function layerOf(
  { garden, climate }: PracticeInput,
  { compostBalance }: Pick<Findings, 'compostBalance'>,
  bed: Bed,
  season: number,
): Layer {
  const spread = compostOn(garden.topdressed, bed).filter(({ on }) => seasonAfter(climate, on) === season);
  if (spread.length > 0) {
    const fed = spread.flatMap(({ pileIds = [] }) => garden.piles.filter(({ id }) => pileIds.includes(id)));
    return { depthMm: depthOf(spread, bed), made: madeOf(fed), spread: true };
  }
  const wanted = (compostBalance && inBed(compostBalance.beds, bed.id))?.find(
    (each) => each.season === season && each.fill === undefined,
  );
  if (wanted === undefined)
    return { depthMm: givenBefore(garden, climate, bed, season), made: 'plants', spread: false };
  if (wanted.skipped) return { depthMm: 0, made: 'plants', spread: false };
  const drawn = new Set(wanted.drawn.flatMap(({ pileId }) => pileId ?? []));
  const depthMm = Math.min(wanted.layer.depthMm, wanted.litres / wanted.areaM2);
  return { depthMm, made: madeOf(garden.piles.filter(({ id }) => drawn.has(id))), spread: false };
}

/**
 * The layer of a season that was over before the garden was brought in: the household's usual one, though nobody wrote it
 * down. None where its time went by since, where it was skipped, and in a new bed.
 */
function givenBefore(garden: Garden, climate: Climate, bed: Bed, season: number): number {
  const keys = [springTopdressKey, autumnTopdressKey, amongCropsTopdressKey].map((keyOf) => keyOf(bed.id, season));
  const isSkipped = keys.some((key) => garden.skipped[key] !== undefined);
  if (isSkipped || thereFrom(bed) !== undefined || season > seasonAfter(climate, garden.startedOn)) return 0;
  return bedLayer(garden, bed.id).depthMm;
}

function madeOf(piles: readonly Pile[]): Layer['made'] {
  const materials = piles.flatMap(({ ingredients }) => ingredients.map(({ materialId }) => materialId));
  return manuresAmong(materials) === undefined ? 'plants' : 'manure';
}

function compostOn(topdressed: readonly Topdressed[], { id }: Bed): Topdressed[] {
  return inBed(topdressed, id).filter(({ materialId }) => materialId === undefined);
}

function depthOf(spread: readonly Topdressed[], bed: Bed): number {
  return spread.reduce((sum, { litres }) => sum + litres, 0) / areaOf(bed);
}

/** Layers of the seasons before, as far as no soil test has counted them as the soil's own. */
function earlier({ garden, climate }: PracticeInput, bed: Bed, season: number): LedgerLine[] {
  const tested: Day | undefined = testsOf(garden, bed.id).find(
    ({ organicMatterPercent }) => organicMatterPercent !== undefined,
  )?.on;
  const before = compostOn(garden.topdressed, bed).filter(({ on }) => {
    const age = season - seasonAfter(climate, on);
    return age >= 1 && age <= SEASONS_COUNTED && (tested === undefined || on > tested);
  });
  if (before.length === 0) return [];
  const depthMm = depthOf(before, bed);
  const gives = times(LATER, wholeNitrogen(depthMm));
  return [
    {
      side: 'give',
      of: 'compost of earlier seasons',
      gPerM2: gives,
      reason: {
        rule: 'ledger.compost-before',
        saw: {
          depthMm: tenth(depthMm),
          seasons: new Set(before.map(({ on }) => seasonAfter(climate, on))).size,
          wholeGPerM2: tenth(wholeNitrogen(depthMm)),
          percentLow: Math.round(100 * LATER.low),
          percentUsual: Math.round(100 * LATER.usual),
          percentHigh: Math.round(100 * LATER.high),
          ...seen(gives),
        },
        source: 'from memory',
      },
    },
  ];
}

/** Raw manure laid on a bed for the season; of what lies on top much may be lost to the air. */
function rawManure({ garden, climate }: PracticeInput, bed: Bed, season: number): LedgerLine[] {
  const laid = [...inBed(garden.topdressed, bed.id)].sort((a, b) => (orderOf(a) < orderOf(b) ? -1 : 1));
  return laid.flatMap(({ on, litres, materialId }) => {
    if (materialId === undefined || seasonAfter(climate, on) !== season) return [];
    const { manure, name, densityKgPerM3 } = feedstockById(materialId);
    if (!manure || densityKgPerM3 === undefined) return [];
    const kgPerM2 = (litres * densityKgPerM3.usual) / 1000 / areaOf(bed);
    const gPerM2 = kgPerM2 * MANURE_G_PER_KG;
    const saw = { manure: name.toLowerCase(), on, kgPerM2: tenth(kgPerM2) };
    return [
      {
        side: 'give' as const,
        of: name.toLowerCase(),
        gPerM2: { low: 0, usual: gPerM2, high: gPerM2 },
        reason: { rule: 'ledger.manure', saw: { ...saw, usualGPerM2: tenth(gPerM2) }, source: 'veg:V15' as const },
      },
    ];
  });
}

/** Of two layers on a day the order of writing decides nothing. */
function orderOf({ on, materialId = '', litres }: Topdressed): string {
  return `${on} ${materialId} ${litres}`;
}
