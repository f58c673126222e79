/**
 * GET the handbook: its contents, its pages and its pictures.
 */
import { Hono } from 'hono';
import { sources } from '../handbook/sources.ts';
import { SHOWN_CHARACTERS } from './form.ts';
import { docs } from './handbook/docs.ts';
import { handbookContentsPage, handbookPage } from './pages/handbook.tsx';
import { sourcesPage } from './pages/sources.tsx';
import { notFound } from './trouble.ts';

/** The pages of the docs; all of them are read and written before the first is asked for. */
export function handbookRoutes(): Hono {
  const { pages, images } = docs();
  return new Hono()
    .get('/handbook', (c) => c.html(handbookContentsPage(pages)))
    .get('/handbook/sources', (c) => c.html(sourcesPage(sources, docs())))
    .get('/handbook/images/:file', (c) => {
      const picture = images.get(c.req.param('file'));
      if (picture === undefined) throw notFound('The handbook has no such picture.');
      return c.body(picture, 200, { 'Content-Type': 'image/png' });
    })
    .get('/handbook/:page', (c) => {
      const name = c.req.param('page');
      const found = pages.get(name);
      if (found === undefined) return c.html(handbookContentsPage(pages, name.slice(0, SHOWN_CHARACTERS)), 404);
      return c.html(handbookPage(found, pages));
    });
}
