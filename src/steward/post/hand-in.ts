/**
 * A message handed in at a mail server (RFC 5321), and what came of it.
 */
import { Readable } from 'node:stream';
import SMTPConnection from 'nodemailer/lib/smtp-connection';
import { faultOf, faultText, LINE_BROKEN, stateAfter, TOO_SLOW, withoutPassword } from './fault-words.ts';
import { type MailServer, needsSecretLine } from './mail-server.ts';

/** An encoded message with the addresses it goes between. */
export interface Post {
  from: string;
  to: string;
  message: Buffer;
}

/** What came of a try: taken by the server, put off, refused for good, or unknown. */
export interface Handed {
  state: 'sent' | 'delayed' | 'refused' | 'unknown';
  /** What went wrong, in words without secrets. */
  problem?: string;
  /** Whether it was our own stop that broke it off: then it was no try. */
  isOurStop?: true;
}

/** How long a try may take. */
export interface Waits {
  /** Until the server has asked for the message. */
  beforeMs: number;
  /** From the message's first octet to the server's answer. */
  answerMs: number;
}

interface Handing {
  /** Asked just before the first octet of the message goes out; nothing goes out where it says no. */
  mayBegin(): Promise<boolean>;
  /** Breaks the line off. */
  signal?: AbortSignal | undefined;
  waits: Waits;
}

/** RFC 5321, 4.5.3.2.6: ten minutes for the answer to a whole message. */
export const ANSWER_MS = 10 * 60_000;

/**
 * Where nobody stands and waits. House default: two minutes for all that is said before the message; a server at work
 * says it in moments, and the five minutes for each answer of RFC 5321, 4.5.3.2 would hold up every other list.
 */
export const PATIENT: Waits = { beforeMs: 2 * 60_000, answerMs: ANSWER_MS };

/** Where somebody waits before a page. House default. */
export const BRISK: Waits = { beforeMs: 20_000, answerMs: 60_000 };

/**
 * Hands a message in. What goes wrong before the message is under way may be tried again; once its first octet has gone
 * out, only an answer of the server settles what became of it.
 */
export async function handIn(server: MailServer, post: Post, handing: Handing): Promise<Handed> {
  const { mayBegin, signal, waits } = handing;
  let isUnderWay = false;
  const talk = new Talk(server, waits, signal);
  // Read only once the server has asked for the message, so that "under way" is as late as it can be.
  async function* octets(): AsyncGenerator<Buffer> {
    if (!(await mayBegin())) throw new Error('Another program sends this list.');
    if (talk.isOver) return;
    isUnderWay = true;
    talk.waitFor(waits.answerMs);
    yield post.message;
  }
  try {
    await talk.spoken({ ...post, octets: Readable.from(octets(), { objectMode: false }) });
    return { state: 'sent' };
  } catch (error) {
    if (error instanceof OurStop && !isUnderWay) return { state: 'delayed', problem: OUR_STOP, isOurStop: true };
    const fault = faultOf(error);
    const words = faultText(fault, { server, from: post.from, to: post.to, isUnderWay });
    return { state: stateAfter(fault, isUnderWay), problem: withoutPassword(words, server) };
  }
}

const OUR_STOP = 'Loamtide was stopped before the mail server had it. It is sent when Loamtide runs again.';

class OurStop extends Error {}

/** A line to a server, not yet open, on which nothing is said before it is secret. */
export function connectionTo(server: MailServer, longestMs: number): SMTPConnection {
  return new SMTPConnection({
    host: server.host,
    port: server.port,
    secure: server.secretFromStart,
    requireTLS: needsSecretLine(server),
    connectionTimeout: longestMs,
    greetingTimeout: longestMs,
    socketTimeout: longestMs,
    tls: { minVersion: 'TLSv1.2', rejectUnauthorized: true },
  });
}

/** A talk with a server, from its greeting to its answer, that ends in time. */
class Talk {
  isOver = false;
  readonly #line: SMTPConnection;
  readonly #server: MailServer;
  readonly #signal: AbortSignal | undefined;
  readonly #waits: Waits;
  #impatience: NodeJS.Timeout | undefined;
  #fail = (_error: Error): void => undefined;

  constructor(server: MailServer, waits: Waits, signal: AbortSignal | undefined) {
    const longestMs = waits.beforeMs + waits.answerMs;
    this.#server = server;
    this.#signal = signal;
    this.#waits = waits;
    this.#line = connectionTo(server, longestMs);
  }

  /** Breaks the line off where it is not over by then; takes the place of the wait before. */
  waitFor(ms: number): void {
    clearTimeout(this.#impatience);
    this.#impatience = setTimeout(() => this.#fail(Object.assign(new Error('No answer.'), { code: TOO_SLOW })), ms);
  }

  async spoken(post: Post & { octets: Readable }): Promise<void> {
    const onAbort = (): void => this.#fail(new OurStop());
    if (this.#signal?.aborted) throw new OurStop();
    this.#signal?.addEventListener('abort', onAbort, { once: true });
    try {
      await this.#said(post);
    } finally {
      this.isOver = true;
      clearTimeout(this.#impatience);
      this.#signal?.removeEventListener('abort', onAbort);
    }
  }

  #said({ from, to, message, octets }: Post & { octets: Readable }): Promise<void> {
    const line = this.#line;
    const { login } = this.#server;
    return new Promise<void>((resolve, reject) => {
      const fail = (error: Error): void => {
        this.isOver = true;
        reject(error);
        line.close();
      };
      this.#fail = fail;
      this.waitFor(this.#waits.beforeMs);
      const send = (): void =>
        line.send({ from, to, size: message.length }, octets, (error) => {
          if (error) return fail(error);
          resolve();
          line.quit();
        });
      line.on('error', fail);
      line.once('end', () => fail(Object.assign(new Error('The line broke off.'), { code: LINE_BROKEN })));
      line.connect(() => {
        if (login === undefined) return send();
        line.login({ user: login.user, pass: login.password }, (error) => (error ? fail(error) : send()));
      });
    });
  }
}
