/**
 * What cold does to covers: published limits, and remembered ones marked so.
 *
 * Warmer than a limit's warm end the plant lives, colder than its cold end it is dead, between the two nobody can
 * say. For cereals the temperature is that of the crown, the growing point at the ground, which snow of 5 cm or more
 * keeps far warmer than the air; for the others it is mostly that of the air.
 *
 * Left out: settings of crop models (they would kill rye in zone 5 every year), figures for a related plant (perennial
 * for annual ryegrass; barley and mustard lean on their kin all the same) and for breeding lines (winter favas).
 */
import type { ColdLimit, CoverCrop } from './shapes/cover.ts';
import { type Provenance, provenanceOf, type SourceId, type Span } from './shapes/row.ts';

type Measure = ColdLimit['measure'];

/** A published limit of plants hardened by autumn; `coldC` is the colder end. */
function limit(
  coverId: string,
  measure: Measure,
  [coldC, warmC]: readonly [number, number],
  condition: string,
  ...sources: SourceId[]
): ColdLimit {
  return { coverId, measure, tempC: { low: coldC, high: warmC }, condition, provenance: 'published', sources };
}

/** Every limit, by cover. */
export const coldLimits: readonly ColdLimit[] = [
  limit('cereal_rye', 'lethal', [-35, -35], 'established plants', 'cover:S28'),
  recalled(limit('cereal_rye', 'half killed', [-30, -25], 'hardy kinds, fully hardened')),

  limit(
    'winter_wheat',
    'half killed',
    [-20.6, -10.2],
    'plants dug in autumn in Ontario, several kinds',
    'phenology:P43',
  ),
  limit('winter_wheat', 'lethal', [-20, -20], 'well hardened, crown 3–5 cm deep', 'phenology:P40'),
  limit('winter_wheat', 'lethal', [-16, -16], 'less hardened kinds, crown 3–5 cm deep', 'phenology:P40'),
  quoted(limit('winter_wheat', 'injury', [-20, -20], 'the hardiest northern kinds', 'phenology:P42')),
  quoted(limit('winter_wheat', 'injury', [-10, -10], 'kinds bred in the south', 'phenology:P42')),
  {
    ...limit('winter_wheat', 'lethal', [-3, -3], 'a hardy kind in early September', 'phenology:P41'),
    plants: 'not yet hardened',
  },
  limit('winter_wheat', 'lethal', [-19, -19], 'the same kind at the end of October', 'phenology:P41'),
  limit('winter_wheat', 'injury', [-5, -5], 'held frozen for fifteen weeks: up to all plants lost', 'phenology:P45'),

  recalled(limit('triticale', 'half killed', [-22, -18], 'hardy winter kinds, hardened')),

  quoted(limit('barley', 'injury', [-4, -2], 'any small grain once its stems lengthen', 'phenology:P46')),

  limit('oats', 'mostly alive', [-8.3, -8.3], 'down to here in central Pennsylvania', 'cover:S20'),
  recalled(limit('oats', 'lethal', [-12, -9], 'hardened spring oats')),

  assumed(limit('barley', 'mostly alive', [-8.3, -8.3], 'spring barley, by oats', 'cover:S20')),
  recalled(limit('barley', 'lethal', [-12, -9], 'spring barley, by oats')),

  recalled(limit('annual_ryegrass', 'lethal', [-15, -10], 'hardened plants')),

  limit('buckwheat', 'lethal', [-2, 0], 'the first hard frost at the latest', 'cover:S5'),
  limit('sorghum_sudangrass', 'lethal', [-5, -5], 'all dead afterwards in Pennsylvania', 'cover:S20'),
  limit('cowpea', 'lethal', [-5, -5], 'all dead afterwards in Pennsylvania', 'cover:S20'),

  {
    ...limit('field_pea', 'half killed', [-4.5, -4.5], 'one to four weeks old, a short freeze', 'phenology:P47'),
    plants: 'seedlings',
  },
  limit('field_pea', 'injury', [-4, -4], 'spring frosts; it sprouts again from buried joints', 'phenology:P55'),

  limit('austrian_winter_pea', 'injury', [-12.2, -12.2], 'tops hurt, plants can go on', 'cover:S2d', 'phenology:P34'),
  limit('austrian_winter_pea', 'lethal', [-7.8, -7.8], 'long cold with no snow', 'cover:S2d', 'phenology:P34'),

  limit('hairy_vetch', 'half killed', [-16, -8.4], 'thirty seed origins, hardiest to tenderest', 'phenology:P48'),
  limit('hairy_vetch', 'lethal', [-15, -15], 'hard freeze with no snow', 'phenology:P34'),

  recalled(limit('crimson_clover', 'lethal', [-18, -12], 'hardened rosettes with no snow')),
  {
    ...limit('red_clover', 'half killed', [-7.4, -6.3], 'one to four weeks old, range over kinds', 'phenology:P47'),
    plants: 'seedlings',
  },
  {
    ...limit('white_clover', 'half killed', [-7.4, -6.3], 'one to four weeks old, range over kinds', 'phenology:P47'),
    plants: 'seedlings',
  },
  {
    ...limit(
      'white_clover',
      'injury',
      [-16, -12],
      'five to six months old; large-leaved kinds tender',
      'phenology:P50',
    ),
    plants: 'seedlings',
  },
  quoted(limit('berseem_clover', 'lethal', [-7, -7], 'most plants, after several days of it', 'phenology:P60')),

  recalled(limit('fava_bell_bean', 'lethal', [-9.4, -9.4], 'garden kinds')),
  {
    ...quoted(
      limit('fava_bell_bean', 'lethal', [-10, -10], 'autumn sowing at sprouting, little snow', 'phenology:P52'),
    ),
    plants: 'seedlings',
  },

  limit('oilseed_radish', 'lethal', [-8.3, -6.7], 'large plants', 'cover:S16'),
  {
    ...limit('oilseed_radish', 'lethal', [-12, -7], 'smaller and later plants', 'phenology:P58'),
    plants: 'small and late',
  },
  limit('oilseed_radish', 'injury', [-4, -4], 'no freeze milder than this does anything', 'cover:S21'),
  limit('mustard', 'mostly alive', [-8.3, -8.3], 'most of its family, in central Pennsylvania', 'cover:S20'),
  assumed(limit('mustard', 'lethal', [-12, -7], 'by radish of its family, in Maryland', 'phenology:P58')),

  recalled(limit('phacelia', 'lethal', [-8, -7], 'autumn plants')),
];

function recalled(row: ColdLimit): ColdLimit {
  return { ...row, provenance: 'from memory' };
}

/** Carried over from a related kind. */
function assumed(row: ColdLimit): ColdLimit {
  return { ...row, provenance: 'house default' };
}

function quoted(row: ColdLimit): ColdLimit {
  return { ...row, provenance: 'secondary' };
}

/** Between what and what a cover dies of cold, and how well that is known. */
export interface LethalRange {
  tempC: Span;
  provenance: Provenance;
  sources: readonly SourceId[];
}

/** What is asked first for a range: a figure that was read, then one that was quoted, then what is recalled. */
const BEST_FIRST: readonly Provenance[] = [
  'published',
  'secondary',
  'derived',
  'common practice',
  'from memory',
  'house default',
];

/**
 * The temperatures between which a cover that was sown in time dies: its best known limits together with the killing
 * temperature of its row where that is known as well. Injuries, seedlings and late plants are left out. A figure down to
 * which a kind was seen mostly alive is the warm end and no more: what kills it lies somewhere below.
 *
 * @returns nothing where no limit is known
 */
export function lethalRange(cover: CoverCrop): LethalRange | undefined {
  const ofKind = coldLimits.filter(({ coverId, plants }) => coverId === cover.id && !plants);
  const alive = ofKind.filter(({ measure }) => measure === 'mostly alive');
  const lethal: LethalRange[] = ofKind.filter(({ measure }) => measure === 'lethal' || measure === 'half killed');
  if (alive.length === 0) return bestOf([...lethal, ...ownLimit(cover)]);
  const killed = bestOf(lethal);
  const high = Math.min(...alive.map(({ tempC }) => tempC.low));
  return killed && { ...killed, tempC: { low: Math.min(killed.tempC.low, high), high } };
}

/** The killing temperature of a cover's own row. */
function ownLimit(cover: CoverCrop): LethalRange[] {
  if (cover.winterKillC === undefined) return [];
  const sources = [cover.readIn?.winterKillC ?? cover.sources[0]].flatMap((id) => id ?? []);
  const tempC = { low: cover.winterKillC, high: cover.winterKillC };
  return [{ tempC, provenance: provenanceOf(cover, 'winterKillC'), sources }];
}

/** The span of those that are known best. */
function bestOf(known: readonly LethalRange[]): LethalRange | undefined {
  const best = BEST_FIRST.find((kind) => known.some(({ provenance }) => provenance === kind));
  const rows = known.filter(({ provenance }) => provenance === best);
  if (best === undefined) return undefined;
  return {
    tempC: {
      low: Math.min(...rows.map(({ tempC }) => tempC.low)),
      high: Math.max(...rows.map(({ tempC }) => tempC.high)),
    },
    provenance: best,
    sources:
      best === 'from memory' || best === 'house default' ? [] : [...new Set(rows.flatMap(({ sources }) => sources))],
  };
}
