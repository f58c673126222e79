/**
 * Gardens at the edge of what there is: of the world, of the year, of the clock and of what was measured; and what their pages
 * and feeds say.
 */
import { setImmediate } from 'node:timers/promises';
import { checkGardenFile } from '../../src/garden/read-garden-file.ts';
import { readWeatherFile } from '../../src/garden/weather-file.ts';
import { addDays, type Day, yearOf } from '../../src/measures/days.ts';
import { createSteward } from '../../src/steward/create-steward.ts';
import { recordOf } from '../../src/steward/files/record-join.ts';
import { openStore } from '../../src/store/store.ts';
import { createApp } from '../../src/web/app.tsx';
import { inventedRecord } from '../cli/invented-record.ts';
import { HOST } from '../web/sample-garden.ts';
import { amissIn } from './amiss.ts';
import { faultsTo } from './household.ts';

/** A garden by what is odd about it. */
export interface EdgePlace {
  latitude: number;
  longitude: number;
  timeZone: string;
  /** As its file says it. */
  climate: object;
  today: Day;
  /** A weather record, as CSV. */
  record?: string;
}

/** Twelve months of means, from a coldest month's low to a warmest month's, the warmest in July or in January. */
export function months(coldC: number, warmC: number, warmest: 0 | 6 = 6) {
  return {
    monthlyNormals: Array.from({ length: 12 }, (_, month) => {
      const swing = (1 + Math.cos((2 * Math.PI * (month - warmest)) / 12)) / 2;
      const lowC = Math.round((coldC + (warmC - coldC) * swing) * 10) / 10;
      return { lowC, highC: lowC + 8, precipMm: 60 };
    }),
  };
}

const frosts = (lastSpring: string, firstAutumn: string) => ({ frostDates: { lastSpring, firstAutumn } });
const CHICAGO = { latitude: 43.1, longitude: -89.4, timeZone: 'America/Chicago' };

const HEADER = 'date,tmin_c,tmax_c,prcp_mm,snow_mm,snwd_mm\n';

/** Every saved place. */
export const EDGES: Readonly<Record<string, EdgePlace>> = {
  'polar day': at(78.2, 15.6, 'Europe/Oslo', months(-16, 4), '2027-06-21'),
  'polar night': at(78.2, 15.6, 'Europe/Oslo', months(-16, 4), '2027-12-21'),
  'no frost at all': at(0, 0, 'Africa/Accra', months(22, 24), '2027-04-20'),
  'the other side of the equator, high up': at(-0.2, -78.5, 'America/Guayaquil', months(8, 9), '2027-04-20'),
  'the north pole': at(90, 180, 'Etc/GMT-14', months(-40, -2), '2027-04-20'),
  'the south pole': at(-90, -180, 'Etc/GMT+12', months(-60, -28, 0), '2027-12-31'),
  'fourteen hours ahead': at(1.9, -157.4, 'Pacific/Kiritimati', { nearest: true }, '2027-01-01'),
  'three quarters of an hour': at(-44, -176.5, 'Pacific/Chatham', frosts('10-10', '05-05'), '2027-09-26'),
  'half an hour of summer time': at(-31.5, 159, 'Australia/Lord_Howe', months(12, 20, 0), '2027-04-04'),
  'a zone of quarters': at(27.7, 85.3, 'Asia/Kathmandu', { nearest: true }, '2027-02-28'),
  'a first frost after New Year': { ...CHICAGO, latitude: 33, climate: frosts('02-10', '01-05'), today: '2026-12-31' },
  'frost on leap days': { ...CHICAGO, climate: frosts('02-29', '11-01'), today: '2028-02-29' },
  'frost dates the wrong way round': { ...CHICAGO, climate: frosts('10-01', '05-01'), today: '2027-04-20' },
  'one frost date for both': { ...CHICAGO, climate: frosts('05-01', '05-01'), today: '2027-04-20' },
  'an hour that is not there': { ...CHICAGO, climate: frosts('05-06', '10-04'), today: '2027-03-14' },
  'an hour that comes twice': { ...CHICAGO, climate: frosts('05-06', '10-04'), today: '2027-11-07' },
  'a record of one year': ofRecord(inventedRecord('2026-01-01', '2026-12-31')),
  'a record all of gaps': ofRecord(
    inventedRecord('2010-01-01', '2026-12-31')
      .replace(/,[^\n]+$/gm, ',,,,,')
      .replace(/^.*\n/, HEADER),
  ),
  'a record of lows alone': ofRecord(
    inventedRecord('2010-01-01', '2026-12-31').replace(/^(\d[^,]*,[^,]*),.*$/gm, '$1,,,,'),
  ),
  'a record that freezes after New Year alone': ofRecord(warmer(inventedRecord('2010-01-01', '2026-12-31'), 9)),
  'a record of every other day': ofRecord(
    inventedRecord('2010-01-01', '2026-12-31').replace(/^[^\n]*[02468],[^\n]*\n/gm, ''),
  ),
  'a record that ended long ago': ofRecord(inventedRecord('1890-01-01', '1905-12-31')),
};

function at(latitude: number, longitude: number, timeZone: string, climate: object, today: Day): EdgePlace {
  return { latitude, longitude, timeZone, climate, today };
}

function ofRecord(record: string): EdgePlace {
  return { ...CHICAGO, climate: { dailyRecord: 'weather.csv' }, today: '2027-04-20', record };
}

/** A record so many degrees warmer. */
function warmer(record: string, byC: number): string {
  const more = (tempC: string) => (Number(tempC) + byC).toFixed(1);
  return record.replace(/^(\d[^,]*),([^,]*),([^,]*)/gm, (_, day, low, high) => `${day},${more(low)},${more(high)}`);
}

/** The garden of a place: work in every season, around its day. */
function fileOf({ latitude, longitude, timeZone, climate, today }: EdgePlace) {
  const inDays = (days: number) => addDays(today, days);
  return {
    garden: { id: 'edge', name: 'Edge', latitude, longitude, timeZone },
    climate,
    beds: ['one', 'two', 'three'].map((id) => ({ id, name: `Bed ${id}`, lengthM: 3, widthM: 1.2 })),
    plantings: [
      { bed: 'one', crop: 'carrot', sow: inDays(20), lastHarvest: inDays(140) },
      { bed: 'two', crop: 'tomato', setOut: inDays(30) },
      { bed: 'three', crop: 'garlic', sow: inDays(-150), lastHarvest: inDays(60) },
    ],
    coverStands: [
      { id: 'rye', bed: 'one', cover: 'cereal_rye', sow: inDays(-200) },
      { id: 'oats', bed: 'three', cover: 'oats', sow: inDays(70) },
    ],
    bins: [{ id: 'bay', name: 'Bay', volumeL: 700 }],
    piles: [{ id: 'pile', bin: 'bay', built: inDays(-20), method: 'hot', ingredients: [] }],
    topdressing: { depthMm: 13, season: 'autumn' },
    wishes: [{ crop: 'beet', beds: 1, year: yearOf(today) + 1 }],
    away: [{ from: inDays(40), to: inDays(50) }],
  };
}

const FEW_PAGES = ['', '/year', '/season-end'];
const MORE_PAGES = ['/climate', '/fertility', '/compost', '/beds', '/beds/one', '/record', '/garden', '/away-sheet'];

/**
 * No day, no number, or a number with an exponent. The exponent of a number has its sign: without one it is part of a hash.
 */
const ODD_WORDS = /Invalid (?:Date|DateTime|time|interval)|\b\d{5,}-\d\d-\d\d\b|Infinity|\s-?\d+(?:\.\d+)?e[+-]\d+\s/;

/**
 * Plans a place and asks for its pages and its feed.
 *
 * @returns what is amiss; why it was refused where it was
 */
export async function amissAt(place: EdgePlace, everyPage = true): Promise<{ amiss: string[]; refused?: string }> {
  const now = `${place.today}T12:00:00.000Z`;
  const store = await openStore({ file: ':memory:', now });
  const steward = createSteward({ store, clock: { now: () => now, today: place.today } });
  try {
    const file = checkGardenFile(fileOf(place));
    const rows = place.record === undefined ? undefined : readWeatherFile(place.record).rows;
    const record = rows && { record: recordOf('weather.csv', rows) };
    const answer = await steward.importGarden({ file, prefer: 'reported', ...record }, 'test').then(
      () => undefined,
      (error: unknown) => error,
    );
    if (answer instanceof Error && answer.constructor.name === 'InputRefused')
      return { amiss: [], refused: answer.message };
    if (answer !== undefined) throw answer;
    const feed = await steward.addFeed('edge', 'Everything');
    const reported: string[] = [];
    const settings = { port: 8137, hostNames: [] };
    const app = createApp({ steward, settings, log: faultsTo((line) => reported.push(line)) });
    const paths = [...FEW_PAGES, ...(everyPage ? MORE_PAGES : [])].map((page) => `/gardens/edge${page}`);
    const amiss: string[] = [];
    for (const path of [...paths, `/feed/${feed.token}.ics`]) {
      await setImmediate();
      const { status, body } = await answerOf(app, path);
      if (status !== 200) amiss.push(`${path}: ${status}`);
      const isPage = !path.endsWith('.ics');
      amiss.push(...amissIn({ status, body, isPage, location: undefined }, '').map((one) => `${path}: ${one}`));
      const odd = ODD_WORDS.exec(body.replace(/<[^>]*>/g, ' '));
      if (odd !== null) amiss.push(`${path}: says ${odd[0]}`);
    }
    return { amiss: [...amiss, ...reported.map((line) => line.slice(0, 600))] };
  } finally {
    await steward.close();
  }
}

async function answerOf(app: ReturnType<typeof createApp>, path: string): Promise<{ status: number; body: string }> {
  for (let at = path; ; ) {
    const answer = await app.request(at, { headers: { Host: HOST } });
    const leads = answer.headers.get('location');
    if (leads === null && !answer.headers.has('refresh')) return { status: answer.status, body: await answer.text() };
    at = leads ?? at;
  }
}
