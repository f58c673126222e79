/**
 * The page "The garden".
 */
import { Hono } from 'hono';
import type { Steward } from '../../steward/doings/steward.ts';
import { gardenView } from '../requests/garden-view.ts';
import { gardenPage } from './garden.tsx';

/** All that a garden was told, with the way to change it. */
export function gardenRoutes(steward: Steward): Hono {
  return new Hono().get('/gardens/:gardenId/garden', async (c) => {
    const view = await gardenView(steward, c);
    return c.html(gardenPage({ view, file: await steward.fileNow(view.garden.id) }));
  });
}
