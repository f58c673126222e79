/**
 * GET the handbook: its contents, its pages and its pictures.
 */
import { type Context, Hono } from 'hono';
import { sources } from '../../handbook/sources.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { PageGarden } from '../frame/layout.tsx';
import { SHOWN_CHARACTERS } from '../requests/form.ts';
import { notFound } from '../requests/trouble.ts';
import { docs } from './docs/docs.ts';
import { carrying, gardenAsked, withGardenCameFrom } from './from-garden.ts';
import { handbookContentsPage, handbookPage } from './handbook.tsx';
import { sourcesPage } from './sources.tsx';

/** What makes a page, once it is known whose garden its reader came from. */
type Shown = (garden: PageGarden | undefined) => ReturnType<typeof handbookContentsPage>;

/** The pages of the docs; all of them are read and written before the first is asked for. */
export function handbookRoutes(steward: Steward): Hono {
  const { pages, images } = docs();
  const shown = async (c: Context, make: Shown, status: 200 | 404 = 200): Promise<Response> => {
    const cameFrom = withGardenCameFrom(c);
    if (cameFrom !== undefined) return c.redirect(cameFrom);
    const garden = await gardenAsked(steward, c);
    return c.html(carrying(String(await make(garden)), garden), status);
  };
  return new Hono()
    .get('/handbook', (c) => shown(c, (garden) => handbookContentsPage(pages, { garden })))
    .get('/handbook/sources', (c) => shown(c, (garden) => sourcesPage(sources, docs(), garden)))
    .get('/handbook/images/:file', (c) => {
      const picture = images.get(c.req.param('file'));
      if (picture === undefined) throw notFound('The handbook has no such picture.');
      return c.body(picture, 200, { 'Content-Type': 'image/png' });
    })
    .get('/handbook/:page', (c) => {
      const name = c.req.param('page');
      const found = pages.get(name);
      if (found !== undefined) return shown(c, (garden) => handbookPage(found, pages, garden));
      const missing = name.slice(0, SHOWN_CHARACTERS);
      return shown(c, (garden) => handbookContentsPage(pages, { garden, missing }), 404);
    });
}
