/**
 * The web view: a function from requests to answers, over a steward.
 */
import { type Context, Hono } from 'hono';
import { contextStorage } from 'hono/context-storage';
import { InputRefused } from '../garden/problem.ts';
import type { Steward } from '../steward/steward.ts';
import { answerRoutes } from './answer-route.tsx';
import { awayRoutes } from './away-route.tsx';
import { bedsRoutes } from './beds-route.tsx';
import { bedsRoom } from './beds-shown.tsx';
import { climateRoutes } from './climate-route.tsx';
import { compostRoutes } from './compost-route.tsx';
import { diseaseRoutes } from './disease-route.tsx';
import { keptLine } from './edit/kept.tsx';
import { editRoutes } from './edit-route.tsx';
import { knownFeed, noFeed } from './feed-route.ts';
import { feedsRoutes } from './feeds-route.tsx';
import { fertilityRoutes } from './fertility-route.ts';
import { gardenFileRoutes } from './garden-file-route.tsx';
import { gardenRoutes } from './garden-route.tsx';
import { gardensRoutes } from './gardens-route.tsx';
import { formLimit, hostGuard, originGuard, safetyHeaders } from './guard.ts';
import { handbookRoutes } from './handbook-route.tsx';
import { historyRoutes } from './history-route.tsx';
import { householdRoutes } from './household-route.tsx';
import { keysRoutes } from './keys-route.tsx';
import { loggedDayRoutes } from './logged-day-route.tsx';
import { loggedDaysRoutes } from './logged-days-route.tsx';
import { longRecordRoutes } from './long-record-route.tsx';
import { MAIL_PATHS, mailHeaders } from './mail-pages.ts';
import { mailRoutes } from './mail-route.tsx';
import { troublePage } from './pages/plain.tsx';
import { pileReadingRoutes } from './pile-reading-route.tsx';
import { readerRoutes } from './reader.ts';
import { readingRoutes } from './readings-route.ts';
import { recordRoutes } from './record-route.ts';
import { reportRoutes } from './report-route.tsx';
import { seasonEndRoutes } from './season-end-route.tsx';
import { setUpRoutes } from './set-up-route.tsx';
import type { WebSettings } from './settings.ts';
import { spotRoutes } from './spot-route.tsx';
import { stageRoutes } from './stage-route.tsx';
import { stopRoutes } from './stop-route.tsx';
import { stylesheet } from './stylesheet.ts';
import { takePlanRoutes } from './take-plan-route.tsx';
import { taskRoutes } from './task-route.tsx';
import { notFound, Trouble, withoutTokens } from './trouble.ts';
import { UnderWayPages } from './under-way.tsx';
import { weatherRoutes } from './weather-route.tsx';
import { weekRoutes } from './week-route.tsx';
import { WrongTokens } from './wrong-tokens.ts';
import { yearRoutes } from './year-route.tsx';

export interface AppParts {
  steward: Steward;
  settings: WebSettings;
  /** Where a fault of the program is told. Secrets are blotted out before it is called. */
  report?: (line: string) => void;
}

/**
 * Open to all robots, although every answer asks not to be listed: a widespread calendar service reads a feed only
 * where robots.txt lets it, and naming the feeds here would give them away.
 */
const ROBOTS = 'User-agent: *\nAllow: /\n';

/** Makes the web view: the feeds, and behind them the pages with all that guards them. */
export function createApp({ steward, settings, report = console.error }: AppParts): Hono {
  const pages = pagesOf({ steward, settings, report });
  const app = new Hono();
  app.get('/feed/:file', knownFeed({ steward, settings, report }));
  app.notFound((c) => pages.fetch(c.req.raw, c.env));
  return app;
}

/** The pages with all that guards them. Its routes are what a walk over every page goes by. */
export function pagesOf({ steward, settings, report }: Required<AppParts>): Hono {
  const app = new Hono().use(contextStorage());
  const wrongLinks = new WrongTokens();
  const underWay = new UnderWayPages((error) => troubleOf(error, report));
  const beds = bedsRoom(steward, underWay);
  app.use(mailHeaders, safetyHeaders, hostGuard(settings));
  app.route('/', readingRoutes(steward));
  app.route('/', stopRoutes(steward, wrongLinks));
  app.use(originGuard);
  app.route('/', longRecordRoutes(steward, underWay));
  app.route('/', gardenFileRoutes(steward, underWay));
  app.route('/', loggedDaysRoutes(steward, underWay));
  app.use(formLimit);
  app.get('/robots.txt', (c) => c.text(ROBOTS));
  app.get('/health', (c) => c.json({ status: 'ok' }));
  app.get('/style.css', (c) =>
    c.body(stylesheet, 200, {
      'Content-Type': 'text/css; charset=utf-8',
      'Cache-Control': 'public, max-age=31536000, immutable',
    }),
  );
  app.get('/feed/:file', noFeed());
  app.use('/gardens/:gardenId/*', keptLine(steward));
  app.route('/', readerRoutes());
  app.route('/', handbookRoutes());
  app.route('/', weekRoutes(steward, settings));
  app.route('/', gardensRoutes(steward, underWay));
  app.route('/', setUpRoutes(steward, underWay));
  app.route('/', taskRoutes(steward));
  app.route('/', weatherRoutes(steward));
  app.route('/', loggedDayRoutes(steward));
  app.route('/', reportRoutes(steward));
  app.route('/', diseaseRoutes(steward));
  app.route('/', stageRoutes(steward));
  app.route('/', pileReadingRoutes(steward));
  app.route('/', awayRoutes(steward));
  app.route('/', bedsRoutes(beds));
  app.route('/', takePlanRoutes(beds));
  app.route('/', editRoutes(steward));
  app.route('/', spotRoutes(steward));
  app.route('/', seasonEndRoutes(steward));
  app.route('/', yearRoutes(steward));
  app.route('/', fertilityRoutes(steward));
  app.route('/', climateRoutes(steward));
  app.route('/', compostRoutes(steward));
  app.route('/', gardenRoutes(steward));
  app.route('/', historyRoutes(steward));
  app.route('/', recordRoutes(steward));
  app.route('/', mailRoutes(steward));
  app.route('/', feedsRoutes(steward, settings));
  app.route('/', keysRoutes(steward, settings));
  app.route('/', householdRoutes(steward, settings));
  app.route('/', answerRoutes(steward, wrongLinks));
  app.route('/', underWay.routes());
  app.notFound((c) => answerTrouble(c, notFound('Nothing is kept at this address.')));
  app.onError((error, c) => answerTrouble(c, troubleOf(error, report)));
  return app;
}

function answerTrouble(c: Context, { status, message, problems }: Trouble) {
  return c.html(troublePage(message, problems, MAIL_PATHS.test(c.req.path)), status);
}

/** What may be said about an error: its own words where they were meant for the reader, else only that there was one. */
function troubleOf(error: unknown, report: (line: string) => void): Trouble {
  if (error instanceof Trouble) return error;
  if (error instanceof InputRefused) return new Trouble(422, 'That cannot be done', error.problems);
  report(withoutTokens(error instanceof Error ? (error.stack ?? error.message) : String(error)));
  return new Trouble(500, 'Something went wrong here', [
    {
      where: 'this program',
      what: 'It met an error it did not expect; nothing was half done.',
      mend: 'Try once more. If it happens again, the window the program runs in says what it was.',
    },
  ]);
}
