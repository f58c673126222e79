/**
 * A crop goes into its bed: sown, planted as sets or cloves, or set out as plants.
 */
import { cautionsAt } from '../../handbook/shapes/cautions.ts';
import { areaOf, isPermanent } from '../bed-timeline.ts';
import type { Supply, TaskDraft } from '../draft.ts';
import {
  effortOverArea,
  PLANT_SETS_MINUTES_PER_M2,
  SET_PLANT_MINUTES,
  SOW_ROW_MINUTES_PER_3_M,
  START_UP_MINUTES,
} from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { layoutOf, partOf } from './amounts.ts';
import { waitsFor } from './bed-limits.ts';
import { insteadOf } from './later-crops.ts';
import type { PlannedStart } from './planned-day.ts';
import { draftOfPlanting, isSeed, type PlantingInBed, startedFrom, startKey } from './planting-in-bed.ts';
import { seasonReason, startOdds } from './start-odds.ts';
import { ownLayout, startSteps } from './start-steps.ts';

/** Metres of row the minutes of sowing are reckoned for. */
const METRES_RECKONED = 3;

/** The task that puts a planting into its bed. `ahead` is what its plants wait for, where they are raised. */
export function startDraft(
  input: PracticeInput,
  at: PlantingInBed,
  start: PlannedStart,
  ahead: TaskDraft['after'],
): TaskDraft {
  const { planting, bed, crop, name } = at;
  const job = jobOf(at);
  return {
    ...draftOfPlanting(input, at),
    key: startKey(planting),
    kind: planting.start.how === 'sow' ? 'sow-crop' : 'set-out',
    job: { id: job.id, title: job.title },
    weight: 'work',
    title: `${job.verb} ${name} in ${bed.name}`,
    steps: startSteps(input, at, start),
    cautions: cautionsAt(crop.cautions, 'always', 'started'),
    supplies: suppliesOf(at),
    window: start.window,
    ifMissed: 'replace',
    missedNote: missedNote(input, at, start),
    effortMinutes: effortOf(at),
    onceMinutes: START_UP_MINUTES,
    needs: ['soil-fit'],
    after: [...waitsFor(input, at), ...ahead],
    ...startOdds(input, at, start),
    reasons: [...start.reasons, ...seasonReason(input, at, start)],
    makes: [{ makes: 'planting-started', plantingId: planting.id }],
  };
}

/** One job for all that is sown on a day, one for all that is set out; garlic's day is its own. */
function jobOf(at: PlantingInBed): { id: string; title: string; verb: string } {
  if (at.planting.start.how === 'set-out') return { id: 'set-out', title: 'Set out', verb: 'Set out' };
  if (at.crop.maturityFrom === 'fall-set') return { id: 'plant-garlic', title: 'Plant garlic', verb: 'Plant' };
  return { id: 'sow-outdoors', title: 'Sow outdoors', verb: isSeed(at) ? 'Sow' : 'Plant' };
}

function suppliesOf(at: PlantingInBed): Supply[] {
  const layout = ownLayout(at);
  const what = startedFrom(at);
  if (isSeed(at)) {
    if (layout === undefined) return [{ what }, { what: 'watering can' }];
    const amount = { value: Math.round(layout.rowM * 10) / 10, unit: 'm' as const };
    return [{ what: `${what}, for rows of`, amount }, { what: 'watering can' }];
  }
  const counted = layout?.plants === 1 ? `1 ${what.replace(/s$/, '')}` : `${layout?.plants} ${what}`;
  return [{ what: layout === undefined ? what : counted }, { what: 'trowel' }];
}

function effortOf(at: PlantingInBed): number {
  const layout = layoutOf(at);
  if (layout === undefined) return START_UP_MINUTES + SOW_ROW_MINUTES_PER_3_M;
  if (at.planting.start.how === 'sow' && !isSeed(at))
    return effortOverArea(areaOf(partOf(at)), PLANT_SETS_MINUTES_PER_M2);
  const minutes = isSeed(at)
    ? (layout.rowM / METRES_RECKONED) * SOW_ROW_MINUTES_PER_3_M
    : layout.plants * SET_PLANT_MINUTES;
  return Math.ceil(START_UP_MINUTES + minutes);
}

function missedNote(input: PracticeInput, at: PlantingInBed, { window }: PlannedStart): string {
  const { crop, name } = at;
  if (isPermanent(crop)) return `Too late for ${name} this season: keep the place free, and plant next spring.`;
  const lost = `Too late for ${name} here: sown or set later it would not be ready in time.`;
  return `${lost} ${insteadOf(input, at, window.latest)}`;
}
