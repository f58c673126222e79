/**
 * Work that may take over a second: begun by one request, followed on a page of its own, and leading to what it made.
 */
import { randomBytes } from 'node:crypto';
import { setTimeout as after, setImmediate as turn } from 'node:timers/promises';
import { type Context, Hono } from 'hono';
import type { Say } from '../../steward/long-work/say.ts';
import { underWayPath } from '../addresses/addresses.ts';
import type { PageGarden } from '../frame/layout.tsx';
import { notFound, Trouble } from '../requests/trouble.ts';
import type { Doing, LongWork } from './long-work.ts';
import { brokenOffPage, underWayPage } from './under-way-page.tsx';

/** Work that ends sooner is answered at once. Issue: a progress line on anything over a second. */
export const AT_ONCE_MS = 1000;
/** Seconds after which the page asks again. */
const AGAIN_S = 1;
/** How long an asking page is held while the work goes on, so that it is not drawn anew more often than need be. House default. */
const HELD_MS = 1500;
/** Ended works remembered, for those who come back to the page. House default. */
const ENDED_KEPT = 20;
/** Longest page that is remembered of a refused work: a form with what was typed in it. House default: a garden file and a half. */
const PAGE_KEPT_CHARACTERS = 1536 * 1024;
/** Works that may go on at once: each holds what it was given. House default: far more than a household begins. */
const RUNNING_MOST = 8;

/** Everything that is under way, in memory: after a new start of the program nothing of it is known. */
export class UnderWayPages {
  readonly #doings = new Map<string, { doing: Doing; ended: Promise<void>; isShown?: true }>();
  /** Pages that readers were led to and have not asked for yet. */
  readonly #ledTo = new Set<string>();
  readonly #troubleOf: (error: unknown) => Trouble;
  #running = 0;

  /** @param troubleOf what may be told of an error */
  constructor(troubleOf: (error: unknown) => Trouble) {
    this.#troubleOf = troubleOf;
  }

  /**
   * Begins a work, and answers: with its end where that comes within a second, else with its page.
   *
   * @throws {Trouble} 503 where too many go on
   */
  async start(c: Context, asked: LongWork): Promise<Response> {
    if (this.#running >= RUNNING_MOST) throw tooMany();
    const { title, failed, garden } = asked;
    const doing: Doing = {
      asked: { title, failed, ...(garden === undefined ? {} : { garden: headOf(garden) }) },
      words: title,
    };
    const ended = this.#done(doing, asked.work);
    const isLedHere = asked.atOnce !== undefined && this.#ledTo.delete(addressOf(c));
    // What was worked out is held, and the rest is the page itself: led away from it again, a slow computer would never show it.
    await (isLedHere ? ended : Promise.race([ended, after(AT_ONCE_MS, undefined, { ref: false })]));
    const { end } = doing;
    if (end === undefined)
      return c.redirect(underWayPath(this.#keep(doing, withPage(doing, ended, asked.refused))), 303);
    if ('path' in end) return asked.atOnce?.() ?? c.redirect(end.path, 303);
    if (asked.refused !== undefined && 'trouble' in end && end.trouble.status === 422)
      return asked.refused(end.trouble.problems);
    return shown(c, doing);
  }

  /**
   * Follows work that has begun already; its page leads to the path it comes to, or is the answer itself.
   *
   * @returns the id of its page, or nothing where too many go on
   */
  follow(asked: Doing['asked'], work: () => Promise<string | Response>): string | undefined {
    if (this.#running >= RUNNING_MOST) return undefined;
    const doing: Doing = { asked, words: asked.title };
    return this.#keep(doing, this.#done(doing, work));
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
      const { end } = known.doing;
      if (end !== undefined && 'path' in end) this.#lead(end.path);
      return shown(c, known.doing);
    });
  }

  async #done(doing: Doing, work: (say: Say) => Promise<string | Response>): Promise<void> {
    this.#running += 1;
    try {
      const end = await work(async (words, share) => {
        doing.words = words;
        if (share === undefined) delete doing.share;
        else doing.share = Math.min(1, Math.max(0, share));
        await turn();
      });
      doing.end = typeof end === 'string' ? { path: end } : { answer: end };
    } catch (error) {
      doing.end = { trouble: this.#troubleOf(error) };
    } finally {
      this.#running -= 1;
    }
  }

  #lead(path: string): void {
    this.#ledTo.add(path);
    const [oldest] = this.#ledTo;
    if (this.#ledTo.size > ENDED_KEPT && oldest !== undefined) this.#ledTo.delete(oldest);
  }

  #keep(doing: Doing, ended: Promise<void>): string {
    const over = [...this.#doings].filter(([, known]) => known.doing.end !== undefined);
    for (const [id] of over.slice(0, Math.max(0, over.length - ENDED_KEPT))) this.#doings.delete(id);
    const id = randomBytes(12).toString('base64url');
    this.#doings.set(id, { doing, ended });
    return id;
  }
}

/** The address of a page, as a work that leads there names it. */
function addressOf({ req }: Context): string {
  const { pathname, search } = new URL(req.url);
  return pathname + search;
}

/** What the head of a page needs of a garden: the rest is let go with the work. */
function headOf({ id, name, place }: PageGarden): PageGarden {
  return { id, name, ...(place === undefined ? {} : { place: { units: place.units } }) };
}

/** Waits for a work, and where it was refused draws the form anew, with what was typed in it. */
async function withPage(doing: Doing, ended: Promise<void>, refused: LongWork['refused']): Promise<void> {
  await ended;
  const { end } = doing;
  if (refused === undefined || end === undefined || !('trouble' in end) || end.trouble.status !== 422) return;
  const html = await Promise.resolve(refused(end.trouble.problems)).then(
    (answer) => answer.text(),
    () => undefined,
  );
  if (html !== undefined && html.length <= PAGE_KEPT_CHARACTERS) doing.end = { ...end, html };
}

function tooMany(): Trouble {
  const what = `${RUNNING_MOST} works are under way already.`;
  return new Trouble(503, 'Not now', [
    { where: 'this program', what, mend: 'Send it again when one of them is done.' },
  ]);
}

function shown(c: Context, { end, ...doing }: Doing): Response | Promise<Response> {
  c.header('Cache-Control', 'no-store');
  if (end === undefined) {
    // A header, not an element of the page: nobody has to read past it, and it works without script all the same.
    c.header('Refresh', String(AGAIN_S));
    return c.html(underWayPage(doing, c.req.path));
  }
  if ('path' in end) return c.redirect(end.path, 303);
  // The very answer is handed out as often as it is looked at.
  if ('answer' in end) return end.answer.clone();
  return c.html(end.html ?? brokenOffPage(doing.asked, end.trouble), end.trouble.status);
}
