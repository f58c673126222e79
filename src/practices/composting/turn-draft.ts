/**
 * Turning a pile.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { TaskDraft } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { draftOfPile, forkingMinutes, OPENING_CAUTIONS } from './pile-draft.ts';
import { activeEnd, builtLitres } from './pile-life.ts';
import type { NextTurn } from './turn.ts';

const TURN_TITLES: Readonly<Record<NextTurn['cause'], string>> = {
  'too hot': 'it is running too hot',
  sour: 'it smells sour',
  ammonia: 'it smells of ammonia',
  cooling: 'it is cooling',
  calendar: 'a week has passed',
};

/** Turn a pile; only the next turn is a task, later ones are a line in it. */
export function turnDraft(input: PracticeInput, pile: Pile, bin: Bin, turn: NextTurn): TaskDraft {
  const count = pile.turns.length + 1;
  const end = activeEnd(pile, input.climate);
  return {
    ...draftOfPile(pile, bin),
    key: `pile-turn/pile:${pile.id}/turn:${count}`,
    kind: 'turn-pile',
    job: { id: 'turn-pile', title: 'Turn the compost' },
    weight: 'work',
    title: `Turn the pile in ${bin.name}${turn.cause === 'calendar' ? '' : `: ${TURN_TITLES[turn.cause]}`}`,
    steps: turnSteps(pile, turn, end.usual),
    cautions: OPENING_CAUTIONS,
    supplies: turnSupplies(pile, turn),
    window: turn.window,
    ifMissed: 'still do',
    missedNote: 'The pile is only slower for it: turn it when you next can.',
    effortMinutes: forkingMinutes(builtLitres(pile)),
    confidence: turn.cause === 'calendar' ? 'derived' : 'recorded',
    reasons: turn.reasons,
    makes: [{ makes: 'pile-turned' as const, pileId: pile.id }],
  };
}

/** Litres of dry browns mixed into a sour or ammonia pile for each litre built: a tenth. House default. */
const RESCUE_SHARE = 0.1;

function rescueLitres(pile: Pile): number {
  return Math.max(10, Math.round((builtLitres(pile) * RESCUE_SHARE) / 5) * 5);
}

function turnSupplies(pile: Pile, turn: NextTurn): TaskDraft['supplies'] {
  const fork = { what: 'fork' };
  const browns = { what: 'dry leaves or straw', amount: { value: rescueLitres(pile), unit: 'L' as const } };
  return turn.cause === 'sour' || turn.cause === 'ammonia' ? [fork, browns] : [fork, { what: 'water, if it is dry' }];
}

function turnSteps(pile: Pile, turn: NextTurn, end: string): string[] {
  const rescue =
    turn.cause === 'sour' || turn.cause === 'ammonia'
      ? [
          `Mix in about ${quantity(rescueLitres(pile), 'L')} of dry browns as you turn, and smell it again in three days.`,
        ]
      : [];
  return [
    'Take its temperature in the middle before you open it, and write it down.',
    'Fork it over so that the outside comes to the middle.',
    ...rescue,
    'Squeeze a handful: a drop or two is right; nothing, water it as you go; a run of water, add dry browns.',
    `After this, weekly while it heats, until about ${dated(end)}.`,
  ];
}
