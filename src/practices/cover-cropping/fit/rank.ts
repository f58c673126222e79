/**
 * From what is known of a choice to a verdict, an order, and the reasons for and against.
 *
 * A hard rule broken is unusable whatever the rest. The weights are house defaults: they say what counts with whom, and no
 * publication does. What does not apply to a choice counts as if it were well.
 */
import { normalShareBelow } from '../../../climate/quantiles.ts';
import { daysBetween } from '../../../measures/days.ts';
import type { StandNitrogen } from '../../stand-nitrogen.ts';
import type { Clash } from './clashes.ts';
import type { Establishment, FitCut, FitNext, Verdict, WinterOdds } from './fit.ts';

/** Points of a choice that does everything asked, by what is asked. House default. */
const WEIGHTS = {
  /** It comes up and grows before hard cold. */
  establishes: 30,
  /** What follows can go in on its day, with the whole wait. */
  nextMet: 20,
  /** It holds the ground until what follows: winter-killed kinds serve beds that are wanted early (cover:S2a). */
  holdsToNext: 15,
  /** Winter does surely to it what it was sown for. */
  winterSure: 15,
  /** It goes in as soon as the bed is free. */
  prompt: 25,
  /** The ground is not bare over winter: it holds it, or leaves time for a cover that does. */
  winterHeld: 25,
  /** It grows full. */
  growth: 10,
  /** It brings nitrogen to a crop that asks for much; half as much before another. What others only hold counts for nothing. */
  nitrogen: 20,
  /** It is not of legumes alone, which leave the ground thin for long (common practice). */
  dense: 10,
  /** It is no cabbage kin in a bed whose next crop nobody has chosen, which might be one. */
  freesNext: 10,
  /** It does not have to be finished under a sheet. */
  endsEasily: 10,
  /** It is no plant that stays or spreads where it is not wanted. */
  noWeed: 25,
} as const;

/** Days a bed may lie open before its cover for that to count for nothing, and to be good no more. House default. */
const PROMPT_DAYS = 60;
/** Days between a bed that is free again and its next crop from which holding the ground counts for nothing. House default. */
const IDLE_DAYS = 60;
/** Days of waiting that count against a choice as much as going in at once counts for it: a year. House default. */
const YEAR_DAYS = 365;
/** Share of a stand's nitrogen that is still there in spring where winter killed it. House default: no figure was seen. */
const LEFT_AFTER_WINTER = 0.5;
/** Nitrogen for the next crop that counts in full, g/m². House default: a hungry crop's need, about half (veg:V10). */
const FULL_NITROGEN_G_PER_M2 = 5;
/** What a chance counts where no figure is known. House default. */
const UNKNOWN_CHANCE = 0.5;
/** What a wait that is cut short counts. House default. */
const SHORT_COUNTS = 0.35;

/**
 * Spread of the heat left before hard cold from year to year where no seasons are counted, °C·days. Measured on the records
 * of Milwaukee and Bozeman, 1991–2020, for sowings of 10 August to 20 September: 81 to 143.
 */
const HEAT_LEFT_SPREAD = 120;

/** Shares of seasons from which a choice is good, is poor below, and has no chance below. House default. */
const CHANCE = { good: 0.8, poor: 0.5, none: 0.1 } as const;

/** Share of a full stand below which a cover has hardly been worth its seed. House default. */
export const LEAST_GROWN = 0.25;

/** The chance of establishing from which a sowing is well in time, and below which it is poor, 0–1. */
export const { good: GOOD_CHANCE, poor: POOR_CHANCE } = CHANCE;

/** Kinds that stay or spread where they are not wanted (annual ryegrass: cover:S24; the clovers: cover:S4d). */
const STAYS: ReadonlySet<string> = new Set(['white_clover', 'red_clover', 'annual_ryegrass']);

/** All that a verdict goes by. */
export interface Weighed {
  coverIds: readonly string[];
  clashes: readonly Clash[];
  inSpring: boolean;
  /** Whether its seed is strewn on frozen ground, of which none to six in ten come up (cover:S43). */
  onFrozenSoil: boolean;
  establish: Establishment | undefined;
  winter: WinterOdds | undefined;
  meantToDie: boolean;
  cut: FitCut | undefined;
  next: FitNext | undefined;
  nitrogen: StandNitrogen | undefined;
  hungryNext: boolean;
  /** Whether some part gathers nitrogen from the air. */
  fixes: boolean;
  /** Whether some part is no legume. */
  dense: boolean;
  winterHeld: boolean;
  /** Whether it keeps a family of crops out of a bed whose next crop nobody has chosen. */
  bindsNext: boolean;
  growsAgain: boolean;
  littleGrowth: boolean;
  /** How much of a full stand it grows, 0–1. */
  grown: number;
  /** Winters that go by over the open bed before it is sown. */
  wintersBare: number;
  /** Days the bed lies open in its season before it is sown. */
  openDays: number;
}

/** Whether a kind stays or spreads where it is not wanted. */
export function staysOn(coverId: string): boolean {
  return STAYS.has(coverId);
}

/** Chance of establishing, 0–1; nothing where no figure is known. */
export function chanceToEstablish({
  inSpring,
  onFrozenSoil,
  establish,
}: Pick<Weighed, 'inSpring' | 'onFrozenSoil' | 'establish'>): number | undefined {
  if (inSpring) return onFrozenSoil ? undefined : 1;
  if (establish === undefined) return undefined;
  const { share, heatNeeded, heatLeftUnits } = establish;
  if (share.among > 0) return share.of / share.among;
  if (heatNeeded === undefined || heatLeftUnits === undefined) return undefined;
  return normalShareBelow((heatLeftUnits - heatNeeded.units) / HEAT_LEFT_SPREAD);
}

/** The verdict: by hard rules, then by chances. */
export function verdictOf(weighed: Weighed): Verdict {
  const chance = chanceToEstablish(weighed);
  const { clashes, next, winter, littleGrowth, coverIds } = weighed;
  if (clashes.some(({ forbids }) => forbids) || next?.met === 'no') return 'unusable';
  if (chance !== undefined && chance < CHANCE.none) return 'unusable';
  if (next?.met === 'short' || littleGrowth || weighed.grown < LEAST_GROWN || (chance ?? 1) < CHANCE.poor)
    return 'poor';
  const sure = chance !== undefined && chance >= CHANCE.good && winter?.fate !== 'unsure';
  const wellPlaced = weighed.openDays <= PROMPT_DAYS && weighed.winterHeld;
  return sure && wellPlaced && !coverIds.some(staysOn) ? 'good' : 'possible';
}

/** Points within a verdict: the higher the sooner it is named. */
export function pointsOf(weighed: Weighed): number {
  const { next, growsAgain, grown, openDays, coverIds } = weighed;
  const points =
    WEIGHTS.establishes * (chanceToEstablish(weighed) ?? UNKNOWN_CHANCE) +
    WEIGHTS.nextMet * (next === undefined || next.met === 'yes' ? 1 : next.met === 'short' ? SHORT_COUNTS : 0) +
    WEIGHTS.holdsToNext * (1 - Math.min(1, idleDays(next) / IDLE_DAYS)) +
    WEIGHTS.winterSure * winterAsMeant(weighed) +
    WEIGHTS.prompt * promptness(openDays) +
    WEIGHTS.winterHeld * (weighed.winterHeld ? 1 : 0) +
    WEIGHTS.growth * grown +
    WEIGHTS.dense * (weighed.dense ? 1 : 0) +
    WEIGHTS.nitrogen * nitrogenCounts(weighed) +
    WEIGHTS.freesNext * (weighed.bindsNext ? 0 : 1) +
    WEIGHTS.endsEasily * (growsAgain ? 0 : 1) +
    WEIGHTS.noWeed * (coverIds.some(staysOn) ? 0 : 1);
  return Math.round(points * 10) / 10;
}

/** Days a bed is free after its cover before what follows goes in. */
export function idleDays(next: FitNext | undefined): number {
  return next?.wantedOn === undefined ? 0 : Math.max(0, daysBetween(next.freeOn, next.wantedOn));
}

/** In full where the bed is sown at once, nothing after {@link PROMPT_DAYS}, and ever less the longer it waits. */
function promptness(openDays: number): number {
  return 1 - Math.min(1, openDays / PROMPT_DAYS) - Math.min(1, openDays / YEAR_DAYS);
}

function nitrogenCounts({ nitrogen, hungryNext, fixes, winter }: Weighed): number {
  if (nitrogen === undefined) return 0;
  const { low, high } = nitrogen.availableGPerM2;
  const left = winter?.fate === 'dies' ? LEFT_AFTER_WINTER : 1;
  const middle = (left * (low + high)) / 2;
  if (middle > 0 && !fixes) return 0;
  return (hungryNext ? 1 : 0.5) * Math.max(-1, Math.min(1, middle / FULL_NITROGEN_G_PER_M2));
}

/** Share of winters that do what the cover was sown for, open ones counted by half. */
export function winterAsMeant({ winter, meantToDie }: Pick<Weighed, 'winter' | 'meantToDie'>): number {
  if (winter === undefined) return 1;
  const { lives, unsure, dies, fate } = winter;
  const meant = meantToDie ? dies : lives;
  if (meant.among > 0) return (meant.of + unsure.of / 2) / meant.among;
  if (fate === 'unsure') return UNKNOWN_CHANCE;
  return (fate === 'dies') === meantToDie ? 1 : 0;
}
