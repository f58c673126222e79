/**
 * Marking a new bed out, covering the ground, and setting its frame.
 */
import { addDays, clampDay } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { FRAME_MINUTES, MARK_OUT_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import type { BedFilling } from '../fill-window.ts';
import { markOutKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';

/** Days before the filling in which a bed is marked out, and how many before it are best. House default. */
const MARK_OUT_DAYS = { first: 21, usual: 7 } as const;
/** Cardboard laps over by so much, mm. Common practice. */
const LAP_MM = 150;

/** Mark out, cover, and set the frame. */
export function markOutDraft({ climate }: PracticeInput, { bed, window }: BedFilling): TaskDraft {
  const [earliest, latest] = [addDays(window.earliest, -MARK_OUT_DAYS.first), window.latest];
  const areaM2 = areaOf(bed);
  const size = `${quantity(bed.lengthM, 'm')} by ${quantity(bed.widthM, 'm')}`;
  return {
    key: markOutKey(bed.id),
    practice: 'new-beds',
    kind: 'mark-out-bed',
    job: { id: 'mark-out-bed', title: 'Mark out and cover' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Mark out ${bed.name} and cover the ground`,
    steps: [
      `Stake out ${size} where sun falls most of the day and water can run off; keep it narrow enough to reach the middle from the path.`,
      'Mow what grows there as low as you can and leave it lying. Dig nothing: roots rot where they are.',
      `Pull tape and staples off plain cardboard, and lay it over the whole floor, sheets lapped by ${quantity(LAP_MM, 'mm')}. Wet it through and weigh it down.`,
      ...(bed.raised
        ? [
            `Set the frame on it, level, ${quantity(bed.depthM ?? 0, 'm')} high, with stakes where a long side would bulge.`,
          ]
        : ['Without a frame, heap the edges gently, so that rain does not wash them down.']),
      'Do not scoop the paths yet: they are lifted when the bed is filled, once a handful crumbles.',
    ],
    cautions: [
      'Before you drive a stake, ask where cables, pipes and drains lie.',
      'Old treated or painted boards can hold arsenic or lead: use plain wood. Ground beside an old painted house or a busy road is tested first; local rules go before this.',
    ],
    supplies: [
      {
        what: 'plain cardboard',
        amount: { value: Math.ceil(areaM2 * 10) / 10, unit: 'm2' },
        also: 'and a little more for the laps',
      },
      { what: 'stakes, line and mower' },
      ...(bed.raised ? [{ what: 'boards for the frame, plain wood' }] : []),
    ],
    window: {
      earliest,
      preferred: clampDay(addDays(window.preferred, -MARK_OUT_DAYS.usual), earliest, latest),
      latest,
    },
    ifMissed: 'still do',
    missedNote: 'It can be done on the day of filling: cardboard under the soil starves grass as well then.',
    effortMinutes: Math.ceil(START_UP_MINUTES + areaM2 * MARK_OUT_MINUTES_PER_M2 + (bed.raised ? FRAME_MINUTES : 0)),
    onceMinutes: START_UP_MINUTES,
    needs: ['above-freezing'],
    after: [],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      { rule: 'bed-mark.before-filling', saw: { fill: window.preferred }, source: 'house default' },
      { rule: 'bed-mark.cardboard', saw: { bed: bed.name }, source: 'common practice' },
    ],
    makes: [],
  };
}
