/**
 * What stops a request, said to the person who made it.
 */
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Problem } from '../garden/problem.ts';

/** A request that cannot be answered as asked. Its words are shown; nothing else of the program is. */
export class Trouble extends Error {
  override readonly name = 'Trouble';
  readonly status: ContentfulStatusCode;
  readonly problems: readonly Problem[];
  constructor(status: ContentfulStatusCode, title: string, problems: readonly Problem[]) {
    super(title);
    this.status = status;
    this.problems = problems;
  }
}

/** A page that is not there. */
export function notFound(what: string): Trouble {
  return new Trouble(404, 'There is no such page', [
    { where: 'address', what, mend: 'Begin again at This week; addresses change when work leaves the plan.' },
  ]);
}

/**
 * A text with everything blotted out that could be a token of a feed or of a link in mail, and with whatever follows the
 * addresses of such links, however it is spelt: what is printed may be kept or passed on.
 */
export function withoutTokens(text: string): string {
  return text.replace(/\/(answer|stop)\/[^\s?#"'<>)]+/g, '/$1/[secret]').replace(/[A-Za-z0-9_-]{43,}/g, '[secret]');
}
