/**
 * GET / and the week of a garden.
 */
import { Hono } from 'hono';
import { addDays, type Day, daysBetween, isDay } from '../measures/days.ts';
import type { Steward } from '../steward/steward.ts';
import { weekPath } from './addresses.ts';
import { gardenView } from './garden-view.ts';
import { gardensPage } from './pages/plain.tsx';
import { LOOK_DAYS, weekPage } from './pages/week.tsx';
import { Trouble } from './trouble.ts';

/** The week pages, and the way in. */
export function weekRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/', async (c) => {
      const ids = await steward.gardenIds();
      const [only, ...others] = ids;
      if (only !== undefined && others.length === 0) return c.redirect(weekPath(only));
      const views = await Promise.all(ids.map((id) => steward.view(id)));
      return c.html(gardensPage(views.map(({ garden }) => garden)));
    })
    .get('/gardens/:gardenId', async (c) => {
      const view = await gardenView(steward, c.req.param('gardenId'));
      return c.html(weekPage(view, askedDay(c.req.query('week'), view.plan.today)));
    });
}

/** @throws {Trouble} 400 when the address names no date, or one the plan cannot reach */
function askedDay(text: string | undefined, today: Day): Day {
  if (text === undefined) return today;
  if (isDay(text) && Math.abs(daysBetween(today, text)) <= LOOK_DAYS) return text;
  const reach = `the plan reaches from ${addDays(today, -LOOK_DAYS)} to ${addDays(today, LOOK_DAYS)}`;
  const what = isDay(text) ? `${text} is too far away: ${reach}.` : `"${text.slice(0, 40)}" is not a date.`;
  throw new Trouble(400, 'There is no such week', [{ where: 'week', what, mend: `Give a day such as ${today}.` }]);
}
