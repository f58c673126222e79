/**
 * A message handed in at a mail server (RFC 5321), and what came of it.
 */
import { Readable } from 'node:stream';
import SMTPConnection from 'nodemailer/lib/smtp-connection';
import { faultOf, faultText, stateAfter, withoutPassword } from './fault-words.ts';
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
}

/** How a message is handed in. */
export interface Handing {
  /** Asked just before the first octet of the message goes out; nothing goes out where it says no. */
  mayBegin(): Promise<boolean>;
  /** Breaks the line off. */
  signal?: AbortSignal | undefined;
}

/** How long a line may take to be there. House default. */
const CONNECT_MS = 60_000;
/** RFC 5321, 4.5.3.2.1: five minutes for the greeting. */
const GREETING_MS = 5 * 60_000;
/** RFC 5321, 4.5.3.2.6: ten minutes for the answer to a whole message, the longest of all. */
export const ANSWER_MS = 10 * 60_000;

/**
 * Hands a message in. What goes wrong before the message is under way may be tried again; once its first octet has gone
 * out, only an answer of the server settles what became of it.
 */
export async function handIn(server: MailServer, post: Post, { mayBegin, signal }: Handing): Promise<Handed> {
  let isUnderWay = false;
  // Read only once the server has asked for the message, so that "under way" is as late as it can be.
  async function* octets(): AsyncGenerator<Buffer> {
    if (!(await mayBegin())) throw new Error('Another program sends this list.');
    isUnderWay = true;
    yield post.message;
  }
  const line = new SMTPConnection({
    host: server.host,
    port: server.port,
    secure: server.secretFromStart,
    requireTLS: needsSecretLine(server),
    connectionTimeout: CONNECT_MS,
    greetingTimeout: GREETING_MS,
    socketTimeout: ANSWER_MS,
    tls: { minVersion: 'TLSv1.2', rejectUnauthorized: true },
  });
  try {
    await spoken(line, server, { ...post, octets: Readable.from(octets(), { objectMode: false }) }, signal);
    return { state: 'sent' };
  } catch (error) {
    const fault = faultOf(error);
    const words = faultText(fault, { server, from: post.from, to: post.to, isUnderWay });
    return { state: stateAfter(fault, isUnderWay), problem: withoutPassword(words, server) };
  }
}

/** The talk with the server, from its greeting to its answer. */
function spoken(
  line: SMTPConnection,
  { login }: MailServer,
  { from, to, message, octets }: Post & { octets: Readable },
  signal: AbortSignal | undefined,
): Promise<void> {
  return new Promise<void>((resolve, reject) => {
    const fail = (error: Error): void => {
      reject(error);
      line.close();
    };
    const onAbort = (): void => fail(new Error('Loamtide was stopped.'));
    if (signal?.aborted) return onAbort();
    signal?.addEventListener('abort', onAbort, { once: true });
    const send = (): void =>
      line.send({ from, to, size: message.length }, octets, (error) => {
        if (error) return fail(error);
        resolve();
        line.quit();
      });
    line.once('error', fail);
    line.once('end', () => fail(new Error('The line broke off.')));
    line.connect(() => {
      if (login === undefined) return send();
      line.login({ user: login.user, pass: login.password }, (error) => (error ? fail(error) : send()));
    });
  });
}
