/**
 * What feeds the beds.
 */
import { Hono } from 'hono';
import { toldSeasons } from '../../digest/fertility-sheet.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { planningInput } from '../../steward/planning/planner.ts';
import { gardenView } from '../requests/garden-view.ts';
import { fertilityPage } from './fertility.tsx';

export function fertilityRoutes(steward: Steward): Hono {
  return new Hono().get('/gardens/:gardenId/fertility', async (c) => {
    const view = await gardenView(steward, c);
    return c.html(
      fertilityPage({ view, told: await steward.fertility(view), seasons: toldSeasons(planningInput(view)) }),
    );
  });
}
