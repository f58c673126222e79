/**
 * What an early cut takes from a stand: its winter, or the growth it was sown for.
 */
import { usualHeatBetween } from '../../../climate/heat-left.ts';
import { seasonOf } from '../../../climate/season.ts';
import { heatNeedOf } from '../../../handbook/cover-heat.ts';
import { addDays, type Day } from '../../../measures/days.ts';
import type { CoverPart } from '../../covers.ts';
import type { Reason } from '../../draft.ts';
import type { PracticeInput } from '../../practice.ts';
import { isAfterMidsummer, midwinterAfter } from '../../seasons.ts';
import { lastCoverDay } from '../last-cover.ts';
import type { OpenSpan } from '../open-spans.ts';
import { daysToNextCover } from '../settle.ts';
import type { SowWindow } from '../sow-window.ts';
import type { FitCut } from './fit.ts';

/** A stand that is cut before winter meets none, and leaves the bed bare then unless another cover can follow it. */
export function afterEarlyCut(
  input: PracticeInput,
  { to }: OpenSpan,
  parts: readonly CoverPart[],
  { cut, winterHeld }: { cut: FitCut | undefined; winterHeld: boolean },
): { winter?: undefined; winterHeld: boolean } {
  const cutBy = cut?.window.latest;
  if (cutBy === undefined || !isAfterMidsummer(input.climate, cutBy)) return { winterHeld };
  const free = addDays(cutBy, daysToNextCover(parts));
  const last = lastCoverDay(input, seasonOf(input.climate.seasonTurn, cutBy));
  const winterGone = to !== undefined && to <= midwinterAfter(input.climate, cutBy);
  return { winter: undefined, winterHeld: winterHeld && (winterGone || (last !== undefined && free <= last)) };
}

/**
 * That a stand sown in spring and cut for what follows has not grown by then what is asked of its kind before hard cold. One
 * that is cut at its own time has grown.
 */
export function springShort(
  { climate }: PracticeInput,
  parts: readonly CoverPart[],
  { half }: SowWindow,
  { sowOn, cut }: { sowOn: Day; cut: FitCut | undefined },
): Reason[] {
  if (half !== 'spring' || cut?.decidedBy !== 'next') return [];
  const cutOn = cut.window.preferred;
  return parts.flatMap(({ cover }): Reason[] => {
    const need = heatNeedOf(cover.id);
    if (need === undefined) return [];
    const heatUnits = Math.round(usualHeatBetween(climate, [sowOn, cutOn], need.count));
    if (heatUnits >= need.units) return [];
    const saw = { cover: cover.name.toLowerCase(), sowOn, cutOn, heatUnits, baseC: need.count.baseC };
    return [{ rule: 'cover-fit.spring-short', saw, limit: need.units, source: 'house default' }];
  });
}
