/**
 * GET / and the week of a garden, on the screen and as a sheet.
 */
import { Hono } from 'hono';
import { weekList } from '../digest/week-list.ts';
import { weekSheet } from '../digest/week-sheet.ts';
import type { Steward } from '../steward/steward.ts';
import { weekPath } from './addresses.ts';
import { askedWeek } from './asked-week.ts';
import { gardenView } from './garden-view.ts';
import { gardensPage } from './pages/plain.tsx';
import { weekPage } from './pages/week.tsx';
import { weekSheetPage } from './pages/week-sheet.tsx';

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
      const view = await gardenView(steward, c);
      const { week, reader } = askedWeek({ week: c.req.query('week'), person: c.req.query('person') }, view);
      const mail = await steward.mailStandings(view.garden.id);
      return c.html(weekPage({ ...view, mail }, week, reader));
    })
    .get('/gardens/:gardenId/week-sheet', async (c) => {
      const { garden, plan } = await gardenView(steward, c);
      const { week, reader } = askedWeek(
        { week: c.req.query('week'), person: c.req.query('person') },
        { garden, plan },
      );
      const list = weekList(plan, garden, week, reader);
      return c.html(weekSheetPage({ garden, list, sheet: weekSheet(list, garden.place.units) }));
    });
}
