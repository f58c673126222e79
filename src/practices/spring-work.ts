/**
 * The spring work that soil has to be fit for.
 */
import { dayOfIndex } from '../climate/season.ts';
import type { Bed } from '../garden/garden.ts';
import { thereFrom } from '../garden/planned-beds.ts';
import { vegetableById } from '../handbook/vegetables.ts';
import type { Day } from '../measures/days.ts';
import { cropSpans } from './bed-timeline.ts';
import { coverName, coverParts } from './covers.ts';
import type { PracticeInput } from './practice.ts';
import { midsummerOf } from './seasons.ts';

/** Something sown or set out in spring. */
export interface SpringWork {
  what: string;
  bedName: string;
  day: Day;
  happened: boolean;
}

/** What is sown or set out in some beds in the first half of a season, first things first. */
export function springWork({ garden, climate }: PracticeInput, beds: readonly Bed[], season: number): SpringWork[] {
  const [from, to] = [dayOfIndex(climate.seasonTurn, season, 1), midsummerOf(climate, season)];
  const names = new Map(beds.map(({ id, name }) => [id, name]));
  const crops = garden.plantings.map(({ bedId, cropId, start }) => ({
    bedId,
    what: vegetableById(cropId).name.toLowerCase(),
    ...start,
  }));
  const covers = garden.stands
    .filter(({ coverId }) => !coverParts(coverId).every(({ cover }) => cover.springSow?.onFrozenSoil ?? false))
    .map(({ bedId, coverId, sow }) => ({ bedId, what: coverName(coverId), ...sow }));
  return [...crops, ...covers]
    .flatMap(({ bedId, what, day, happened }) => {
      const bedName = names.get(bedId);
      return bedName === undefined || day <= from || day > to ? [] : [{ what, bedName, day, happened }];
    })
    .sort((a, b) => order(a.day, b.day) || order(a.bedName, b.bedName) || order(a.what, b.what));
}

function order(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The beds that are sown or set out afresh: not those a lasting crop holds on a day, nor those not there by then. */
export function workedBeds({ garden, climate }: PracticeInput, on: Day): Bed[] {
  return garden.beds
    .filter((bed) => {
      if ((thereFrom(bed) ?? on) > on) return false;
      const spans = cropSpans(garden, bed.id, climate);
      return !spans.some(({ end, from }) => end === 'permanent' && from < on);
    })
    .sort((a, b) => order(a.id, b.id));
}
