/**
 * Rotation: the changeover from one crop to the next. A crop that is finished is cut at the soil line, its roots are
 * left in the ground, and the bed goes on to its next crop or a cover. One that fell sick goes roots and all, and what
 * would bring the disease back is planned anew. And the plan of the season to come, settled before the covers that hang
 * on it are sown.
 */

import { freezeOdds } from '../../climate/freeze.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { cautionsAt } from '../../handbook/shapes/cautions.ts';
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../measures/days.ts';
import { areaOf, type CropSpan, cropSpans } from '../bed-timeline.ts';
import { BLADES, FORK } from '../cautions.ts';
import { knownAs } from '../confidence.ts';
import { type SickPlanting, sickPlantings } from '../disease.ts';
import type { TaskDraft } from '../draft.ts';
import { CUT_MINUTES_PER_M2, effortOverArea, START_UP_MINUTES } from '../effort.ts';
import { clearKey } from '../keys.ts';
import { freezeWords } from '../odds-of.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { seasonsAround } from '../seasons.ts';
import { bedSubject } from '../subjects.ts';
import { type Changeover, changeoverOf } from './changeover.ts';
import { planAgainDrafts } from './plan-again-draft.ts';
import { clearReasons } from './reasons.ts';
import { remainsDraft } from './remains-draft.ts';
import { rotationSentences } from './sentences.ts';
import { settleDrafts } from './settle-draft.ts';
import { clearsAtOnce, sickClearing, sickWentWithAll, wentWithTheSick } from './sick-clearing.ts';
import { clearSteps, isLifted } from './steps.ts';
import { warnings } from './warning.ts';

/** Days a changeover may take once the last harvest is in: 0–7 in most handbooks, from memory. */
const CHANGEOVER_DAYS = 7;
/** Days after a last harvest that was told, or only worked out, that a bed nobody cleared is asked after. House defaults. */
export const ASKED_DAYS = { told: 28, 'worked out': 60 } as const;
/** Days after the last harvest that clearing is best done: the picking finished, the bed not long bare. House default. */
const PREFERRED_DAYS = 2;

/** The rotation practice. */
export const rotation: Practice = {
  name: 'rotation',
  work(input) {
    const seasons = seasonsAround(input.climate, input.garden.startedOn, input.until);
    const sick = sickPlantings(input.garden, input.climate);
    const ofBeds = input.garden.beds.flatMap((bed) => {
      const sickHere = sick.filter((each) => each.bed.id === bed.id);
      return bedDrafts(input, bed, sickHere);
    });
    return { drafts: [...ofBeds, ...seasons.flatMap((season) => settleDrafts(input, season))] };
  },
  sentences: rotationSentences,
};

function bedDrafts(input: PracticeInput, bed: Bed, sick: readonly SickPlanting[]): TaskDraft[] {
  const spans = cropSpans(input.garden, bed.id, input.climate);
  const clears = changeovers(input, bed, spans, sick);
  const remains = sick.flatMap((each) => {
    const span = spans.find(({ planting }) => planting.id === each.planting?.id);
    if (span !== undefined && sickWentWithAll(input, each, span)) return [];
    const open = span !== undefined && isOpen(input, bed, span, spans) ? span : undefined;
    if (open !== undefined && clearsAtOnce(input, each, open)) return [];
    return [remainsDraft(input, each, (open !== undefined && open.to >= each.on) || span?.end === 'permanent')];
  });
  return [...clears, ...remains, ...planAgainDrafts(input, bed), ...warnings(input, bed, clears)];
}

function changeovers(
  input: PracticeInput,
  bed: Bed,
  spans: readonly CropSpan[],
  sick: readonly SickPlanting[],
): TaskDraft[] {
  return spans.flatMap((span) => {
    if (!isOpen(input, bed, span, spans)) return [];
    const found = sick.find(({ planting }) => planting?.id === span.planting.id);
    if (found !== undefined && wentWithTheSick(input, found, span)) return [];
    const atOnce = found !== undefined && clearsAtOnce(input, found, span);
    if (!atOnce && wasAskedLongAgo(input.garden, span, span.to)) return [];
    const draft = clearDraft(input, bed, changeoverOf(input, bed, span, spans));
    return [found === undefined ? draft : sickClearing(input, draft, found, atOnce)];
  });
}

/** Whether a crop was over so long before the garden was brought in that nobody is asked to clear it. */
function wasAskedLongAgo({ startedOn }: PracticeInput['garden'], { end }: CropSpan, to: Day): boolean {
  const told = end === 'stated' || end === 'happened';
  return addDays(to, ASKED_DAYS[told ? 'told' : 'worked out']) < startedOn;
}

/** Whether a crop comes to an end in the span worked out and is not known to be gone. */
function isOpen(
  input: PracticeInput,
  bed: Bed,
  span: CropSpan,
  spans: readonly CropSpan[],
): span is CropSpan & { to: Day } {
  return span.to !== undefined && span.to <= input.until && !wasCleared(input, bed.id, span, span.to, spans);
}

/**
 * Whether a crop is known to be gone: it was marked as cleared, or something went into its bed after it. A harvest that
 * is in says nothing of the plants.
 */
function wasCleared(
  { garden }: Pick<PracticeInput, 'garden'>,
  bedId: string,
  { planting }: CropSpan,
  to: Day,
  spans: readonly CropSpan[],
): boolean {
  if (garden.done.some(({ key }) => key === clearKey(planting.id))) return planting.lastHarvest?.happened === true;
  const sown = inBed(garden.stands, bedId).some(({ sow }) => sow.happened && sow.day >= to);
  return (
    sown || spans.some((next) => next.planting.id !== planting.id && next.planting.start.happened && next.from >= to)
  );
}

/**
 * Crops of a bed whose clearing was asked for and that nobody said to be gone when something else went in: nothing asks for
 * it any more.
 *
 * @param went what went in, a cover stand or a planting, and the day
 */
export function unclearedUnder(
  { garden, climate }: Pick<PracticeInput, 'garden' | 'climate'>,
  bedId: string,
  went: { itemId: string; on: Day },
): CropSpan[] {
  const { itemId, on } = went;
  const spans = cropSpans(garden, bedId, climate);
  const before = { garden: { ...garden, stands: garden.stands.filter(({ id }) => id !== itemId) } };
  const others = spans.filter(({ planting }) => planting.id !== itemId);
  return others.filter((span) => {
    const { to, planting } = span;
    if (to === undefined || to > on || !planting.start.happened || wasAskedLongAgo(garden, span, to)) return false;
    return !wasCleared(before, bedId, span, to, others);
  });
}

function clearDraft(input: PracticeInput, bed: Bed, change: Changeover): TaskDraft {
  const { span } = change;
  const crop = span.crop.name.toLowerCase();
  const lifted = isLifted(span);
  return {
    key: clearKey(span.planting.id),
    practice: 'rotation',
    kind: 'clear-bed',
    job: lifted
      ? { id: 'lift-crop', title: 'Lift the last of the crop' }
      : { id: 'clear-bed', title: 'Clear the bed, leave the roots' },
    subject: bedSubject(bed),
    weight: 'work',
    title: lifted
      ? `Lift the last of the ${crop} in ${bed.name}`
      : `Clear the ${crop} from ${bed.name}, leave the roots`,
    steps: clearSteps(change, input.climate),
    cautions: [
      lifted ? FORK : BLADES,
      'Keep diseased leaves and fruit out of the compost; bag them or follow local rules.',
      ...cautionsAt(span.crop.cautions, 'always', 'ended'),
    ],
    supplies: [{ what: lifted ? 'digging fork' : 'knife or loppers' }, { what: 'barrow for the tops' }],
    window: clearWindow(change, input.garden.startedOn),
    ifMissed: 'still do',
    missedNote: lifted
      ? 'The crop may freeze, split or rot in the ground: lift what is sound at your next chance.'
      : 'What follows is held up, and its own window may close: clear the bed at your next chance.',
    effortMinutes: effortOverArea(Math.min(span.planting.areaM2 ?? areaOf(bed), areaOf(bed)), CUT_MINUTES_PER_M2),
    onceMinutes: START_UP_MINUTES,
    needs: [],
    after: [],
    confidence: span.end === 'stated' ? 'recorded' : knownAs(input.climate, 'derived'),
    ...killingOdds(input, change),
    reasons: clearReasons(input, change, CHANGEOVER_DAYS),
    makes: [{ makes: 'bed-cleared', plantingId: span.planting.id }],
  };
}

/**
 * From the last harvest for a week, or until what follows goes in. Where that was over when the garden was brought in,
 * for a week from then on.
 */
function clearWindow({ span, follower }: Changeover, startedOn: Day): TaskDraft['window'] {
  const { to, liftedIn } = span;
  if (addDays(to, CHANGEOVER_DAYS) < startedOn) {
    return { earliest: startedOn, preferred: startedOn, latest: addDays(startedOn, CHANGEOVER_DAYS) };
  }
  const week = addDays(to, CHANGEOVER_DAYS);
  const latest = latestOf(to, follower.day === undefined ? week : earliestOf(week, follower.day));
  const preferred = daysBetween(to, latest) < PREFERRED_DAYS ? latest : addDays(to, PREFERRED_DAYS);
  if (liftedIn === undefined) return { earliest: to, preferred, latest };
  const middle = addDays(liftedIn.from, Math.round(daysBetween(liftedIn.from, to) / 2));
  return { earliest: liftedIn.from, preferred: middle, latest: to };
}

/** How the freeze that ends a crop is spread over the years. */
function killingOdds({ climate }: PracticeInput, { span }: Changeover): Pick<TaskDraft, 'odds' | 'oddsOf'> {
  if (span.freezeLimitF === undefined) return {};
  const season = seasonOf(climate.seasonTurn, span.to);
  const ask = { event: 'first-autumn', limitF: span.freezeLimitF, season } as const;
  return { odds: freezeOdds(climate, ask), oddsOf: freezeWords(ask) };
}
