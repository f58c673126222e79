/**
 * Cutting a stand before it flowers.
 */
import { seasonOf } from '../../climate/season.ts';
import { cautionsAt } from '../../handbook/shapes/cautions.ts';
import { dated } from '../../measures/quantity.ts';
import { growsAgain } from '../after-cut.ts';
import { areaOf } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import { waitDaysOf } from '../covers.ts';
import type { TaskDraft } from '../draft.ts';
import { CUT_MINUTES_PER_M2, effortOverArea, START_UP_MINUTES } from '../effort.ts';
import { cutKey, sowKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { midsummerOf } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { cutClash } from './cut-clash.ts';
import type { FollowingCut } from './cut-follows.ts';
import type { CutWindow } from './cut-window.ts';
import { firstLookDraft } from './regrowth-drafts.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Cut a stand in its window, with the look for regrowth after it. */
export function cutDrafts(input: PracticeInput, at: StandInBed, cut: CutWindow, follows?: FollowingCut): TaskDraft[] {
  const { window } = follows ?? cut;
  return [cutDraft(input, at, cut, follows), ...(growsAgain(at.parts) ? [firstLookDraft(input, at, window)] : [])];
}

function cutDraft(input: PracticeInput, at: StandInBed, cut: CutWindow, follows: FollowingCut | undefined): TaskDraft {
  const { climate } = input;
  const { window, ...days } = follows ?? { window: cut.window, minDays: 0 };
  return {
    ...draftOfStand(input, at),
    key: cutKey(at.stand.id),
    kind: 'cut-cover',
    job: { id: 'cut-cover', title: 'Cut the cover in time' },
    weight: 'work',
    title: `Cut the ${at.name} in ${at.bed.name} before it ${cut.inFlower ? 'seeds' : 'flowers'}`,
    steps: [...followSteps(follows), ...cutSteps(at, cut)],
    cautions: [
      'Blades and bent backs: gloves and stout shoes, small bites, rest between beds.',
      ...at.parts.flatMap(({ cover }) => cautionsAt(cover.cautions, 'always', 'ended')),
    ],
    supplies: [
      { what: 'shears, sickle or string trimmer' },
      ...(growsAgain(at.parts) ? [{ what: 'opaque sheet, in case it regrows' }] : []),
    ],
    window,
    ifMissed: 'still do',
    missedNote: 'It may have flowered and set seed: cut at once, before the seed is hard, and expect volunteers.',
    ...(at.stand.sow.happened ? { minder: minderText(at) } : {}),
    effortMinutes: effortOverArea(areaOf(at.bed) * (at.share ?? 1), CUT_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['dry-day'],
    after: [...(at.stand.sow.happened ? [] : [{ key: sowKey(at.stand.id), ...days }]), ...fitSoil(input, at, cut)],
    yieldNote: OFF_THE_PATH,
    confidence: knownAs(climate, climate.basis === 'daily-record' ? 'modelled' : 'derived'),
    ...(cut.odds ? { odds: cut.odds, oddsOf: `the flowering of the ${at.name}` } : {}),
    reasons: cut.reasons,
    makes: [{ makes: 'stand-cut', standId: at.stand.id }],
  };
}

/** Said where the bed is still too wet to tread (common practice). */
const OFF_THE_PATH = 'Too wet to tread? Cut it from the path or off a board: flowers do not wait.';

/** In spring a cut waits for the handful that says whether the soil is fit, but never past its window. */
function fitSoil(input: PracticeInput, { bed }: StandInBed, { window }: CutWindow): TaskDraft['after'] {
  const { garden, climate } = input;
  const season = seasonOf(climate.seasonTurn, window.latest);
  if (window.latest > midsummerOf(climate, season)) return [];
  return [{ key: awaitedSqueezeKey(input, textureOf(garden, bed), season), minDays: 0, yields: true }];
}

function followSteps(follows: FollowingCut | undefined): string[] {
  if (follows === undefined) return [];
  const { minDays, maxDays } = follows;
  const span = maxDays === undefined ? `at the soonest ${minDays}` : `${minDays} to ${maxDays}`;
  return [`Count from the day it was sown, whichever that was: cut it ${span} days after.`];
}

function cutSteps(at: StandInBed, cut: CutWindow): string[] {
  const wait = waitDaysOf(at.parts);
  const stages = [...new Set(at.parts.map(({ cover }) => `${cover.name}: ${cover.cutStage}`))];
  const next = cut.next ? `Next here: ${cut.next.what} on ${dated(cut.next.from)}. ` : '';
  const clash = cutClash(at.parts, cut);
  return [
    cut.inFlower
      ? 'Look a week ahead: once it flowers it has ten days before its seed is viable. The plant outranks the reckoning.'
      : 'Look a week ahead: if buds show colour or heads are out, cut today. The plant outranks the reckoning.',
    `Stage to cut at. ${stages.join('; ')}.`,
    OFF_THE_PATH,
    ...(clash === undefined ? [] : [clash]),
    'Cut at the soil line, or as high as the stage says, and let it lie as a blanket. Dig nothing in.',
    `${next}After cutting, wait ${wait.smallSeed} days before sowing small seed and ${wait.transplant} before setting plants; pull the residue aside for small seed.`,
  ];
}

/** A cover that is only planned is nobody's to cut. */
function minderText({ name, bed }: StandInBed): string {
  return `Cut the ${name} in ${bed.name} off at the ground, and leave what you cut lying on the bed.`;
}
