/**
 * The end of a stand's life: cut it before it flowers, look for regrowth, see whether winter killed it.
 */
import { freezeDay } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import { originOf } from '../../handbook/shapes.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { coverName, waitDaysOf } from '../covers.ts';
import type { TaskDraft } from '../draft.ts';
import { CUT_MINUTES_PER_M2, effortOverArea, LOOK_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { cutKey, sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { situationOf } from './bloom.ts';
import { type CutWindow, cutWindow, growsAgain, REGROWTH_DAYS, SHEET_DAYS } from './cut-window.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Weeks before the median last freeze at which dead and living stands can be told apart. House default. */
const DEAD_CHECK_WEEKS = { first: 6, last: 3 } as const;

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
    ...draftOfStand(at),
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
    ...draftOfStand(at),
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
    ...draftOfStand(at),
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
        source: dying[0] ? originOf(dying[0].cover, 'winterKillC') : 'house default',
      },
    ],
    makes: [{ makes: 'stand-dead', standId: at.stand.id }],
  };
}
