/**
 * A test of the packets in their last year, before seed is ordered.
 */

import { originOf } from '../../handbook/shapes/row.ts';
import { addDays, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft, Window } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { DELIVERY_DAYS, doubtfulOf, type SeedNeed } from './seed-needs.ts';

/** Days a test takes: a look after a week and another after two (veg:V83). */
export const TEST_DAYS = 14;
/** Days before the last day for it that the test may be begun, and is best begun. House default. */
const AHEAD_DAYS = { first: 42, usual: 14 } as const;
/** Seeds laid out of each packet (veg:V83). */
const SEEDS = 10;
/** Sprouted of ten: as usual from here up (common practice); below the second, fresh seed (veg:V84: 40 % is poor). */
const SPROUTED = { well: 8, few: 5 } as const;
/** Warmth of a room that most seed sprouts in, °C: 70 °F (veg:V84). */
const ROOM_C = 21;
/** Minutes to lay the test out, and for each packet in it. House default. */
const MINUTES = { start: 10, packet: 4 } as const;

/** The task that tests a season's doubtful packets. */
export function seedTestKey(season: number): string {
  return `seed-test/garden/${season}`;
}

/**
 * The test of a season's doubtful packets, over before an order is due.
 *
 * @returns nothing where no packet is in its last year, or the time for a test was past when the garden was brought in
 */
export function seedTestDraft(
  { garden, climate }: PracticeInput,
  season: number,
  needs: readonly SeedNeed[],
  order: Window | undefined,
): TaskDraft | undefined {
  const doubtful = doubtfulOf(needs);
  const [first] = doubtful;
  if (first === undefined) return undefined;
  const latest = addDays(order?.latest ?? addDays(first.day, -DELIVERY_DAYS), -TEST_DAYS);
  if (latest < garden.startedOn) return undefined;
  const earliest = latestOf(addDays(latest, -AHEAD_DAYS.first), garden.startedOn);
  return {
    key: seedTestKey(season),
    practice: 'planting',
    kind: 'test-seed',
    job: { id: 'test-seed', title: 'Test old seed' },
    subject: gardenSubject(garden),
    weight: 'work',
    title: `Test old seed: ${doubtful.map(({ what }) => what).join(', ')}`,
    steps: testSteps(doubtful),
    cautions: [],
    supplies: [{ what: 'paper towels, bags and a pen' }],
    window: { earliest, preferred: latestOf(addDays(latest, -AHEAD_DAYS.usual), earliest), latest },
    ifMissed: 'replace',
    missedNote: 'Order these fresh as well, or sow them twice as thick and keep a spare packet.',
    effortMinutes: MINUTES.start + MINUTES.packet * doubtful.length,
    onceMinutes: MINUTES.start,
    needs: [],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [...doubtful.flatMap(lastYearReason), TEST_REASON],
    makes: [],
  };
}

function testSteps(doubtful: readonly SeedNeed[]): string[] {
  return [
    `In their last year: ${doubtful.map(({ what, packet, day }) => `${what} of ${packet?.packedYear}, for ${dated(day)}`).join('; ')}.`,
    `Lay ${SEEDS} seeds of each on damp paper, roll it up, bag it with its name, and keep it at about ${quantity(ROOM_C, 'tempC')}.`,
    'Count what has sprouted after a week and again after two; never let the paper dry.',
    `${SPROUTED.well} or more: sow as usual. ${SPROUTED.few} to ${SPROUTED.well - 1}: sow up to twice as thick. Fewer: put it on the order.`,
  ];
}

function lastYearReason({ what, packet }: SeedNeed): Reason[] {
  if (packet === undefined) return [];
  const { packedYear, ageYears, life } = packet;
  return [
    {
      rule: 'seed.last-year',
      saw: { crop: what, packedYear, ageYears },
      limit: life.years,
      source: originOf(life, 'years'),
    },
  ];
}

const TEST_REASON: Reason = {
  rule: 'seed.test',
  saw: { seeds: SEEDS, days: TEST_DAYS },
  source: 'veg:V83',
};
