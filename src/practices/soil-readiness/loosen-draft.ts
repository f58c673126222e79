/**
 * Loosening without turning. A raised bed nobody treads on needs none; ground that was trodden until it became a bed is
 * loosened once, in the first spring the garden sees it.
 */

import { dayOfIndex } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { thereFrom } from '../../garden/planned-beds.ts';
import { addDays, clampDay, type Day } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { effortOverArea, LOOSEN_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { SOIL_AWAKE_C, seasonAfter, soilAwake } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { springWork, workedBeds } from '../spring-work.ts';
import { bedSubject } from '../subjects.ts';

/** Depth the fork goes, mm: 8 to 12 in (veg:V17 for new beds). */
const FORK_DEPTH_MM = { low: 200, high: 300 } as const;
/** Days of spring in which a bed with nothing planned is loosened. House default. */
const SPRING_DAYS = 28;
/** Days after the soil wakes on which it is best done: it has had time to dry. House default. */
const DRYING_DAYS = 7;

/** The new beds at ground level, each to be loosened in the garden's first spring. */
export function loosenDrafts(input: PracticeInput): TaskDraft[] {
  const season = seasonAfter(input.climate, input.garden.startedOn);
  const awake = soilAwake(input.climate, season);
  if (awake === undefined) return [];
  const midwinter = dayOfIndex(input.climate.seasonTurn, season, 1);
  return workedBeds(input, awake)
    .filter((bed) => !bed.raised && thereFrom(bed) === undefined && isNew(input, bed, midwinter))
    .flatMap((bed) => loosenDraft(input, bed, season, awake) ?? []);
}

/** Whether nothing is known to have happened in a bed before a day. */
function isNew({ garden }: PracticeInput, { id }: Bed, before: Day): boolean {
  const days = [
    ...inBed(garden.plantings, id).map(({ start }) => start),
    ...inBed(garden.stands, id).map(({ sow }) => sow),
    ...inBed(garden.topdressed, id).map(({ on }) => ({ day: on, happened: true })),
  ];
  return !days.some(({ day, happened }) => happened && day < before);
}

function loosenDraft(input: PracticeInput, bed: Bed, season: number, awake: Day): TaskDraft | undefined {
  const { garden, climate } = input;
  const [first] = springWork(input, [bed], season);
  const latest = first === undefined ? addDays(awake, SPRING_DAYS) : addDays(first.day, -1);
  if (latest < awake || first?.happened) return undefined;
  return {
    key: `loosen/bed:${bed.id}`,
    practice: 'soil-readiness',
    kind: 'loosen-bed',
    job: { id: 'loosen-bed', title: 'Loosen the soil without turning it' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Loosen ${bed.name} without turning it`,
    steps: [
      `Push the fork in ${quantity(FORK_DEPTH_MM.low, 'mm')} to ${quantity(FORK_DEPTH_MM.high, 'mm')}, lean back until the soil cracks, and pull it out again. Turn nothing over.`,
      'Step back a hand and do the next lift; stand on a board, never on what is loosened.',
      'Once is enough: from now on nobody treads there, and worms and roots keep it open.',
    ],
    cautions: ['Lean with your weight and a straight back, and keep your feet clear of the tines.'],
    supplies: [{ what: 'spading fork or broadfork' }, { what: 'board to stand on' }],
    window: { earliest: awake, preferred: clampDay(addDays(awake, DRYING_DAYS), awake, latest), latest },
    ifMissed: 'drop',
    missedNote: 'Too late for a bed that is planted: leave it be. Roots and worms loosen it as well, only more slowly.',
    effortMinutes: effortOverArea(areaOf(bed), LOOSEN_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit'],
    after: [{ key: awaitedSqueezeKey(input, textureOf(garden, bed), season), minDays: 0 }],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      { rule: 'loosen.new-ground', saw: { bed: bed.name }, source: 'from memory' },
      { rule: 'loosen.awake', saw: { awake, tempC: SOIL_AWAKE_C }, limit: latest, source: 'house default' },
    ],
    makes: [],
  };
}
