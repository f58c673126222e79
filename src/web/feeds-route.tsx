/**
 * The page of a garden's feeds: new ones, and closing one.
 */
import { type Context, Hono } from 'hono';
import type { Steward } from '../steward/steward.ts';
import type { Feed } from '../store/feeds.ts';
import { feedsPath } from './addresses.ts';
import { readForm } from './form.ts';
import { gardenView } from './garden-view.ts';
import { feedsPage, LABEL_CHARACTERS, revokePage } from './pages/feeds.tsx';
import type { WebSettings } from './settings.ts';
import { notFound } from './trouble.ts';

const REVOKE_PATH = '/gardens/:gardenId/feeds/:feedId/revoke';

/** The feeds page and its forms. */
export function feedsRoutes(steward: Steward, settings: WebSettings): Hono {
  const app = new Hono();
  // The page shows secret addresses, so no copy of it is left in a browser's cache.
  app.use('/gardens/:gardenId/feeds/*', async (c, next) => {
    await next();
    c.header('Cache-Control', 'no-store');
  });
  return app
    .get('/gardens/:gardenId/feeds', async (c) => {
      const { garden } = await gardenView(steward, c.req.param('gardenId'));
      return c.html(feedsPage({ garden, settings, feeds: await steward.feeds(garden.id) }));
    })
    .post('/gardens/:gardenId/feeds', async (c) => {
      const form = await readForm(c);
      const { garden } = await gardenView(steward, c.req.param('gardenId'));
      const label = form.text('label');
      if (label === '' || label.length > LABEL_CHARACTERS) {
        const what = label === '' ? 'It is empty.' : `It has ${label.length} characters.`;
        const mend = `Give a name of up to ${LABEL_CHARACTERS} characters, such as "kitchen tablet".`;
        const problems = [{ where: 'Whose, or where it is read', what, mend }];
        const feeds = await steward.feeds(garden.id);
        return c.html(feedsPage({ garden, settings, feeds, label, problems }), 422);
      }
      await steward.addFeed(garden.id, label);
      return c.redirect(feedsPath(garden.id), 303);
    })
    .get(REVOKE_PATH, async (c) => {
      const { garden } = await gardenView(steward, c.req.param('gardenId'));
      return c.html(revokePage(garden, await openFeed(steward, c)));
    })
    .post(REVOKE_PATH, async (c) => {
      const feed = await openFeed(steward, c);
      await steward.revokeFeed(feed.gardenId, feed.id);
      return c.redirect(feedsPath(feed.gardenId), 303);
    });
}

async function openFeed(steward: Steward, c: Context): Promise<Feed> {
  const { garden } = await gardenView(steward, c.req.param('gardenId') ?? '');
  const feeds = await steward.feeds(garden.id);
  const feed = feeds.find(({ id, revokedAt }) => id === c.req.param('feedId') && revokedAt === undefined);
  if (feed === undefined) throw notFound('This feed was revoked, or never was.');
  return feed;
}
