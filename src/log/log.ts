/**
 * What the program says of itself while it runs, for whoever looks after it.
 */
import type { Instant } from '../measures/days.ts';
import {
  jsonLine,
  LOG_LEVELS,
  type LogFields,
  type LogLevel,
  type LogShape,
  plainLine,
  VALUE_CHARACTERS,
} from './line.ts';
import { redacted } from './redact.ts';

/** Takes what happened, each at how much it matters. No secret has to be kept from it: it blots them out. */
export type Log = Readonly<Record<LogLevel, (event: string, fields?: LogFields) => void>>;

/** How a log is kept. */
export interface LogSettings {
  shape: LogShape;
  /** The least that is written; what matters less is passed over. */
  level: LogLevel;
  /** The present moment. */
  now(): Instant;
  /** Takes one entry with the end of its line. */
  write(line: string): unknown;
  /** Secrets of this run that cannot be told by their shape, such as the mail server's password. */
  secrets?: readonly string[];
}

/** Longest text looked through, in characters: twice what a line keeps of it, so that no secret is cut in two. */
const TEXT_CHARACTERS = 2 * VALUE_CHARACTERS;

/** Names of fields whose values are never written, whatever they look like. */
const SECRET_FIELDS = /password|passphrase|secret|token|cookie|authorization|csrf|session|apikey|signingkey|keyhash/i;

/** A log that writes where it is told to. */
export function createLog({ shape, level: least, now, write, secrets = [] }: LogSettings): Log {
  const line = shape === 'json' ? jsonLine : plainLine;
  const redact = (text: string) => redacted(text.slice(0, TEXT_CHARACTERS), secrets);
  const clean = (fields: LogFields): LogFields =>
    Object.fromEntries(
      Object.entries(fields).map(([name, value]) => {
        if (value !== undefined && SECRET_FIELDS.test(name)) return [name, '[secret]'];
        return [name, typeof value === 'string' ? redact(value) : value];
      }),
    );
  const at = (level: LogLevel) =>
    LOG_LEVELS.indexOf(level) < LOG_LEVELS.indexOf(least)
      ? () => undefined
      : (event: string, fields: LogFields = {}) =>
          void write(`${line({ at: now(), level, event: redact(event), fields: clean(fields) })}\n`);
  return { debug: at('debug'), info: at('info'), warn: at('warn'), error: at('error') };
}

/** All a fault has to say of itself, with what it came of: an error's stack is what leads to the mend. */
export function stackOf(fault: unknown): string {
  if (!(fault instanceof Error)) return String(fault);
  const own = fault.stack ?? fault.message;
  return fault.cause === undefined ? own : `${own}\nIt came of: ${stackOf(fault.cause)}`;
}
