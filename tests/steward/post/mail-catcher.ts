import { once } from 'node:events';
import { type ParsedMail, simpleParser } from 'mailparser';
import { SMTPServer, type SMTPServerOptions } from 'smtp-server';
import { onTestFinished } from 'vitest';

/** A message as a mail server got it, and the addresses it was handed in with. */
export interface Caught {
  mail: ParsedMail;
  source: string;
  from: string;
  to: string[];
}

/** A real mail server on this computer. */
export interface MailCatcher {
  port: number;
  /** Every message it said yes to, in the order they came. */
  caught: Caught[];
  /** Breaks off every line that is open, without a word. */
  hangUp(): void;
}

/** An answer of a mail server that is not a yes. */
export function answer(code: number, text: string): Error {
  return Object.assign(new Error(text), { responseCode: code });
}

/** Starts a mail server; it is gone when the test has ended. Without other wishes it takes everything from anybody. */
export async function mailCatcher(wishes: SMTPServerOptions = {}): Promise<MailCatcher> {
  const caught: Caught[] = [];
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    allowInsecureAuth: true,
    disableReverseLookup: true,
    closeTimeout: 100,
    onData(stream, { envelope }, callback) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const source = Buffer.concat(chunks);
        const from = envelope.mailFrom === false ? '' : envelope.mailFrom.address;
        void simpleParser(source).then((mail) => {
          const to = envelope.rcptTo.map(({ address }) => address);
          caught.push({ mail, source: source.toString(), from, to });
          callback();
        });
      });
    },
    ...wishes,
  });
  server.on('error', () => undefined);
  const listening = server.listen(0, '127.0.0.1');
  await once(listening, 'listening');
  onTestFinished(() => new Promise((resolve) => server.close(() => resolve())));
  const address = listening.address();
  const port = typeof address === 'object' && address !== null ? address.port : 0;
  const hangUp = (): void => {
    for (const connection of server.connections) connection.close();
  };
  return { port, caught, hangUp };
}
