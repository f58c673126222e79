/**
 * The pages of a member's mail: how it stands, the next list, and sending one again.
 */
import { type Context, Hono } from 'hono';
import type { Problem } from '../../garden/problem.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { mailPath } from '../addresses/addresses.ts';
import { readForm, SHOWN_CHARACTERS } from '../requests/form.ts';
import { gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound } from '../requests/trouble.ts';
import { mailPage } from './mail.tsx';

const PATH = '/gardens/:gardenId/household/mail';

/** A list is a page of somebody else's making here: it may look as it likes and do nothing. */
const LETTER_POLICY =
  "default-src 'none'; style-src 'unsafe-inline'; form-action 'none'; frame-ancestors 'none'; base-uri 'none'; sandbox";

/** The mail pages. */
export function mailRoutes(steward: Steward): Hono {
  const shown = async (c: Context, person: string, problems: readonly Problem[] = []) => {
    const { garden, standing } = await recipient(steward, c, person);
    const preview = await steward.previewMail(garden.id, standing.member);
    const props = { garden, standing, preview, way: steward.mailWay(), problems };
    return c.html(mailPage(props), problems.length === 0 ? 200 : 422);
  };
  return new Hono()
    .get(PATH, (c) => shown(c, c.req.query('person') ?? ''))
    .get(`${PATH}/html`, async (c) => {
      const { garden, standing } = await recipient(steward, c, c.req.query('person') ?? '');
      const { message } = await steward.previewMail(garden.id, standing.member);
      c.header('Content-Security-Policy', LETTER_POLICY);
      return c.html(message.html);
    })
    .post(`${PATH}/again`, async (c) => {
      const person = (await readForm(c)).text('person');
      const { garden, standing } = await recipient(steward, c, person);
      const problems = await refusalsOf(() => steward.sendAgain(garden.id, standing.member));
      return problems.length > 0 ? shown(c, person, problems) : c.redirect(mailPath(garden.id, person), 303);
    });
}

async function recipient(steward: Steward, c: Context, person: string) {
  const { garden } = await gardenView(steward, c);
  const standing = (await steward.mailStandings(garden.id)).find(({ member }) => member === person);
  if (standing === undefined)
    throw notFound(`Nobody called "${person.slice(0, SHOWN_CHARACTERS)}" gets lists by mail.`);
  return { garden, standing };
}
