/**
 * The link that stops somebody's mail: a page that asks first, and the one-click request that mail programs send for their
 * reader (RFC 8058).
 *
 * That request comes without cookies, Origin or Sec-Fetch-Site, so that it is taken from anywhere: what it needs is the
 * link itself, which only the mail tells.
 */
import { type Context, Hono } from 'hono';
import { membersOf } from '../../garden/household-changes.ts';
import type { MailLink } from '../../steward/doings/mail-links.ts';
import type { Steward } from '../../steward/doings/steward.ts';
import { readForm } from '../requests/form.ts';
import { formLimit } from '../requests/guard.ts';
import { Trouble } from '../requests/trouble.ts';
import type { WrongTokens } from '../requests/wrong-tokens.ts';
import { linkThatLeadsOn } from './mail-pages.ts';
import { ONE_CLICK, type StoppedMail, stopPage } from './stop.tsx';

const PATH = '/stop/:token';

/** The page that stops mail. Stopping what is stopped already is well too. */
export function stopRoutes(steward: Steward, wrong: WrongTokens): Hono {
  const linkIn = async (c: Context): Promise<MailLink> => {
    const followed = await steward.followStop(c.req.param('token') ?? '');
    return followed.leads === 'to a stranger' ? followed.link : linkThatLeadsOn(c, followed, { steward, wrong });
  };
  return new Hono()
    .get(PATH, async (c) => c.html(stopPage(await mailBehind(steward, await linkIn(c)))))
    .post(PATH, formLimit, async (c) => {
      const link = await linkIn(c);
      const form = await readForm(c);
      if (form.text(ONE_CLICK.name) !== ONE_CLICK.value) throw notPressed();
      const before = await mailBehind(steward, link);
      const { member, isSent, goesToAnother } = before;
      if (!isSent || member === undefined) return c.html(stopPage(before), goesToAnother ? 409 : 200);
      const { gardenId, memberId: id, monday } = link;
      await steward.report(gardenId, { kind: 'mail-stopped', id, name: member, week: monday }, member);
      return c.html(stopPage(await mailBehind(steward, link)));
    });
}

/** What is sent today to whoever a link went to, and to the address it went to. */
async function mailBehind(steward: Steward, { gardenId, memberId, monday }: MailLink): Promise<StoppedMail> {
  const { garden } = await steward.view(gardenId);
  const members = membersOf(garden);
  const theirs = members.find(({ id }) => id === memberId);
  const log = await steward.deliveries(gardenId);
  const to = log.find((row) => row.member === memberId && row.monday === monday)?.to?.toLowerCase();
  const goesToAnother = members.some(({ id, mail }) => id !== memberId && mail?.to.toLowerCase() === to);
  const isSent = theirs?.mail !== undefined;
  return { garden, member: theirs?.name, isSent, goesToAnother: to !== undefined && goesToAnother };
}

function notPressed(): Trouble {
  return new Trouble(422, 'Nothing was changed', [
    { where: 'the form', what: 'It does not say that the mail is to stop.', mend: 'Press the button on the page.' },
  ]);
}
