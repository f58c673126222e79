/**
 * What a hungry crop wants of nitrogen, and what its bed gives: soil, this season's compost, and legumes before it.
 */
import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { addDays } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans } from '../bed-timeline.ts';
import { bedLayer, COMPOST_KG_PER_M3 } from '../compost-layer.ts';
import { autumnTopdressKey, springTopdressKey } from '../keys.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { lastTest } from '../soil-test.ts';
import { coveredShare, growingParts } from '../stand-cover.ts';

/** Dry share of finished compost, 0–1. From memory. */
const COMPOST_DRY = 0.55;
/** Nitrogen in its dry matter, 0–1: the middle of 0.5 to 3 % (veg:V17). */
const COMPOST_NITROGEN = 0.015;
/** Share of compost's nitrogen a crop gets in the first season: plant-based, with the band of 5 to 15 % (from memory). */
const AVAILABLE = { usual: 0.1, atBest: 0.15 } as const;
/** Nitrogen a season for each percent of organic matter, g/m²: 10 lb an acre, a cautious figure (veg:V15). */
const NITROGEN_PER_PERCENT = 1.12;
/** Organic matter of soil nobody has tested, percent. House default: an ordinary field soil. */
const UNTESTED_PERCENT = 2;
/** Nitrogen that peas or beans leave with their roots and tops, g/m²: 20 lb an acre, the low end. From memory. */
const PULSE_NITROGEN = 2.2;
/** Share of the nitrogen in a young legume cover that the next crop gets (cover:S7: 35 of 70 lb a ton at 3.5 %). */
const COVER_AVAILABLE = 0.5;
/** Days after its cut within which a cover still feeds what follows; most comes in four to six weeks. House default. */
const COVER_FEEDS_DAYS = 90;
/** Kilograms a hectare in a gram a square metre. */
const KG_PER_HA = 10;

/** A crop's nitrogen for a season, all in g/m². */
export interface NitrogenBalance {
  need: number;
  soil: number;
  compost: number;
  legumes: number;
  /** What is short by the usual figures; nothing is added unless it is short with the best ones too. */
  short: number;
  shortAtBest: number;
  organicMatterPercent: number;
  measured: boolean;
}

/** Grams of nitrogen a square metre in a litre of compost to the square metre, a layer of 1 mm, in the first season. */
export function compostNitrogen(depthMm: number, available: number = AVAILABLE.usual): number {
  return depthMm * COMPOST_KG_PER_M3 * COMPOST_DRY * COMPOST_NITROGEN * available;
}

/** The balance of one crop in its bed. */
export function nitrogenBalance(input: PracticeInput, found: Findings, bed: Bed, span: CropSpan): NitrogenBalance {
  const measured = lastTest(input.garden, bed.id, ({ organicMatterPercent }) => organicMatterPercent);
  const organicMatterPercent = measured ?? UNTESTED_PERCENT;
  const depthMm = layerMm(input, bed, seasonOf(input.climate.seasonTurn, span.from));
  const need = (span.crop.nitrogenKgPerHa ?? 0) / KG_PER_HA;
  const soil = organicMatterPercent * NITROGEN_PER_PERCENT;
  const [compost, atBest] = [compostNitrogen(depthMm), compostNitrogen(depthMm, AVAILABLE.atBest)];
  const legumes = coverNitrogen(input, found, bed, span) + pulseNitrogen(input, bed, span);
  return {
    need,
    soil,
    compost,
    legumes,
    short: need - soil - compost - legumes,
    shortAtBest: need - soil - atBest - legumes,
    organicMatterPercent,
    measured: measured !== undefined,
  };
}

/** Compost on a bed for a season, mm: what was spread; else the household's layer, unless it was skipped. */
function layerMm({ garden, climate }: PracticeInput, bed: Bed, season: number): number {
  const spread = garden.topdressed.filter(
    ({ bedId, on, materialId }) => bedId === bed.id && materialId === undefined && seasonAfter(climate, on) === season,
  );
  if (spread.length > 0) return spread.reduce((sum, { litres }) => sum + litres, 0) / areaOf(bed);
  const keys = [springTopdressKey(bed.id, season), autumnTopdressKey(bed.id, season)];
  if (keys.some((key) => garden.skipped[key] !== undefined)) return 0;
  return bedLayer(garden, bed.id).depthMm;
}

/** Nitrogen of a legume cover cut shortly before the crop; a mix with cereals is counted as nothing (cover:S7). Ground that was seen bare gives none. */
function coverNitrogen({ garden }: PracticeInput, { coverStands }: Findings, bed: Bed, { from }: CropSpan): number {
  const fed = garden.stands.flatMap((stand) => {
    const { id, bedId, cutOn } = stand;
    const ends = cutOn ?? coverStands.find(({ standId }) => standId === id)?.ends;
    if (bedId !== bed.id || ends === undefined || ends > from || addDays(ends, COVER_FEEDS_DAYS) < from) return [];
    const covers = growingParts(stand).map(({ cover }) => cover);
    const share = coveredShare(stand) ?? 1;
    const whole = covers.map((cover) => cover.nitrogenKgPerHa?.low ?? 0);
    return covers.every(({ form }) => form === 'legume') ? whole.map((kgPerHa) => kgPerHa * share) : [];
  });
  return (Math.max(0, ...fed) / KG_PER_HA) * COVER_AVAILABLE;
}

/** Nitrogen of peas or beans that stood in the bed just before the crop. */
function pulseNitrogen({ garden, climate }: PracticeInput, bed: Bed, { from, planting }: CropSpan): number {
  const before = cropSpans(garden, bed.id, climate).findLast(
    (other) => other.planting.id !== planting.id && other.to !== undefined && other.to <= from,
  );
  if (before?.to === undefined || before.crop.nitrogen !== 'legume-fixer') return 0;
  return seasonOf(climate.seasonTurn, from) - seasonOf(climate.seasonTurn, before.to) <= 1 ? PULSE_NITROGEN : 0;
}
