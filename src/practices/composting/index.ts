/**
 * Composting: each pile's next job, from its log.
 */
import type { Bin, Pile, Subject } from '../../garden/garden.ts';
import { feedstockById } from '../../handbook/feedstocks.ts';
import { addDays } from '../../measures/days.ts';
import { dated, quantity } from '../../measures/quantity.ts';
import type { TaskDraft } from '../draft.ts';
import { LOOK_MINUTES, START_UP_MINUTES, TURN_MINUTES_PER_M3 } from '../effort.ts';
import type { Practice, PracticeInput } from '../practice.ts';
import {
  activeEnd,
  builtLitres,
  COLD_DAYS,
  CURING_DAYS,
  finishedLitres,
  HOT_DAYS,
  lastMoved,
  readyDay,
  VOLUME_LOSS,
} from './pile-life.ts';
import { compostSentences } from './sentences.ts';
import { doneHeating, type NextTurn, nextTurn } from './turn.ts';

const LITRES_PER_M3 = 1000;
/** Thickest stick that rots in a season, mm (half an inch, common practice). */
const THICKEST_STICK_MM = 12.7;

/** Said wherever a pile is opened. */
const OPENING_CAUTIONS = [
  'Dust and mould spores: wet a dusty pile first, wear a mask, and leave turning to others if your lungs or immunity are weak.',
  'A working pile can be scalding inside and steams when opened. Lift small forkfuls with bent knees; wash hands after.',
] as const;

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

function subjectOf(pile: Pile, bin: Bin): Subject {
  return { type: 'pile', id: pile.id, name: `the pile in ${bin.name}`, binId: bin.id };
}

const base = (pile: Pile, bin: Bin) => ({
  practice: 'composting' as const,
  subject: subjectOf(pile, bin),
  supplies: [],
  needs: [],
  after: [],
});

function buildDraft(pile: Pile, bin: Bin): TaskDraft {
  const day = pile.built.day;
  const [browns, greens] = (['brown', 'green'] as const).map((kind) => litresOf(pile, kind));
  return {
    ...base(pile, bin),
    key: `pile-build/pile:${pile.id}`,
    kind: 'build-pile',
    job: { id: 'build-pile', title: 'Build a pile' },
    weight: 'work',
    title: `Build the pile in ${bin.name}`,
    steps: [
      ...pile.ingredients.map(
        ({ materialId, litres }) => `${feedstockById(materialId).name}: ${quantity(litres, 'L')}.`,
      ),
      `In all ${quantity(browns ?? 0, 'L')} of browns to ${quantity(greens ?? 0, 'L')} of greens; two parts browns to one of greens by volume is the rule of the trade.`,
      `Coarse stuff at the bottom, then thin layers. Nothing thicker than ${quantity(THICKEST_STICK_MM, 'mm')}.`,
      'Wet each layer until a squeezed handful is damp and gives a drop or two at most.',
    ],
    cautions: [
      ...OPENING_CAUTIONS.slice(0, 1),
      ...pile.ingredients.flatMap(({ materialId }) => feedstockById(materialId).cautions),
    ],
    window: { earliest: addDays(day, -3), preferred: day, latest: addDays(day, 7) },
    ifMissed: 'still do',
    missedNote: 'Every week later is a week later that the compost is ready.',
    effortMinutes: Math.ceil(START_UP_MINUTES + (builtLitres(pile) / LITRES_PER_M3) * 2 * TURN_MINUTES_PER_M3),
    confidence: 'recorded',
    reasons: [{ rule: 'pile-build.planned', saw: { day }, source: "the garden's own plan" as const }],
    makes: [{ makes: 'pile-built' as const, pileId: pile.id }],
  };
}

function litresOf(pile: Pile, kind: 'brown' | 'green'): number {
  return pile.ingredients
    .filter(({ materialId }) => feedstockById(materialId).class === kind)
    .reduce((sum, { litres }) => sum + litres, 0);
}

const TURN_TITLES: Readonly<Record<NextTurn['cause'], string>> = {
  'too hot': 'it is running too hot',
  sour: 'it smells sour',
  ammonia: 'it smells of ammonia',
  cooling: 'it is cooling',
  calendar: 'a week has passed',
};

function turnDraft(input: PracticeInput, pile: Pile, bin: Bin, turn: NextTurn): TaskDraft {
  const count = pile.turns.length + 1;
  const end = activeEnd(pile, input.climate);
  return {
    ...base(pile, bin),
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
    effortMinutes: Math.ceil(START_UP_MINUTES + (builtLitres(pile) / LITRES_PER_M3) * TURN_MINUTES_PER_M3),
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

function cureDraft(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft {
  const end = activeEnd(pile, input.climate);
  const done = doneHeating(pile);
  const from = lastMoved(pile);
  const window = done
    ? { earliest: addDays(from, 7), preferred: addDays(from, 7), latest: addDays(from, 21) }
    : { earliest: end.low, preferred: end.usual, latest: end.high };
  return {
    ...base(pile, bin),
    key: `pile-cure/pile:${pile.id}`,
    kind: 'cure-pile',
    job: { id: 'cure-pile', title: 'Let the pile cure' },
    weight: 'work',
    title: `Move the pile in ${bin.name} to curing`,
    steps: [
      'Turn it once more and wet it: if it heats again within five days it is not done, and goes on as before.',
      'Else heap it up, cover it against rain, and leave it alone.',
      `It cures for ${CURING_DAYS.low} to ${CURING_DAYS.high} days.`,
    ],
    cautions: OPENING_CAUTIONS,
    supplies: [{ what: 'fork' }, { what: 'cover against rain' }],
    window,
    ifMissed: 'still do',
    missedNote: 'No harm: it goes on ripening where it lies.',
    effortMinutes: Math.ceil(START_UP_MINUTES + (finishedLitres(pile) / LITRES_PER_M3) * TURN_MINUTES_PER_M3),
    confidence: 'derived',
    reasons: [
      done
        ? { rule: 'pile-cure.no-heat', saw: { turns: pile.turns.length, moved: from }, source: 'compost:S47' as const }
        : {
            rule: 'pile-cure.days',
            saw: { built: pile.built.day, daysLow: HOT_DAYS.low, daysHigh: HOT_DAYS.high, day: end.usual },
            source: 'compost:S26',
          },
    ],
    makes: [{ makes: 'pile-curing' as const, pileId: pile.id }],
  };
}

const MATURITY_STEPS = [
  'Dig into the middle: dark, crumbly, smelling of earth, nothing left to recognise.',
  'Seal a handful in a bag for a week: no ammonia or sour smell when it is opened.',
  'Both right: mark this done and the compost counts as on hand. Else leave it two weeks and look again.',
] as const;

function maturityDraft(pile: Pile, bin: Bin, since: string): TaskDraft {
  return maturity(pile, bin, {
    window: {
      earliest: addDays(since, CURING_DAYS.low),
      preferred: addDays(since, CURING_DAYS.low),
      latest: addDays(since, 2 * CURING_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.cured',
      saw: { since, daysLow: CURING_DAYS.low, daysHigh: CURING_DAYS.high },
      source: 'compost:S16',
    },
  });
}

function coldMaturityDraft(pile: Pile, bin: Bin): TaskDraft {
  const built = pile.built.day;
  return maturity(pile, bin, {
    window: {
      earliest: addDays(built, COLD_DAYS.low),
      preferred: addDays(built, COLD_DAYS.low),
      latest: addDays(built, COLD_DAYS.high),
    },
    reason: {
      rule: 'pile-maturity.cold',
      saw: { built, daysLow: COLD_DAYS.low, daysHigh: COLD_DAYS.high },
      source: 'common practice',
    },
  });
}

function maturity(
  pile: Pile,
  bin: Bin,
  at: { window: TaskDraft['window']; reason: TaskDraft['reasons'][number] },
): TaskDraft {
  const litres = finishedLitres(pile);
  return {
    ...base(pile, bin),
    key: `pile-maturity/pile:${pile.id}`,
    kind: 'check-maturity',
    job: { id: 'check-maturity', title: 'Is the compost ready?' },
    weight: 'work',
    title: `Is the compost in ${bin.name} ready?`,
    steps: MATURITY_STEPS,
    cautions: [
      'Compost made with manure counts as raw manure unless its log shows 15 days at 55 °C (131 °F) with 5 turns: then 120 days before harvest, 90 where the crop does not touch soil. Follow local rules.',
    ],
    window: at.window,
    ifMissed: 'still do',
    missedNote: 'Until somebody looks, the compost is not counted on.',
    effortMinutes: LOOK_MINUTES + START_UP_MINUTES,
    confidence: 'derived',
    reasons: [
      at.reason,
      {
        rule: 'pile-maturity.volume',
        saw: {
          litresBuilt: builtLitres(pile),
          percentLow: 100 * VOLUME_LOSS.low,
          percentHigh: 100 * VOLUME_LOSS.high,
          litres,
        },
        source: 'compost:S13',
      },
    ],
    makes: [{ makes: 'pile-finished' as const, pileId: pile.id }],
  };
}
