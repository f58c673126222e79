/**
 * GET the climate of a garden.
 */
import { Hono } from 'hono';
import type { Steward } from '../../steward/doings/steward.ts';
import { gardenView } from '../requests/garden-view.ts';
import { climatePage } from './climate.tsx';
import { stationsTold } from './stations-told.ts';

/** The page of every figure of the climate, with how it is worked out. */
export function climateRoutes(steward: Steward): Hono {
  return new Hono().get('/gardens/:gardenId/climate', async (c) => {
    const view = await gardenView(steward, c);
    return c.html(climatePage({ view, stations: stationsTold(view.garden, await steward.stations()) }));
  });
}
