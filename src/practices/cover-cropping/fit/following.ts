/**
 * How a stand makes way for what follows: when it must be cut, when the bed is free, how the next crop goes in.
 */
import { addDays, type Day, daysBetween, earliestOf, latestOf } from '../../../measures/days.ts';
import type { CropSpan } from '../../bed-timeline.ts';
import type { CoverPart } from '../../covers.ts';
import type { PracticeInput } from '../../practice.ts';
import { midwinterAfter, seasonAfter, soilAwake } from '../../seasons.ts';
import { type CutWindow, cutWindow } from '../cut-window.ts';
import type { OpenSpan } from '../open-spans.ts';
import { daysToNextCover, settleDays } from '../settle.ts';
import { killedOn, standsAt } from '../winter.ts';
import type { FitCut, FitNext } from './fit.ts';

/** The end of a stand in its gap. */
export interface Following {
  cut?: FitCut;
  next?: FitNext;
  /** The window the cut comes from, with its reasons. */
  window?: CutWindow;
}

/** What a stand sown on a day leaves to what follows it. */
export function followingOf(input: PracticeInput, span: OpenSpan, parts: readonly CoverPart[], sown: Day): Following {
  const window = cutWindow(input, span.bedId, parts, sown);
  const cut = window && fitCut(span, parts, window);
  const next = nextOf(input, span, parts, { sown, window });
  return { ...(window && cut ? { window, cut } : {}), ...(next ? { next } : {}) };
}

function waitDays(span: OpenSpan, parts: readonly CoverPart[]): number {
  return span.nextCover === undefined ? settleDays(parts, span.next) : daysToNextCover(parts);
}

function fitCut(span: OpenSpan, parts: readonly CoverPart[], { window, next }: CutWindow): FitCut {
  const latest = next?.cutBy ?? window.latest;
  const over = daysBetween(latest, window.latest);
  return {
    window,
    latest: earliestOf(latest, window.latest),
    decidedBy: next !== undefined && next.cutBy <= window.latest ? 'next' : 'bloom',
    ...(over > 0 ? { givesWay: { what: 'the wait', days: Math.min(over, waitDays(span, parts)) } } : {}),
  };
}

function nextOf(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  { sown, window }: { sown: Day; window: CutWindow | undefined },
): FitNext | undefined {
  const freeOn = freeFrom(input, span, parts, { sown, window });
  if (span.to === undefined || freeOn === undefined) return undefined;
  const shortBy = daysBetween(span.to, freeOn);
  const met = shortBy <= 0 ? 'yes' : shortBy < waitDays(span, parts) ? 'short' : 'no';
  return { met, how: howItGoesIn(span.next), freeOn, wantedOn: span.to };
}

/** The day a bed is free after a stand: its cut and the wait, or, where winter ends it, the day the soil wakes. */
function freeFrom(
  input: PracticeInput,
  span: OpenSpan,
  parts: readonly CoverPart[],
  { sown, window }: { sown: Day; window: CutWindow | undefined },
): Day | undefined {
  if (window !== undefined) return addDays(window.window.latest, waitDays(span, parts));
  const winter = midwinterAfter(input.climate, sown);
  if (parts.some(({ cover }) => standsAt(cover, sown, addDays(winter, 1), input))) return undefined;
  const killed = latestOf(...(parts.map(({ cover }) => killedOn(cover, sown, input)) as [Day, ...Day[]]));
  if (killed < winter) return killed;
  return soilAwake(input.climate, seasonAfter(input.climate, sown)) ?? winter;
}

/** Plants go through the residue; small seed wants it pulled aside a week or two before; large seed waits it out. */
export function howItGoesIn(next: CropSpan | undefined): FitNext['how'] {
  if (next === undefined) return 'after the wait';
  if (next.planting.start.how === 'set-out') return 'through residue';
  return next.crop.smallSeed || next.crop.seedcornMaggot === true ? 'residue pulled aside' : 'after the wait';
}
