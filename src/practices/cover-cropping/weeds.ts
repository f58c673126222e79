/**
 * Weeds that came up among a young cover, cut before they seed.
 */
import type { StandLook } from '../../garden/garden.ts';
import { addDays, type Day, earliestOf, latestOf } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { BLADES } from '../cautions.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import { effortOverArea, START_UP_MINUTES, WEED_COVER_MINUTES_PER_M2 } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import type { CutWindow } from './cut-window.ts';
import { lookReason } from './look-reason.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/**
 * Days from the look by which weeds are cut: the quickest (groundsel, galinsoga) seed five to six weeks after they come up,
 * and the look comes two to three weeks after the sowing. House default; the weeks from memory.
 */
const WEEDS_SEED_DAYS = 21;
/** Days from the look on which it is best done: small weeds come out with the root. House default. */
const BEST_DAYS = 7;

/** Key of the task that the weeds of the latest look ask for. */
function weedsKey({ stand }: StandInBed): TaskKey {
  return `cover-weeds/stand:${stand.id}/look:${stand.looked?.length ?? 0}`;
}

/** What weeds ask for: a cut of their own, or the stand's cut in time for them. */
export interface WeedsAnswered {
  cut: CutWindow | undefined;
  drafts: readonly TaskDraft[];
}

/** A stand's own cut answers its weeds where it opens before they seed, and then comes in time for them. */
export function weedsAnswered(
  input: PracticeInput,
  at: StandInBed,
  look: StandLook | undefined,
  cut: CutWindow | undefined,
): WeedsAnswered {
  if (look?.weedy !== true) return { cut, drafts: [] };
  const limit = addDays(look.on, WEEDS_SEED_DAYS);
  if (cut === undefined || cut.window.earliest > limit) return { cut, drafts: [weedDraft(input, at, look, limit)] };
  const { earliest, preferred, latest } = cut.window;
  const by = earliestOf(latest, limit);
  const window = { earliest, preferred: latestOf(earliest, earliestOf(preferred, by)), latest: by };
  return { cut: { ...cut, window, reasons: [...cut.reasons, weedsReason('cover-cut.weedy', limit)] }, drafts: [] };
}

function weedsReason(rule: string, limit: Day): Reason {
  return { rule, saw: { days: WEEDS_SEED_DAYS }, limit, source: 'house default' };
}

function weedDraft(input: PracticeInput, at: StandInBed, look: StandLook, limit: Day): TaskDraft {
  const { bed, name, parts } = at;
  const growsOn = parts.every(({ cover }) => cover.regrows === 'yes');
  return {
    ...draftOfStand(input, at),
    key: weedsKey(at),
    kind: 'weed-cover',
    job: { id: 'weed-cover', title: 'Cut weeds in covers before they seed' },
    weight: 'deadline',
    title: `Cut the weeds among the ${name} in ${bed.name} before they seed`,
    steps: [
      `Pull the tall ones, or cut them at the ground, before any has flowered: by ${dated(limit)}.`,
      growsOn
        ? `Where weeds stand thicker than the ${name}, cut everything a hand high: this cover grows again.`
        : 'Do not cut across the bed: this cover may not grow again.',
      'What has no flower yet can lie on the bed. What has goes neither there nor on a pile.',
    ],
    cautions: [BLADES],
    supplies: [{ what: 'shears or sickle' }],
    window: { earliest: look.on, preferred: addDays(look.on, BEST_DAYS), latest: limit },
    ifMissed: 'still do',
    missedNote: 'They may have seeded: cut off what has and take it out of the garden. Their seed sprouts for years.',
    effortMinutes: effortOverArea(areaOf(bed), WEED_COVER_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    reasons: [lookReason(look), weedsReason('cover-weeds.seed', limit)],
  };
}
