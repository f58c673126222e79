/**
 * An organic fertiliser for a hungry crop, where soil, compost and legumes do not give enough by any reckoning. It is
 * strewn as the crop goes in and rides along with that work.
 */

import type { Bed } from '../../garden/garden.ts';
import { bloodMeal, cottonseedMeal, gramsForNitrogen } from '../../handbook/fertilisers.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { areaOf, type CropSpan, cropSpans, isPermanent } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { STREW_MINUTES_PER_M2 } from '../effort.ts';
import type { Findings, PracticeInput } from '../practice.ts';
import { lastTest, VERY_HIGH_PHOSPHORUS_PPM } from '../soil-test.ts';
import { plantingSubject } from '../subjects.ts';
import { type NitrogenBalance, nitrogenBalance } from './nitrogen.ts';

/** Days about the crop's own day on which its meal is strewn. House default. */
const AROUND_DAYS = 7;
/** Depth a meal is raked into, mm: the surface, nothing is dug. House default. */
const RAKED_MM = 25;
/** Grams an amount is rounded to. House default: what a kitchen scale is read to. */
const ROUND_G = 10;

/** A meal for each hungry crop that would go short. */
export function feedDrafts(input: PracticeInput, found: Findings): TaskDraft[] {
  return input.garden.beds.flatMap((bed) =>
    cropSpans(input.garden, bed.id, input.climate)
      .filter(({ crop }) => crop.nitrogen === 'high' && crop.maturityFrom !== 'fall-set' && !isPermanent(crop))
      .flatMap((span) => {
        const balance = nitrogenBalance(input, found, bed, span);
        return balance.shortAtBest > 0 ? [feedDraft(input, bed, span, balance)] : [];
      }),
  );
}

function feedDraft(input: PracticeInput, bed: Bed, span: CropSpan, balance: NitrogenBalance): TaskDraft {
  const crop = span.crop.name.toLowerCase();
  const grams = gramsOver(bed, gramsForNitrogen(balance.short, bloodMeal));
  return {
    key: `feed/planting:${span.planting.id}`,
    practice: 'fertility',
    kind: 'feed-crop',
    job: { id: 'feed-crop', title: 'Strew a meal for hungry crops' },
    subject: plantingSubject(span.planting.id, crop, bed),
    weight: 'check',
    title: `Strew a meal for the ${crop} in ${bed.name}`,
    steps: steps(input, bed, balance, grams),
    cautions: [
      'Meals are dusty: strew low in still air, wear a mask, and keep the bag shut from dogs and rats.',
      'Raw manure is no quick feed: it lies 120 days before a harvest that touches soil, and 90 before any other.',
    ],
    supplies: [{ what: `${bloodMeal.name} (${bloodMeal.analysis})`, amount: { value: grams, unit: 'g' } }],
    window: {
      earliest: addDays(span.from, -AROUND_DAYS),
      preferred: span.from,
      latest: addDays(span.from, AROUND_DAYS),
    },
    ifMissed: 'still do',
    missedNote: 'Strew it round the plants instead, a hand off the stems, and water it in.',
    effortMinutes: Math.ceil(areaOf(bed) * STREW_MINUTES_PER_M2),
    needs: [],
    after: [],
    confidence: knownAs(input.climate, 'assumed'),
    reasons: reasons(span, balance),
    makes: [],
  };
}

/** Grams for a bed, never none. */
function gramsOver(bed: Bed, gPerM2: number): number {
  return Math.max(ROUND_G, Math.round((gPerM2 * areaOf(bed)) / ROUND_G) * ROUND_G);
}

function steps({ garden }: PracticeInput, bed: Bed, { short }: NitrogenBalance, grams: number): string[] {
  const phosphorus = lastTest(garden, bed.id, ({ phosphorusPpm }) => phosphorusPpm);
  const slower = gramsOver(bed, gramsForNitrogen(short, cottonseedMeal));
  return [
    `Strew ${quantity(grams, 'g')} of ${bloodMeal.name} over the bed and rake it into the top ${quantity(RAKED_MM, 'mm')}. Dig nothing in; water it.`,
    // Then only nitrogen is bought (veg:V59).
    phosphorus !== undefined && phosphorus >= VERY_HIGH_PHOSPHORUS_PPM
      ? 'The soil is very rich in phosphorus: use nothing that brings more of it.'
      : `Or ${quantity(slower, 'g')} of ${cottonseedMeal.name} (${cottonseedMeal.analysis}), which is slower.`,
  ];
}

function reasons({ crop }: CropSpan, balance: NitrogenBalance): Reason[] {
  const { need, soil, compost, legumes, short, organicMatterPercent: percent, measured } = balance;
  const [needGPerM2, soilGPerM2, compostGPerM2, legumesGPerM2, shortGPerM2] = [need, soil, compost, legumes, short].map(
    (value) => Math.round(value * 10) / 10,
  );
  return [
    {
      rule: 'feed.short',
      saw: {
        crop: crop.name.toLowerCase(),
        needGPerM2: needGPerM2 ?? 0,
        soilGPerM2: soilGPerM2 ?? 0,
        compostGPerM2: compostGPerM2 ?? 0,
        legumesGPerM2: legumesGPerM2 ?? 0,
        shortGPerM2: shortGPerM2 ?? 0,
      },
      source: originOf(crop, 'nitrogenKgPerHa'),
    },
    {
      rule: measured ? 'feed.soil-tested' : 'feed.soil-untested',
      saw: { percent },
      source: measured ? 'veg:V15' : 'house default',
    },
    { rule: 'feed.analysis', saw: { meal: bloodMeal.name, analysis: bloodMeal.analysis }, source: bloodMeal.source },
  ];
}
