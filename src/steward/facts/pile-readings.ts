/**
 * Readings of piles: told by somebody, or by a script that may tell one twice.
 */
import { InputRefused } from '../../garden/problem.ts';
import type { ReportedReading, Steward } from '../doings/steward.ts';
import type { VersionedView } from '../planning/planner.ts';
import type { Accept } from './accept.ts';
import { refusal } from './marking.ts';
import { lookDayProblems } from './reports.ts';

/** What a steward does with readings of piles. */
export function pileReadingsIn(accept: Accept): Pick<Steward, 'readPile' | 'readPileOnce'> {
  return {
    readPile: (gardenId, reading, by) =>
      accept(gardenId, by, (view) => [{ kind: 'pile-read', ...knownPile(view, reading) }]),
    async readPileOnce(gardenId, reading, by) {
      let isNew = false;
      await accept(gardenId, by, (view) => {
        const known = knownPile(view, reading);
        isNew = !isTold(view, known);
        return isNew ? [{ kind: 'pile-read', ...known }] : [];
      });
      return isNew;
    },
  };
}

function knownPile({ garden, plan }: VersionedView, reading: ReportedReading): ReportedReading {
  const pile = garden.piles.find(({ id }) => id === reading.pileId);
  if (pile === undefined) {
    const mend = `Piles: ${garden.piles.map(({ id }) => id).join(', ') || 'none yet'}.`;
    throw refusal('pile', `"${reading.pileId}" is not a pile of this garden.`, mend);
  }
  const [problem] = lookDayProblems(reading.on, pile.built, plan.today);
  if (problem !== undefined) throw new InputRefused('It cannot be taken in.', [problem]);
  return reading;
}

/** Whether the very same reading of the pile was told already. */
function isTold({ garden }: VersionedView, { pileId, ...told }: ReportedReading): boolean {
  const inOrder = (reading: object): string => JSON.stringify(Object.entries(reading).sort());
  const readings = garden.piles.find(({ id }) => id === pileId)?.readings ?? [];
  return readings.some((known) => inOrder(known) === inOrder(told));
}
