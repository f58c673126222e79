/**
 * Composting: each pile's next job, from its log.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import type { TaskDraft } from '../draft.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import { buildDraft } from './build-draft.ts';
import { activeEnd, finishedLitres, readyDay } from './pile-life.ts';
import { coldMaturityDraft, cureDraft, maturityDraft } from './ripening-drafts.ts';
import { compostSentences } from './sentences.ts';
import { doneHeating, nextTurn } from './turn.ts';
import { turnDraft } from './turn-draft.ts';

/** The composting practice. */
export const composting: Practice = {
  name: 'composting',
  work(input) {
    const piles = input.garden.piles.map((pile) => ({ pile, bin: binOf(input, pile) }));
    return {
      drafts: piles.flatMap(({ pile, bin }) => pileDrafts(input, pile, bin)),
      found: {
        compostSupply: input.garden.piles.map((pile) => ({
          pileId: pile.id,
          litres: finishedLitres(pile),
          ready: readyDay(pile, input.climate),
          finished: pile.finishedOn !== undefined,
        })),
      },
    };
  },
  sentences: compostSentences,
};

function binOf(input: PracticeInput, pile: Pile): Bin {
  const bin = input.garden.bins.find((row) => row.id === pile.binId);
  if (bin === undefined)
    throw new RangeError(`Pile "${pile.id}" stands in bin "${pile.binId}", which the garden has not.`);
  return bin;
}

function pileDrafts(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft[] {
  if (pile.finishedOn !== undefined) return [];
  if (!pile.built.happened) return [buildDraft(pile, bin)];
  if (pile.curingSince !== undefined) return [maturityDraft(pile, bin, pile.curingSince)];
  if (pile.method === 'cold') return [coldMaturityDraft(pile, bin)];
  const end = activeEnd(pile, input.climate);
  const turn = nextTurn(pile, input.climate);
  if (doneHeating(pile) || (turn.cause === 'calendar' && turn.window.earliest > end.usual))
    return [cureDraft(input, pile, bin)];
  return [turnDraft(input, pile, bin, turn)];
}
