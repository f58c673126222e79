/**
 * A planned cover that no rule lets in: mulch answers instead, said plainly.
 */
import { addDays } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { areaOf, type Gap } from '../bed-timeline.ts';
import { coverName } from '../covers.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { effortOverArea, START_UP_MINUTES } from '../effort.ts';
import { clearKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { gapReasons } from './bed-gap.ts';
import { draftOfStand, type StandInBed } from './stand.ts';

/** Minutes a square metre to lay leaves or straw. House default (1, from 0.5 to 2), from memory. */
const MULCH_MINUTES_PER_M2 = 1;
/** Depth of a loose winter mulch of leaves, mm: 2–3 in (veg:V22). */
const MULCH_DEPTH_MM = 65;
/** Days a bed may wait for its mulch. House default. */
const OPEN_DAYS = 14;

/** Mulch the bed of a stand that was refused. */
export function mulchInsteadDraft(
  input: PracticeInput,
  at: StandInBed,
  refused: Reason,
  gap: Gap | undefined,
): TaskDraft {
  const name = coverName(at.stand.coverId);
  const wanted = at.stand.sow.day;
  const from = gap?.from === undefined || gap.from < wanted ? wanted : gap.from;
  const litres = Math.round(areaOf(at.bed) * MULCH_DEPTH_MM);
  return {
    ...draftOfStand(input, at),
    key: `cover-no-window/stand:${at.stand.id}`,
    kind: 'mulch-instead',
    job: { id: 'mulch-instead', title: 'Mulch where no cover can be sown' },
    weight: 'work',
    title: `Mulch ${at.bed.name}: no time for ${name}`,
    steps: [
      `The plan asks for ${name} here, but no sowing day fits.`,
      `Lay shredded leaves or clean straw over the whole bed, ${quantity(MULCH_DEPTH_MM, 'mm')} deep, and wet it so that it stays.`,
    ],
    cautions: ['Straw or hay of unknown history may carry weedkiller: grow a few beans in a sample first.'],
    supplies: [{ what: 'leaves or straw', amount: { value: litres, unit: 'L' } }],
    window: { earliest: from, preferred: addDays(from, 3), latest: addDays(from, OPEN_DAYS) },
    ifMissed: 'still do',
    missedNote: 'Bare soil loses its crumb to rain and frost: cover it whenever you can.',
    effortMinutes: effortOverArea(areaOf(at.bed), MULCH_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    after: gap?.before ? [{ key: clearKey(gap.before.planting.id), minDays: 0 }] : [],
    reasons: [
      refused,
      { rule: 'cover-sow.mulch', saw: { depthMm: MULCH_DEPTH_MM, litres }, source: 'veg:V22' },
      ...gapReasons(gap),
    ],
  };
}
