/**
 * Frost watch: covers at hand while a freeze may come, and an evening's work once a night is known to be cold. Nothing
 * here forecasts: a low is what somebody typed in or measured.
 */
import { expectedNights, measuredNights } from '../../garden/told-nights.ts';
import { addDays } from '../../measures/days.ts';
import type { TaskDraft } from '../draft.ts';
import { coverTonightKey } from '../keys.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { seasonsAround } from '../seasons.ts';
import { coverDraft } from './cover-draft.ts';
import { lookDrafts } from './look-draft.ts';
import { lowOverBeds } from './nights.ts';
import { seasonDrafts } from './season-drafts.ts';
import { frostWatchSentences } from './sentences.ts';
import { type Standing, watchedCrops } from './standing.ts';
import { tonightOf } from './tonight.ts';
import { uncoverDrafts } from './uncover-draft.ts';

/** The frost-watch practice. */
export const frostWatch: Practice = {
  name: 'frost-watch',
  work(input) {
    const { garden, climate, until } = input;
    const watched = watchedCrops(garden, climate);
    const seasons = seasonsAround(climate, garden.startedOn, until);
    return {
      drafts: [
        ...seasons.flatMap((season) => seasonDrafts(input, watched, season)),
        ...nightDrafts(input, watched),
        ...measuredNights(garden).flatMap((night) => lookDrafts(input, watched, night)),
      ],
    };
  },
  sentences: frostWatchSentences,
};

/** The evenings and mornings of nights that are expected to be cold. What is expected of a night gone by is dropped. */
function nightDrafts(input: PracticeInput, watched: readonly Standing[]): TaskDraft[] {
  const { garden, today } = input;
  const measured = measuredNights(garden);
  return expectedNights(garden).flatMap((night) => {
    const { evening } = night;
    if (addDays(evening, 1) < today) return [];
    const tonight = tonightOf(watched, garden, evening, lowOverBeds(night, garden.place));
    if (tonight === undefined) return [];
    const isAhead = evening >= today && !measured.some((told) => told.evening === evening);
    const isSkipped = garden.skipped[coverTonightKey(evening)] !== undefined;
    return [
      ...(isAhead ? [coverDraft(input, tonight, night)] : []),
      ...(isSkipped ? [] : uncoverDrafts(input, tonight, { isAhead, snow: night.snow })),
    ];
  });
}
