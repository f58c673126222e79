/**
 * Whether a cover would come up and grow before hard cold, counted over the seasons of the record.
 */
import type { Climate } from '../../../climate/climate.ts';
import { type HeatBefore, heatLeftByMember, usualHeatLeft } from '../../../climate/heat-left.ts';
import { quantileType6 } from '../../../climate/quantiles.ts';
import { memory } from '../../../climate/remembered.ts';
import { heatNeedOf } from '../../../handbook/cover-heat.ts';
import type { CoverCrop, HeatNeed } from '../../../handbook/shapes/cover.ts';
import type { Day } from '../../../measures/days.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import type { SowingHalf } from '../sow-window.ts';
import type { Establishment, Share } from './fit.ts';

/** One part's heat, season by season. */
interface PartHeat {
  need: HeatNeed;
  /** Heat left by member; empty without a daily record. */
  left: readonly (number | 'unknown')[];
  /** Heat usually left, where there is none. */
  usual: number | undefined;
}

/**
 * The odds of a stand sown on a day before winter: in how many seasons every part finds soil to sprout in and the heat it
 * needs. Nothing for sowings of spring, which hard cold does not end, and where no part has a figure.
 */
export function establishment(
  { climate }: PracticeInput,
  parts: readonly CoverPart[],
  half: SowingHalf,
  sowOn: Day,
): Establishment | undefined {
  if (half === 'spring') return undefined;
  const name = `${parts.map(({ cover }) => cover.id).join('+')}/${sowOn}`;
  return established(climate, name, () => workedEstablishment(climate, parts, sowOn));
}

/** Every bed asks after the same sowings. */
const established = memory<Climate, string, Establishment | undefined>();

function workedEstablishment(climate: Climate, parts: readonly CoverPart[], sowOn: Day): Establishment | undefined {
  const heats = parts.flatMap(({ cover }): PartHeat[] => {
    const need = heatNeedOf(cover.id);
    if (need === undefined) return [];
    const ask = askOf(cover, need, sowOn);
    const left = heatLeftByMember(climate, ask);
    return [{ need, left, usual: left.length === 0 ? usualHeatLeft(climate, ask) : undefined }];
  });
  if (heats.length < parts.length) return undefined;
  const tightest = heats.reduce((a, b) => (spare(b) < spare(a) ? b : a));
  const leftUnits = middleOf(tightest);
  const { units, count, provenance, sources } = tightest.need;
  return {
    share: shareOf(heats),
    heatNeeded: { units, baseC: count.baseC, origin: { provenance, sources } },
    ...(leftUnits === undefined ? {} : { heatLeftUnits: Math.round(leftUnits) }),
  };
}

function askOf({ soilMinC }: CoverCrop, { count, freezeF }: HeatNeed, from: Day): HeatBefore {
  return { from, limitF: freezeF, count, ...(soilMinC === undefined ? {} : { soilMinC }) };
}

/** Share of the need that is left in the middle season: the part with the least decides. */
function spare(heat: PartHeat): number {
  return (middleOf(heat) ?? 0) / heat.need.units;
}

function middleOf({ left, usual }: PartHeat): number | undefined {
  const known = left.filter((units) => units !== 'unknown').sort((a, b) => a - b);
  return known.length === 0 ? usual : quantileType6(known, 0.5);
}

function shareOf(heats: readonly PartHeat[]): Share {
  const members = heats[0]?.left.length ?? 0;
  let [of, among] = [0, 0];
  for (let member = 0; member < members; member += 1) {
    const left = heats.map((heat) => ({ units: heat.left[member], needed: heat.need.units }));
    if (left.some(({ units }) => units === 'unknown')) continue;
    among += 1;
    if (left.every(({ units, needed }) => Number(units) >= needed)) of += 1;
  }
  return { of, among };
}
