/**
 * What a command may touch of the world around it. The program hands in its own; a test hands in its stand-ins.
 */
import type { Instant } from '../measures/days.ts';

/** Something text can be written to. */
export interface Outlet {
  write(text: string): unknown;
  /** Whether a person reads it as it is written. */
  isTTY?: boolean | undefined;
}

export interface Surroundings {
  stdout: Outlet;
  stderr: Outlet;
  env: Readonly<Record<string, string | undefined>>;
  /** The folder that relative file names start from. */
  cwd: string;
  /** The present moment. */
  now(): Instant;
  /** Settles when the program is asked to stop. */
  untilStopped(): Promise<void>;
}
