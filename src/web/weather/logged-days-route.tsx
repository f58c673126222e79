/**
 * Many days of the weather log at once: a file or pasted rows, looked at first.
 */
import { type Context, Hono } from 'hono';
import { unreckonedNote } from '../../digest/unreckoned.ts';
import type { Problem } from '../../garden/problem.ts';
import { InputRefused } from '../../garden/problem.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { GardenView, ReportPreview, Steward } from '../../steward/doings/steward.ts';
import { loggable } from '../../steward/facts/log-file.ts';
import type { Say } from '../../steward/long-work/say.ts';
import { loggedDaysPath, weatherPath } from '../addresses/addresses.ts';
import { keptChange } from '../changes/kept-change.ts';
import { Offered } from '../changes/offered.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { Trouble } from '../requests/trouble.ts';
import { readFormWithFiles, type SentFile } from '../requests/upload.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { type OfferedDays, offeredDaysPage } from './offered-days.tsx';
import { weatherPage } from './weather.tsx';
import { readPieces, told } from './weather-sent.ts';

const PATH = '/gardens/:gardenId/weather/days';
/** Share of the work that reading a file is, as it is shown. */
const READING = 0.6;
/** Files of days held at once: each may be some megabytes. House default. */
const MOST_HELD = 5;

const OTHER_WAYS = {
  older: 'older ones belong into the long record.',
  forecast: 'A forecast is brought in under “expected”.',
};

interface Room {
  steward: Steward;
  underWay: UnderWayPages;
  offers: Offered<OfferedDays>;
}

/** What reads the days, the page that shows them, and what takes them in. */
export function loggedDaysRoutes(steward: Steward, underWay: UnderWayPages): Hono {
  const room: Room = { steward, underWay, offers: new Offered<OfferedDays>(MOST_HELD) };
  return new Hono()
    .post(PATH, async (c) => bringIn(c, room))
    .get(`${PATH}/:offer`, (c) => look(c, room))
    .post(`${PATH}/:offer`, (c) => take(c, room));
}

async function bringIn(c: Context, room: Room): Promise<Response> {
  const view = await gardenView(room.steward, c);
  const { form, file, has } = await readFormWithFiles(c);
  const { garden } = view;
  const pasted = form.text('rows');
  const kind = form.text('kind') === 'expected' ? 'expected' : 'observed';
  const refused = (problems: readonly Problem[]) =>
    c.html(weatherPage({ view, entered: {}, many: { rows: pasted, kind }, problems }), 422);
  if (pasted !== '' && has('file')) return refused([TWICE]);
  if (pasted === '' && !has('file')) return refused([NEITHER]);
  const sent = pasted === '' ? await file('file', 'The file') : { name: 'the pasted rows', text: pasted };
  if (sent === undefined) return refused(form.problems);
  return room.underWay.start(c, {
    garden,
    title: 'Looking at the days',
    work: async (say) => {
      const id = room.offers.keep(await offerOf(view, sent, kind, say));
      return loggedDaysPath(garden.id, id);
    },
    failed: weatherPath(garden.id),
    refused,
  });
}

const NEITHER: Problem = {
  where: 'Many days at once',
  what: 'Neither rows nor a file are there.',
  mend: 'Paste rows with their header, or choose a file.',
};

const TWICE: Problem = {
  where: 'Many days at once',
  what: 'Both rows and a file are there.',
  mend: 'Send one of the two.',
};

async function offerOf(
  { garden, plan }: GardenView,
  { name, text }: SentFile,
  kind: LoggedDay['kind'],
  say: Say,
): Promise<OfferedDays> {
  const file = await readPieces(text, 'log', say, READING);
  const { days, problems } = loggable(file.rows, { kind, today: plan.today, ways: OTHER_WAYS });
  const all = [...file.problems, ...problems];
  if (days.length > 0) return { gardenId: garden.id, name, days, file: { ...file, problems: all } };
  const none = { where: name, what: 'No day in it can be logged.', mend: 'Give a row a day, under a header.' };
  throw new InputRefused('The days cannot be used.', [...told(all, file.moreProblems), none]);
}

function offered(c: Context, room: Room, gardenId: string): { id: string; offer: OfferedDays } {
  const id = c.req.param('offer') ?? '';
  const offer = room.offers.find(gardenId, id);
  if (offer !== undefined) return { id, offer };
  throw notHeld();
}

function notHeld(): Trouble {
  const what = 'They were logged, or others were looked at since, or the program was started anew.';
  const mend = 'Look at the weather log; days that are not there yet have to be sent again.';
  return new Trouble(404, 'Those days are not held any more', [{ where: 'address', what, mend }]);
}

async function look(c: Context, room: Room): Promise<Response> {
  const view = await gardenView(room.steward, c);
  const { garden } = view;
  const { id, offer } = offered(c, room, garden.id);
  let preview: ReportPreview | undefined;
  const problems = await refusalsOf(async () => {
    preview = await room.steward.previewReport(garden.id, reportOf(offer));
  });
  const note = unreckonedNote(view.climate, offer.days);
  return c.html(offeredDaysPage({ garden, offer, id, preview, note, problems }), preview === undefined ? 422 : 200);
}

async function take(c: Context, room: Room): Promise<Response> {
  const { garden } = await gardenView(room.steward, c);
  const id = c.req.param('offer') ?? '';
  const taken = room.offers.taken(garden.id, id, (offer) => logged(room, offer));
  if (taken === undefined) throw notHeld();
  return room.underWay.start(c, {
    garden,
    title: 'Logging the days',
    work: () => taken,
    failed: loggedDaysPath(garden.id, id),
  });
}

function logged({ steward }: Room, offer: OfferedDays): Promise<string> {
  const { gardenId } = offer;
  return keptChange(steward, gardenId, weatherPath(gardenId), () => steward.report(gardenId, reportOf(offer), BY));
}

function reportOf({ days }: OfferedDays) {
  return { kind: 'weather-logged' as const, days: [...days] };
}
