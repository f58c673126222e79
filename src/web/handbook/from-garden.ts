/**
 * The garden a reader of the handbook came from, and the way back to it from every page.
 */
import type { Context } from 'hono';
import type { Steward } from '../../steward/doings/steward.ts';
import type { PageGarden } from '../frame/layout.tsx';
import { readIn } from '../requests/garden-view.ts';
import { readerUnits } from '../requests/reader.ts';

/** Names the garden in the addresses of the handbook. */
const ASKED = 'garden';

/** The garden that the address names, as its reader reads it; nothing where it names none that is kept here. */
export async function gardenAsked(steward: Steward, c: Context): Promise<PageGarden | undefined> {
  const id = c.req.query(ASKED);
  if (id === undefined || !(await steward.gardenIds()).includes(id)) return undefined;
  return readIn(await steward.view(id), readerUnits(c)).garden;
}

/** The same address with the garden in it from whose page the reader came; nothing where there is nothing to add. */
export function withGardenCameFrom(c: Context): string | undefined {
  const from = c.req.header('referer') ?? '';
  if (c.req.query(ASKED) !== undefined || !URL.canParse(from)) return undefined;
  const { host, pathname } = new URL(from);
  const [, id] = /^\/gardens\/([^/]+)/.exec(pathname) ?? [];
  return id === undefined || host !== c.req.header('host') ? undefined : `${c.req.path}?${ASKED}=${id}`;
}

/** A page whose links to the handbook carry the garden on. */
export function carrying(html: string, garden: PageGarden | undefined): string {
  if (garden === undefined) return html;
  const asked = `?${ASKED}=${encodeURIComponent(garden.id)}`;
  return html.replace(/(<a [^>]*href="\/handbook(?:\/[a-z-]+)?)(#[^"]*)?"/g, `$1${asked}$2"`);
}
