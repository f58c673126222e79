/**
 * The lines of a file as they come, packed or not: of a file of any length no more is held than some of them.
 */
import { pipeline } from 'node:stream/promises';
import { createGunzip } from 'node:zlib';
import { LINES_AT_ONCE, MOST_CHARACTERS } from '../../garden/weather-rows.ts';
import { CANNOT_UNPACK, isPacked, NOT_UTF8, type Unread } from './file-text.ts';

/** Most octets a file may come to, unpacked: thousands of years by the day. House default. */
const MOST_STREAMED_BYTES = 2 * 1024 * 1024 * 1024;

/**
 * Hands on the lines of a stream of bytes, unpacked where they are gzip.
 *
 * @param take is given some lines at a time, without their ends, and says whether more are wanted
 * @returns why it could not be read, where it could not
 */
export async function linesOfStream(
  bytes: AsyncIterable<Uint8Array>,
  take: (lines: readonly string[]) => boolean,
): Promise<Unread | undefined> {
  const cutter = new LineCutter(take);
  try {
    await pipeline(bytes, unpackedWherePacked, async (chunks: AsyncIterable<Uint8Array>) => cutter.takeAll(chunks));
  } catch (error) {
    if (error instanceof Unreadable) return error.why;
    if (!(error instanceof Enough)) throw error;
  }
  return undefined;
}

/** Stops a file that cannot be read. */
class Unreadable extends Error {
  readonly why: Unread;
  constructor(why: Unread) {
    super(why.what);
    this.why = why;
  }
}

/** Stops a file of which no more is wanted. */
class Enough extends Error {}

async function* unpackedWherePacked(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  const source = chunks[Symbol.asyncIterator]();
  let first: Uint8Array = new Uint8Array();
  let next = await source.next();
  // The mark of gzip may come in two pieces.
  for (; next.done !== true && first.length < 2; next = await source.next()) first = Buffer.concat([first, next.value]);
  const whole = (async function* () {
    yield first;
    for (; next.done !== true; next = await source.next()) yield next.value;
  })();
  if (!isPacked(first)) {
    yield* whole;
    return;
  }
  const unpacker = createGunzip();
  const fed = pipeline(whole, unpacker);
  // What went wrong shows as it is read.
  fed.catch(() => undefined);
  try {
    for await (const chunk of unpacker) yield chunk as Uint8Array;
  } catch (error) {
    throw isOfPacking(error) ? new Unreadable(CANNOT_UNPACK) : error;
  }
}

function isOfPacking(error: unknown): boolean {
  return error instanceof Error && 'code' in error && /^Z_/.test(String(error.code));
}

/** Cuts text into lines. */
class LineCutter {
  readonly #take: (lines: readonly string[]) => boolean;
  readonly #decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  #lines: string[] = [];
  #rest = '';
  #bytes = 0;

  constructor(take: (lines: readonly string[]) => boolean) {
    this.#take = take;
  }

  async takeAll(chunks: AsyncIterable<Uint8Array>): Promise<void> {
    for await (const chunk of chunks) {
      this.#bytes += chunk.length;
      if (this.#bytes > MOST_STREAMED_BYTES) throw new Unreadable(TOO_LONG);
      this.#cut(this.#text(chunk));
    }
    this.#cut(this.#text());
    this.#lines.push(this.#rest);
    this.#hand();
  }

  #text(chunk?: Uint8Array): string {
    try {
      return chunk === undefined ? this.#decoder.decode() : this.#decoder.decode(chunk, { stream: true });
    } catch {
      throw new Unreadable(NOT_UTF8);
    }
  }

  #cut(text: string): void {
    const parts = (this.#rest + text).split('\n');
    this.#rest = parts.pop() ?? '';
    for (const part of parts) this.#lines.push(part.endsWith('\r') ? part.slice(0, -1) : part);
    if (this.#rest.length > MOST_CHARACTERS) throw new Unreadable(LONG_LINE);
    if (this.#lines.length >= LINES_AT_ONCE) this.#hand();
  }

  #hand(): void {
    const lines = this.#lines;
    this.#lines = [];
    if (!this.#take(lines)) throw new Enough();
  }
}

const TOO_LONG: Unread = {
  what: `is longer than ${MOST_STREAMED_BYTES / 1024 / 1024 / 1024} GiB unpacked.`,
  mend: 'Give the days of one place alone.',
};
const LONG_LINE: Unread = {
  what: `has a line of more than ${MOST_CHARACTERS} characters.`,
  mend: 'Give a line a day, as CSV or GHCN-Daily.',
};
