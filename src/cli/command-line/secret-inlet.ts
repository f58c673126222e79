/**
 * Secrets from the keyboard, without an echo, or from what is led into the program.
 */
import { createInterface } from 'node:readline';
import { Writable } from 'node:stream';
import type { Outlet, SecretInlet } from './surroundings.ts';

/** Most octets that are read of what is led in. House default: far longer than any password. */
const MOST_OCTETS = 64 * 1024;

/** What a terminal or a pipe is to read from. */
export type Keyboard = NodeJS.ReadableStream & { isTTY?: boolean };

/** Secrets from a stream; questions go to `shown`. */
export function secretInlet(from: Keyboard, shown: Outlet): SecretInlet {
  return {
    isTerminal: from.isTTY === true,
    asked: (questions) => askedWithoutEcho(from, shown, questions),
    ledIn: () => allOf(from),
  };
}

/** Node's own line editor with its echo led to nowhere; one for all questions, so that nothing typed between two is lost. */
function askedWithoutEcho(from: Keyboard, shown: Outlet, questions: readonly string[]): Promise<string[] | undefined> {
  const nowhere = new Writable({ write: (_chunk, _encoding, done) => done() });
  const editor = createInterface({ input: from, output: nowhere, terminal: true, historySize: 0 });
  const typed: string[] = [];
  return new Promise((resolve) => {
    editor.on('line', (line) => {
      typed.push(line);
      shown.write('\n');
      const next = questions[typed.length];
      if (next === undefined) editor.close();
      else shown.write(next);
    });
    editor.once('SIGINT', () => editor.close());
    editor.once('close', () => {
      const isWhole = typed.length >= questions.length;
      if (!isWhole) shown.write('\n');
      resolve(isWhole ? typed.slice(0, questions.length) : undefined);
    });
    shown.write(questions[0] ?? '');
  });
}

async function allOf(from: Keyboard): Promise<string> {
  const chunks: Buffer[] = [];
  let octets = 0;
  for await (const chunk of from) {
    const piece = Buffer.from(chunk);
    chunks.push(piece);
    octets += piece.length;
    if (octets > MOST_OCTETS) break;
  }
  return Buffer.concat(chunks).toString('utf8');
}
