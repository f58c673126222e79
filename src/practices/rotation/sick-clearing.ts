/**
 * Clearing a crop that fell sick: roots and all, and nothing of it to the compost.
 */
import { addDays, type Day } from '../../measures/days.ts';
import { areaOf, type CropSpan } from '../bed-timeline.ts';
import { namesOf, type SickPlanting } from '../disease.ts';
import type { TaskDraft } from '../draft.ts';
import { effortOverArea } from '../effort.ts';
import { clearKey } from '../keys.ts';
import type { PracticeInput } from '../practice.ts';
import { sickReasons } from './disease-reasons.ts';
import {
  awaySteps,
  CLEAN_TOOLS,
  REMAINS_DAYS,
  REMAINS_MINUTES_PER_M2,
  remainsKey,
  SICK_CAUTIONS,
  SICK_SUPPLIES,
  staysSteps,
} from './remains-draft.ts';

const ALL_OUT =
  'Did the whole crop come out with the sick plants? Then tell that day as its last harvest on the bed’s page, and this is not asked any more.';

/** What makes clearing a sick crop another job than clearing a sound one. */
const CLEAR_SICK = 'clear-sick';

/**
 * Whether a sick crop was taken out whole with what was sick: the one job was the other. Where it was harvested after
 * that, plants were left.
 */
export function wentWithTheSick({ garden }: PracticeInput, sick: SickPlanting, { planting }: CropSpan): boolean {
  const { lastHarvest } = planting;
  if (lastHarvest?.happened !== true) return false;
  return garden.done.some(({ key, on }) => key === remainsKey(sick) && lastHarvest.day <= on);
}

/** Whether what was sick went when the crop was cleared, roots and all, since something was found on it. */
export function sickWentWithAll(
  { garden }: PracticeInput,
  { on: found }: SickPlanting,
  { planting }: CropSpan,
): boolean {
  return garden.done.some(({ key, on, job }) => key === clearKey(planting.id) && job.id === CLEAR_SICK && on >= found);
}

/** Whether a sick crop is over so soon that taking out what is sick and clearing the bed are one job. */
export function clearsAtOnce({ garden }: PracticeInput, sick: SickPlanting, span: CropSpan & { to: Day }): boolean {
  return span.to <= addDays(sick.on, REMAINS_DAYS) && garden.skipped[clearKey(span.planting.id)] === undefined;
}

/** The clearing of a crop made over for one that fell sick; at once where the crop is as good as over. */
export function sickClearing(input: PracticeInput, clear: TaskDraft, sick: SickPlanting, atOnce: boolean): TaskDraft {
  const { bed, on } = sick;
  const crop = sick.crop.name.toLowerCase();
  const next = clear.steps.at(-1);
  return {
    ...clear,
    job: { id: CLEAR_SICK, title: 'Clear the bed roots and all, nothing to the compost' },
    title: `Clear the ${crop} from ${bed.name}, roots and all, nothing to the compost`,
    steps: [
      ...(atOnce ? [] : [ALL_OUT]),
      'Gather what is sound, and use it first: it does not keep.',
      `Pull or ease out every plant with all its roots, without turning the soil. None stays as other crops’ do: ${namesOf(sick.findings)} would live on in them.`,
      ...awaySteps(),
      CLEAN_TOOLS,
      ...staysSteps(sick),
      ...(next === undefined ? [] : [next]),
    ],
    cautions: [...SICK_CAUTIONS, ...clear.cautions],
    supplies: SICK_SUPPLIES,
    ...(atOnce ? { window: { earliest: on, preferred: on, latest: addDays(on, REMAINS_DAYS) } } : {}),
    effortMinutes: effortOverArea(areaOf(bed), REMAINS_MINUTES_PER_M2),
    reasons: [...sickReasons(input, sick), ...clear.reasons],
  };
}
