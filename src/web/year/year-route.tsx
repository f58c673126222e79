/**
 * GET the year of a garden, or a season of it close up.
 */
import { Hono } from 'hono';
import { memory } from '../../climate/remembered.ts';
import { type BedYears, bedYears } from '../../digest/bed-years.ts';
import { type YearOdds, yearOdds } from '../../digest/year-odds.ts';
import { type YearSeason, yearSeasons, yearSpan } from '../../digest/year-span.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { SHOWN_CHARACTERS } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { Trouble } from '../requests/trouble.ts';
import { yearPage } from './year.tsx';

/** The page of the year. */
export function yearRoutes(steward: Steward): Hono {
  // A view is the same object until a fact or the day changes.
  const years = memory<GardenView, string, { beds: BedYears[]; odds: YearOdds }>();
  return new Hono().get('/gardens/:gardenId/year', async (c) => {
    const view = await gardenView(steward, c);
    const season = askedSeason(c.req.query('season'), view);
    const input = planningInput(view);
    const known = years(view, 'year', () => ({
      beds: bedYears(input, view.plan),
      odds: yearOdds(input, yearSpan(view.plan.today)),
    }));
    return c.html(yearPage({ view, ...known, until: input.until, season }));
  });
}

/** @throws {Trouble} 400 when the address names no season that is shown */
function askedSeason(text: string | undefined, { climate, plan }: GardenView): YearSeason | undefined {
  if (text === undefined) return undefined;
  const seasons = yearSeasons(climate.seasonTurn, plan.today);
  const asked = seasons.find(({ word }) => word === text);
  if (asked !== undefined) return asked;
  const what = `"${text.slice(0, SHOWN_CHARACTERS)}" is none of the six that are shown.`;
  const mend = `Give one of these: ${seasons.map(({ word }) => word).join(', ')}.`;
  throw new Trouble(400, 'There is no such season', [{ where: 'season', what, mend }]);
}
