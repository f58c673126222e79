/**
 * A feed's text as octets with headers: as it is, or compressed. Each is made once for as long as the text lives.
 */
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { httpDate } from '../calendar/http-date.ts';
import type { FeedBody } from '../steward/steward.ts';
import { SAFETY_HEADERS } from './guard.ts';

/** Seconds a calendar app may use its copy without asking. House default: a plan is not expected to change faster. */
const MAX_AGE_SECONDS = 300;

/** From 0 to 11. House default: about as quick as gzip and a fifth smaller; the highest takes seconds. */
const BROTLI_QUALITY = 5;

/** A content coding a feed can be sent in (RFC 9110, 8.4.1), the smaller first. */
const CODINGS = ['br', 'gzip'] as const;

export type Coding = (typeof CODINGS)[number];

/** An answer ready to be sent. */
export interface FeedAnswer {
  octets: Uint8Array<ArrayBuffer>;
  headers: Readonly<Record<string, string>>;
}

const answers = new WeakMap<FeedBody, Map<Coding | undefined, Promise<FeedAnswer>>>();

/** The whole feed, in a coding or as it is. */
export function wholeFeed(feed: FeedBody, coding: Coding | undefined): Promise<FeedAnswer> {
  const made = answers.get(feed) ?? new Map<Coding | undefined, Promise<FeedAnswer>>();
  answers.set(feed, made);
  const held = made.get(coding);
  if (held !== undefined) return held;
  const answer = makeAnswer(feed, coding);
  made.set(coding, answer);
  return answer;
}

/** The headers of a 304: those that a kept copy is renewed by (RFC 9110, 15.4.5). */
export function unchangedHeaders(feed: FeedBody, coding: Coding | undefined): Record<string, string> {
  return {
    ETag: codedTag(feed.etag, coding),
    'Last-Modified': httpDate(feed.changedAt),
    'Cache-Control': `private, max-age=${MAX_AGE_SECONDS}`,
    Vary: 'Accept-Encoding',
    ...SAFETY_HEADERS,
  };
}

/** The tag of a coded feed: its own, since its octets are others (RFC 9110, 8.8.3.3). */
export function codedTag(etag: string, coding: Coding | undefined): string {
  return coding === undefined ? etag : `${etag.slice(0, -1)}-${coding}"`;
}

/** The coding an Accept-Encoding header likes best (RFC 9110, 12.5.3), if it likes one of ours. */
export function chosenCoding(acceptEncoding: string | undefined): Coding | undefined {
  if (acceptEncoding === undefined) return undefined;
  const weights = new Map(acceptEncoding.toLowerCase().split(',').map(weighed));
  const weightOf = (coding: string) => weights.get(coding) ?? weights.get('*') ?? 0;
  const [best, next] = CODINGS;
  const chosen = weightOf(next) > weightOf(best) ? next : best;
  return weightOf(chosen) > 0 && weightOf(chosen) >= (weights.get('identity') ?? 0) ? chosen : undefined;
}

/** A coding and its weight: 1 where none is given, 0 where it cannot be read. */
function weighed(part: string): [string, number] {
  const [name = '', ...parameters] = part.split(';').map((piece) => piece.trim());
  const weight = parameters.find((parameter) => parameter.startsWith('q='));
  return [name, weight === undefined ? 1 : Number(weight.slice(2)) || 0];
}

async function makeAnswer(feed: FeedBody, coding: Coding | undefined): Promise<FeedAnswer> {
  const octets = await coded(Buffer.from(feed.body), coding);
  const headers = {
    'Content-Type': 'text/calendar; charset=utf-8',
    'Content-Disposition': 'inline; filename="loamtide.ics"',
    'Content-Length': String(octets.byteLength),
    ...(coding === undefined ? {} : { 'Content-Encoding': coding }),
    ...unchangedHeaders(feed, coding),
  };
  return { octets, headers };
}

function coded(
  octets: Buffer<ArrayBuffer>,
  coding: Coding | undefined,
): Promise<Buffer<ArrayBuffer>> | Buffer<ArrayBuffer> {
  switch (coding) {
    case undefined:
      return octets;
    case 'gzip':
      return promisify(gzip)(octets);
    case 'br':
      return promisify(brotliCompress)(octets, { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } });
    default:
      return coding satisfies never;
  }
}
