/**
 * The page that draws the season.
 */
import { Hono } from 'hono';
import type { Steward } from '../steward/steward.ts';
import { gardenView } from './garden-view.ts';
import { seasonPage } from './pages/season.tsx';

export function seasonRoutes(steward: Steward): Hono {
  return new Hono().get('/gardens/:gardenId/season', async (c) =>
    c.html(seasonPage(await gardenView(steward, c.req.param('gardenId')))),
  );
}
