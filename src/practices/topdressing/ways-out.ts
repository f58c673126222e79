/**
 * What can be done where compost goes short: spread thinner, begin a pile, or buy.
 */
import type { Garden } from '../../garden/garden.ts';
import { daysBetween } from '../../measures/days.ts';
import { LITRES_PER_CUBIC_FOOT } from '../../measures/units.ts';
import { barrowLoads } from '../barrow.ts';
import { areaOf } from '../bed-timeline.ts';
import type { WaysOut } from '../compost-balance.ts';
import { COMPOST_KG_PER_M3 } from '../compost-layer.ts';
import type { Findings, NewPile, PracticeInput } from '../practice.ts';
import type { Shortage } from './shortage.ts';

/** Litres in a bag as it is sold: a cubic foot, or 40 litres where litres are read. House default. */
export const BAG_LITRES = { us: LITRES_PER_CUBIC_FOOT, metric: 40 } as const;
/** Litres a new pile is rounded up to. House default. */
const ROUND_PILE_LITRES = 50;

/** Every way out of a shortage that is open today. */
export function waysOut(input: PracticeInput, { newPile }: Findings, shortage: Shortage): WaysOut {
  const { short, beds, need, lacking, litres } = shortage;
  const bagLitres = BAG_LITRES[input.garden.place.units];
  return {
    thinner: short.map(({ bed, layer, fromBins }) => ({
      bedName: bed.name,
      depthMm: Math.floor(fromBins / areaOf(bed)),
      insteadMm: layer.depthMm,
    })),
    evenPercent: beds.length === 0 ? 0 : Math.floor((100 * Math.max(0, need - lacking)) / need),
    ...pileInTime(input, newPile, shortage),
    buy: {
      litres,
      bags: Math.ceil(litres / bagLitres - 1e-9),
      bagLitres,
      kg: Math.round((litres / 1000) * COMPOST_KG_PER_M3),
      barrows: barrowLoads(litres),
    },
  };
}

/** A pile in time for the first bed that goes short, else for the last of them. */
function pileInTime(
  { garden, today }: PracticeInput,
  newPile: Findings['newPile'],
  { short, day, lacking }: Shortage,
): Pick<WaysOut, 'pile'> {
  if (newPile === undefined) return {};
  const lasts = [day, ...short.map(({ window }) => window.latest).sort()];
  for (const readyBy of [lasts[0], lasts.at(-1)]) {
    if (readyBy === undefined) continue;
    const startBy = newPile.startBy(readyBy);
    if (startBy === undefined || daysBetween(today, startBy) < 0) continue;
    return { pile: { litres: newPileLitres(newPile, lacking, garden.bins), startBy, readyBy } };
  }
  return {};
}

/** Litres to gather for a pile that gives so many litres of compost: never more than the bins hold, where there are any. */
export function newPileLitres({ litresFor }: NewPile, compostLitres: number, bins: Garden['bins']): number {
  const wanted = Math.ceil(litresFor(compostLitres) / ROUND_PILE_LITRES) * ROUND_PILE_LITRES;
  const room = bins.reduce((sum, { volumeL }) => sum + volumeL, 0);
  return room > 0 ? Math.min(wanted, room) : wanted;
}
