/**
 * The day a stand must be cut by so that it does not flower, or set seed: a bloom model run over the garden's years.
 */
import { bloomModels } from '../../handbook/cover-blooms.ts';
import type { BloomModel, CoverCrop } from '../../handbook/shapes/cover.ts';
import { addDays, type Day } from '../../measures/days.ts';
import { type CoverPart, coverParts } from '../covers.ts';
import type { Reason } from '../draft.ts';
import type { PracticeInput } from '../practice.ts';
import { type BloomClose, figureClose } from './bloom-figure.ts';
import { type BloomMemory, bloomMemory } from './bloom-memory.ts';

/** Events that come as buds or heads, before there are flowers. */
const BEFORE_FLOWERS: ReadonlySet<BloomModel['closingEvent']> = new Set(['bud', 'boot', 'heading']);

/** Days in which a cover may stand in flower before its seed is viable; 0 where none are known. */
export function graceDaysOf(cover: CoverCrop): number {
  return Math.max(
    0,
    ...bloomModels.flatMap(({ coverId, grace }) => (coverId === cover.id && grace ? [grace.days] : [])),
  );
}

/**
 * The earliest closing day among a stand's parts.
 *
 * @returns nothing where no part has a bloom figure, or where frost ends every part before it would flower
 */
export function bloomClose(parts: readonly CoverPart[], sown: Day, input: PracticeInput): BloomClose | undefined {
  const closes = parts.flatMap(({ cover }) => partClose(cover, sown, input));
  return closes.sort((a, b) => (a.close < b.close ? -1 : 1))[0];
}

/**
 * The day the figures alone have for a kind's flowers, buds or heads: of days from sowing the middle. What was seen is held
 * against that, and never against the lower end, which is early on purpose.
 */
export function modelledBloom(coverId: string, sown: Day, input: PracticeInput): Day | undefined {
  const [part] = coverParts(coverId);
  const [figure] = part ? figureClose(part.cover, sown, input) : [];
  const days = figure?.model.daysFromSowing;
  return figure?.flowers ?? (days && addDays(sown, Math.round((days.low + days.high) / 2)));
}

/** The figures' close, moved by what this garden's own stands of the kind were seen to do. */
function partClose(cover: CoverCrop, sown: Day, input: PracticeInput): BloomClose[] {
  return figureClose(cover, sown, input).map((found) => {
    const { modelErrorDays: errorDays, closingEvent } = found.model;
    const { seasonTurn } = input.climate;
    const stage = BEFORE_FLOWERS.has(closingEvent) ? 'first-buds' : 'in-bloom';
    const memory = bloomMemory(input.garden, cover.id, sown, { errorDays, stage, seasonTurn });
    return memory === undefined ? found : remembered(found, cover, memory);
  });
}

function remembered(
  { odds, flowers, expected, reasons, ...found }: BloomClose,
  cover: CoverCrop,
  memory: BloomMemory,
): BloomClose {
  const close = addDays(found.close, memory.moveDays);
  const moved = (day: Day | undefined): Day | undefined => day && addDays(day, memory.moveDays);
  const [early, median, late] = [moved(odds?.early), moved(odds?.median), moved(odds?.late)];
  const reason: Reason = {
    rule: 'cover-cut.seen-before',
    saw: {
      cover: cover.name.toLowerCase(),
      stage: memory.last.stage,
      on: memory.last.on,
      offDays: memory.lastOffDays,
      years: memory.years,
      ...(memory.heldToDays === undefined ? {} : { heldToDays: memory.heldToDays }),
      moveDays: memory.moveDays,
    },
    limit: close,
    source: "the garden's own plan",
  };
  return {
    ...found,
    close,
    ...(flowers === undefined ? {} : { flowers: addDays(flowers, memory.moveDays) }),
    ...(expected === undefined ? {} : { expected: { ...expected, day: addDays(expected.day, memory.moveDays) } }),
    ...(odds === undefined
      ? {}
      : { odds: { ...odds, ...(early ? { early } : {}), ...(median ? { median } : {}), ...(late ? { late } : {}) } }),
    reasons: [...reasons, reason],
  };
}
