/**
 * The tasks of one stand's life: order seed, sow, check, cut, look for regrowth, see whether winter killed it.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Bed, Stand, Subject } from '../../garden/garden.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { type CoverPart, coverName, coverParts, sowingDepthCm, waitDaysOf } from '../covers.ts';
import type { TaskDraft } from '../draft.ts';
import {
  CUT_MINUTES_PER_M2,
  effortOverArea,
  LOOK_MINUTES,
  ORDER_MINUTES,
  SOW_COVER_MINUTES_PER_M2,
  START_UP_MINUTES,
} from '../effort.ts';
import { cutKey, sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { livesThroughWinter, situationOf } from './bloom.ts';
import { type CutWindow, cutWindow, growsAgain, REGROWTH_DAYS, SHEET_DAYS } from './cut-window.ts';
import { seedAmounts, seedReasons, seedSupplies } from './seed.ts';
import type { SowWindow } from './sow-window.ts';

/** Weeks ahead of sowing that seed is ordered. House default: a week to decide, two for the post. */
const ORDER_WEEKS = { first: 5, last: 2 } as const;
/** Days after sowing at which a stand is looked at: slow kinds are up within three weeks in cool soil. House default. */
const CHECK_DAYS = { low: 14, high: 21 } as const;
/** Weeks before the median last freeze at which dead and living stands can be told apart. House default. */
const DEAD_CHECK_WEEKS = { first: 6, last: 3 } as const;

/** A stand with all its tasks need: where it is, what is in it. */
export interface StandInBed {
  stand: Stand;
  bed: Bed;
  parts: readonly CoverPart[];
}

/** Subject of a stand's tasks, named by what grows and where. */
export function standSubject({ stand, bed }: StandInBed): Subject {
  return { type: 'stand', id: stand.id, name: `${coverName(stand.coverId)} in ${bed.name}`, bedId: bed.id };
}

/** A stand with its bed and its kinds. */
export function standInBed(stand: Stand, bed: Bed): StandInBed {
  return { stand, bed, parts: coverParts(stand.coverId) };
}

const base = (at: StandInBed) => ({
  practice: 'cover-cropping' as const,
  subject: standSubject(at),
  needs: [],
  after: [],
  confidence: 'derived' as const,
  makes: [],
});

/** Order the seed of a stand in time for its sowing. */
export function orderDraft(input: PracticeInput, at: StandInBed, sow: SowWindow): TaskDraft {
  const name = coverName(at.stand.coverId);
  const seed = seedAmounts(at.parts, areaOf(at.bed), sow.window.preferred, input.climate);
  const latest = addDays(sow.window.earliest, -7 * ORDER_WEEKS.last);
  const earliest = addDays(sow.window.earliest, -7 * ORDER_WEEKS.first);
  return {
    ...base(at),
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
    ...base(at),
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
    ...(at.parts.some(({ cover }) => livesThroughWinter(cover, input.climate))
      ? []
      : ['Winter will finish this cover; nothing has to be killed in spring.']),
  ];
}

/** Look whether a new stand has come up. */
export function checkDraft(at: StandInBed, sown: Day, sowIsDone: boolean): TaskDraft {
  const name = coverName(at.stand.coverId);
  const earliest = addDays(sown, CHECK_DAYS.low);
  return {
    ...base(at),
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

/** Cut a stand before it flowers, with the look for regrowth after it. */
export function cutDrafts(input: PracticeInput, at: StandInBed, sown: Day): TaskDraft[] {
  const cut = cutWindow(input, at.bed.id, at.parts, sown);
  if (cut === undefined || cut.window.earliest > input.until) return [];
  return [
    cutDraft(input, at, cut),
    ...(growsAgain(at.parts) ? [regrowthDraft(at, cut.window.earliest, cut.window.latest)] : []),
  ];
}

function cutDraft(input: PracticeInput, at: StandInBed, cut: CutWindow): TaskDraft {
  const name = coverName(at.stand.coverId);
  return {
    ...base(at),
    key: cutKey(at.stand.id),
    kind: 'cut-cover',
    job: { id: 'cut-cover', title: 'Cut the cover before it flowers' },
    weight: 'work',
    title: `Cut the ${name} in ${at.bed.name} before it flowers`,
    steps: cutSteps(at, cut),
    cautions: [
      'Blades and bent backs: gloves and stout shoes, small bites, rest between beds.',
      ...at.parts.flatMap(({ cover }) => cover.cautions),
    ],
    supplies: [
      { what: 'shears, sickle or string trimmer' },
      ...(growsAgain(at.parts) ? [{ what: 'opaque sheet, in case it regrows' }] : []),
    ],
    window: cut.window,
    ifMissed: 'still do',
    missedNote: 'It may have flowered and set seed: cut at once, before the seed is hard, and expect volunteers.',
    effortMinutes: effortOverArea(areaOf(at.bed), CUT_MINUTES_PER_M2),
    needs: ['dry-day'],
    after: at.stand.sow.happened ? [] : [{ key: sowKey(at.stand.id), minDays: 0 }],
    confidence: input.climate.basis === 'daily-record' ? 'modelled' : 'derived',
    ...(cut.odds ? { odds: cut.odds } : {}),
    reasons: cut.reasons,
    makes: [{ makes: 'stand-cut', standId: at.stand.id }],
  };
}

function cutSteps(at: StandInBed, cut: CutWindow): string[] {
  const wait = waitDaysOf(at.parts);
  const stages = [...new Set(at.parts.map(({ cover }) => `${cover.name.toLowerCase()}: ${cover.cutStage}`))];
  const next = cut.next ? `Next here: ${cut.next.crop.name.toLowerCase()} on ${dated(cut.next.from)}. ` : '';
  return [
    'Look first: if buds show colour or heads are out, cut today. The plant outranks the reckoning.',
    `Stage to cut at. ${stages.join('; ')}.`,
    'Cut at the soil line and let it lie as a blanket. Dig nothing in.',
    `${next}After cutting, wait ${wait.smallSeed} days before sowing small seed and ${wait.transplant} before setting plants; pull the residue aside for small seed.`,
  ];
}

/** Look for regrowth after a cut. The window follows the cut's, or the day it was done. */
export function regrowthDraft(at: StandInBed, cutFrom: Day, cutTo: Day): TaskDraft {
  const name = coverName(at.stand.coverId);
  const earliest = addDays(cutFrom, REGROWTH_DAYS.low);
  const count = at.stand.regrowthCheckedOn.length + 1;
  return {
    ...base(at),
    key: `cover-regrowth/stand:${at.stand.id}/check:${count}`,
    kind: 'check-regrowth',
    job: { id: 'check-regrowth', title: 'Look for regrowth after cutting' },
    weight: 'check',
    title: `Look for regrowth of the ${name} in ${at.bed.name}`,
    steps: [
      'Green shoots from the stubble mean it is not finished: cut them again now.',
      `Still green after a second cut: lay an opaque sheet for ${SHEET_DAYS.low} to ${SHEET_DAYS.high} days; one week is not enough.`,
    ],
    cautions: [],
    supplies: [],
    window: { earliest, preferred: earliest, latest: addDays(cutTo, REGROWTH_DAYS.high) },
    ifMissed: 'drop',
    missedNote: 'Regrowth will compete with the next crop: look when you plant.',
    effortMinutes: LOOK_MINUTES,
    after: at.stand.cutOn === undefined ? [{ key: cutKey(at.stand.id), minDays: REGROWTH_DAYS.low }] : [],
    reasons: [
      {
        rule: 'cover-regrowth.kind',
        saw: { cover: name, daysLow: REGROWTH_DAYS.low, daysHigh: REGROWTH_DAYS.high },
        source: 'cover:S39',
      },
    ],
    makes: [{ makes: 'regrowth-checked', standId: at.stand.id }],
  };
}

/** See in late winter whether an autumn stand is dead. */
export function deadCheckDraft(input: PracticeInput, at: StandInBed, sown: Day): TaskDraft | undefined {
  const dying = at.parts.filter(
    ({ cover }) => situationOf(cover, sown, input.climate) === 'summer-sown' && !cover.frostTender,
  );
  const season = seasonOf(input.climate.seasonTurn, sown) + 1;
  const freeze = freezeDay(input.climate, { event: 'last-spring', limitF: 32, season, chancePercent: 50 });
  if (dying.length === 0 || freeze === undefined) return undefined;
  const name = coverName(at.stand.coverId);
  const earliest = addDays(freeze, -7 * DEAD_CHECK_WEEKS.first);
  const limits = dying.flatMap(({ cover }) => (cover.winterKillC === undefined ? [] : [cover.winterKillC]));
  return {
    ...base(at),
    key: `cover-dead-check/stand:${at.stand.id}`,
    kind: 'check-winter-kill',
    job: { id: 'check-winter-kill', title: 'See whether winter killed the cover' },
    weight: 'check',
    title: `See whether winter killed the ${name} in ${at.bed.name}`,
    steps: [
      'Pull at a few plants: brown and limp to the crown is dead, and the bed can be planted through with no wait.',
      'Green at the crown is alive: cut it low now, and look again in two weeks.',
    ],
    cautions: [],
    supplies: [],
    window: { earliest, preferred: addDays(earliest, 7), latest: addDays(freeze, -7 * DEAD_CHECK_WEEKS.last) },
    ifMissed: 'still do',
    missedNote: 'Look before you plant: a living stand has to be cut first.',
    effortMinutes: START_UP_MINUTES,
    after: at.stand.sow.happened ? [] : [{ key: sowKey(at.stand.id), minDays: 0 }],
    reasons: [
      {
        rule: 'cover-dead-check.cold',
        saw: {
          cover: name,
          ...(limits.length > 0 ? { killC: Math.max(...limits) } : {}),
          ...(input.climate.zone ? { yearlyMinimumC: Math.round(input.climate.zone.meanYearlyMinimumC) } : {}),
          freeze,
        },
        source: dying[0]?.cover.sources[0] ?? 'house default',
      },
    ],
    makes: [{ makes: 'stand-dead', standId: at.stand.id }],
  };
}

/** A window held inside a bed's gap; nothing where the two do not meet. */
export function heldInGap(sow: SowWindow, from: Day | undefined, to: Day | undefined): SowWindow | undefined {
  const earliest = from === undefined ? sow.window.earliest : latestOf(sow.window.earliest, from);
  const latest = to === undefined ? sow.window.latest : earliestOf(sow.window.latest, to);
  if (earliest > latest) return undefined;
  return {
    ...sow,
    window: { earliest, preferred: latestOf(earliest, earliestOf(sow.window.preferred, latest)), latest },
  };
}
