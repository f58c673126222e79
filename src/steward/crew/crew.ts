/**
 * Who does a steward's long work: this thread, or threads beside it. What comes of it is the same.
 */
import { type Asked, type Ground, noClimates, type WorkedOut, workOut } from './work.ts';

/** How a work stands to the others. It may grow urgent while it waits. */
export interface Urgency {
  /** Somebody is waiting for it: it goes before what nobody looks at yet. */
  isWaitedFor: boolean;
}

/** What comes with a work. */
export interface Handed {
  ground: () => Promise<Ground>;
  urgency: Urgency;
}

/** Does what it is asked, one work after the other or several at once. */
export interface Crew {
  /** How many works it does at once. */
  readonly size: number;
  /**
   * @throws {InputRefused} as the work itself does
   */
  workOut(asked: Asked, handed: Handed): Promise<WorkedOut>;
  /** Gives up what is not done yet. */
  close(): Promise<void>;
}

/** The work done where it is asked for: nothing else is done meanwhile. */
export function inThisThread(): Crew {
  const climates = noClimates();
  return {
    size: 1,
    workOut: (asked, { ground }) => workOut(asked, { climates, ground }),
    close: async () => undefined,
  };
}
