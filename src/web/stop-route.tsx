/**
 * The link that stops somebody's mail: a page that asks first, and the one-click request that mail programs send for their
 * reader (RFC 8058).
 *
 * That request comes without cookies, Origin or Sec-Fetch-Site, so that it is taken from anywhere: what it needs is the
 * link itself, which only the mail tells.
 */
import { type Context, Hono } from 'hono';
import type { MailLink } from '../steward/answers/mail-links.ts';
import type { Steward } from '../steward/steward.ts';
import { readForm } from './form.ts';
import { formLimit } from './guard.ts';
import { linkThatLeadsOn } from './mail-pages.ts';
import { ONE_CLICK, stopPage } from './pages/stop.tsx';
import { Trouble } from './trouble.ts';
import type { WrongTokens } from './wrong-tokens.ts';

const PATH = '/stop/:token';

/** The page that stops mail. Stopping what is stopped already is well too. */
export function stopRoutes(steward: Steward, wrong: WrongTokens): Hono {
  const linkIn = async (c: Context): Promise<MailLink> => {
    const followed = await steward.followStop(c.req.param('token') ?? '');
    return followed.leads === 'to a stranger' ? followed.link : linkThatLeadsOn(c, followed, { steward, wrong });
  };
  return new Hono()
    .get(PATH, async (c) => {
      const link = await linkIn(c);
      return c.html(stopPage(link, await stateOf(steward, link)));
    })
    .post(PATH, formLimit, async (c) => {
      const link = await linkIn(c);
      const form = await readForm(c);
      if (form.text(ONE_CLICK.name) !== ONE_CLICK.value) throw notPressed();
      const { gardenId, member, monday } = link;
      const before = await stateOf(steward, link);
      if (before.isSent) await steward.report(gardenId, { kind: 'mail-stopped', name: member, week: monday }, member);
      return c.html(stopPage(link, { ...before, isSent: false }));
    });
}

async function stateOf(steward: Steward, { gardenId, member }: MailLink) {
  const { garden } = await steward.view(gardenId);
  const { members = [] } = garden.household ?? {};
  return { garden, isSent: members.some(({ name, mail }) => name === member && mail !== undefined) };
}

function notPressed(): Trouble {
  return new Trouble(422, 'Nothing was changed', [
    { where: 'the form', what: 'It does not say that the mail is to stop.', mend: 'Press the button on the page.' },
  ]);
}
