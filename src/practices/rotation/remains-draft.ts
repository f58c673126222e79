/**
 * A planting something was found on: what is sick comes out at once, and nothing of it goes to the compost.
 */

import { inBed } from '../../garden/in-bed.ts';
import { addDays } from '../../measures/days.ts';
import { areaOf } from '../bed-timeline.ts';
import { BLADES, FORK } from '../cautions.ts';
import { coverName } from '../covers.ts';
import { namesOf, type SickPlanting } from '../disease.ts';
import type { Supply, TaskDraft, TaskKey } from '../draft.ts';
import { effortOverArea, START_UP_MINUTES } from '../effort.ts';
import { coverLockOut } from '../lock-out.ts';
import type { PracticeInput } from '../practice.ts';
import { bedSubject } from '../subjects.ts';
import { sickReasons } from './disease-reasons.ts';

/** Days within which sick plants are taken out: until the next weekend. House default. */
export const REMAINS_DAYS = 7;
/** Minutes a square metre to lift plants roots and all and bag them: twice the cutting down. House default. */
export const REMAINS_MINUTES_PER_M2 = 4;
/** Alcohol that cleans blades, percent. Common practice. */
const ALCOHOL_PERCENT = 70;

/** Key of the task that takes out what is sick. */
export function remainsKey({ unit }: SickPlanting): TaskKey {
  return `disease-remains/${unit}`;
}

/** Take out what is sick, roots and all, of a crop that stands or of one that is gone. */
export function remainsDraft(input: PracticeInput, sick: SickPlanting, stands: boolean): TaskDraft {
  const { bed, on } = sick;
  const crop = sick.crop.name.toLowerCase();
  return {
    key: remainsKey(sick),
    practice: 'rotation',
    kind: 'take-out-sick',
    job: { id: 'take-out-sick', title: 'Take the remains out, not to the compost' },
    subject: bedSubject(bed),
    weight: 'work',
    title: stands
      ? `Take the sick ${crop} out of ${bed.name}, not to the compost`
      : `Take the remains of the ${crop} out of ${bed.name}, not to the compost`,
    steps: [
      ...(stands ? standingSteps(sick) : ENDED_STEPS),
      ...awaySteps(),
      ...sownCoverSteps(input, sick),
      CLEAN_TOOLS,
      ...staysSteps(sick),
      diagnosisStep(sick),
    ],
    cautions: [...SICK_CAUTIONS, BLADES, FORK],
    supplies: SICK_SUPPLIES,
    window: { earliest: on, preferred: on, latest: addDays(on, REMAINS_DAYS) },
    ifMissed: 'still do',
    missedNote:
      'What lies there seeds the soil, and rain, boots and tools carry it on: take it out as soon as you can.',
    effortMinutes: effortOverArea(areaOf(bed), REMAINS_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['dry-day'],
    after: [],
    confidence: 'recorded',
    reasons: sickReasons(input, sick),
    makes: [],
  };
}

function standingSteps({ findings }: SickPlanting): string[] {
  return [
    'Pick what is sound first, and use it soon: it does not keep.',
    `Lift every plant that shows ${namesOf(findings)}, with all its roots, and gather the leaves and fruit that fell.`,
    'What looks healthy may stand until it is ripe. Look it over once a week, and take out what falls sick.',
  ];
}

const ENDED_STEPS = [
  'Ease out the stubs and roots that were left in the ground with a fork, without turning the soil, and pick up every leaf.',
];

/** Where sick remains go, and where not. */
export function awaySteps(): string[] {
  return [
    'Bag it in the bed, so that nothing falls on the way. It goes with household waste, to the municipal collection or ' +
      'into the fire, whichever the local rules allow.',
    'Nothing of it to the compost, and nothing dug in: a pile at home is rarely hot all through.',
  ];
}

/** A cover already standing in the bed that carries the same thing. */
function sownCoverSteps({ garden }: PracticeInput, { bed, on }: SickPlanting): string[] {
  const standing = inBed(garden.stands, bed.id).filter(
    ({ sow, cutOn, deadOn }) => sow.happened && (cutOn ?? deadOn) === undefined,
  );
  return standing
    .filter(({ coverId }) => coverLockOut(garden, bed.id, coverId, on) !== undefined)
    .map(({ coverId }) => `The ${coverName(coverId)} standing here carries it too: pull it out the same way.`)
    .sort();
}

/** Said wherever sick plants are handled. */
export const CLEAN_TOOLS =
  'Clean up before you leave: brush the soil off fork, knife, barrow and boots over this bed, wash them, and wipe the ' +
  'blades with rubbing alcohol. From now on come to this bed last.';

/** What is known of where each disease lives on. */
export function staysSteps({ findings }: SickPlanting): string[] {
  return [...new Set(findings.flatMap(({ disease }) => disease?.stays ?? []))];
}

function diagnosisStep({ findings }: SickPlanting): string {
  return (
    `Not sure that it is ${namesOf(findings)}? Take a plant in a closed bag to the extension office or a plant clinic ` +
    'before you give the bed up for years.'
  );
}

/** Said wherever sick plants are handled. */
export const SICK_CAUTIONS: readonly string[] = [
  'Burn only where and when the local rules allow it, dry and in the open, and keep out of the smoke.',
  'Alcohol burns: wipe blades away from any flame, and wear gloves.',
];

/** To have at hand wherever sick plants are handled. */
export const SICK_SUPPLIES: readonly Supply[] = [
  { what: 'digging fork' },
  { what: 'strong bags that close' },
  { what: 'brush and soapy water' },
  { what: `rubbing alcohol, ${ALCOHOL_PERCENT} %` },
];
