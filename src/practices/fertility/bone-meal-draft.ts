/**
 * Bone meal, only where a soil test found little phosphorus: worked in by small lifts of the fork in the spring after
 * the test, and never by default.
 */

import type { Bed } from '../../garden/garden.ts';
import { boneMeal } from '../../handbook/fertilisers.ts';
import { addDays, clampDay, type Day } from '../../measures/days.ts';
import { quantity } from '../../measures/quantity.ts';
import { areaOf } from '../bed-timeline.ts';
import { knownAs } from '../confidence.ts';
import type { TaskDraft } from '../draft.ts';
import { effortOverArea, LOOSEN_MINUTES_PER_M2, START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { SOIL_AWAKE_C, seasonAfter, soilAwake } from '../seasons.ts';
import { awaitedSqueezeKey, textureOf } from '../soil-class.ts';
import { testsOf } from '../soil-test.ts';
import { springWork, workedBeds } from '../spring-work.ts';
import { bedSubject } from '../subjects.ts';

/** Soil phosphorus below which it is called low, ppm. From memory: laboratories draw this line near 10. */
const LOW_PHOSPHORUS_PPM = 10;
/** pH above which bone meal dissolves too slowly to feed anything. From memory. */
const TOO_SWEET_PH = 7;
/** Phosphate that a blanket dressing brings, g/m²: 2.5 lb for 1000 sq ft (veg:V11). */
const PHOSPHATE_G_PER_M2 = 12.2;
/** Days of spring in which it is worked in, and after how many it is best done. House default. */
const SPRING = { days: 28, best: 7 } as const;
/** Depth of the lifts, mm. House default: among the first roots. */
const LIFT_MM = 150;
/** Grams an amount is rounded to. House default. */
const ROUND_G = 10;

/** Bone meal for each bed whose newest test found its soil poor in phosphorus and not too sweet. */
export function boneMealDrafts(input: PracticeInput): TaskDraft[] {
  const { garden, climate } = input;
  return garden.beds.flatMap((bed) => {
    const test = testsOf(garden, bed.id).find(({ phosphorusPpm }) => phosphorusPpm !== undefined);
    if (test?.phosphorusPpm === undefined || test.phosphorusPpm >= LOW_PHOSPHORUS_PPM) return [];
    if (test.ph !== undefined && test.ph > TOO_SWEET_PH) return [];
    const season = seasonAfter(climate, test.on);
    const awake = soilAwake(climate, season);
    if (awake === undefined || !workedBeds(input, awake).some(({ id }) => id === bed.id)) return [];
    const [first] = springWork(input, [bed], season);
    const latest = first === undefined ? addDays(awake, SPRING.days) : addDays(first.day, -1);
    if (latest < awake || first?.happened) return [];
    return [boneMealDraft(input, bed, { season, awake, latest, ppm: test.phosphorusPpm, on: test.on })];
  });
}

function boneMealDraft(
  input: PracticeInput,
  bed: Bed,
  at: { season: number; awake: Day; latest: Day; ppm: number; on: Day },
): TaskDraft {
  const { garden, climate } = input;
  const { season, awake, latest, ppm, on } = at;
  const grams = Math.max(
    ROUND_G,
    Math.round(((PHOSPHATE_G_PER_M2 / boneMeal.phosphate) * areaOf(bed)) / ROUND_G) * ROUND_G,
  );
  return {
    key: `bone-meal/bed:${bed.id}/${season}`,
    practice: 'fertility',
    kind: 'bone-meal',
    job: { id: 'bone-meal', title: 'Work bone meal in with the fork' },
    subject: bedSubject(bed),
    weight: 'work',
    title: `Work bone meal into ${bed.name} with the fork`,
    steps: [
      `Strew ${quantity(grams, 'g')} over the bed.`,
      `Push the fork in ${quantity(LIFT_MM, 'mm')}, lift a little so that the soil cracks and the meal falls in, and let it sink back. Turn nothing over.`,
      'Rake it level, and put mulch or compost back on top.',
    ],
    cautions: [
      'The dust is fine: strew low in still air and wear a mask. Dogs and rats dig for it, so leave none on top.',
      'Keep your feet clear of the tines.',
    ],
    supplies: [
      { what: `${boneMeal.name} (${boneMeal.analysis})`, amount: { value: grams, unit: 'g' } },
      { what: 'spading fork' },
    ],
    window: { earliest: awake, preferred: clampDay(addDays(awake, SPRING.best), awake, latest), latest },
    ifMissed: 'drop',
    missedNote:
      'Too late once the bed is planted: it would tear roots. Wait for a year in which the bed is free in spring.',
    effortMinutes: effortOverArea(areaOf(bed), LOOSEN_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit', 'calm-day'],
    after: [{ key: awaitedSqueezeKey(input, textureOf(garden, bed), season), minDays: 0 }],
    confidence: knownAs(climate, 'derived'),
    reasons: [
      { rule: 'bone-meal.low', saw: { ppm, on }, limit: LOW_PHOSPHORUS_PPM, source: 'from memory' },
      {
        rule: 'bone-meal.rate',
        saw: { phosphateGPerM2: PHOSPHATE_G_PER_M2, analysis: boneMeal.analysis },
        source: 'veg:V11',
      },
      { rule: 'bone-meal.awake', saw: { awake, tempC: SOIL_AWAKE_C }, limit: latest, source: 'house default' },
    ],
    makes: [{ makes: 'bed-fed', bedId: bed.id, fertiliserId: boneMeal.id, grams }],
  };
}
