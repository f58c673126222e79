/**
 * When a stand would flower and at what odds; or that nobody has published it, and from when to look for buds.
 */
import { freezeDay } from '../../../climate/freeze.ts';
import { normalShareBelow } from '../../../climate/quantiles.ts';
import { seasonOf } from '../../../climate/season.ts';
import type { CoverCrop } from '../../../handbook/shapes/cover.ts';
import { addDays, type Day, daysBetween, earliestOf } from '../../../measures/days.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { midwinterAfter, soilAwake } from '../../seasons.ts';
import { bloomClose } from '../bloom.ts';
import { type BloomClose, bloomModelOf, deviationsBefore, givesOdds } from '../bloom-figure.ts';
import { situationOf, standsAt } from '../winter.ts';
import type { BloomFigure, FitBloom, PartBloom } from './fit.ts';

/** Risks that are told beside the garden's own, percent. House default. */
const TOLD_PERCENT = [5, 10, 20] as const;

/** Days after sowing from which buds are looked for where there is no figure. House default, as for cowpea. */
const LOOK_DAYS = 40;
/** Days after the soil wakes from which they are looked for in a stand that wintered. House default. */
const LOOK_AFTER_WAKING_DAYS = 30;
/** Days before a remembered or chosen date from which they are looked for (phenology, section 3: the look before close). */
const LOOK_BEFORE_DAYS = 7;

/** Kinds that do not flower from a sowing of that time: cereals that want a winter first. */
const NEVER_FROM_SPRING: ReadonlySet<string> = new Set(['cereal_rye', 'winter_wheat', 'triticale']);

/**
 * The flowers of a stand sown on a day: of its parts' figures the one that asks for the earliest cut, unless a part
 * without a figure has to be looked at before that.
 *
 * @param cutBy the end of its cut window, where it is cut
 * @returns nothing where frost or winter ends it before it could flower
 */
export function bloomOdds(
  input: PracticeInput,
  parts: readonly CoverPart[],
  sown: Day,
  cutBy: Day | undefined,
): FitBloom | undefined {
  const each = parts
    .flatMap((part) =>
      partBloom(input, part, sown, cutBy).map((bloom) => ({ cover: part.cover.name.toLowerCase(), bloom })),
    )
    .sort((a, b) => (heedFrom(a.bloom) < heedFrom(b.bloom) ? -1 : 1));
  const [first] = each;
  return first && { ...first.bloom, ...(each.length > 1 ? { parts: each } : {}) };
}

function heedFrom(bloom: PartBloom): Day {
  return 'none' in bloom ? bloom.lookFrom : bloom.close;
}

function partBloom(input: PracticeInput, part: CoverPart, sown: Day, cutBy: Day | undefined): PartBloom[] {
  const { cover } = part;
  const found = bloomClose([part], sown, input);
  if (found !== undefined && (givesOdds(found.model) || found.model.byZone !== undefined)) {
    return [figure(input, found, cutBy)];
  }
  if (found === undefined && bloomModelOf(cover, sown, input) !== undefined) return [];
  const lookFrom = found === undefined ? unknownFrom(cover, input, sown) : addDays(found.close, -LOOK_BEFORE_DAYS);
  return lookFrom === undefined ? [] : [{ none: 'no published bloom figure', lookFrom }];
}

function figure(
  input: PracticeInput,
  { close, flowers, inFlower, expected, model }: BloomClose,
  cutBy: Day | undefined,
): BloomFigure {
  const { closingEvent, provenance, sources, byZone } = model;
  const odds = expected !== undefined && byZone === undefined;
  return {
    close,
    event: closingEvent,
    ...(flowers === undefined ? {} : { median: flowers }),
    ...(inFlower && expected ? { seed: expected.day } : {}),
    byRisk: odds ? risks(expected, input.garden.place.bloomRiskPercent) : [],
    ...(odds && cutBy !== undefined ? { riskAtCut: riskOn(cutBy, expected) } : {}),
    origin: { provenance, sources },
  };
}

function risks(expected: NonNullable<BloomClose['expected']>, own: number): BloomFigure['byRisk'] {
  const { day, deviationDays } = expected;
  const told = [...new Set([...TOLD_PERCENT, own])].sort((a, b) => a - b);
  return told.map((percent) => ({ percent, close: addDays(day, -deviationsBefore(percent) * deviationDays) }));
}

function riskOn(cutBy: Day, { day, deviationDays }: NonNullable<BloomClose['expected']>): number {
  return normalShareBelow(daysBetween(day, cutBy) / deviationDays);
}

/** The day to look from where nothing at all is known; nothing where the stand is dead by then or never flowers. */
function unknownFrom(cover: CoverCrop, input: PracticeInput, sown: Day): Day | undefined {
  const { climate } = input;
  const situation = situationOf(cover, sown, input);
  const season = seasonOf(climate.seasonTurn, sown);
  if (situation === 'overwintered') {
    const awake = soilAwake(climate, season + 1);
    return awake === undefined ? undefined : addDays(awake, LOOK_AFTER_WAKING_DAYS);
  }
  if (situation === 'spring-sown' && NEVER_FROM_SPRING.has(cover.id)) return undefined;
  const from = addDays(sown, LOOK_DAYS);
  const freeze = freezeDay(climate, {
    event: 'first-autumn',
    limitF: cover.frostTender ? 32 : 28,
    season,
    chancePercent: 50,
  });
  const over = earliestOf(freeze ?? midwinterAfter(climate, sown), midwinterAfter(climate, sown));
  return from < over && standsAt(cover, sown, from, input) ? from : undefined;
}
