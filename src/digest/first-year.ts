/**
 * What is not known of a garden in its first year: named, so that nobody takes silence for knowledge.
 */
import type { Garden } from '../garden/garden.ts';
import { addDays, type Day } from '../measures/days.ts';

/** Days after it was brought in that a garden counts as new: a year. House default. */
const FIRST_YEAR_DAYS = 366;

/** Sentences that name what is not known; none once the first year is over. */
export function unknownsOf(garden: Garden, today: Day): string[] {
  if (today > addDays(garden.startedOn, FIRST_YEAR_DAYS)) return [];
  return [...historySentence(garden), ...plantingSentence(garden, today)];
}

function historySentence({ beds, plantings, stands, startedOn }: Garden): string[] {
  const known = new Set([
    ...plantings.filter(({ start }) => start.day < startedOn).map(({ bedId }) => bedId),
    ...stands.filter(({ sow }) => sow.day < startedOn).map(({ bedId }) => bedId),
  ]);
  const names = beds.filter(({ id }) => !known.has(id)).map(({ name }) => name);
  if (names.length === 0) return [];
  return [
    `What grew in ${names.join(', ')} before is not known. That breaks no rule: the rotation counts from now on. Past ` +
      'seasons are told on the page of each bed.',
  ];
}

function plantingSentence({ beds, plantings, startedOn }: Garden, today: Day): string[] {
  if (beds.length === 0 || plantings.some(({ start }) => start.day >= startedOn || start.day >= today)) return [];
  return ['No crop is planned yet. Plan one for a bed, and its own work joins the plan.'];
}
