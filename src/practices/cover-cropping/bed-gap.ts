/**
 * What a sowing owes to the gap it lies in: the work it waits for, and the crops on either side.
 */
import type { Stand } from '../../garden/garden.ts';
import type { Gap } from '../bed-timeline.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { autumnTopdressKey, clearKey, cutKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { seasonAfter } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
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
  const clear = gap?.before ? [clearKey(gap.before.planting.id)] : [];
  const covers = seeded ? [] : uncutIn(input, bedId).map(({ id }) => cutKey(id));
  const season = seasonAfter(input.climate, sow.window.preferred);
  const compost = sow.half === 'autumn' ? [autumnTopdressKey(bedId, season)] : [];
  const soil = seeded || sow.half !== 'spring' ? [] : [awaitedSqueezeKey(input, textureOf(input.garden, bed), season)];
  return [...clear, ...covers, ...compost, ...soil].map((key) => ({ key, minDays: 0 }));
}

function uncutIn({ garden }: PracticeInput, bedId: string): Stand[] {
  return garden.stands
    .filter(
      ({ cutOn, deadOn, sow, ...stand }) => stand.bedId === bedId && sow.happened && (cutOn ?? deadOn) === undefined,
    )
    .sort((a, b) => (a.id < b.id ? -1 : 1));
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
