/**
 * What of a garden being set up is hardly meant, and what cannot be: beside what is told of any garden file, that which
 * follows from a list of what grows now.
 */
import type { GardenFile } from '../../garden/garden-file.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { daysBetween } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { type CropSpan, cropSpans, isPermanent } from '../../practices/bed-timeline.ts';
import { startWord } from '../../practices/planting/planting-in-bed.ts';
import { type Crowd, crowdsIn, stands } from '../../practices/side-by-side.ts';
import type { TrialGarden } from '../doings/set-up-doings.ts';
import { doubtsOf } from '../doubts/doubts.ts';
import { seasonDoubts } from '../doubts/season-doubts.ts';
import { crowdTold } from '../facts/crowded.ts';

/** Days after its reckoned end from which a crop hardly grows now. House default: half a year. */
const LONG_OVER_DAYS = 182;

const SHARED = 'Give another bed or day. Two that share a bed are told once the garden is made, each with its share.';

/** Everything that is hardly meant, in the order of the file. What grew in seasons past has days nobody told. */
export function draftDoubts(draft: SetUpDraft, file: GardenFile, trial: TrialGarden): Problem[] {
  const known = doubtsOf(file, trial).filter(({ where }) => (plantingAt(where) ?? Infinity) >= draft.past.length);
  const told = new Set(known.map(({ where }) => plantingAt(where)));
  const more = nowRows(draft, file).flatMap(({ id, at }) =>
    told.has(at) ? [] : nowDoubts(trial, id, `plantings[${at}]`),
  );
  return [...known, ...more];
}

function plantingAt(where: string): number | undefined {
  const [, at] = /^plantings\[(\d+)\]/.exec(where) ?? [];
  return at === undefined ? undefined : Number(at);
}

/** The rows of what grows now or is planned, with their place in the file. */
function nowRows({ past }: SetUpDraft, { plantings }: GardenFile): { id: string | undefined; at: number }[] {
  return plantings.map(({ id }, at) => ({ id, at })).slice(past.length);
}

function nowDoubts({ garden, climate, plan }: TrialGarden, id: string | undefined, where: string): Problem[] {
  const planting = garden.plantings.find((each) => each.id === id);
  if (planting === undefined) return [];
  const spans = cropSpans(garden, planting.bedId, climate);
  const span = spans.find((each) => each.planting.id === planting.id);
  if (span === undefined) return [];
  const over = overDoubts(span, plan.today, where);
  if (over.length > 0) return over;
  if (!planting.start.happened) return meetsDoubts(trialCrowds({ garden, climate }, planting.bedId), span, where);
  // A day in set-up is told from memory: a slip in it is as likely where it is past.
  const asPlanned = { ...planting, start: { ...planting.start, happened: false } };
  return isPermanent(span.crop) ? [] : seasonDoubts({ garden, climate }, asPlanned, where, false);
}

/** A crop told to grow now that was over long ago. */
function overDoubts({ crop, from, to, planting }: CropSpan, today: string, where: string): Problem[] {
  if (to === undefined || !planting.start.happened || daysBetween(to, today) <= LONG_OVER_DAYS) return [];
  const went = startWord(planting.cropId, planting.start.how);
  return [
    {
      where,
      what: `${crop.name} was ${went} on ${dated(from)} and would be over since about ${dated(to)}.`,
      mend: 'Perhaps another year was meant; what grew last year has a page of its own.',
    },
  ];
}

function trialCrowds({ garden, climate }: Pick<TrialGarden, 'garden' | 'climate'>, bedId: string) {
  const bed = garden.beds.find(({ id }) => id === bedId);
  return bed === undefined ? [] : crowdsIn(garden, bed, climate).map((crowd) => ({ crowd, bed, garden }));
}

/** A planned crop in the time of one that stands: where that is over earlier, it goes in as planned. */
function meetsDoubts(crowds: ReturnType<typeof trialCrowds>, span: CropSpan, where: string): Problem[] {
  return crowds.flatMap(({ crowd, bed, garden }) =>
    crowd.next.planting.id === span.planting.id
      ? [{ where, what: crowdTold(garden, bed, crowd), mend: 'Perhaps another bed or day was meant.' }]
      : [],
  );
}

/**
 * Refuses two crops that stand in one bed now, each with the whole of it.
 *
 * @throws {InputRefused} with every such pair
 */
export function refuseTwoNow(
  draft: SetUpDraft,
  file: GardenFile,
  { garden, climate }: Pick<TrialGarden, 'garden' | 'climate'>,
  today: string,
): void {
  const rows = nowRows(draft, file);
  const isNow = (span: CropSpan) =>
    span.planting.start.happened && stands(span, today) && rows.some(({ id }) => id === span.planting.id);
  const problems = garden.beds.flatMap((bed) =>
    crowdsIn(garden, bed, climate, isNow)
      .filter(({ next }) => isNow(next))
      .flatMap((crowd: Crowd) => {
        const at = rows.find(({ id }) => id === crowd.next.planting.id)?.at;
        return at === undefined
          ? []
          : [{ where: `plantings[${at}]`, what: crowdTold(garden, bed, crowd), mend: SHARED }];
      }),
  );
  if (problems.length > 0) throw new InputRefused('Two crops stand in one bed.', problems);
}
