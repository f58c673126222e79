/**
 * The day after a night that a thermometer in the garden showed to be cold enough to hurt.
 */

import type { ColdNight } from '../../garden/garden.ts';
import { addDays } from '../../measures/days.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import { LOOK_MINUTES } from '../effort.ts';
import { isEndedByIce, KILLED_C } from '../frozen.ts';
import { coverTonightKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { lookKey } from './keys.ts';
import { limitReasons } from './reasons.ts';
import { isHurt } from './risk.ts';
import { type Standing, standingOn } from './standing.ts';
import { cropNames, cropsInBeds } from './words.ts';

/** Days after the night in which the harm can still be told from other trouble. House default. */
const LOOK_DAYS = 3;

/** The look after a measured night; nothing where it hurt nothing that stood. */
export function lookDrafts({ garden }: PracticeInput, watched: readonly Standing[], night: ColdNight): TaskDraft[] {
  const { evening, lowC } = night;
  const hurt = standingOn(watched, evening).filter((one) => isHurt(one, lowC));
  if (hurt.length === 0) return [];
  const covered = garden.done.some(({ key }) => key === coverTonightKey(evening));
  const killed = covered ? [] : killedOf(hurt, lowC);
  const next = addDays(evening, 1);
  return [
    {
      key: lookKey(evening),
      practice: 'frost-watch',
      kind: 'look-for-frost-damage',
      job: { id: 'frost-look', title: 'Look for frost damage' },
      subject: gardenSubject(garden),
      weight: 'check',
      title: `Look for frost damage: ${cropNames(hurt)}`,
      steps: stepsOf(hurt, killed),
      cautions: [],
      supplies: [],
      window: { earliest: next, preferred: next, latest: addDays(evening, LOOK_DAYS) },
      ifMissed: 'drop',
      missedNote: 'Time is lost: dead plants left standing rot, and hold the bed from what could follow.',
      effortMinutes: hurt.length * LOOK_MINUTES,
      needs: [],
      after: [],
      confidence: 'derived',
      reasons: [
        { rule: 'frost-watch.measured-low', saw: { evening, tempC: lowC }, source: "the garden's own plan" },
        ...limitReasons(hurt),
        ...killedReasons(killed),
      ],
      makes: [],
    },
  ];
}

/** The crops that a measured night ends where they stand. */
function killedOf(hurt: readonly Standing[], lowC: number): Standing[] {
  return lowC <= KILLED_C ? hurt.filter(({ crop }) => isEndedByIce(crop)) : [];
}

function stepsOf(hurt: readonly Standing[], killed: readonly Standing[]): string[] {
  const others = hurt.filter((one) => !killed.includes(one));
  return [
    'Look in the afternoon, when all has thawed: hurt leaves hang dark, limp and wet.',
    ...(killed.length === 0
      ? []
      : [
          `Likely dead: ${cropsInBeds(killed)}. Where the stems are soft and dark too, pick over what is left and ` +
            'clear the bed: the plan asks for that now. Does it live? Choose Not yet on its clearing, and it stays.',
        ]),
    ...(others.length === 0
      ? []
      : [`Likely hurt: ${cropsInBeds(others)}. Leave them a week before cutting: what is green at heart grows on.`]),
  ];
}

function killedReasons(killed: readonly Standing[]): Reason[] {
  if (killed.length === 0) return [];
  return [{ rule: 'frost-watch.killed', saw: { crops: cropNames(killed) }, limit: KILLED_C, source: 'agro:S53' }];
}
