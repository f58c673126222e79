/**
 * Soil readiness: is the soil fit to be worked, and does it want loosening. One handful answers for every bed of one
 * texture.
 */
import { seasonOf } from '../../climate/season.ts';
import type { TaskDraft } from '../draft.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { soilAwake } from '../seasons.ts';
import { textureOf } from '../soil-class.ts';
import { workedBeds } from '../spring-work.ts';
import { loosenDrafts } from './loosen-draft.ts';
import { soilReadinessSentences } from './sentences.ts';
import { squeezeDraft } from './squeeze-draft.ts';

/** The soil-readiness practice. */
export const soilReadiness: Practice = {
  name: 'soil-readiness',
  work: (input) => ({ drafts: [...squeezeDrafts(input), ...loosenDrafts(input)] }),
  sentences: soilReadinessSentences,
};

/** A test for each soil of the garden in each season from the one the garden began in. */
function squeezeDrafts(input: PracticeInput): TaskDraft[] {
  const { garden, climate, until } = input;
  const drafts: TaskDraft[] = [];
  const last = seasonOf(climate.seasonTurn, until);
  for (let season = seasonOf(climate.seasonTurn, garden.startedOn); season <= last; season += 1) {
    const awake = soilAwake(climate, season);
    if (awake === undefined) continue;
    const worked = workedBeds(input, awake);
    for (const soilTexture of new Set(worked.map((bed) => textureOf(garden, bed)))) {
      const beds = worked.filter((bed) => textureOf(garden, bed) === soilTexture);
      const everywhere = beds.length === worked.length;
      const draft = squeezeDraft(input, { soilTexture, beds, everywhere, season });
      if (draft !== undefined) drafts.push(draft);
    }
  }
  return drafts;
}
