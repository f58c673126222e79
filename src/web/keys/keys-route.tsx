/**
 * Keys for scripts that tell of piles: listed, made, revoked.
 */
import { type Context, Hono } from 'hono';
import { LABEL_CHARACTERS } from '../../calendar/typed-shape.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import type { ReadingKey } from '../../store/reading-keys.ts';
import { keysPath } from '../addresses/addresses.ts';
import type { WebSettings } from '../addresses/settings.ts';
import { readForm } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { notFound } from '../requests/trouble.ts';
import { keysPage, newKeyPage, revokeKeyPage } from './keys.tsx';

const PATH = '/gardens/:gardenId/keys';

/** The page of the keys and its forms. */
export function keysRoutes(steward: Steward, settings: WebSettings): Hono {
  return new Hono()
    .get(PATH, async (c) => {
      const { garden } = await gardenView(steward, c);
      return c.html(keysPage({ garden, keys: await steward.readingKeys(garden.id) }));
    })
    .post(PATH, async (c) => {
      const label = (await readForm(c)).text('label');
      const { garden } = await gardenView(steward, c);
      if (label === '' || label.length > LABEL_CHARACTERS) {
        const keys = await steward.readingKeys(garden.id);
        return c.html(keysPage({ garden, keys, entered: label, problems: [labelProblem(label)] }), 422);
      }
      const { kept, key } = await steward.addReadingKey(garden.id, label);
      // Shown this once, so no copy is left in a browser's cache.
      c.header('Cache-Control', 'no-store');
      return c.html(newKeyPage({ garden, label: kept.label, key, settings }));
    })
    .get(`${PATH}/:key/revoke`, async (c) => {
      const { garden, key } = await openKey(steward, c);
      return c.html(revokeKeyPage(garden, key));
    })
    .post(`${PATH}/:key/revoke`, async (c) => {
      const { garden, key } = await openKey(steward, c);
      await steward.revokeReadingKey(garden.id, key.id);
      return c.redirect(keysPath(garden.id), 303);
    });
}

function labelProblem(label: string): Problem {
  const what = label === '' ? 'It is empty.' : `It is longer than ${LABEL_CHARACTERS} characters.`;
  return { where: 'What it is for', what, mend: `Give up to ${LABEL_CHARACTERS} characters, such as pile probe.` };
}

async function openKey(steward: Steward, c: Context) {
  const { garden } = await gardenView(steward, c);
  const isAsked = ({ id, revokedAt }: ReadingKey) => id === c.req.param('key') && revokedAt === undefined;
  const key = (await steward.readingKeys(garden.id)).find(isAsked);
  if (key === undefined) throw notFound('This key was revoked, or never was.');
  return { garden, key };
}
