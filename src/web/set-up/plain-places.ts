/**
 * Where a problem lies, as a gardener knows it: the garden file's own paths mean nothing to whoever has not written one.
 */

import type { Problem } from '../../garden/problem.ts';
import type { SetUpDraft } from '../../garden/set-up-draft.ts';
import { vegetableById } from '../../handbook/vegetables.ts';
import { coverName } from '../../practices/covers.ts';

/** The problems of a draft's file, each under the thing it is about. */
export function inPlainPlaces(problems: readonly Problem[], draft: SetUpDraft): Problem[] {
  return problems.map((problem) => ({ ...problem, where: plainPlace(problem.where, draft) }));
}

function plainPlace(where: string, draft: SetUpDraft): string {
  const [, list, index] = /^(\w+)\[(\d+)\]/.exec(where) ?? [];
  const at = Number(index);
  const bedName = (id: string) => draft.beds.find((bed) => bed.id === id)?.name ?? id;
  switch (list) {
    case 'plantings': {
      // What grew in seasons past stands first in the file.
      const row = [...draft.past, ...draft.plantings][at];
      return row === undefined ? where : `${vegetableById(row.crop).name} in ${bedName(row.bed)}`;
    }
    case 'coverStands': {
      const row = draft.stands[at];
      return row === undefined ? where : `${coverName(row.mix ?? row.cover ?? '')} in ${bedName(row.bed)}`;
    }
    case 'beds':
      return draft.beds[at]?.name ?? where;
    case 'bins':
      return draft.bins[at]?.name ?? where;
    case 'piles':
      return `the pile in ${draft.bins.find(({ id }) => id === draft.piles[at]?.bin)?.name ?? 'its bin'}`;
    default:
      return WORDS[where] ?? where;
  }
}

const WORDS: Readonly<Record<string, string>> = {
  'garden.name': 'Name',
  'garden.timeZone': 'Time zone',
  'climate.nearest': 'Frost dates',
  'climate.station': 'Frost dates',
  'climate.frostDates': 'Frost dates',
};
