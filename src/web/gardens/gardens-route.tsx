/**
 * The gardens of the household, the way in, the demo garden, and putting a garden away and giving it back.
 */
import { type Context, Hono } from 'hono';
import type { Steward } from '../../steward/doings/steward.ts';
import { isDemo } from '../../steward/gardens/gardens-away.ts';
import { GARDENS_PATH, weekPath } from '../addresses/addresses.ts';
import { gardenView } from '../requests/garden-view.ts';
import { readerUnits } from '../requests/reader.ts';
import { notFound } from '../requests/trouble.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { gardensPage, putAwayPage } from './gardens.tsx';

/** The page of all gardens and what is done with a whole one. */
export function gardensRoutes(steward: Steward, underWay: UnderWayPages): Hono {
  return new Hono()
    .get('/', async (c) => {
      const [only, ...others] = await steward.gardenIds();
      return only !== undefined && others.length === 0 ? c.redirect(weekPath(only)) : showGardens(c, steward);
    })
    .get(GARDENS_PATH, (c) => showGardens(c, steward))
    .post('/demo', (c) =>
      underWay.start(c, {
        title: 'Laying the demo garden',
        work: async (say) => {
          await say('Laying an invented garden around today, with its weather');
          return weekPath(await steward.showDemo());
        },
        failed: GARDENS_PATH,
      }),
    )
    .get('/gardens/:gardenId/put-away', async (c) => {
      const { garden } = await gardenView(steward, c);
      const open = (await steward.feeds(garden.id)).filter(({ revokedAt }) => revokedAt === undefined);
      return c.html(putAwayPage(garden, open.length));
    })
    .post('/gardens/:gardenId/put-away', async (c) => {
      const { garden } = await gardenView(steward, c);
      await steward.putAwayGarden(garden.id);
      return c.redirect(GARDENS_PATH, 303);
    })
    .post('/gardens/:gardenId/give-back', async (c) => {
      const gardenId = c.req.param('gardenId');
      const isAway = (await steward.gardensPutAway()).some(({ id }) => id === gardenId);
      const isHere = (await steward.gardenIds()).includes(gardenId);
      if (!isAway && !isHere) throw notFound(`No garden "${gardenId.slice(0, 80)}" is kept here.`);
      await steward.giveBackGarden(gardenId);
      return c.redirect(weekPath(gardenId), 303);
    });
}

async function showGardens(c: Context, steward: Steward) {
  const views = await Promise.all((await steward.gardenIds()).map((id) => steward.view(id)));
  const gardens = views.map(({ garden: { id, name, beds }, ledger }) => ({
    id,
    name,
    isDemo: isDemo(ledger),
    beds: beds.length,
  }));
  const [drafts, away] = [await steward.drafts(), await steward.gardensPutAway()];
  const units = readerUnits(c) ?? views[0]?.garden.place.units ?? 'metric';
  return c.html(gardensPage({ gardens, drafts, away, units }));
}
