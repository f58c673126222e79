/**
 * Piles that may have taken what a sick crop left: nobody writes down which bed's remains went into which pile.
 */
import type { Bin, Garden, Pile } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { hostsOf, namesOf, type SickPlanting } from '../disease.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { HOT_RECORD, hotRecord } from './hot-record.ts';
import { draftOfPile } from './pile-draft.ts';

/** Days before a finding from which remains of an unknown planting may have gone to the compost: a season. House default. */
const UNKNOWN_SINCE_DAYS = 180;
/** Days within which the bin is marked. House default. */
const MARK_DAYS = 14;

/** The days from which remains of a sick crop may have gone into a pile, to the day it was found out. */
function feedingSpan({ planting, on }: SickPlanting): { from: Day; to: Day } {
  return { from: planting?.start.day ?? addDays(on, -UNKNOWN_SINCE_DAYS), to: on };
}

/** Whether a pile stood open at some time while the sick crop was shedding. */
function mayHold(pile: Pile, sick: SickPlanting): boolean {
  const { from, to } = feedingSpan(sick);
  const closed = pile.curingSince ?? pile.finishedOn;
  return pile.built.happened && pile.built.day <= to && (closed === undefined || closed >= from);
}

/** The sick plantings whose remains a pile may hold; those of before the garden was brought in are history. */
export function sickInPile(garden: Garden, pile: Pile, sick: readonly SickPlanting[]): SickPlanting[] {
  return sick.filter((each) => addDays(each.on, MARK_DAYS) >= garden.startedOn && mayHold(pile, each));
}

/** Mark a pile and hold its compost back, once for each sick planting it may hold. */
export function sickPileDraft(pile: Pile, bin: Bin, sick: SickPlanting): TaskDraft {
  const { unit, on, crop } = sick;
  return {
    ...draftOfPile(pile, bin),
    key: `pile-disease/pile:${pile.id}/${unit}`,
    kind: 'hold-compost',
    job: { id: 'hold-compost', title: 'Hold back compost that may hold sick remains' },
    weight: 'check',
    title: `Hold back the compost in ${bin.name}: it may have taken sick ${crop.name.toLowerCase()}`,
    steps: [
      `Chalk on the bin: not for beds of ${hostsIn(sick)}.`,
      'Did anything of that bed go in? If you know that nothing did, the compost is as good as any.',
      provenStep(pile),
      'Unproven, it serves where none of them will grow: under shrubs, on lawn, round flowers.',
    ],
    cautions: ['Pick out sick stalks and roots that can still be seen, with gloves, and bag them.'],
    window: { earliest: on, preferred: on, latest: addDays(on, MARK_DAYS) },
    ifMissed: 'still do',
    missedNote: 'Spread unproven, it may carry the disease into every bed that gets it.',
    effortMinutes: LOOK_MINUTES,
    confidence: 'assumed',
    reasons: reasonsOf(pile, sick),
    makes: [],
  };
}

/** Said where the compost of a pile that may hold sick remains is looked at. */
export function sickPileCaution(pile: Pile, sick: readonly SickPlanting[]): string[] {
  if (hotRecord(pile).heat) return [];
  return sick.map(
    (each) =>
      `It may hold ${each.crop.name.toLowerCase()} from ${each.bed.name} that had ${namesOf(each.findings)}: unless its ` +
      `log shows that it was hot all through, keep it off beds of ${hostsIn(each)}.`,
  );
}

function hostsIn({ findings }: SickPlanting): string {
  return [...new Set(findings.map(hostsOf))].join(', and of ');
}

function provenStep(pile: Pile): string {
  const { days, turns, heat } = hotRecord(pile);
  const wanted = `${HOT_RECORD.days} days at ${quantity(HOT_RECORD.fromC, 'tempC')} or more and ${HOT_RECORD.turns} turns`;
  return heat
    ? `Its log shows ${wanted}: what was in it then was hot all through. What went in later was not.`
    : `Proven is a log of ${wanted} after the last of it went in; so far it shows ${days} and ${turns}.`;
}

function reasonsOf(pile: Pile, sick: SickPlanting): Reason[] {
  const { from } = feedingSpan(sick);
  const { days, turns } = hotRecord(pile);
  return [
    {
      rule: 'pile-disease.may-hold',
      saw: {
        crop: sick.crop.name.toLowerCase(),
        bed: sick.bed.name,
        disease: namesOf(sick.findings),
        from: latestOf(from, pile.built.day),
        on: sick.on,
      },
      source: 'house default',
    },
    {
      rule: 'pile-disease.proof',
      saw: { days, turns, daysWanted: HOT_RECORD.days, turnsWanted: HOT_RECORD.turns, tempC: HOT_RECORD.fromC },
      source: 'compost:S22',
    },
  ];
}
