/**
 * Pages found as a reader finds them: by the links of the pages before.
 */
/** A page and the route that answers it. */
interface FoundPage {
  route: string;
  path: string;
  status: number;
}

/** Addresses whose pages differ by more than their route and questions: each text of the handbook, each form of a list. */
const EACH = /^\/handbook\/[^/]+$|\/edit\/[^/]+\/(?=[^/]+$)/;

type Get = (path: string) => Promise<Response>;

/**
 * Follows links from some pages on, and returns one page for each route and each set of questions its addresses ask.
 *
 * @param routes those of the app, in its own order: method and pattern
 * @param within what the paths that are followed match
 */
export async function followedLinks(
  { get, routes }: { get: Get; routes: readonly string[] },
  { from, within }: { from: readonly string[]; within: RegExp },
): Promise<FoundPage[]> {
  const found = new Map<string, FoundPage>();
  const waiting = [...from];
  for (let path = waiting.shift(); path !== undefined; path = waiting.shift()) {
    const route = routeOf(path, routes);
    const name = route && nameOf(route, path);
    if (route === undefined || name === undefined || found.has(name)) continue;
    const { status, links } = await linksOn(get, path);
    if (status < 300 || status >= 400) found.set(name, { route, path, status });
    waiting.push(...links.filter((link) => within.test(link)));
  }
  return [...found.values()];
}

/** The route that answers a path, as the app would choose it; nothing where there is none. */
export function routeOf(path: string, routes: readonly string[], method = 'GET'): string | undefined {
  const [bare = ''] = path.split('?');
  return routes.find((route) => route.startsWith(`${method} `) && patternOf(route).test(bare));
}

const patterns = new Map<string, RegExp>();

function patternOf(route: string): RegExp {
  const known = patterns.get(route);
  if (known !== undefined) return known;
  const [, path = ''] = route.split(' ');
  const source = path.replace(/:\w+(?:\{([^}]*)\})?|[.]/g, (part, own?: string) =>
    part === '.' ? '\\.' : `(?:${own ?? '[^/]+'})`,
  );
  const made = new RegExp(`^${source}$`);
  patterns.set(route, made);
  return made;
}

/** What tells a page from others of its route: what its address asks, or which text or list it is of. */
function nameOf(route: string, path: string): string {
  const [bare = ''] = path.split('?');
  const [own] = EACH.exec(bare) ?? [];
  return own === undefined ? `${route}?${questionsOf(path)}` : `${route} ${own}`;
}

function questionsOf(path: string): string {
  return [...new URL(path, 'http://own.invalid').searchParams.keys()].sort().join('&');
}

async function linksOn(get: Get, path: string): Promise<{ status: number; links: string[] }> {
  const answer = await get(path);
  const leadsOn = answer.headers.get('location');
  if (leadsOn !== null) return { status: answer.status, links: [leadsOn] };
  const isPage = (answer.headers.get('content-type') ?? '').startsWith('text/html');
  const html = isPage ? await answer.text() : '';
  const links = [...html.matchAll(/<a [^>]*href="([^"#]+)/g)].map(([, href = '']) => href.replaceAll('&amp;', '&'));
  return { status: answer.status, links: links.filter((href) => href.startsWith('/')) };
}
