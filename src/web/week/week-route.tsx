/**
 * The week of a garden, on the screen and as a sheet.
 */
import { type Context, Hono } from 'hono';
import { weekList } from '../../digest/week-list.ts';
import { weekSheet } from '../../digest/week-sheet.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { isDemo } from '../../steward/gardens/gardens-away.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { gardenView } from '../requests/garden-view.ts';
import { askedWeek } from './asked-week.ts';
import { Begun, DemoNotice } from './begun.tsx';
import { weekPage } from './week.tsx';
import { weekSheetPage } from './week-sheet.tsx';

/** The week pages. */
export function weekRoutes(steward: Steward, settings: WebSettings): Hono {
  return new Hono()
    .get('/gardens/:gardenId', async (c) => {
      const view = await gardenView(steward, c);
      const { week, reader } = askedWeek({ week: c.req.query('week'), person: c.req.query('person') }, view);
      const mail = await steward.mailStandings(view.garden.id);
      const notice = await noticeFor(c, { steward, settings }, view);
      return c.html(weekPage({ ...view, mail, notice }, week, reader));
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

/** What stands above the week: the first feed's address right after the garden was made, or that this is the demo. */
async function noticeFor(
  c: Context,
  { steward, settings }: { steward: Steward; settings: WebSettings },
  { garden, ledger }: Pick<GardenView, 'garden' | 'ledger'>,
) {
  const begun = c.req.query('begun');
  const feeds = begun === undefined ? [] : await steward.feeds(garden.id);
  const feed = feeds.find(({ id, revokedAt }) => id === begun && revokedAt === undefined);
  if (feed === undefined) return isDemo(ledger) ? <DemoNotice /> : undefined;
  // A secret address stands on the page: no copy of it is left in a browser's cache.
  c.header('Cache-Control', 'no-store');
  return <Begun gardenId={garden.id} feed={feed} settings={settings} />;
}
