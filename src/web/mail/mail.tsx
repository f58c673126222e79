/**
 * The mail of one member: how it stands, and the next list as it would go out now.
 */
import { unwrapped } from '../../digest/wrapped.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { MailPreview, MailWay, MailStanding as Standing } from '../../steward/doings/mail-doings.ts';
import { wayInWords } from '../../steward/post/standing-words.ts';
import { mailHtmlPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { MailStanding } from './mail-standing.tsx';

export interface MailPageProps {
  garden: Garden;
  standing: Standing;
  preview: MailPreview;
  way: MailWay;
  problems?: readonly Problem[];
}

/** The page of somebody's mail. */
export function mailPage({ garden, standing, preview: { message }, way, problems = [] }: MailPageProps) {
  const { from, to, subject, text } = message;
  return page(
    { title: `Mail to ${standing.member}`, garden, docs: 'weekly-list' },
    <article class="mail">
      <h1>Mail to {standing.member}</h1>
      <Problems problems={problems} heading="Nothing was sent" />
      <MailStanding standing={standing} garden={garden} isHere />
      <p class="small">{wayInWords(way)}</p>
      <h2>The next list</h2>
      <p>
        As it would go out now; its links answer nothing here. It goes out as text and as HTML:{' '}
        <a href={mailHtmlPath(garden.id, standing.member)}>the same as HTML</a>.
      </p>
      <dl class="message-head">
        <dt>From</dt>
        <dd>{from.address === '' ? 'nobody yet: set LOAMTIDE_MAIL_FROM' : `${from.name} <${from.address}>`}</dd>
        <dt>To</dt>
        <dd>{`${to.name} <${to.address}>`}</dd>
        <dt>Subject</dt>
        <dd>{subject}</dd>
      </dl>
      <pre class="letter">{unwrapped(text)}</pre>
    </article>,
  );
}
