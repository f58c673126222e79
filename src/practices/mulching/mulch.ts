/**
 * Mulch by the bed: how much of it, what to look out for, and what every task about it has in common.
 */
import type { Bed } from '../../garden/garden.ts';
import { quantity } from '../../measures/quantity.ts';
import { barrowLoads } from '../barrow.ts';
import { areaOf } from '../bed-timeline.ts';
import { MOULDY, WET_LEAVES } from '../cautions.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, ReasonSource, Supply } from '../draft.ts';
import { effortOverArea, MULCH_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import { mulchLitres } from '../mulch-layer.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';

/** The mulch to have at hand: either kind, unless one was chosen. */
export function mulchSupply(bed: Bed, depthMm: number, chosen?: 'leaves' | 'straw', share = 1): Supply {
  const litres = mulchLitres(bed, depthMm, share);
  return { what: chosen ?? 'leaves or straw', amount: { value: litres, unit: 'L' }, also: barrowLoads(litres) };
}

/** How the amount is reckoned, from whose depth. */
export function amountReason(rule: string, bed: Bed, depthMm: number, source: ReasonSource, share = 1): Reason {
  const areaM2 = Math.round(areaOf(bed) * share * 100) / 100;
  return { rule, saw: { areaM2, depthMm, litres: mulchLitres(bed, depthMm, share) }, source };
}

/** Litres and barrow loads in a step: "195 L, 3 barrow loads". */
export function mulchAmount(bed: Bed, depthMm: number, share = 1): string {
  const litres = mulchLitres(bed, depthMm, share);
  return `${quantity(litres, 'L')}, ${barrowLoads(litres)}, ${quantity(depthMm, 'mm')} deep`;
}

/** What can hurt where mulch is brought to a bed (straw and hay: compost:S33; dust and lifting: common practice). */
export const CARRYING_CAUTIONS: readonly string[] = [
  'Straw or hay of unknown history can carry weedkiller that ruins beans, peas and tomatoes: grow a few beans in a pot with some of it first.',
  MOULDY,
  WET_LEAVES,
];

/** The first of each kind: two crops side by side share one mulch. */
export function firstOfEach<T>(items: readonly T[], kindOf: (item: T) => string | number): T[] {
  return items.filter((item, i) => items.findIndex((other) => kindOf(other) === kindOf(item)) === i);
}

/** What every draft about mulch begins from. */
export const draftOnBed = ({ climate }: PracticeInput, bed: Bed) => ({
  practice: 'mulching' as const,
  subject: bedSubject(bed),
  weight: 'work' as const,
  cautions: [] as readonly string[],
  supplies: [] as readonly Supply[],
  effortMinutes: effortOverArea(areaOf(bed), MULCH_MINUTES_PER_M2),
  onceMinutes: START_UP_MINUTES,
  needs: [],
  confidence: knownAs(climate, 'derived'),
  makes: [],
});
