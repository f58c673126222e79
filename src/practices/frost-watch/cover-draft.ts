/**
 * The evening before a cold night, as one task with its hour.
 */

import type { ToldNight } from '../../garden/told-nights.ts';
import { frostCovers } from '../../handbook/frost-covers.ts';
import { quantity } from '../../measures/quantity.ts';
import type { Supply, TaskDraft } from '../draft.ts';
import { COVER_BED_MINUTES, PICK_BED_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { coverTonightKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { coverHour } from './hours.ts';
import { tonightReasons } from './reasons.ts';
import type { CoveredBed } from './share-covers.ts';
import type { Tonight } from './tonight.ts';
import { cropNames, cropsInBeds, listed } from './words.ts';

/** Beds named in a title; of more it says how many. House default: a line of a calendar. */
const NAMED_BEDS = 3;

/** Covering, picking and carrying in before one night. */
export function coverDraft({ garden }: PracticeInput, tonight: Tonight, told: ToldNight): TaskDraft {
  const effortMinutes = effortOf(tonight);
  const { evening } = tonight;
  const at = coverHour(garden.place, evening, effortMinutes);
  return {
    key: coverTonightKey(evening),
    practice: 'frost-watch',
    kind: 'cover-beds',
    job: { id: 'frost-tonight', title: 'Before frost tonight' },
    subject: gardenSubject(garden),
    weight: 'deadline',
    title: `${nightInTitle(tonight, told)}: ${workInTitle(tonight)}`,
    steps: stepsOf(tonight, told.snow),
    cautions: [
      'On a calm, clear night no cover is sure: in trials some nights were as cold under fabric as beside it, or colder.',
    ],
    supplies: suppliesOf(tonight.covered),
    window: { earliest: evening, preferred: evening, latest: evening },
    ...(at === undefined ? {} : { at }),
    ifMissed: 'drop',
    missedNote: 'What was not covered or picked may be lost. Look at it on the day after.',
    effortMinutes,
    needs: at === undefined ? [] : ['before-sunset'],
    after: [],
    confidence: 'derived',
    reasons: tonightReasons(tonight, told, at !== undefined),
    makes: [],
  };
}

function nightInTitle({ lowC }: Tonight, { from }: ToldNight): string {
  return from === 'snow' ? 'Snow tonight' : `Frost tonight, ${quantity(Number(lowC.toFixed(1)), 'tempC')}`;
}

function workInTitle({ covered, pick, unsheltered, carryIn }: Tonight): string {
  const parts = [
    ...(covered.length === 0 ? [] : [`cover ${bedsInTitle(covered.map(({ risk }) => risk.bed.name))}`]),
    ...(pick.length === 0 ? [] : [`pick ${cropNames(pick)}`]),
    ...(unsheltered.length === 0 ? [] : [`shelter ${cropNames(unsheltered)}`]),
    ...(carryIn.length === 0 ? [] : [`carry in ${cropNames(carryIn)}`]),
  ];
  return parts.join('; ');
}

function bedsInTitle(names: readonly string[]): string {
  return names.length > NAMED_BEDS ? `${names.length} beds` : listed(names);
}

function stepsOf({ covered, pick, unsheltered, carryIn, left }: Tonight, snow: boolean): string[] {
  return [
    ...(pick.length === 0 ? [] : [`Pick what is ripe first: ${cropsInBeds(pick)}.`]),
    ...(pick.some(({ crop }) => crop.id === 'tomato') ? ['Full-sized green tomatoes ripen indoors.'] : []),
    ...covered.map(coverStep),
    ...(covered.length === 0
      ? []
      : ['Hold the covers off the leaves with hoops or canes, and weigh every edge down to the ground.']),
    ...(snow && covered.length > 0
      ? [
          'Brush snow off the covers last thing at night and first thing in the morning: it presses them down on the leaves.',
        ]
      : []),
    ...(unsheltered.length === 0
      ? []
      : [`No cover is left for ${cropsInBeds(unsheltered)}: use sheets, boxes or loose straw, clear of the leaves.`]),
    ...(carryIn.length === 0 ? [] : [`Carry in what is hardening off: ${cropNames(carryIn)}.`]),
    ...(left.length === 0 ? [] : [`Leave ${cropsInBeds(left)}: they stand such a night.`]),
  ];
}

function coverStep({ risk, cover, isEnough }: CoveredBed, at: number): string {
  const doubt = isEnough ? '' : ' It may not be enough.';
  return `${at === 0 ? 'Cover' : 'Then cover'} ${risk.bed.name} (${cropNames(risk.crops)}) with ${cover?.name}.${doubt}`;
}

function suppliesOf(covered: readonly CoveredBed[]): Supply[] {
  return frostCovers.flatMap(({ kind, name }) => {
    const areaM2 = covered.reduce((sum, { cover, coverM2 }) => sum + (cover?.kind === kind ? coverM2 : 0), 0);
    return areaM2 === 0 ? [] : [{ what: name, amount: { value: Number(areaM2.toFixed(2)), unit: 'm2' } }];
  });
}

function effortOf({ covered, pick, unsheltered, carryIn }: Tonight): number {
  const beds = new Set([...pick, ...unsheltered].map(({ bed }) => bed.id)).size;
  const carrying = carryIn.length === 0 ? 0 : COVER_BED_MINUTES;
  return START_UP_MINUTES + covered.length * COVER_BED_MINUTES + beds * PICK_BED_MINUTES + carrying;
}
