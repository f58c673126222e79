/**
 * A feed's text as octets with headers: as it is, or compressed. Each is made once for as long as the text lives.
 */
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';
import { httpDate } from '../../calendar/http-date.ts';
import type { FeedBody } from '../../steward/doings/steward.ts';
import { SAFETY_HEADERS } from '../requests/guard.ts';
import { recalled } from '../requests/recalled.ts';

/** Seconds a calendar app may use its copy without asking. House default: a plan is not expected to change faster. */
const MAX_AGE_SECONDS = 300;

/** From 0 to 11. House default: about as quick as gzip and a fifth smaller; the highest takes seconds. */
const BROTLI_QUALITY = 5;

/** A content coding a feed can be sent in (RFC 9110, 8.4.1), the smaller first. */
const CODINGS = ['br', 'gzip'] as const;

export type Coding = (typeof CODINGS)[number] | 'identity';

/** An answer ready to be sent. */
interface WholeFeed {
  octets: Uint8Array<ArrayBuffer>;
  headers: Readonly<Record<string, string>>;
}

/** What one feed answers in one coding. */
export interface CodedFeed {
  /** A tag of its own, since the octets are others in another coding (RFC 9110, 8.8.3.3). */
  etag: string;
  /** The headers of a 304: those that a kept copy is renewed by, and no more (RFC 9110, 15.4.5). */
  unchangedHeaders: Readonly<Record<string, string>>;
  /** The whole of it, compressed at the first asking. */
  whole(): Promise<WholeFeed>;
}

const coded = new WeakMap<FeedBody, Map<Coding, CodedFeed>>();

/** A feed in a coding. */
export function codedFeed(feed: FeedBody, coding: Coding): CodedFeed {
  const known = coded.get(feed) ?? new Map<Coding, CodedFeed>();
  coded.set(feed, known);
  const made = known.get(coding) ?? code(feed, coding);
  known.set(coding, made);
  return made;
}

function code(feed: FeedBody, coding: Coding): CodedFeed {
  const etag = coding === 'identity' ? feed.etag : `${feed.etag.slice(0, -1)}-${coding}"`;
  const unchangedHeaders = {
    ETag: etag,
    'Cache-Control': `private, max-age=${MAX_AGE_SECONDS}`,
    Vary: 'Accept-Encoding',
  };
  let made: Promise<WholeFeed> | undefined;
  const whole = async () => {
    const octets = await compressed(Buffer.from(feed.body), coding);
    const headers = {
      'Content-Type': 'text/calendar; charset=utf-8',
      'Content-Disposition': 'inline; filename="loamtide.ics"',
      'Content-Length': String(octets.byteLength),
      ...(coding === 'identity' ? {} : { 'Content-Encoding': coding }),
      ...unchangedHeaders,
      'Last-Modified': httpDate(feed.changedAt),
      ...SAFETY_HEADERS,
    };
    return { octets, headers };
  };
  return {
    etag,
    unchangedHeaders,
    whole: () => {
      made ??= whole();
      return made;
    },
  };
}

/** The coding an Accept-Encoding header likes best (RFC 9110, 12.5.3), as it is where it likes none of ours better. */
export const chosenCoding = recalled((acceptEncoding: string): Coding => {
  const weights = new Map(acceptEncoding.toLowerCase().split(',').map(weighed));
  const weightOf = (coding: string) => weights.get(coding) ?? weights.get('*') ?? 0;
  const [best, next] = CODINGS;
  const chosen = weightOf(next) > weightOf(best) ? next : best;
  return weightOf(chosen) > 0 && weightOf(chosen) >= (weights.get('identity') ?? 0) ? chosen : 'identity';
});

/** A coding and its weight: 1 where none is given, 0 where it cannot be read. */
function weighed(part: string): [string, number] {
  const [name = '', ...parameters] = part.split(';').map((piece) => piece.trim());
  const weight = parameters.find((parameter) => parameter.startsWith('q='));
  return [name, weight === undefined ? 1 : Number(weight.slice(2)) || 0];
}

function compressed(octets: Buffer<ArrayBuffer>, coding: Coding): Promise<Buffer<ArrayBuffer>> | Buffer<ArrayBuffer> {
  switch (coding) {
    case 'identity':
      return octets;
    case 'gzip':
      return promisify(gzip)(octets);
    case 'br':
      return promisify(brotliCompress)(octets, { params: { [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY } });
    default:
      return coding satisfies never;
  }
}
