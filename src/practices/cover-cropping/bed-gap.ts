/**
 * What a sowing owes to the gap it lies in: the work it waits for, and the crops on either side.
 */

import type { Garden, Stand } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import type { Day } from '../../measures/days.ts';
import { afterCut, endingTask, SHEET_DAYS } from '../after-cut.ts';
import { cropSpans, type Gap } from '../bed-timeline.ts';
import { clearingsOf } from '../clearing.ts';
import type { Reason, TaskDraft, TaskKey } from '../draft.ts';
import { autumnTopdressKey, cutKey, regrowthKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { standName } from '../stand-cover.ts';
import { plannedMayFollow } from './settle.ts';
import { isFrostSeeded, type SowWindow } from './sow-window.ts';
import type { StandInBed } from './stand.ts';

/**
 * A sowing waits for the bed to be clear of its crop and of the covers before it, in spring for the
 * handful that says whether the soil is fit, and in autumn for the compost that goes under it. Clover broadcast on frozen ground goes in among what stands.
 */
export function waitsFor(
  input: PracticeInput,
  { stand, bed, parts }: StandInBed,
  gap: Gap | undefined,
  sow: SowWindow,
): TaskDraft['after'] {
  const { bedId } = stand;
  const seeded = isFrostSeeded(parts, sow);
  const clear = gap?.before ? clearingsOf(cropSpans(input.garden, bedId, input.climate), gap.before) : [];
  const covers = seeded ? [] : [...uncutIn(input, bedId).map(({ id }) => cutKey(id)), ...growingAgain(input, bedId)];
  const season = seasonAfter(input.climate, sow.window.preferred);
  const compost = sow.half === 'autumn' ? [autumnTopdressKey(bedId, season)] : [];
  const soil = seeded || sow.half !== 'spring' ? [] : [awaitedSqueezeKey(input, textureOf(input.garden, bed), season)];
  return [...clear, ...covers, ...compost, ...soil].map((key) => ({ key, minDays: 0 }));
}

function uncutIn({ garden }: PracticeInput, bedId: string): Stand[] {
  return inBed(garden.stands, bedId)
    .filter(({ cutOn, deadOn, sow }) => sow.happened && (cutOn ?? deadOn) === undefined)
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** What is still to be seen or done in a bed before its cut covers are over. */
function growingAgain({ garden }: PracticeInput, bedId: string): TaskKey[] {
  return cutIn(garden, bedId).flatMap(({ id, state }) => {
    const ending = endingTask(id, state);
    const look = !state.letBe && (state.is === 'watched' || state.is === 'green') ? [regrowthKey(id, state.look)] : [];
    return [...(ending === undefined ? [] : [ending]), ...look];
  });
}

function cutIn(garden: Garden, bedId: string) {
  return inBed(garden.stands, bedId)
    .flatMap((stand) => {
      const state = afterCut(garden, stand);
      return state === undefined ? [] : [{ id: stand.id, name: standName(stand), state }];
    })
    .sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** The first day a planned cover may be sown after those of its bed that were cut, and why; nothing where none was. */
export function freeOfCovers({ garden }: PracticeInput, bedId: string): { day: Day; reason: Reason } | undefined {
  const [last] = cutIn(garden, bedId)
    .map(({ name, state }) => ({ name, state, day: plannedMayFollow(state) }))
    .sort((a, b) => (a.day > b.day ? -1 : 1));
  if (last === undefined) return undefined;
  const { name, state, day } = last;
  const sheeted = state.is === 'to-sheet' || state.is === 'under-sheet';
  const saw = { cover: name, cut: state.lastCut, ...(sheeted ? { sheetDays: SHEET_DAYS.low } : {}) };
  const source = sheeted ? 'cover:S39' : state.is === 'over' ? 'cover:S5' : 'house default';
  return { day, reason: { rule: 'cover-sow.after-cover', saw, limit: day, source } };
}

/** The crops on either side of a gap. */
export function gapReasons(gap: Gap | undefined): Reason[] {
  if (gap?.before?.to === undefined) return [];
  return [
    {
      rule: 'cover-sow.gap',
      saw: {
        before: gap.before.crop.name.toLowerCase(),
        from: gap.before.to,
        ...(gap.next && gap.to ? { next: gap.next.crop.name.toLowerCase(), to: gap.to } : {}),
      },
      source: "the garden's own plan",
    },
  ];
}
