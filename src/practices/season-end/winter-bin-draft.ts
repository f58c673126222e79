/**
 * Making room in a bin before it freezes.
 */

import type { Bin } from '../../garden/garden.ts';
import { BROWNS_TO_GREENS, feedstockById } from '../../handbook/feedstocks.ts';
import { addDays } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import { DUST, LIFTING } from '../cautions.ts';
import { knownAs } from '../confidence.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { FREEZES_BELOW_C, type FrozenSpan, frozenSpan } from './frozen-span.ts';
import { SCRAPS_G_A_DAY, scrapsLitresADay } from './scraps.ts';
import { fullOn, type WinterBin, type WinterNeed, winterBin, winterNeed } from './winter-room.ts';

/** Days before the bin freezes that room is made in it: the leaves are down by then. House default. */
const BEFORE_FREEZE_DAYS = { first: 42, usual: 21, last: 1 } as const;
/** Minutes to empty and bed a bin and stack leaves beside it. House default. */
const ROOM_MINUTES = 40;
const DAYS_A_WEEK = 7;

/** One task before the winter that follows a season's autumn; nothing without a bin or a frozen spell. */
export function winterBinDrafts(input: PracticeInput, season: number): TaskDraft[] {
  const { garden, climate } = input;
  const span = frozenSpan(climate, season);
  const found = span && winterBin(garden, span);
  if (span === undefined || found === undefined) return [];
  const need = winterNeed(garden, span);
  return [
    {
      key: `winter-bin/garden/${season}`,
      practice: 'season-end',
      kind: 'winter-bin',
      job: { id: 'winter-bin', title: 'Make room for the winter scraps' },
      subject: gardenSubject(garden),
      weight: 'work',
      title: `Make room for the winter scraps in ${found.bin.name}, leaves beside it`,
      steps: [roomStep(found), ...fillSteps(found.bin, need, span), ...RULES_OF_WINTER],
      cautions: [...feedstockById('kitchen_vegetable_scraps').cautions, DUST, LIFTING],
      supplies: [{ what: 'dry leaves', ...(need ? { amount: { value: need.browns, unit: 'L' as const } } : {}) }],
      window: {
        earliest: addDays(span.from, -BEFORE_FREEZE_DAYS.first),
        preferred: addDays(span.from, -BEFORE_FREEZE_DAYS.usual),
        latest: addDays(span.from, -BEFORE_FREEZE_DAYS.last),
      },
      ifMissed: 'still do',
      missedNote: 'A frozen bin cannot be emptied: the scraps of winter then want lidded pails until it thaws.',
      effortMinutes: ROOM_MINUTES,
      needs: [],
      after: [],
      confidence: knownAs(climate, 'derived'),
      reasons: [frozenReason(span), ...(need ? needReasons(found.bin, need, span) : []), REST],
      makes: [],
    },
  ];
}

const RULES_OF_WINTER = [
  `Through the winter: scraps in the middle, then ${BROWNS_TO_GREENS} buckets of leaves on every bucket of scraps, lid shut.`,
  'Do not turn it while it is cold. When it has thawed it is wet: mix the last of the leaves in.',
] as const;

function roomStep({ bin, state }: WinterBin): string {
  switch (state) {
    case 'empty':
      return `${bin.name} is to stay empty until the freeze: build no other pile in it.`;
    case 'finished':
      return `Empty ${bin.name}: spread what is finished, or sack it and keep it dry.`;
    case 'curing':
      return `Clear ${bin.name}: move what is curing in it under a sheet on the ground beside it.`;
    case 'at work':
      return `No bin is free. Fork what is in ${bin.name} into the others, where they have sunk, or under a sheet beside it.`;
    default:
      return state satisfies never;
  }
}

function fillSteps(bin: Bin, need: WinterNeed | undefined, span: FrozenSpan): string[] {
  const bed = 'Bed it on coarse sticks and a layer of leaves.';
  if (need === undefined) return [bed, reckonStep(bin, span)];
  const stack = `Stack ${quantity(need.browns, 'L')} of dry leaves beside it, under a lid or a sheet.`;
  const full = fullOn(bin, need, span);
  if (full === undefined) return [bed, stack];
  return [
    bed,
    stack,
    `It is full about ${dated(full)}: have lidded pails or another bin ready for the ` +
      `${quantity(need.litres - bin.volumeL, 'L')} that still come.`,
  ];
}

/** How to reckon it, where nobody has said how many eat. */
function reckonStep({ name, volumeL }: Bin, { days }: FrozenSpan): string {
  const aDay = scrapsLitresADay() * (1 + BROWNS_TO_GREENS);
  return (
    `Reckon ${quantity(aDay * DAYS_A_WEEK, 'L')} a week for each person, leaves and all: over ${days} days ` +
    `${quantity(Math.ceil(aDay * days), 'L')} a person. ${name} holds ${quantity(volumeL, 'L')}. ` +
    'Say under The garden how many eat here, and it is reckoned for you.'
  );
}

function frozenReason({ from, thaw, days }: FrozenSpan): Reason {
  return {
    rule: 'winter-bin.frozen',
    saw: { from, thaw, days, tempC: FREEZES_BELOW_C },
    limit: addDays(from, -BEFORE_FREEZE_DAYS.last),
    source: "the garden's climate",
  };
}

function needReasons(bin: Bin, need: WinterNeed, { days }: FrozenSpan): Reason[] {
  const { people, scraps, browns, litres } = need;
  const litresAWeek = scrapsLitresADay() * DAYS_A_WEEK;
  const { low: gramsLow, high: gramsHigh } = SCRAPS_G_A_DAY;
  return [
    {
      rule: 'winter-bin.scraps',
      saw: { people, days, litresAWeek, gramsLow, gramsHigh, scraps },
      source: 'compost:S50',
    },
    { rule: 'winter-bin.browns', saw: { scraps, browns }, limit: BROWNS_TO_GREENS, source: 'common practice' },
    { rule: 'winter-bin.holds', saw: { bin: bin.name, litres }, limit: bin.volumeL, source: "the garden's own plan" },
  ];
}

const REST: Reason = { rule: 'winter-bin.rest', saw: {}, source: 'compost:S54' };
