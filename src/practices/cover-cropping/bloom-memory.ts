/**
 * What this garden's own stands of a kind were seen to do, against what the figures had: the plant outranks the model.
 */
import type { Climate } from '../../climate/climate.ts';
import { memory } from '../../climate/remembered.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Garden, StageSeen, Stand } from '../../garden/garden.ts';
import { type Day, daysBetween } from '../../measures/days.ts';

/** How far the figures for a kind are moved in this garden. */
export interface BloomMemory {
  /** Days by which the close is moved: below zero is earlier. */
  moveDays: number;
  /** Growing seasons in which it was seen. */
  years: number;
  /** The error that one season's showing was held to, where it would have moved the close further. */
  heldToDays?: number;
  last: StageSeen;
  /** Days by which the last one was off: below zero was earlier than the figures had. */
  lastOffDays: number;
}

/**
 * What was seen of a kind before a stand was sown, the first sight of each stand. The mean of n years is believed to n parts in n + 1: half of
 * one year, two thirds of two (house default, as one year's weather may have been to blame). One year alone moves no
 * further than the reckoning itself errs. Only the stage the figures are of counts: flowers come days after the heads, and
 * held against a figure for heads they would put off the cut.
 *
 * @param figures the stage they are of, their standard deviation in days, and where seasons turn here
 */
export function bloomMemory(
  { stands }: Pick<Garden, 'stands'>,
  coverId: string,
  sown: Day,
  figures: { errorDays: number; stage: StageSeen['stage']; seasonTurn: Climate['seasonTurn'] },
): BloomMemory | undefined {
  const { stage } = figures;
  const all = sights(stands, `${coverId} ${stage}`, () =>
    stands.flatMap((stand) => firstSight(stand, (each) => each.coverId === coverId && each.stage === stage)),
  );
  const seen = all
    .filter(({ on }) => on < sown)
    .flatMap((each) => (each.modelled === undefined ? [] : [{ each, off: daysBetween(each.modelled, each.on) }]))
    .sort((a, b) => (a.each.on < b.each.on ? -1 : 1));
  const last = seen.at(-1);
  if (last === undefined) return undefined;
  const years = new Set(seen.map(({ each }) => seasonOf(figures.seasonTurn, each.on))).size;
  const mean = seen.reduce((sum, { off }) => sum + off, 0) / seen.length;
  const believed = (mean * years) / (years + 1);
  const found = { years, last: last.each, lastOffDays: last.off };
  if (years > 1 || Math.abs(believed) <= figures.errorDays) return { moveDays: Math.round(believed), ...found };
  const heldToDays = Math.round(figures.errorDays);
  return { moveDays: Math.sign(believed) * heldToDays, heldToDays, ...found };
}

const sights = memory<readonly Stand[], string, StageSeen[]>();

function firstSight({ seen = [] }: Stand, isIt: (each: StageSeen) => boolean): StageSeen[] {
  return seen
    .filter(isIt)
    .sort((a, b) => (a.on < b.on ? -1 : 1))
    .slice(0, 1);
}
