/**
 * What a command may touch of the world around it. The program hands in its own; a test hands in its stand-ins.
 */
import type { Instant } from '../../measures/days.ts';

/** Something text can be written to. */
export interface Outlet {
  write(text: string): unknown;
  /** Whether a person reads it as it is written. */
  isTTY?: boolean | undefined;
}

/** Where a secret comes in: from a keyboard, or from whatever is led into the program. */
export interface SecretInlet {
  isTerminal: boolean;
  /** Asks one thing after the other at the keyboard, and shows nothing of what is typed; nothing where it was broken off. */
  asked(questions: readonly string[]): Promise<string[] | undefined>;
  /** Everything that is led in. */
  ledIn(): Promise<string>;
}

export interface Surroundings {
  secrets: SecretInlet;
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
