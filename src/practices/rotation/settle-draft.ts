/**
 * Settling next season's plan: before the covers that depend on it, and before seed is ordered for it.
 */

import { freezeDay, freezeOdds } from '../../climate/freeze.ts';
import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, clampDay, type Day, earliestOf } from '../../measures/days.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { freezeWords } from '../odds-of.ts';
import type { PracticeInput } from '../practice.ts';
import { midwinterAfter, seasonName } from '../seasons.ts';
import { gardenSubject } from '../subjects.ts';
import { type BedReview, bedReviews } from './bed-review.ts';
import { settleSteps, unknownBeds, YEARLY_WAITS } from './settle-steps.ts';

/** Weeks before the median first freeze in which the plan is settled: most covers of autumn go in from eight on (oats, cover:S4c). House default. */
const SETTLE_WEEKS = { first: 12, usual: 9 } as const;
/** Minutes to settle a plan, and for each bed of it. House default. */
const SETTLE_MINUTES = { start: 20, bed: 3 } as const;

/** The task that settles a season's plan, in the autumn before it; nothing where no freeze is known to date it by. */
export function settleDrafts(input: PracticeInput, season: number): TaskDraft[] {
  const { garden, climate } = input;
  const freeze = medianFreeze(input, season - 1, 32);
  if (freeze === undefined || garden.beds.length === 0) return [];
  const reviews = bedReviews(input, season);
  const earliest = addDays(freeze, -7 * SETTLE_WEEKS.first);
  const latest = lastDay(input, season, freeze);
  return [
    {
      key: `settle-plan/garden/${season}`,
      practice: 'rotation',
      kind: 'settle-plan',
      job: { id: 'settle-plan', title: 'Settle the plan' },
      subject: gardenSubject(garden),
      weight: 'work',
      title: `Settle the plan for ${seasonName(climate, season)}: which crop in which bed`,
      steps: settleSteps(reviews, climate, season),
      cautions: [],
      supplies: [{ what: 'the plan of the beds, and what you noted in the year' }],
      window: { earliest, preferred: clampDay(addDays(freeze, -7 * SETTLE_WEEKS.usual), earliest, latest), latest },
      ifMissed: 'still do',
      missedNote: 'Covers are then sown without knowing what follows, and seed is ordered by guess.',
      effortMinutes: SETTLE_MINUTES.start + SETTLE_MINUTES.bed * reviews.length,
      needs: [],
      after: [],
      confidence: knownAs(climate, 'derived'),
      odds: freezeOdds(climate, { event: 'first-autumn', limitF: 32, season: season - 1 }),
      oddsOf: freezeWords({ event: 'first-autumn', limitF: 32 }),
      reasons: [
        {
          rule: 'settle.before-covers',
          saw: {
            freeze,
            weeks: SETTLE_WEEKS.first,
            ...(latest === medianFreeze(input, season - 1, 24) ? { hard: 'yes' } : {}),
          },
          limit: latest,
          source: 'house default',
        },
        ...bedReasons(input, reviews, season),
      ],
      makes: [],
    },
  ];
}

function medianFreeze({ climate }: PracticeInput, season: number, limitF: 32 | 24): Day | undefined {
  return freezeDay(climate, { event: 'first-autumn', limitF, season, chancePercent: 50 });
}

/** The hard freeze that ends the garden's year, or the middle of winter where none does. */
function lastDay(input: PracticeInput, season: number, freeze: Day): Day {
  const midwinter = addDays(midwinterAfter(input.climate, freeze), -1);
  return earliestOf(medianFreeze(input, season - 1, 24) ?? midwinter, midwinter);
}

function bedReasons({ climate }: PracticeInput, reviews: readonly BedReview[], season: number): Reason[] {
  const unknown = unknownBeds(reviews, season);
  return [
    {
      rule: 'settle.intervals',
      saw: { yearsLow: Math.min(...YEARLY_WAITS), yearsHigh: Math.max(...YEARLY_WAITS) },
      source: 'veg:V36',
    },
    ...reviews.flatMap(returnReasons),
    ...(reviews.some(({ hungry }) => hungry) ? [FEEDING_ORDER] : []),
    ...(unknown.length === 0
      ? []
      : [
          {
            rule: 'settle.history',
            saw: { beds: unknown.length, season: seasonName(climate, season) },
            source: "the garden's own plan",
          } as const,
        ]),
  ];
}

const FEEDING_ORDER: Reason = { rule: 'settle.legume-first', saw: {}, source: 'from memory' };

function returnReasons({ bed, returns }: BedReview): Reason[] {
  return returns.map(({ next, before, years }) => ({
    rule: 'settle.returns',
    saw: { bed: bed.name, next: next.crop.name.toLowerCase(), before: before.crop.name.toLowerCase(), years },
    limit: next.crop.rotationYears,
    source: originOf(next.crop, 'rotationYears'),
  }));
}
