/**
 * The morning after a cold night: covers off before the sun cooks what is under them.
 */

import { addDays } from '../../measures/days.ts';
import type { TaskDraft } from '../draft.ts';
import { COVER_BED_MINUTES, START_UP_MINUTES } from '../effort.ts';
import { coverTonightKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { gardenSubject } from '../subjects.ts';
import { uncoverHour } from './hours.ts';
import { uncoverKey } from './keys.ts';
import type { Tonight } from './tonight.ts';
import { listed } from './words.ts';

/** Air at which covers over cool crops must be off: 60 °F by day (agro:S59). */
const OFF_ABOVE_C = 15.6;

/**
 * Taking off what was put on; nothing where no bed gets a cover.
 *
 * @param night isAhead: whether the covering itself is still wanted, and so comes first; snow: whether any lies on them
 */
export function uncoverDrafts(
  { garden }: PracticeInput,
  { evening, covered }: Tonight,
  night: { isAhead: boolean; snow: boolean },
): TaskDraft[] {
  if (covered.length === 0) return [];
  const morning = addDays(evening, 1);
  const effortMinutes = START_UP_MINUTES + covered.length * COVER_BED_MINUTES;
  const at = uncoverHour(garden.place, morning, effortMinutes);
  const beds = listed(covered.map(({ risk }) => risk.bed.name));
  return [
    {
      key: uncoverKey(evening),
      practice: 'frost-watch',
      kind: 'uncover-beds',
      job: { id: 'frost-uncover', title: 'Take the covers off' },
      subject: gardenSubject(garden),
      weight: 'deadline',
      title: `Take the covers off ${beds}`,
      steps: [
        ...(night.snow
          ? ['Brush the snow off first, from the middle outwards, so that none falls on the plants.']
          : []),
        'Wait until the air is above freezing and the frost has gone from the covers.',
        'Take them off, shake them dry, and leave them by the beds while more cold nights are expected.',
      ],
      cautions: [],
      supplies: [],
      window: { earliest: morning, preferred: morning, latest: morning },
      ...(at === undefined ? {} : { at }),
      ifMissed: 'drop',
      missedNote: 'Fruit is lost: under a cover in the sun plants overheat, and flowers go without bees.',
      effortMinutes,
      needs: ['above-freezing'],
      after: night.isAhead ? [{ key: coverTonightKey(evening), minDays: 1 }] : [],
      confidence: 'derived',
      reasons: [{ rule: 'frost-watch.uncover', saw: { evening }, limit: OFF_ABOVE_C, source: 'agro:S59' }],
      makes: [],
    },
  ];
}
