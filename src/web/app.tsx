/**
 * The web view: a function from requests to answers, over a steward.
 */
import { type Context, Hono } from 'hono';
import { contextStorage, tryGetContext } from 'hono/context-storage';
import { InputRefused } from '../garden/problem.ts';
import { createLog, type Log, stackOf } from '../log/log.ts';
import type { Steward } from '../steward/doings/steward.ts';
import { StoreFault } from '../store/fault.ts';
import type { WebSettings } from './addresses/settings.ts';
import { seasonEndRoutes } from './bed/season-end-route.tsx';
import { bedsRoutes } from './beds/beds-route.tsx';
import { bedsRoom } from './beds/beds-shown.tsx';
import { spotRoutes } from './beds/spot-route.tsx';
import { takePlanRoutes } from './beds/take-plan-route.tsx';
import { keptLine } from './changes/kept.tsx';
import { climateRoutes } from './climate/climate-route.tsx';
import { compostRoutes } from './compost/compost-route.tsx';
import { editRoutes } from './edit/edit-route.tsx';
import { FEED_ROUTE, knownFeed, noFeed } from './feeds/feed-route.ts';
import { feedsRoutes } from './feeds/feeds-route.tsx';
import { fertilityRoutes } from './fertility/fertility-route.ts';
import { troublePage } from './frame/plain.tsx';
import { gardenRoutes } from './garden/garden-route.tsx';
import { gardenFileRoutes } from './garden-file/garden-file-route.tsx';
import { gardensRoutes } from './gardens/gardens-route.tsx';
import { handbookRoutes } from './handbook/handbook-route.tsx';
import { historyRoutes } from './history/history-route.tsx';
import { householdRoutes } from './household/household-route.tsx';
import { keysRoutes } from './keys/keys-route.tsx';
import { readingRoutes } from './keys/readings-route.ts';
import { longRecordRoutes } from './long-record/long-record-route.tsx';
import { mailRoutes } from './mail/mail-route.tsx';
import { answerRoutes } from './mail-links/answer-route.tsx';
import { MAIL_PATHS, mailHeaders } from './mail-links/mail-pages.ts';
import { stopRoutes } from './mail-links/stop-route.tsx';
import { awayRoutes } from './report/away-route.tsx';
import { diseaseRoutes } from './report/disease-route.tsx';
import { pileReadingRoutes } from './report/pile-reading-route.tsx';
import { reportRoutes } from './report/report-route.tsx';
import { stageRoutes } from './report/stage-route.tsx';
import { formLimit, hostGuard, originGuard, safetyHeaders } from './requests/guard.ts';
import { healthOf } from './requests/health.ts';
import { readerRoutes } from './requests/reader.ts';
import { requestLog } from './requests/request-log.ts';
import { notFound, Trouble } from './requests/trouble.ts';
import { WrongTokens } from './requests/wrong-tokens.ts';
import { recordRoutes } from './season-record/record-route.ts';
import { setUpRoutes } from './set-up/set-up-route.tsx';
import { knowCaller } from './sign-in/caller.ts';
import { doorkeeper } from './sign-in/doorkeeper.ts';
import { formTokenGuard, tokensInForms } from './sign-in/form-token.ts';
import { signInRoutes } from './sign-in/sign-in-route.tsx';
import { stylesheet } from './styles/stylesheet.ts';
import { taskRoutes } from './task/task-route.tsx';
import { SlowPages } from './under-way/slow-pages.ts';
import { UnderWayPages } from './under-way/under-way.tsx';
import { loggedDayRoutes } from './weather/logged-day-route.tsx';
import { loggedDaysRoutes } from './weather/logged-days-route.tsx';
import { weatherRoutes } from './weather/weather-route.tsx';
import { weekRoutes } from './week/week-route.tsx';
import { yearRoutes } from './year/year-route.tsx';

export interface AppParts {
  steward: Steward;
  settings: WebSettings;
  /** Where requests and faults of the program are told; faults alone, to whoever runs it, unless given. */
  log?: Log;
}

/** For whoever uses the pages without keeping a log. */
const FAULTS_ALONE = createLog({
  shape: 'plain',
  level: 'error',
  now: () => new Date().toISOString(),
  write: (line) => process.stderr.write(line),
});

/**
 * Open to all robots, although every answer asks not to be listed: a widespread calendar service reads a feed only
 * where robots.txt lets it, and naming the feeds here would give them away.
 */
const ROBOTS = 'User-agent: *\nAllow: /\n';

/** Makes the web view: the feeds, and behind them the pages with all that guards them. */
export function createApp({ steward, settings, log = FAULTS_ALONE }: AppParts): Hono {
  const slow = slowPages(log);
  const pages = pagesOf({ steward, settings, log }, slow);
  const app = new Hono();
  app.get(FEED_ROUTE, knownFeed({ steward, settings, log }));
  app.notFound((c) => slow.answered(c, (request) => pages.fetch(request, c.env)));
  return app;
}

/** What goes on behind pages that take long. */
function slowPages(log: Log): SlowPages {
  return new SlowPages(new UnderWayPages((error) => troubleOf(error, log)));
}

/** The pages with all that guards them. Its routes are what a walk over every page goes by. */
export function pagesOf({ steward, settings, log }: Required<AppParts>, slow = slowPages(log)): Hono {
  const { underWay } = slow;
  const app = new Hono().use(contextStorage());
  const wrongLinks = new WrongTokens();
  const beds = bedsRoom(steward, underWay);
  app.use(knowCaller(settings), requestLog(log), mailHeaders, safetyHeaders, hostGuard(settings));
  app.route('/', readingRoutes(steward));
  app.route('/', stopRoutes(steward, wrongLinks));
  app.use(originGuard, doorkeeper(steward, settings), formLimit, tokensInForms, formTokenGuard);
  app.route('/', signInRoutes(steward));
  app.route('/', longRecordRoutes(steward, underWay));
  app.route('/', gardenFileRoutes(steward, underWay));
  app.route('/', loggedDaysRoutes(steward, underWay));
  app.get('/robots.txt', (c) => c.text(ROBOTS));
  app.get('/health', healthOf(steward));
  app.get('/style.css', (c) =>
    c.body(stylesheet, 200, {
      'Content-Type': 'text/css; charset=utf-8',
      'Cache-Control': 'public, max-age=31536000, immutable',
    }),
  );
  app.get(FEED_ROUTE, noFeed());
  app.use(slow.handOut());
  app.use('/gardens/:gardenId/*', keptLine(steward));
  app.route('/', readerRoutes());
  app.route('/', handbookRoutes(steward));
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
  app.onError((error, c) => answerTrouble(c, troubleOf(error, log)));
  return app;
}

/** Seconds after which a page that met another program's write may be asked for again. House default. */
const RETRY_SECONDS = 10;

function answerTrouble(c: Context, trouble: Trouble) {
  const { status, message, problems, requestId = c.get('requestId'), retrySeconds } = trouble;
  if (retrySeconds !== undefined) c.header('Retry-After', String(retrySeconds));
  return c.html(troublePage(message, problems, { requestId, apart: MAIL_PATHS.test(c.req.path) }), status);
}

/** What may be said about an error: its own words where they were meant for the reader, else only that there was one. */
function troubleOf(error: unknown, log: Log): Trouble {
  if (error instanceof Trouble) return error;
  if (error instanceof StoreFault) {
    log.error('data out of reach', { id: tryGetContext()?.get('requestId'), fault: error.message });
    return new Trouble(503, 'The garden’s data cannot be reached just now', error.problems, {
      retrySeconds: error.isPassing ? RETRY_SECONDS : undefined,
    });
  }
  if (error instanceof InputRefused) return new Trouble(422, 'That cannot be done', error.problems);
  // Work that goes on behind an answer still stands in the request that began it.
  const id = tryGetContext()?.get('requestId');
  log.error('fault', { id, fault: stackOf(error) });
  const problems = [
    {
      where: 'this program',
      what: 'It met an error it did not expect; nothing was half done.',
      mend: 'Try once more. If it happens again, the program’s log says what it was, under the number below.',
    },
  ];
  return new Trouble(500, 'Something went wrong here', problems, { requestId: id });
}
