/**
 * What stops a request, said to the person who made it.
 */
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Problem } from '../../garden/problem.ts';

/** A request that cannot be answered as asked. Its words are shown; nothing else of the program is. */
export class Trouble extends Error {
  override readonly name = 'Trouble';
  readonly status: ContentfulStatusCode;
  readonly problems: readonly Problem[];
  /** The number its request goes by in the log, where it is told of there. */
  readonly requestId: string | undefined;
  /** Seconds after which the same may be tried again, where it ends by itself. */
  readonly retrySeconds: number | undefined;
  constructor(
    status: ContentfulStatusCode,
    title: string,
    problems: readonly Problem[],
    { requestId, retrySeconds }: { requestId?: string | undefined; retrySeconds?: number | undefined } = {},
  ) {
    super(title);
    this.status = status;
    this.problems = problems;
    this.requestId = requestId;
    this.retrySeconds = retrySeconds;
  }
}

/** A page that is not there. */
export function notFound(what: string): Trouble {
  return new Trouble(404, 'There is no such page', [
    { where: 'address', what, mend: 'Begin again at This week; addresses change when work leaves the plan.' },
  ]);
}
