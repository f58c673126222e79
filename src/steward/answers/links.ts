/**
 * The links that go out with one member's list of one week.
 */
import type { ListLinks } from '../../digest/list-links.ts';
import { addDays, type Day } from '../../measures/days.ts';
import type { MailLink } from '../doings/mail-links.ts';
import type { Signer } from './signer.ts';
import { answerToken, stopToken } from './tokens.ts';

/** Days after its Monday on which an answer's link still works. House default: this list and the next. */
const ANSWER_DAYS = 14;

/**
 * The same for the link that stops the mail. House default: somebody tidying up finds last month's mail first, and the law
 * of the United States, as remembered, asks 30 days of mail that sells something.
 */
const STOP_DAYS = 60;

/** The last day on which a link works, by the garden's clock. */
export function lastDayOf(use: 'answer' | 'stop', monday: Day): Day {
  return addDays(monday, use === 'answer' ? ANSWER_DAYS : STOP_DAYS);
}

/** Whose mail, and the address that others reach this program by, if there is one. */
export interface LinksAsked extends MailLink {
  publicUrl: URL | undefined;
  signer: Signer;
}

/** The links of a list; none where nobody could follow them. */
export function listLinks({ publicUrl, signer, ...mail }: LinksAsked): ListLinks | undefined {
  if (publicUrl === undefined) return undefined;
  return {
    answer: (key, answer) => {
      const url = new URL(`/answer/${answerToken(signer, { ...mail, key })}`, publicUrl);
      if (answer !== undefined) url.searchParams.set('as', answer);
      return url.href;
    },
    stop: new URL(`/stop/${stopToken(signer, mail)}`, publicUrl).href,
  };
}
