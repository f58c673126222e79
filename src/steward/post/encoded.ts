/**
 * A message as the octets that travel: RFC 5322 with MIME, encoded by nodemailer.
 */
import MailComposer from 'nodemailer/lib/mail-composer';
import type { ListMessage } from '../../digest/mail/list-message.ts';

/** The message as it is sent or kept in a file, lines ending in CR LF. */
export async function encoded({ headers, date, ...message }: ListMessage): Promise<Buffer> {
  return new MailComposer({
    ...message,
    date: new Date(date),
    headers: { ...headers },
    // Nothing is ever fetched or read from a file because a text looks like an address of one.
    disableFileAccess: true,
    disableUrlAccess: true,
  })
    .compile()
    .build();
}
