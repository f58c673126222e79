/**
 * Every page there is: those that links lead to, those that forms lead to, and those that say what is wrong. A route that
 * none of them reaches is found by tests/journeys/pages-walked.test.ts.
 */
import { GARDENS_PATH, WHO_GETS_IN_PATH, weekPath } from '../../src/web/addresses/addresses.ts';
import { followedLinks, routeOf } from './followed-links.ts';
import { askedIn, fromTheMail, GONE, recordLookedAt, sentIn, setUpPages, type Told, WRONG } from './pages-told.ts';
import type { WalkedApp } from './walked-gardens.ts';

/** A page with the route that answers it. */
export interface WalkedPage extends Told {
  route: string;
}

/** Routes that show no page of their own, and why. */
export const NO_PAGE: Readonly<Record<string, string>> = {
  'GET /feed/:file': 'a calendar',
  'GET /health': 'a word for programs',
  'GET /robots.txt': 'a text for robots',
  'GET /style.css': 'the stylesheet',
  'GET /gardens/:gardenId/record.csv': 'a file',
  'GET /gardens/:gardenId/record.json': 'a file',
  'GET /gardens/:gardenId/garden-file.yaml': 'a file',
  'GET /gardens/:gardenId/household/mail/html': 'a letter, which has tests of its own',
  'GET /handbook/images/:file': 'a picture',
  'GET /sign-in': 'asks only where there is a password, and is looked over by itself',
  'POST /sign-in': 'leads on to the page that was wanted',
  'POST /sign-out': 'leads on to the sign-in',
  'POST /sign-out/everywhere': 'leads on to the sign-in',
  'GET /under-way/:id': 'stands only while a work goes on, and is looked over by itself',
  'POST /api/piles/:pileId/readings': 'an answer for programs',
  'POST /gardens/:gardenId/feeds/:feedId/new-address': 'leads on to the feeds',
  'POST /gardens/:gardenId/feeds/:feedId/revoke': 'leads on to the feeds',
  'POST /gardens/:gardenId/feeds/:feedId/open-again': 'leads on to the feeds',
  'POST /gardens/:gardenId/keys/:key/revoke': 'leads on to the keys',
  'GET /set-up/:draftId': 'leads on to a step',
  'POST /set-up': 'leads on to the first step',
  'POST /set-up/:draftId/throw-away': 'leads on to the gardens',
  'POST /demo': 'leads on to the demo garden',
  'POST /gardens/:gardenId/put-away': 'leads on to the gardens',
  'POST /gardens/:gardenId/give-back': 'leads on to the garden',
  'GET /gardens/:gardenId/weather/record/:which{(?:now|former)\\.csv}': 'a file',
  'POST /gardens/:gardenId/weather/days/:offer': 'leads on to the weather log',
  'POST /gardens/:gardenId/weather/record/offer/:offer': 'leads on to the long record',
  'POST /gardens/:gardenId/household/feed': 'leads on to the household',
  'POST /gardens/:gardenId/household/member/leave': 'leads on to the household',
};

/** Every page, each once; those that change something at the end. */
export async function pagesWalked({ get, routes, gardens, drafts }: WalkedApp): Promise<WalkedPage[]> {
  const pages: WalkedPage[] = [];
  const add = (told: Told) => pages.push({ route: answering(told, routes), ...told });
  for (const path of ['/', GARDENS_PATH, '/bring-in', WHO_GETS_IN_PATH]) add({ path, status: 200 });
  for (const garden of Object.values(gardens)) {
    const within = new RegExp(`^/(?:handbook|gardens/${garden.id})(?:[/?]|$)`);
    const found = await followedLinks({ get, routes }, { from: [weekPath(garden.id)], within });
    pages.push(...found.filter(({ route }) => NO_PAGE[route] === undefined));
    askedIn(garden).forEach(add);
  }
  sentIn(gardens.demo).forEach(add);
  [recordLookedAt(gardens.demo), ...setUpPages(drafts), ...WRONG, ...GONE, ...fromTheMail(gardens.demo)].forEach(add);
  return [...new Map(pages.map((page) => [JSON.stringify([page.path, page.form]), page])).values()];
}

function answering({ path, form }: Told, routes: readonly string[]): string {
  return routeOf(path, routes, form === undefined ? 'GET' : 'POST') ?? 'none';
}

/** The first page, or the first form, of each route. */
export function oneOfEachRoute<Way extends { route: string }>(ways: readonly Way[]): Way[] {
  return [...new Map(ways.toReversed().map((way) => [way.route, way])).values()].reverse();
}
