/**
 * Turning a pile.
 */
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { TaskDraft } from '../draft.ts';
import { START_UP_MINUTES } from '../effort.ts';
import type { PracticeInput } from '../practice.ts';
import { activeEnd } from './heat-end.ts';
import { heatReasons } from './maturity-draft.ts';
import { draftOfPile, forkingMinutes, pileCautions } from './pile-draft.ts';
import { builtLitres, CURING_DAYS, restBetween } from './pile-life.ts';
import type { NextTurn, TurnCause } from './turn.ts';
import { turnKey } from './turn-count.ts';

const BECAUSE: Readonly<Record<TurnCause, string>> = {
  'too hot': ': it is running too hot',
  sour: ': it smells sour',
  ammonia: ': it smells of ammonia',
  wet: ': it is too wet',
  pests: ': pests are at it',
  slumped: ': it has slumped',
  dry: ': it is too dry',
  cooling: ': it is cooling',
  calendar: '',
};

/** Causes that dry browns answer, mixed in at the turn. */
const WANTS_BROWNS: ReadonlySet<TurnCause> = new Set(['sour', 'ammonia', 'wet']);
/** Share of the volume built that is mixed in as dry browns: a tenth. House default. */
const BROWNS_SHARE = 0.1;
/** Least browns worth mixing in, and what their amount is rounded to, litres. House default. */
const BROWNS_LITRES = { least: 10, round: 5 } as const;
/** Water given at a time to a dry pile, litres for each 100 built: a can, then feel again. House default. */
const CAN_LITRES = 10;

/** What waiting costs, by what asked for the turn. */
const MISSED_NOTES: Readonly<Record<NextTurn['cause'], string>> = {
  'too hot':
    'The life in it dies back while it runs so hot: take its temperature, and turn it today if it is still up.',
  sour: 'It goes on rotting without air: turn it at your next chance.',
  ammonia: 'It goes on losing nitrogen to the air: turn it at your next chance.',
  cooling: 'The pile is only slower for it: turn it when you next can.',
  dry: 'It has all but stopped until it is wet again: water it as you turn, when you next can.',
  pests: 'They settle in where scraps lie open: bury the scraps today, and turn it when you next can.',
  slumped: 'It goes sour where air no longer gets in: turn it when you next can.',
  wet: 'It may turn sour: turn it at your next chance, with dry browns.',
  calendar: 'The pile is only slower for it: turn it when you next can.',
};

/** Where rats may have been (common practice). */
const PEST_CAUTION =
  'Droppings and nests can carry disease: wet them before you fork, wear gloves and a mask, and wash your hands after.';

/** The how-manieth turn of a pile, and what calls for it. */
export interface CountedTurn extends NextTurn {
  count: number;
}

/** Turn a pile; only the next turn is a task, later ones are a line in it. */
export function turnDraft(input: PracticeInput, pile: Pile, bin: Bin, turn: CountedTurn): TaskDraft {
  return {
    ...draftOfPile(pile, bin),
    key: turnKey(pile, turn.count),
    kind: 'turn-pile',
    job: { id: 'turn-pile', title: 'Turn the compost' },
    weight: 'work',
    title: `Turn the pile in ${bin.name}${BECAUSE[turn.cause]}`,
    steps: turnSteps(input, pile, bin, turn),
    cautions: [...pileCautions(pile), ...(turn.cause === 'pests' ? [PEST_CAUTION] : [])],
    supplies: [{ what: 'fork' }, ...mixIn(pile, turn)],
    window: turn.window,
    ifMissed: 'still do',
    missedNote: MISSED_NOTES[turn.cause],
    ...(turn.cause === 'too hot' ? { minder: tooHotAsk(bin) } : {}),
    effortMinutes: forkingMinutes(builtLitres(pile)),
    onceMinutes: START_UP_MINUTES,
    confidence: turn.cause === 'calendar' ? 'derived' : 'recorded',
    reasons: [...turn.reasons, ...heatReasons(pile, bin)],
    makes: [{ makes: 'pile-turned' as const, pileId: pile.id }],
  };
}

/** In words for somebody who has never turned a pile. */
function tooHotAsk({ name }: Bin): string {
  return `The compost in ${name} is running too hot. Fork it over once, so that the outside comes to the middle; steam is as it should be.`;
}

function brownsLitres(pile: Pile): number {
  const { least, round } = BROWNS_LITRES;
  return Math.max(least, Math.round((builtLitres(pile) * BROWNS_SHARE) / round) * round);
}

function mixIn(pile: Pile, { cause }: NextTurn): TaskDraft['supplies'] {
  if (WANTS_BROWNS.has(cause)) {
    return [{ what: 'dry leaves or straw', amount: { value: brownsLitres(pile), unit: 'L' } }];
  }
  return [
    cause === 'dry' ? { what: 'water', amount: { value: CAN_LITRES, unit: 'L' } } : { what: 'water, if it is dry' },
  ];
}

function turnSteps(input: PracticeInput, pile: Pile, bin: Bin, turn: NextTurn): string[] {
  const { cause } = turn;
  return [
    'Take its temperature in the middle before you open it, and write it down.',
    'Fork it over so that the outside comes to the middle.',
    ...(WANTS_BROWNS.has(cause)
      ? [
          `Mix in about ${quantity(brownsLitres(pile), 'L')} of dry browns as you turn, and smell it again in three days.`,
        ]
      : []),
    ...(cause === 'pests'
      ? [
          'Bring scraps to the middle and cover them with a hand of dry leaves or finished compost; no meat, fish, dairy or oil.',
          bin.closed === true
            ? 'Look for a gap at the lid and at the foot of the bin, and close it with fine mesh.'
            : 'Where rats or mice come, food scraps want a closed bin with a lid and a floor of fine mesh.',
        ]
      : []),
    ...(cause === 'slumped'
      ? ['Loosen what has packed, and mix in coarse stuff such as straw where it is all fine.']
      : []),
    ...(cause === 'dry'
      ? [`Water each layer as you turn, ${quantity(CAN_LITRES, 'L')} at a time, and take its heat again in five days.`]
      : []),
    'Squeeze a handful: a drop or two is right; nothing, water it as you go; a run of water, add dry browns.',
    ...outlook(input, pile, turn),
  ];
}

/** What comes after this turn: the weeks of heat, the winter in between, the curing and the day it should be ready. */
function outlook({ climate }: PracticeInput, pile: Pile, { window: { preferred } }: NextTurn): string[] {
  if (pile.curingSince !== undefined) {
    return [
      `Then leave it alone again: it cures for ${CURING_DAYS.low} to ${CURING_DAYS.high} days from this turn on.`,
    ];
  }
  if (pile.method === 'cold') return ['Then leave it alone again.'];
  const end = activeEnd(pile, climate);
  if (end === undefined) return ['After this, weekly while it heats.'];
  const rest = restBetween(climate, preferred, end.usual);
  return [
    `After this, weekly while it heats, until about ${dated(end.usual)}.`,
    ...(rest === undefined
      ? []
      : [
          `It rests over winter, from about ${dated(rest.from)} to ${dated(rest.to)}: leave it closed then, unless it is still hot inside.`,
        ]),
    `Then it cures, and should be ready about ${dated(addDays(end.usual, CURING_DAYS.high))}, by ${dated(addDays(end.high, CURING_DAYS.high))} at the latest.`,
  ];
}
