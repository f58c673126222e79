/**
 * Which week, and whose, an address asks for.
 */
import type { Reader } from '../../digest/reader.ts';
import type { Problem } from '../../garden/problem.ts';
import { addDays, type Day, daysBetween, isDay } from '../../measures/days.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { Trouble } from '../requests/trouble.ts';

/** Days to either side of today that are shown. House default: the plan reaches a year and a little ahead. */
export const LOOK_DAYS = 400;

/** Characters of a wrong word that are shown again. */
const SHOWN_CHARACTERS = 40;

/** The week of a day, for everybody or one member. */
export interface AskedWeek {
  week: Day;
  reader: Reader;
}

/**
 * What `?week=` and `?person=` ask for: this week, of everybody, where they are left out.
 *
 * @throws {Trouble} 400 when the address names no date or one the plan cannot reach; 404 when it names nobody of the
 *   household; both at once as 400
 */
export function askedWeek(
  query: { week: string | undefined; person: string | undefined },
  { garden, plan }: Pick<GardenView, 'garden' | 'plan'>,
): AskedWeek {
  const names = (garden.household?.members ?? []).map(({ name }) => name);
  const week = query.week ?? plan.today;
  const wrongWeek = weekProblems(week, plan.today);
  const wrongPerson = query.person === undefined ? [] : personProblems(query.person, names);
  const problems = [...wrongWeek, ...wrongPerson];
  if (problems.length > 0) throw new Trouble(wrongWeek.length > 0 ? 400 : 404, 'There is no such week', problems);
  return { week, reader: query.person === undefined ? {} : { person: query.person } };
}

function weekProblems(text: string, today: Day): Problem[] {
  if (isDay(text) && Math.abs(daysBetween(today, text)) <= LOOK_DAYS) return [];
  const reach = `the plan reaches from ${addDays(today, -LOOK_DAYS)} to ${addDays(today, LOOK_DAYS)}`;
  const what = isDay(text)
    ? `${text} is too far away: ${reach}.`
    : `"${text.slice(0, SHOWN_CHARACTERS)}" is not a date.`;
  return [{ where: 'week', what, mend: `Give a day such as ${today}.` }];
}

function personProblems(person: string, names: readonly string[]): Problem[] {
  if (names.includes(person)) return [];
  const what = `Nobody called "${person.slice(0, SHOWN_CHARACTERS)}" is in the household.`;
  const mend = names.length === 0 ? 'Leave it out: no members are named yet.' : `Give one of ${names.join(', ')}.`;
  return [{ where: 'person', what, mend }];
}
