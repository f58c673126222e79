/**
 * Composting: each pile's next job, from its log.
 */
import type { Climate } from '../../climate/climate.ts';
import type { Bin, Pile } from '../../garden/garden.ts';
import { addDays, type Day, latestOf } from '../../measures/days.ts';
import { type SickPlanting, sickPlantings } from '../disease.ts';
import type { TaskDraft } from '../draft.ts';
import type { CompostSupply, Practice, PracticeInput } from '../practice.ts';
import { buildDraft, buildKey } from './build-draft.ts';
import { cureDraft } from './cure-draft.ts';
import { activeEnd, coldEnd, heatEndOdds, setBackReasons } from './heat-end.ts';
import { AGAIN_DAYS, coldDraft, curedDraft, expectedDraft } from './maturity-draft.ts';
import { CURING_DAYS, finishedLitres, HOT_DAYS, lastMoved, newestReading, rawLitres, startBy } from './pile-life.ts';
import { recheckDraft } from './recheck-draft.ts';
import { compostSentences } from './sentences.ts';
import { curesFrom } from './setbacks.ts';
import { sickInPile, sickPileCaution, sickPileDraft } from './sick-pile.ts';
import { suspectDraft, untestedCaution } from './suspect-draft.ts';
import { doneHeating, nextTurn, turnAnyway } from './turn.ts';
import { turnToCome } from './turn-count.ts';
import { turnDraft } from './turn-draft.ts';

/** Days after its window that a job on a pile is still waited for; then the pile is left to itself. House default. */
const LEFT_ALONE_AFTER_DAYS = 60;

/** The composting practice. */
export const composting: Practice = {
  name: 'composting',
  work(input) {
    const found = sickPlantings(input.garden, input.climate);
    const piles = input.garden.piles.map((pile) => {
      const sick = sickInPile(input.garden, pile, found);
      const bin = binOf(input, pile);
      return { pile, bin, sick, draft: pileDraft(input, pile, bin, sick) };
    });
    return {
      drafts: [
        ...piles.flatMap(({ pile, draft }) => (draft ? [draft, ...laterDrafts(input, pile, draft)] : [])),
        ...piles.flatMap(({ pile, bin }) => skippedTurns(input, pile, bin)),
        ...piles.flatMap(({ pile, bin }) => recheckOf(pile, bin) ?? []),
        ...piles.flatMap(({ pile, bin }) => testOf(input, pile, bin) ?? []),
        ...piles.flatMap(({ pile, bin, sick }) => sick.map((each) => sickPileDraft(pile, bin, each))),
      ],
      found: {
        newPile: { startBy: (ready) => startBy(input.climate, ready), litresFor: rawLitres },
        compostSupply: piles.flatMap(({ pile, draft }) => supplyOf(input, pile, draft)),
      },
    };
  },
  sentences: compostSentences,
};

function testOf({ garden }: PracticeInput, pile: Pile, bin: Bin): TaskDraft | undefined {
  return garden.skipped[buildKey(pile.id)] === undefined ? suspectDraft(pile, bin, garden.startedOn) : undefined;
}

function recheckOf(pile: Pile, bin: Bin): TaskDraft | undefined {
  return pile.finishedOn === undefined ? recheckDraft(pile, bin) : undefined;
}

function binOf(input: PracticeInput, pile: Pile): Bin {
  const bin = input.garden.bins.find((row) => row.id === pile.binId);
  if (bin === undefined)
    throw new RangeError(`Pile "${pile.id}" stands in bin "${pile.binId}", which the garden has not.`);
  return bin;
}

/** The one job a pile asks for next; nothing once it is finished. */
function pileDraft(input: PracticeInput, pile: Pile, bin: Bin, sick: readonly SickPlanting[]): TaskDraft | undefined {
  const draft = jobOf(input, pile, bin);
  if (draft?.kind !== 'check-maturity') return draft;
  return {
    ...draft,
    cautions: [...draft.cautions, ...sickPileCaution(pile, sick), ...untestedCaution(input.garden, pile)],
  };
}

function jobOf(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft | undefined {
  if (pile.finishedOn !== undefined) return undefined;
  if (!pile.built.happened) return buildAfterTest(input, pile, bin);
  if (isLeftAlone(pile)) {
    const { count, passed } = turnToCome(input.garden, pile);
    const turn = turnAnyway(pile, input.climate, passed);
    return turn === undefined || isPast(input, turn.window.latest)
      ? lookDraft(input, pile, bin)
      : turnDraft(input, pile, bin, { ...turn, count });
  }
  const draft = heatingDraft(input, pile, bin);
  return isPast(input, draft.window.latest) ? lookDraft(input, pile, bin) : draft;
}

/** Whether nobody turns a pile by the calendar, for it is cold or cures. */
function isLeftAlone({ curingSince, method }: Pile): boolean {
  return curingSince !== undefined || method === 'cold';
}

/** Turns skipped since the pile was last moved, as they stood: they keep a page, so that a skip can be taken back. */
function skippedTurns(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft[] {
  if (pile.finishedOn !== undefined || !pile.built.happened) return [];
  return turnToCome(input.garden, pile).skips.flatMap(({ count, passed }) => {
    const turn = (isLeftAlone(pile) ? turnAnyway : nextTurn)(pile, input.climate, passed);
    return turn === undefined ? [] : [turnDraft(input, pile, bin, { ...turn, count })];
  });
}

/** The look whether a pile is ready, that nobody turns, or turns any more; with what its problems cost it. */
function lookDraft({ climate }: PracticeInput, pile: Pile, bin: Bin): TaskDraft {
  const since = pile.curingSince;
  if (since === undefined) return setBack(coldDraft(pile, bin, coldEnd(pile, climate)), pile, climate);
  const from = curesFrom(pile, since, climate);
  const draft = curedDraft(pile, bin, from);
  return from === since ? draft : setBack(draft, pile, climate);
}

function setBack(draft: TaskDraft, pile: Pile, climate: Climate): TaskDraft {
  return { ...draft, reasons: [...draft.reasons, ...setBackReasons(pile, climate)] };
}

/** A planned pile waits for the beans grown in what is suspect in it. */
function buildAfterTest(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft {
  const draft = buildDraft(pile, bin);
  const test = testOf(input, pile, bin);
  return test === undefined ? draft : { ...draft, after: [...draft.after, { key: test.key, minDays: 0 }] };
}

/** The curing and the look that a hot pile's next job leads to, so that the year shows when its compost is expected. */
function laterDrafts(input: PracticeInput, pile: Pile, next: TaskDraft): TaskDraft[] {
  if (next.kind === 'check-maturity' || supplyOf(input, pile, next).length === 0) return [];
  const bin = binOf(input, pile);
  if (pile.curingSince !== undefined || (pile.method === 'cold' && pile.built.happened)) {
    return [{ ...lookDraft(input, pile, bin), after: [{ key: next.key, minDays: CURING_DAYS.low }] }];
  }
  const end = pile.method === 'hot' ? activeEnd(pile, input.climate) : undefined;
  if (end === undefined) return [];
  const cure = cureDraft(pile, bin, { end });
  const after = pile.built.happened ? [] : [{ key: next.key, minDays: HOT_DAYS.low }];
  return [
    ...(next.key === cure.key ? [] : [{ ...setBack(cure, pile, input.climate), after }]),
    setBack(expectedDraft(pile, bin, { end, odds: heatEndOdds(pile, input.climate) }), pile, input.climate),
  ];
}

function isPast({ today }: PracticeInput, latest: Day): boolean {
  return addDays(latest, LEFT_ALONE_AFTER_DAYS) < today;
}

/** A hot pile's turn, or its move to curing once it has done heating or its days are full. */
function heatingDraft(input: PracticeInput, pile: Pile, bin: Bin): TaskDraft {
  const coldOn = newestReading(pile, lastMoved(pile))?.on;
  if (coldOn !== undefined && doneHeating(pile, input.climate)) return cureDraft(pile, bin, { coldOn });
  const end = activeEnd(pile, input.climate);
  const { count, passed } = turnToCome(input.garden, pile);
  const turn = nextTurn(pile, input.climate, passed);
  const full = turn.cause === 'calendar' && end !== undefined && turn.window.earliest > end.usual;
  return full
    ? setBack(cureDraft(pile, bin, { end }), pile, input.climate)
    : turnDraft(input, pile, bin, { ...turn, count });
}

/** What a pile will give and when; nothing of one that was to be built and was not. */
function supplyOf(input: PracticeInput, pile: Pile, draft: TaskDraft | undefined): CompostSupply[] {
  const unbuilt = !pile.built.happened && draft !== undefined;
  const given =
    input.garden.skipped[buildKey(pile.id)] !== undefined || (unbuilt && isPast(input, draft.window.latest));
  const ready = readyDay(input, pile, draft);
  if ((unbuilt && given) || ready === undefined) return [];
  return [{ pileId: pile.id, litres: finishedLitres(pile), ready, finished: pile.finishedOn !== undefined }];
}

/** The day a pile's compost can be counted on: the late end of what its method takes, or of the look after a vain one. */
function readyDay(input: PracticeInput, pile: Pile, draft: TaskDraft | undefined): Day | undefined {
  if (pile.finishedOn !== undefined) return pile.finishedOn;
  const { climate } = input;
  const again = pile.notReady?.at(-1)?.on;
  const noEarlier = again === undefined ? pile.built.day : addDays(again, AGAIN_DAYS.last);
  if (pile.curingSince !== undefined) {
    return latestOf(noEarlier, addDays(curesFrom(pile, pile.curingSince, climate), CURING_DAYS.high));
  }
  const leftAlone = draft?.kind === 'check-maturity';
  const end = pile.method === 'cold' || leftAlone ? undefined : activeEnd(pile, climate);
  return latestOf(noEarlier, end === undefined ? coldEnd(pile, climate).high : addDays(end.high, CURING_DAYS.high));
}
