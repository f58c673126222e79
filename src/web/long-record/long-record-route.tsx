/**
 * The long record behind a garden: shown, handed out, and another looked at and put in its place.
 */
import { type Context, Hono } from 'hono';
import { recordDays } from '../../climate/record-days.ts';
import { InputRefused } from '../../garden/problem.ts';
import { weatherCsv } from '../../garden/weather-csv-text.ts';
import type { RecordPreview } from '../../steward/doings/record-doings.ts';
import type { GardenView, Steward } from '../../steward/doings/steward.ts';
import { joined, recordOf } from '../../steward/files/record-join.ts';
import type { Say } from '../../steward/long-work/say.ts';
import type { WeatherRecord } from '../../store/weather.ts';
import { longRecordPath, offeredRecordPath } from '../addresses/addresses.ts';
import { Offered } from '../changes/offered.ts';
import { readForm } from '../requests/form.ts';
import { BY, gardenView } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { notFound, Trouble } from '../requests/trouble.ts';
import { readFormWithFiles, type SentFile } from '../requests/upload.ts';
import type { UnderWayPages } from '../under-way/under-way.tsx';
import { readPieces, told } from '../weather/weather-sent.ts';
import { type KeptRecord, longRecordPage } from './long-record.tsx';
import type { OfferedRecord } from './offered-record.ts';
import { offeredRecordPage } from './offered-record-page.tsx';

const PATH = '/gardens/:gardenId/weather/record';
/** Share of the work that reading a file is, as it is shown. */
const READING = 0.4;
/** Records held at once: each may be some megabytes. House default. */
const MOST_HELD = 5;

interface Room {
  steward: Steward;
  underWay: UnderWayPages;
  offers: Offered<OfferedRecord>;
  previewOf: (view: GardenView, offer: OfferedRecord, say?: Say) => Promise<RecordPreview>;
}

/** The page, its files, and everything that puts a record behind a garden. */
export function longRecordRoutes(steward: Steward, underWay: UnderWayPages): Hono {
  const room: Room = {
    steward,
    underWay,
    offers: new Offered<OfferedRecord>(MOST_HELD),
    previewOf: heldPreviews(steward),
  };
  return new Hono()
    .get(PATH, async (c) => {
      const view = await gardenView(steward, c);
      return c.html(longRecordPage({ ...(await shownOf(room, view)), kept: c.req.query('kept') === 'yes' }));
    })
    .post(PATH, async (c) => bringIn(c, room))
    .get(`${PATH}/:which{(?:now|former)\\.csv}`, (c) => handOut(c, room))
    .post(`${PATH}/offer`, (c) => offerKept(c, room))
    .get(`${PATH}/offer/:offer`, (c) => look(c, room))
    .post(`${PATH}/offer/:offer`, (c) => take(c, room));
}

/** What was tried out, refusals too, for as long as the garden stands as it is; what failed otherwise is tried again. */
function heldPreviews(steward: Steward): Room['previewOf'] {
  const held = new WeakMap<OfferedRecord, { view: GardenView; preview: Promise<RecordPreview> }>();
  return (view, offer, say) => {
    const known = held.get(offer);
    if (known?.view === view) return known.preview;
    const preview = steward.previewRecord(offer.gardenId, offer.change, say);
    held.set(offer, { view, preview });
    preview.catch((error) => error instanceof InputRefused || held.delete(offer));
    return preview;
  };
}

async function shownOf({ steward }: Room, view: GardenView) {
  const { id } = view.garden;
  const kept = (record: WeatherRecord | undefined): KeptRecord | undefined =>
    record && { origin: record.origin, held: recordDays(record.days) };
  return { view, record: kept(await steward.weatherRecord(id)), former: kept(await steward.formerRecord(id)) };
}

async function bringIn(c: Context, room: Room): Promise<Response> {
  const view = await gardenView(room.steward, c);
  const { form, file } = await readFormWithFiles(c);
  const { garden } = view;
  const entered = { origin: form.text('origin'), how: form.text('how') };
  const refused = async (problems: readonly { where: string; what: string; mend: string }[]) =>
    c.html(longRecordPage({ ...(await shownOf(room, view)), entered, problems }), 422);
  const sent = await file('file', 'The file');
  if (sent === undefined) return refused(form.problems);
  return room.underWay.start(c, {
    garden,
    title: 'Looking at the record',
    work: async (say) => {
      const offer = await offerOf(room, garden.id, sent, entered, say);
      const id = room.offers.keep(offer);
      // What is refused here is told on the page of the offer, beside what the file holds.
      await refusalsOf(() => room.previewOf(view, offer, say));
      return offeredRecordPath(garden.id, id);
    },
    failed: longRecordPath(garden.id),
    refused,
  });
}

/** Reads a file and makes an offer of it; nothing of it can be used where it holds no day. */
async function offerOf(
  { steward }: Room,
  gardenId: string,
  { name, text }: SentFile,
  { origin, how }: { origin: string; how: string },
  say: Say,
): Promise<OfferedRecord> {
  const file = await readPieces(text, 'record', say, READING);
  if (file.rows.length === 0)
    throw new InputRefused('The record cannot be used.', nothingIn(name, told(file.problems, file.moreProblems)));
  const made = recordOf(name, file.rows);
  const fresh = origin === '' ? made : { ...made, origin: `${origin.replace(/[.\s]+$/, '')}. ${made.origin}` };
  const held = await steward.weatherRecord(gardenId);
  const over = held !== undefined && how !== 'instead' ? joined(held, fresh) : undefined;
  const record = over?.record ?? { ...fresh, leftOut: held?.leftOut ?? [] };
  const replaced = over?.replaced ?? 0;
  const laidOver = how === 'instead' ? {} : { laidOver: { held } };
  return { gardenId, change: { record, file: name, ...laidOver }, from: 'file', file, replaced };
}

function nothingIn(name: string, problems: readonly { where: string; what: string; mend: string }[]) {
  const mend = 'Give a row a day, such as 2018-04-15,-1.1,6.7,0,0,0.';
  return [
    ...problems.map((problem) => ({ ...problem, where: `${name}, ${problem.where}` })),
    { where: name, what: 'No day in it can be used.', mend },
  ];
}

async function handOut(c: Context, room: Room): Promise<Response> {
  const { garden } = await gardenView(room.steward, c);
  const former = c.req.param('which') === 'former.csv';
  const record = former ? await room.steward.formerRecord(garden.id) : await room.steward.weatherRecord(garden.id);
  if (record === undefined) throw notFound('No such record is kept here.');
  return c.body(weatherCsv(record.days), 200, {
    'Content-Type': 'text/csv; charset=utf-8; header=present',
    'Content-Disposition': `attachment; filename="${garden.id}-weather${former ? '-former' : ''}.csv"`,
  });
}

/** Offers a record that is kept here, by the same way as one that is brought in. */
async function offerKept(c: Context, room: Room): Promise<Response> {
  const { garden } = await gardenView(room.steward, c);
  const from = (await readForm(c)).text('which') === 'now' ? 'now' : 'former';
  const record =
    from === 'now' ? await room.steward.weatherRecord(garden.id) : await room.steward.formerRecord(garden.id);
  if (record === undefined) throw notFound('No such record is kept here.');
  const id = room.offers.keep({ gardenId: garden.id, change: { record, file: 'weather.csv' }, from });
  return c.redirect(offeredRecordPath(garden.id, id), 303);
}

function offered(c: Context, room: Room, gardenId: string): { id: string; offer: OfferedRecord } {
  const id = c.req.param('offer') ?? '';
  const offer = room.offers.find(gardenId, id);
  if (offer !== undefined) return { id, offer };
  throw new Trouble(404, 'That record is not held any more', [
    {
      where: 'address',
      what: 'It was put behind the garden, or others were looked at since, or the program was started anew.',
      mend: 'Look at the long record, on the Weather log; a file that is not there yet has to be sent again.',
    },
  ]);
}

async function look(c: Context, room: Room): Promise<Response> {
  const view = await gardenView(room.steward, c);
  const { garden } = view;
  const { id, offer } = offered(c, room, garden.id);
  const shown = async () => {
    let preview: RecordPreview | undefined;
    const problems = await refusalsOf(async () => {
      preview = await room.previewOf(view, offer);
    });
    const record = await room.steward.weatherRecord(garden.id);
    return c.html(offeredRecordPage({ garden, offer, id, record, preview, problems }), preview ? 200 : 422);
  };
  return room.underWay.start(c, {
    garden,
    title: 'Trying the record out',
    work: async (say) => {
      await refusalsOf(() => room.previewOf(view, offer, say));
      return offeredRecordPath(garden.id, id);
    },
    failed: longRecordPath(garden.id),
    atOnce: shown,
  });
}

async function take(c: Context, room: Room): Promise<Response> {
  const { garden } = await gardenView(room.steward, c);
  const { id, offer } = offered(c, room, garden.id);
  return room.underWay.start(c, {
    garden,
    title: 'Putting the record behind the garden',
    work: async (say) => {
      await room.steward.takeRecord(garden.id, offer.change, BY, say);
      room.offers.drop(id);
      return `${longRecordPath(garden.id)}?kept=yes`;
    },
    failed: offeredRecordPath(garden.id, id),
  });
}
