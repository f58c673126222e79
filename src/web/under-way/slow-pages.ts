/**
 * Any page that takes over a second: the browser is led to a page of what is under way, and from there to the page itself.
 * It stands in front of all pages, so that none of them has to know how long it takes.
 */
import { setTimeout as after } from 'node:timers/promises';
import type { Context, MiddlewareHandler } from 'hono';
import { underWayPath } from '../addresses/addresses.ts';
import { FORM_LIMIT_BYTES, SAFETY_HEADERS } from '../requests/guard.ts';
import { AT_ONCE_MS, type UnderWayPages } from './under-way.tsx';

/** Pages that somebody looks at in a browser, and that may have to wait for a plan. */
const LOOKED_AT = /^\/(?:$|gardens(?:\/|$)|set-up(?:\/|$))/;

/** How long a page that is ready waits to be fetched by the browser that asked for it. House default. */
const READY_MS = 30_000;
/** Pages that wait so. House default. */
const READY_MOST = 8;

/** What is being done, by how an address ends; the first that fits. */
const WORDS: readonly [RegExp, string][] = [
  [/\/edit\/[^/]+\/[^/]+\/delete$/, 'Trying the garden without it'],
  [/\/edit\//, 'Trying the change out'],
  [/\/beds\/[^/]+\/choose$/, 'Trying the choice out'],
  [/\/beds\/[^/]+\/season/, 'Trying the crop out'],
  [/\/drop$/, 'Trying the plan without it'],
  [/\/undo$/, 'Trying out what taking it back would do'],
  [/\/season-end$|\/beds\/[^/]+$/, 'Working out what fits the gaps of the beds'],
  [/^\/set-up/, 'Making a plan of what is told so far'],
];

/** What is said of an asked page, as a heading. */
function titleOf(method: string, path: string): string {
  const [, words] = WORDS.find(([ending]) => ending.test(path)) ?? [];
  return words ?? (method === 'POST' ? 'Taking it in and making the plan' : 'Making the plan');
}

/** Answers that came late, each kept until the browser is led to its address. */
export class SlowPages {
  readonly underWay: UnderWayPages;
  readonly #ready = new Map<string, { answer: Response; at: number }>();

  constructor(underWay: UnderWayPages) {
    this.underWay = underWay;
  }

  /** Answers as the pages do; where that takes over a second, with the page of what is under way. */
  async answered(c: Context, pages: (request: Request) => Response | Promise<Response>): Promise<Response> {
    const request = await handedOver(c);
    if (request === undefined) return pages(c.req.raw);
    const { method, url } = request;
    const { pathname, search } = new URL(url);
    const key = keyOf(c);
    const answer = Promise.resolve(pages(request));
    const first = await Promise.race([answer, after(AT_ONCE_MS, undefined, { ref: false })]);
    if (first !== undefined) return first;
    const id = this.underWay.follow({ title: titleOf(method, pathname), failed: backFrom(request) }, async () => {
      const late = await answer;
      if (method !== 'GET' || late.status !== 200) return late;
      this.#keep(key, late);
      return pathname + search;
    });
    if (id === undefined) return answer;
    return new Response(null, {
      status: 303,
      headers: { ...SAFETY_HEADERS, Location: underWayPath(id), 'Cache-Control': 'no-store' },
    });
  }

  /** Hands out, behind the guards, the page that was asked for before. */
  handOut(): MiddlewareHandler {
    return async (c, next) => {
      const key = keyOf(c);
      const ready = c.req.method === 'GET' ? this.#ready.get(key) : undefined;
      if (ready === undefined) return next();
      this.#ready.delete(key);
      return performance.now() - ready.at > READY_MS ? next() : ready.answer;
    };
  }

  #keep(key: string, answer: Response): void {
    this.#ready.delete(key);
    this.#ready.set(key, { answer, at: performance.now() });
    const [oldest] = this.#ready.keys();
    if (this.#ready.size > READY_MOST && oldest !== undefined) this.#ready.delete(oldest);
  }
}

/** The page the reader came from, where that is one that is looked at; else the garden it is about. */
function backFrom({ url, headers }: Request): string {
  const { pathname } = new URL(url);
  const referrer = headers.get('referer') ?? '';
  const from = URL.canParse(referrer) ? new URL(referrer) : undefined;
  if (from?.host === headers.get('host') && LOOKED_AT.test(from.pathname)) return from.pathname + from.search;
  return /^\/gardens\/[^/]+/.exec(pathname)?.[0] ?? '/';
}

/** The same page for the same reader; its path as the guards read it, so that none is handed out under another they let pass. */
function keyOf({ req }: Context): string {
  return JSON.stringify([req.path, new URL(req.url).search, req.header('cookie')]);
}

/**
 * A browser's request, with its form in hand: the connection is given back before the answer is there. Nothing for what is
 * no page, for files, and for what no browser sends.
 */
async function handedOver(c: Context): Promise<Request | undefined> {
  const { raw, method, path } = c.req;
  const header = (name: string): string => c.req.header(name) ?? '';
  if (!LOOKED_AT.test(path) || !header('accept').includes('text/html')) return undefined;
  if (method === 'GET') return raw;
  const length = Number(header('content-length') || Number.NaN);
  if (method !== 'POST' || !header('content-type').startsWith('application/x-www-form-urlencoded')) return undefined;
  if (!(length <= FORM_LIMIT_BYTES)) return undefined;
  return new Request(raw.url, { method, headers: raw.headers, body: await raw.arrayBuffer() });
}
