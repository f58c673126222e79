/**
 * Work that may take over a second, and how far it has come.
 */
import type { Problem } from '../../garden/problem.ts';
import type { Say } from '../../steward/long-work/say.ts';
import type { PageGarden } from '../frame/layout.tsx';
import type { Trouble } from '../requests/trouble.ts';

/** Work with the words and the ways around it. */
export interface LongWork {
  garden?: PageGarden;
  /** What is being done, as a heading: "Proposing a plan". */
  title: string;
  /** Does it, and says which path it leads to. What it throws is shown; nothing it has not kept by then is kept. */
  work: (say: Say) => Promise<string>;
  /** The path that leads back where it failed. */
  failed: string;
  /** The answer where it ended at once; without this the reader is led to the path. */
  atOnce?: () => Response | Promise<Response>;
  /** The answer where it was refused, such as the form with what was wrong in it. */
  refused?: (problems: readonly Problem[]) => Response | Promise<Response>;
}

/** How far a work has come, as its page shows it. */
export interface Doing {
  asked: Pick<LongWork, 'garden' | 'title' | 'failed'>;
  words: string;
  share?: number;
  /** Where it led, the page it came to, or what it was stopped by, with the page that says so where the form comes back. */
  end?: { path: string } | { answer: Response } | { trouble: Trouble; html?: string };
}
