/**
 * What this garden's own stands of a kind were seen to do, against what the figures had: the plant outranks the model.
 */
import type { Garden, StageSeen } from '../../garden/garden.ts';
import { type Day, daysBetween } from '../../measures/days.ts';

/** How far the figures for a kind are moved in this garden. */
export interface BloomMemory {
  /** Days by which the close is moved: below zero is earlier. */
  moveDays: number;
  years: number;
  last: StageSeen;
  /** Days by which the last one was off: below zero was earlier than the figures had. */
  lastOffDays: number;
}

/**
 * What was seen of a kind in bloom before a stand was sown. The mean of n years is believed to n parts in n + 1: half of
 * one year, two thirds of two (house default, as one year's weather may have been to blame). One year alone moves no
 * further than the reckoning itself errs.
 *
 * @param errorDays standard deviation of the reckoning, days
 */
export function bloomMemory(
  { stands }: Pick<Garden, 'stands'>,
  coverId: string,
  sown: Day,
  errorDays: number,
): BloomMemory | undefined {
  const seen = stands
    .flatMap((stand) => stand.seen ?? [])
    .filter(({ on, stage, coverId: kind }) => kind === coverId && stage === 'in-bloom' && on < sown)
    .flatMap((each) => (each.modelled === undefined ? [] : [{ each, off: daysBetween(each.modelled, each.on) }]))
    .sort((a, b) => (a.each.on < b.each.on ? -1 : 1));
  const last = seen.at(-1);
  if (last === undefined) return undefined;
  const years = new Set(seen.map(({ each }) => each.on.slice(0, 4))).size;
  const mean = seen.reduce((sum, { off }) => sum + off, 0) / seen.length;
  const believed = (mean * years) / (years + 1);
  const held = years > 1 ? believed : Math.max(-errorDays, Math.min(errorDays, believed));
  return { moveDays: Math.round(held), years, last: last.each, lastOffDays: last.off };
}
