/**
 * The beginning of a stand's life: order seed, sow, look whether it is up.
 */
import { cautionsAt } from '../../handbook/shapes/cautions.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import type { Reason, TaskDraft, TaskKey, Window } from '../draft.ts';
import { effortOverArea, LOOK_MINUTES, ORDER_MINUTES, SOW_COVER_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import { sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { seedAmounts, seedReasons, seedSown, seedSupplies } from './seed.ts';
import { sowSteps, tooLateNote } from './sow-steps.ts';
import type { SowWindow } from './sow-window.ts';
import { sownDensity } from './sown-density.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Weeks ahead of sowing that seed is ordered. House default: a week to decide, two for the post. */
const ORDER_WEEKS = { first: 5, last: 2 } as const;
/** Days an order that was due before the garden was brought in stays open. House default. */
const LATE_ORDER_DAYS = 3;
/** Days after sowing at which a stand is looked at: slow kinds are up within three weeks in cool soil. House default. */
const CHECK_DAYS = { low: 14, high: 21 } as const;

/** Key of the task that orders a stand's seed. */
export function orderKey(standId: string): TaskKey {
  return `cover-order/stand:${standId}`;
}

/** The last day on which seed that is ordered comes in time for a sowing. */
export function lastOrderDay(sowOn: Day): Day {
  return addDays(sowOn, -7 * ORDER_WEEKS.last);
}

/** What a suggestion says of its seed; nothing where it was ordered. */
export function seedAtHand({ garden }: PracticeInput, standId: string, sowOn: Day): string[] {
  if (garden.done.some(({ key }) => key === orderKey(standId))) return [];
  const last = lastOrderDay(sowOn);
  const onlyIf = 'only if you have the seed, or can buy it nearby';
  return [
    last < garden.startedOn
      ? `Sow it ${onlyIf}: what is ordered now comes too late.`
      : `No seed ordered by ${dated(last)}? Then sow it ${onlyIf}.`,
  ];
}

/** What a planned sowing says of its seed where that was not ordered and the garden was brought in too late to order it in time. */
export function lateSeed({ garden }: PracticeInput, standId: string, sowOn: Day, { latest }: Window): string[] {
  const ordered = garden.done.some(({ key }) => key === orderKey(standId));
  if (ordered || lastOrderDay(sowOn) >= garden.startedOn) return [];
  const onlyIf = 'Sow it on this day only if you have the seed, or can buy it nearby';
  return [
    lastOrderDay(latest) < garden.startedOn
      ? `${onlyIf}: what is ordered by post comes too late for it.`
      : `${onlyIf}. Seed ordered by post by ${dated(lastOrderDay(latest))} still comes in time: it may be sown until ${dated(latest)}.`,
  ];
}

/** The day seed is ordered for, with what speaks against ordering it. */
interface SowingMeant {
  sowOn: Day;
  doubts: readonly Reason[];
}

/** Order the seed of a stand in time for its sowing; where that time is past, as soon as the garden is brought in. */
export function orderDraft(
  input: PracticeInput,
  at: StandInBed,
  sow: SowWindow,
  { sowOn, doubts }: SowingMeant,
): TaskDraft {
  const { name } = at;
  const seed = seedAmounts(at.parts, areaOf(at.bed), sowOn, input.climate);
  const { startedOn } = input.garden;
  const wanted = lastOrderDay(sowOn);
  const earliest = latestOf(addDays(sowOn, -7 * ORDER_WEEKS.first), startedOn);
  const late = earliestOf(addDays(startedOn, LATE_ORDER_DAYS), sow.window.latest);
  const latest = latestOf(earliest, wanted, late);
  return {
    ...draftOfStand(input, at),
    key: orderKey(at.stand.id),
    kind: 'order-cover-seed',
    job: { id: 'order-cover-seed', title: 'Order cover seed' },
    weight: 'deadline',
    title: `Order ${name} seed for ${at.bed.name}`,
    steps: [
      ...seed.map(({ part, grams }) => `${part.cover.name}: ${quantity(grams, 'g')}.`),
      ...(doubts.length > 0
        ? ['Think before you order: it would have to go before it has grown much (see why, below).']
        : []),
      `It is wanted by ${dated(sowOn)}. Look first in the tin for seed that is not written down: what is has been counted.`,
    ],
    cautions: [],
    supplies: seedSupplies(seed),
    window: { earliest, preferred: earliest, latest },
    ifMissed: 'still do',
    missedNote: 'Seed by post may come too late: buy it nearby, or sow what you have. A thin cover beats bare soil.',
    effortMinutes: ORDER_MINUTES,
    onceMinutes: ORDER_MINUTES,
    reasons: [
      {
        rule: 'cover-order.lead',
        saw: {
          sow: sowOn,
          weeksFirst: ORDER_WEEKS.first,
          weeksLast: ORDER_WEEKS.last,
          ...(latest > wanted ? { last: latest } : {}),
        },
        limit: wanted,
        source: 'house default',
      },
      ...doubts,
    ],
    makes: seed.map(({ part, grams }) => ({ makes: 'seed-bought', coverId: part.cover.id, grams })),
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
  const { name } = at;
  const area = areaOf(at.bed);
  const sowOn = input.garden.pins[sowKey(at.stand.id)] ?? sow.window.preferred;
  const seed = seedAmounts(at.parts, area, sowOn, input.climate);
  return {
    ...draftOfStand(input, at),
    key: sowKey(at.stand.id),
    kind: 'sow-cover',
    job: { id: `sow-cover:${at.stand.coverId}`, title: `Sow ${name}` },
    weight: 'work',
    title: `Sow ${name} in ${at.bed.name}`,
    steps: sowSteps(input, at, sow, seed),
    cautions: sowCautions(at, sow),
    supplies: [...seedSupplies(seed), { what: 'rake' }],
    window: sow.window,
    ifMissed: 'replace',
    missedNote: tooLateNote(at, sow),
    effortMinutes: effortOverArea(area, SOW_COVER_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit'],
    after,
    reasons: [...why, ...sow.reasons, ...seedReasons(seed, area)],
    makes: [
      { makes: 'stand-sown', standId: at.stand.id, bedId: at.bed.id, coverId: at.stand.coverId },
      ...seedSown(seed, at.stand.id),
    ],
  };
}

function sowCautions({ parts }: StandInBed, { half }: SowWindow): string[] {
  const cautions = parts.flatMap(({ cover }) => cover.cautions);
  return cautionsAt(cautions, 'always', 'started', ...(half === 'autumn' ? (['over winter'] as const) : []));
}

/**
 * Look at a new stand, after a sowing that is planned or done: its window is as wide as the sowing's, but it comes within three
 * weeks of the day the sowing is put on, and moves with it.
 *
 * @param waitsFor the sowing still to be done: the stand's own, or one of its thin places
 */
export function checkDraft(
  input: PracticeInput,
  at: StandInBed,
  sown: Window,
  waitsFor = at.stand.sow.happened ? undefined : sowKey(at.stand.id),
): TaskDraft {
  const { name } = at;
  const density = sownDensity(input, at);
  const up = (day: Day): Day => addDays(day, CHECK_DAYS.low);
  return {
    ...draftOfStand(input, at),
    key: checkKey(at),
    kind: 'check-stand',
    job: { id: 'check-stand', title: 'Look at the young cover' },
    weight: 'check',
    title: `Look at the young ${name} in ${at.bed.name}`,
    steps: [
      ...(density === undefined ? [] : [density.step]),
      'Stand over the bed and judge how much of the ground shows green, and whether weeds came up in number.',
      'Tell what you saw: what is thin is then sown again while there is time, or mulched, and the cut is worked out anew.',
    ],
    cautions: [],
    supplies: [],
    window: {
      earliest: up(sown.earliest),
      preferred: up(sown.preferred),
      latest: addDays(sown.latest, CHECK_DAYS.high),
    },
    ifMissed: 'drop',
    missedNote: 'Lost is the chance to sow thin places again in time: lay leaves over what is bare.',
    effortMinutes: LOOK_MINUTES,
    after: waitsFor === undefined ? [] : [{ key: waitsFor, minDays: CHECK_DAYS.low, maxDays: CHECK_DAYS.high }],
    reasons: [
      {
        rule: 'cover-check.emergence',
        saw: {
          [waitsFor === undefined ? 'sown' : 'meant']: sown.preferred,
          daysLow: CHECK_DAYS.low,
          daysHigh: CHECK_DAYS.high,
        },
        source: 'house default',
      },
      ...(density === undefined ? [] : [density.reason]),
    ],
  };
}

/** Key of the look at a stand: the first, or the one after so many. */
function checkKey({ stand }: StandInBed): TaskKey {
  const count = (stand.looked?.length ?? 0) + 1;
  return `cover-check/stand:${stand.id}${count === 1 ? '' : `/look:${count}`}`;
}
