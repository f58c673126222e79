/**
 * The beginning of a stand's life: order seed, sow, look whether it is up.
 */
import { addDays, type Day } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { type CoverPart, coverName, sowingDepthCm } from '../covers.ts';
import type { TaskDraft } from '../draft.ts';
import { effortOverArea, LOOK_MINUTES, ORDER_MINUTES, SOW_COVER_MINUTES_PER_M2 } from '../effort.ts';
import { sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { livesThroughWinter } from './bloom.ts';
import { seedAmounts, seedReasons, seedSupplies } from './seed.ts';
import type { SowWindow } from './sow-window.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Weeks ahead of sowing that seed is ordered. House default: a week to decide, two for the post. */
const ORDER_WEEKS = { first: 5, last: 2 } as const;
/** Days after sowing at which a stand is looked at: slow kinds are up within three weeks in cool soil. House default. */
const CHECK_DAYS = { low: 14, high: 21 } as const;

/** Order the seed of a stand in time for its sowing. */
export function orderDraft(input: PracticeInput, at: StandInBed, sow: SowWindow): TaskDraft {
  const name = coverName(at.stand.coverId);
  const seed = seedAmounts(at.parts, areaOf(at.bed), sow.window.preferred, input.climate);
  const latest = addDays(sow.window.earliest, -7 * ORDER_WEEKS.last);
  const earliest = addDays(sow.window.earliest, -7 * ORDER_WEEKS.first);
  return {
    ...draftOfStand(at),
    key: `cover-order/stand:${at.stand.id}`,
    kind: 'order-cover-seed',
    job: { id: `order-cover-seed:${at.stand.coverId}`, title: `Order ${name} seed` },
    weight: 'deadline',
    title: `Order ${name} seed for ${at.bed.name}`,
    steps: [
      ...seed.map(({ part, grams }) => `${part.cover.name}: ${quantity(grams, 'g')}.`),
      `It is wanted from ${dated(sow.window.earliest)}. Look first at what is left in the tin; seed kept dry lasts a year or two.`,
    ],
    cautions: [],
    supplies: seedSupplies(seed),
    window: { earliest, preferred: earliest, latest },
    ifMissed: 'still do',
    missedNote: 'Buy locally, or sow what you have: a thin cover beats bare soil.',
    effortMinutes: ORDER_MINUTES,
    reasons: [
      {
        rule: 'cover-order.lead',
        saw: { sow: sow.window.earliest, weeksFirst: ORDER_WEEKS.first, weeksLast: ORDER_WEEKS.last },
        limit: latest,
        source: 'house default',
      },
    ],
  };
}

/** Sow a stand. `sow` is its window already held inside the bed's gap. */
export function sowDraft(
  input: PracticeInput,
  at: StandInBed,
  sow: SowWindow,
  after: TaskDraft['after'],
  why: TaskDraft['reasons'],
): TaskDraft {
  const name = coverName(at.stand.coverId);
  const area = areaOf(at.bed);
  const seed = seedAmounts(at.parts, area, sow.window.preferred, input.climate);
  return {
    ...draftOfStand(at),
    key: sowKey(at.stand.id),
    kind: 'sow-cover',
    job: { id: `sow-cover:${at.stand.coverId}`, title: `Sow ${name}` },
    weight: 'work',
    title: `Sow ${name} in ${at.bed.name}`,
    steps: sowSteps(
      at,
      seed.map(({ part, grams }) => `${part.cover.name}: ${quantity(grams, 'g')}`),
      input,
    ),
    cautions: at.parts.flatMap(({ cover }) => cover.cautions),
    supplies: [...seedSupplies(seed), { what: 'rake' }],
    window: sow.window,
    ifMissed: 'replace',
    missedNote: 'Too late for this cover: lay leaves or straw on the bed instead, or sow rye up to the first freeze.',
    effortMinutes: effortOverArea(area, SOW_COVER_MINUTES_PER_M2),
    needs: ['dry-day'],
    after,
    reasons: [...why, ...sow.reasons, ...seedReasons(seed, area)],
    makes: [{ makes: 'stand-sown', standId: at.stand.id, bedId: at.bed.id, coverId: at.stand.coverId }],
  };
}

function sowSteps(at: StandInBed, amounts: readonly string[], input: PracticeInput): string[] {
  const depth = sowingDepthCm(at.parts);
  const legumes = at.parts.some(({ cover }) => cover.inoculant !== undefined);
  return [
    `Weigh out the seed. ${amounts.join('; ')}.`,
    ...(legumes ? ['Damp the legume seed and roll it in its inoculant just before sowing.'] : []),
    'Scatter half of it walking one way and half crossing it.',
    `Rake it in ${quantity(depth.low, 'cm')} to ${quantity(depth.high, 'cm')} deep and firm with the back of the rake.`,
    at.bed.watered
      ? 'Water it in, and keep the surface damp until it is up.'
      : 'Sow before rain if you can; in dry weather keep the surface damp with a can until it is up.',
    ...(at.parts.some(({ cover }) => livesThroughWinter(cover, input.climate)) ? [] : [endOfCover(at.parts)]),
  ];
}

function endOfCover(parts: readonly CoverPart[]): string {
  const frost = parts.every(({ cover }) => cover.frostTender);
  return `${frost ? 'The first freeze' : 'Winter'} finishes this cover; nothing has to be killed in spring.`;
}

/** Look whether a new stand has come up. */
export function checkDraft(at: StandInBed, sown: Day, sowIsDone: boolean): TaskDraft {
  const name = coverName(at.stand.coverId);
  const earliest = addDays(sown, CHECK_DAYS.low);
  return {
    ...draftOfStand(at),
    key: `cover-check/stand:${at.stand.id}`,
    kind: 'check-stand',
    job: { id: 'check-stand', title: 'Check that the cover is up' },
    weight: 'check',
    title: `Check that the ${name} in ${at.bed.name} is up`,
    steps: [
      'Stand over the bed and judge how much of the ground shows green.',
      'Less than half: scatter seed again while its sowing window is open, or lay leaves over the bare places.',
    ],
    cautions: [],
    supplies: [],
    window: { earliest, preferred: earliest, latest: addDays(sown, CHECK_DAYS.high) },
    ifMissed: 'drop',
    missedNote: 'Nothing is lost but the chance to sow again in time.',
    effortMinutes: LOOK_MINUTES,
    after: sowIsDone ? [] : [{ key: sowKey(at.stand.id), minDays: CHECK_DAYS.low }],
    reasons: [
      {
        rule: 'cover-check.emergence',
        saw: { sown, daysLow: CHECK_DAYS.low, daysHigh: CHECK_DAYS.high },
        source: 'house default',
      },
    ],
  };
}
