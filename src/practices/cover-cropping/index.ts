/**
 * Cover cropping: no bed bare. Stands the gardener planned get their dates; gaps nobody planned for get a suggestion.
 */

import type { Bed } from '../../garden/garden.ts';
import { inBed } from '../../garden/in-bed.ts';
import { latestOf } from '../../measures/days.ts';
import { type Gap, gapsOf } from '../bed-timeline.ts';
import type { Reason, TaskDraft } from '../draft.ts';
import type { CoverSowing, CoverStanding, Practice, PracticeInput, ThinStand, Uncovered } from '../practice.ts';
import { gapReasons, waitsFor } from './bed-gap.ts';
import { type Suggestion, suggestedStand } from './gap-suggestion.ts';
import { inItsPlace, whySkipped } from './in-its-place.ts';
import { mulchChosen, underMulch } from './mulch-chosen.ts';
import { type OpenSpan, openSpans } from './open-spans.ts';
import { heldAgainstSeed } from './seed-to-hand.ts';
import { coverSentences } from './sentences.ts';
import { sowDraft } from './sow-drafts.ts';
import type { SowWindow } from './sow-window.ts';
import { standInBed } from './stand.ts';
import type { StandPlan } from './stand-life.ts';
import { planStand, suggestedPlan } from './stand-plan.ts';
import { uncoveredPart } from './uncovered.ts';

/** The cover-cropping practice. */
export const coverCropping: Practice = {
  name: 'cover-cropping',
  work(input) {
    const beds = input.garden.beds.map((bed) => bedCovers(input, bed));
    return {
      drafts: heldAgainstSeed(
        input,
        beds.flatMap(({ drafts }) => drafts),
      ),
      found: {
        coverSowings: beds.flatMap(({ sowings }) => sowings),
        coverStands: beds.flatMap(({ standing }) => standing),
        uncovered: beds.flatMap(({ uncovered }) => uncovered),
        thinStands: beds.flatMap(({ thin }) => thin),
      },
    };
  },
  sentences: coverSentences,
};

interface BedCovers {
  drafts: readonly TaskDraft[];
  sowings: readonly CoverSowing[];
  standing: readonly CoverStanding[];
  uncovered: readonly Uncovered[];
  thin: readonly ThinStand[];
}

function bedCovers(input: PracticeInput, bed: Bed): BedCovers {
  const gaps = gapsOf(input.garden, bed.id, input.climate, input.garden.startedOn);
  const plans = inBed(input.garden.stands, bed.id).map((stand) => planStand(input, standInBed(stand, bed), gaps));
  const open = gaps.flatMap((gap) => openSpans(gap, plans).map((span) => openSpan(input, bed, gap, span)));
  const suggestions = open.flatMap(({ suggestion }) => suggestion ?? []);
  return {
    drafts: [...plans.flatMap(({ drafts }) => drafts), ...suggestions.flatMap(({ plan }) => plan.drafts)],
    sowings: [
      ...plans.flatMap(({ at, sow }) => (sow ? [sowingOf(at.stand.id, bed, sow)] : [])),
      ...suggestions.flatMap(({ standId, sow, draft }) =>
        input.garden.skipped[draft.key] === undefined ? [sowingOf(standId, bed, sow)] : [],
      ),
    ],
    standing: [...plans, ...suggestions.map(({ plan }) => plan)].flatMap((plan) => standingOf(plan)),
    uncovered: [...plans, ...open].flatMap(({ uncovered }) => uncovered ?? []),
    thin: plans.flatMap(({ thin }) => thin ?? []),
  };
}

function sowingOf(standId: string, bed: Bed, { window, half }: SowWindow): CoverSowing {
  return { bedId: bed.id, standId, half, earliest: window.earliest, latest: window.latest };
}

function standingOf({ at: { stand }, from, ends, endKey, uncovered }: StandPlan): CoverStanding[] {
  if (from === undefined || uncovered !== undefined) return [];
  return [
    {
      bedId: stand.bedId,
      standId: stand.id,
      from,
      ...(ends === undefined ? {} : { ends }),
      ...(endKey === undefined ? {} : { endKey }),
    },
  ];
}

interface Suggested {
  draft: TaskDraft;
  standId: string;
  sow: SowWindow;
  plan: StandPlan;
}

/** What is made of a span nobody planned a cover for: a suggestion while a sowing window is open, else bare ground. */
function openSpan(
  input: PracticeInput,
  bed: Bed,
  gap: Gap,
  span: OpenSpan,
): { suggestion?: Suggested; uncovered?: Uncovered } {
  const mulch = mulchChosen(input.garden, span);
  if (mulch !== undefined) return { uncovered: underMulch(span, mulch) };
  const from = span.from === undefined ? input.today : latestOf(span.from, input.today);
  const found = suggestedStand(input, bed, span, from);
  const suggestion = found && suggested(input, gap, span.failed === undefined ? [] : [span.failed], found);
  const skipped = suggestion && input.garden.skipped[suggestion.draft.key];
  const uncovered =
    found !== undefined && skipped !== undefined
      ? inItsPlace(bed.id, span, latestOf(span.from ?? skipped, skipped), whySkipped(found.at))
      : uncoveredPart(input, bed, span, found);
  return { ...(suggestion ? { suggestion } : {}), ...(uncovered ? { uncovered } : {}) };
}

function suggested(input: PracticeInput, gap: Gap, before: readonly Reason[], { at, sow, why }: Suggestion): Suggested {
  const draft = sowDraft(input, at, sow, waitsFor(input, at, gap, sow), [...before, ...why, ...gapReasons(gap)]);
  const asSuggested =
    'This is a suggestion: any cover that suits the gap serves. Mark it skipped if you mulch instead.';
  const told = { ...draft, steps: [...draft.steps, asSuggested] };
  return { draft: told, standId: at.stand.id, sow, plan: suggestedPlan(input, at, sow, told) };
}
