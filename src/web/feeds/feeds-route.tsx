/**
 * The pages of a garden's feeds: new ones, changing one, another address, and closing one.
 */
import { type Context, Hono } from 'hono';
import { PLAIN_SHAPE } from '../../calendar/feed-shape.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { Feed } from '../../store/feeds.ts';
import { feedsPath } from '../addresses/addresses.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { notFound } from '../requests/trouble.ts';
import { enteredIn, enteredOf, shapeEntered } from './entered-feed.ts';
import { feedsPage, revokedAnchor } from './feeds.tsx';
import { changePage, newAddressPage, openAgainPage, revokePage } from './one-feed.tsx';

const FEEDS_PATH = '/gardens/:gardenId/feeds';

/** What stands in the form of a new feed before anybody has touched it. */
const NEW_FEED = enteredOf('', PLAIN_SHAPE);

/** The feeds page and its forms. */
export function feedsRoutes(steward: Steward, settings: WebSettings): Hono {
  const app = new Hono();
  // The page shows secret addresses, so no copy of it is left in a browser's cache.
  app.use(`${FEEDS_PATH}/*`, async (c, next) => {
    await next();
    c.header('Cache-Control', 'no-store');
  });
  return app
    .get(FEEDS_PATH, async (c) => {
      const { garden } = await gardenView(steward, c);
      return c.html(feedsPage({ garden, settings, feeds: await steward.feeds(garden.id), entered: NEW_FEED }));
    })
    .post(FEEDS_PATH, async (c) => {
      const entered = enteredIn(await readForm(c), NEW_FEED);
      const { garden } = await gardenView(steward, c);
      const read = shapeEntered(entered, PLAIN_SHAPE, garden);
      if ('problems' in read) {
        const feeds = await steward.feeds(garden.id);
        return c.html(feedsPage({ garden, settings, feeds, entered, problems: read.problems }), 422);
      }
      await steward.addFeed(garden.id, entered.label, read.shape);
      return c.redirect(feedsPath(garden.id), 303);
    })
    .route(`${FEEDS_PATH}/:feedId`, oneFeedRoutes(steward));
}

function oneFeedRoutes(steward: Steward): Hono {
  return new Hono()
    .get('/change', async (c) => {
      const { garden, feed } = await openFeed(steward, c);
      return c.html(changePage({ garden, feed, entered: enteredOf(feed.label, feed.shape) }));
    })
    .post('/change', async (c) => {
      const form = await readForm(c);
      const { garden, feed } = await openFeed(steward, c);
      const entered = enteredIn(form, enteredOf(feed.label, feed.shape));
      const read = shapeEntered(entered, feed.shape, garden);
      if ('problems' in read) return c.html(changePage({ garden, feed, entered, problems: read.problems }), 422);
      await steward.changeFeed(garden.id, feed.id, { label: entered.label, shape: read.shape });
      return c.redirect(feedsPath(garden.id), 303);
    })
    .get('/new-address', async (c) => {
      const { garden, feed } = await openFeed(steward, c);
      return c.html(newAddressPage(garden, feed));
    })
    .post('/new-address', async (c) => {
      const { garden, feed } = await openFeed(steward, c);
      await steward.rotateFeed(garden.id, feed.id);
      return c.redirect(feedsPath(garden.id), 303);
    })
    .get('/revoke', async (c) => {
      const { garden, feed } = await openFeed(steward, c);
      return c.html(revokePage(garden, feed));
    })
    .post('/revoke', async (c) => {
      const { garden, feed } = await openFeed(steward, c);
      await steward.revokeFeed(garden.id, feed.id);
      return c.redirect(`${feedsPath(garden.id)}#${revokedAnchor(feed.id)}`, 303);
    })
    .get('/open-again', async (c) => {
      const { garden, feed } = await revokedFeed(steward, c);
      return c.html(openAgainPage(garden, feed));
    })
    .post('/open-again', async (c) => {
      const { garden, feed } = await revokedFeed(steward, c);
      await steward.reopenFeed(garden.id, feed.id);
      return c.redirect(feedsPath(garden.id), 303);
    });
}

interface Found {
  garden: Garden;
  feed: Feed;
}

async function openFeed(steward: Steward, c: Context): Promise<Found> {
  const { garden, feed } = await anyFeed(steward, c);
  if (feed === undefined || feed.revokedAt !== undefined) throw notFound('This feed was revoked, or never was.');
  return { garden, feed };
}

async function revokedFeed(steward: Steward, c: Context): Promise<Found> {
  const { garden, feed } = await anyFeed(steward, c);
  if (feed?.revokedAt === undefined) throw notFound('This feed is open, or never was.');
  return { garden, feed };
}

async function anyFeed(steward: Steward, c: Context): Promise<{ garden: Garden; feed: Feed | undefined }> {
  const { garden } = await gardenView(steward, c);
  const feeds = await steward.feeds(garden.id);
  return { garden, feed: feeds.find(({ id }) => id === c.req.param('feedId')) };
}
