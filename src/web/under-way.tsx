/**
 * Work that may take over a second: begun by one request, followed on a page of its own, and leading to what it made.
 */
import { randomBytes } from 'node:crypto';
import { setTimeout as after, setImmediate as turn } from 'node:timers/promises';
import { type Context, Hono } from 'hono';
import { underWayPath } from './addresses.ts';
import type { Doing, LongWork } from './long-work.ts';
import { brokenOffPage, underWayPage } from './pages/under-way.tsx';
import { notFound, type Trouble } from './trouble.ts';

/** Work that ends sooner is answered at once. Issue: a progress line on anything over a second. */
const AT_ONCE_MS = 1000;
/** Seconds after which the page asks again. */
const AGAIN_S = 1;
/** How long an asking page is held while the work goes on, so that it is not drawn anew more often than need be. House default. */
const HELD_MS = 1500;
/** Ended works remembered, for those who come back to the page. House default. */
const ENDED_KEPT = 50;

/** Everything that is under way, in memory: after a new start of the program nothing of it is known. */
export class UnderWayPages {
  readonly #doings = new Map<string, { doing: Doing; ended: Promise<void>; isShown?: true }>();
  readonly #troubleOf: (error: unknown) => Trouble;

  /** @param troubleOf what may be told of an error */
  constructor(troubleOf: (error: unknown) => Trouble) {
    this.#troubleOf = troubleOf;
  }

  /** Begins a work, and answers: with its end where that comes within a second, else with its page. */
  async start(c: Context, asked: LongWork): Promise<Response> {
    const doing: Doing = { asked, words: asked.title };
    const ended = this.#done(doing);
    await Promise.race([ended, after(AT_ONCE_MS, undefined, { ref: false })]);
    const { end } = doing;
    if (end === undefined) return c.redirect(underWayPath(this.#keep(doing, ended)), 303);
    if ('path' in end) return asked.atOnce?.() ?? c.redirect(end.path, 303);
    if (asked.refused !== undefined && end.trouble.status === 422) return asked.refused(end.trouble.problems);
    return shown(c, doing);
  }

  /** The page of each. */
  routes(): Hono {
    return new Hono().get('/under-way/:id', async (c) => {
      const known = this.#doings.get(c.req.param('id'));
      if (known === undefined)
        throw notFound('What was under way here is not known any more: it ended a good while ago, or was broken off.');
      // The first look is answered at once: until then the reader has seen nothing of the work.
      if (known.isShown) await Promise.race([known.ended, after(HELD_MS, undefined, { ref: false })]);
      known.isShown = true;
      return shown(c, known.doing);
    });
  }

  async #done(doing: Doing): Promise<void> {
    try {
      const path = await doing.asked.work(async (words, share) => {
        doing.words = words;
        if (share === undefined) delete doing.share;
        else doing.share = Math.min(1, Math.max(0, share));
        await turn();
      });
      doing.end = { path };
    } catch (error) {
      doing.end = { trouble: this.#troubleOf(error) };
    }
  }

  #keep(doing: Doing, ended: Promise<void>): string {
    const over = [...this.#doings].filter(
      ([
        ,
        {
          doing: { end },
        },
      ]) => end !== undefined,
    );
    for (const [id] of over.slice(0, Math.max(0, over.length - ENDED_KEPT))) this.#doings.delete(id);
    const id = randomBytes(12).toString('base64url');
    this.#doings.set(id, { doing, ended });
    return id;
  }
}

function shown(c: Context, doing: Doing): Response | Promise<Response> {
  const { end, asked } = doing;
  c.header('Cache-Control', 'no-store');
  if (end === undefined) {
    // A header, not an element of the page: nobody has to read past it, and it works without script all the same.
    c.header('Refresh', String(AGAIN_S));
    return c.html(underWayPage(doing, c.req.path));
  }
  return 'path' in end ? c.redirect(end.path, 303) : c.html(brokenOffPage(asked, end.trouble), end.trouble.status);
}
