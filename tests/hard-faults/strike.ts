/**
 * A program started, and killed as no program can help: SIGKILL, as when the power fails or memory runs out.
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { setTimeout as after } from 'node:timers/promises';
import { onTestFinished } from 'vitest';

export interface Victim {
  program: string;
  argv: readonly string[];
  env?: Readonly<Record<string, string>>;
  /** Whether its input is ended at once: the sign to begin. */
  go?: boolean;
}

export interface Struck {
  /** The lines it said before it died. */
  said: string[];
  /** Whether it was still alive when it was killed. */
  wasKilled: boolean;
  /** What it complained of. */
  complaints: string;
}

/** When a victim is killed: after so many turns more, and then some milliseconds, however slow the machine is. */
export interface Moment {
  turns: number;
  afterMs: number;
}

/** Some moment within the first turns: as likely in the middle of one as between two. */
export function someMoment(chance: () => number, spanMs: number): Moment {
  return { turns: Math.floor(chance() * 4), afterMs: chance() * spanMs };
}

/** A running victim. */
export interface Running {
  /** Settles with what it has said once that holds the word, or so many lines, or when it has ended. */
  saying(word: string | number): Promise<string>;
  kill(): void;
  ended: Promise<Struck>;
}

export function started({ program, argv, env = {}, go = false }: Victim): Running {
  const running = spawn(process.execPath, [program, ...argv], { env: { PATH: process.env.PATH ?? '', ...env } });
  // A test that runs out of time leaves nobody behind.
  onTestFinished(() => {
    running.kill('SIGKILL');
  });
  const heard = { out: '', err: '' };
  running.stdout.on('data', (chunk) => {
    heard.out += String(chunk);
  });
  running.stderr.on('data', (chunk) => {
    heard.err += String(chunk);
  });
  if (go) running.stdin.end();
  const ended = once(running, 'close').then(([, signal]) => ({
    said: heard.out.split('\n').slice(0, -1),
    wasKilled: signal === 'SIGKILL',
    complaints: heard.err,
  }));
  const hasSaid = (word: string | number): boolean =>
    typeof word === 'string' ? heard.out.includes(word) : heard.out.split('\n').length > word;
  const saying = async (word: string | number): Promise<string> => {
    while (!hasSaid(word)) {
      const isOver = await Promise.race([ended.then(() => true), once(running.stdout, 'data').then(() => false)]);
      if (isOver) break;
    }
    return heard.out;
  };
  return { saying, kill: () => void running.kill('SIGKILL'), ended };
}

/** Starts a victim, and kills it at a moment after it said it was ready. */
export async function struck(victim: Victim, { turns, afterMs }: Moment): Promise<Struck> {
  const running = started(victim);
  await running.saying(1 + turns);
  await after(afterMs);
  running.kill();
  return running.ended;
}
