/**
 * A solver of mixed-integer models in a thread of its own, so that pages are still served while it works.
 *
 * It is held by a count of nodes and a fixed seed, never by seconds: the same model gives the same answer on any machine.
 */
import { Worker } from 'node:worker_threads';
import { z } from 'zod';

/** What came of a model. */
export type Solved =
  /** `best` is proven; `best found` is what was there when the nodes were used up. */
  | { found: 'best' | 'best found'; values: Readonly<Record<string, number>> }
  | { found: 'impossible' }
  /** The nodes were used up with nothing found and nothing proven. */
  | { found: 'nothing' };

/** Solves one model after another. */
export interface Solver {
  /** @param text a model in the LP format */
  solve(text: string, care?: Care): Promise<Solved>;
  close(): Promise<void>;
}

/**
 * How long a search goes on: branches looked into before the best found is taken, and how near the best is near enough.
 * Rough is for one of many steps. House defaults; `npm run bench` prints what they take.
 */
const CARES = {
  whole: { mip_max_nodes: 100, mip_abs_gap: 0.1 },
  rough: { mip_max_nodes: 1, mip_abs_gap: 0.9 },
} as const;

/** With how much care a model is solved. */
export type Care = keyof typeof CARES;

const OPTIONS = { output_flag: false, random_seed: 1, mip_rel_gap: 0 } as const;

const answerSchema = z.object({
  id: z.number(),
  status: z.number().optional(),
  isFeasible: z.boolean().optional(),
  values: z.record(z.string(), z.number()).optional(),
  fault: z.string().optional(),
});

type Answer = z.infer<typeof answerSchema>;

/** Starts a solver. It keeps no process alive; close it all the same when it is no longer wanted. */
export function startSolver(): Solver {
  const worker = new Worker(new URL('./solve-worker.mjs', import.meta.url));
  const waiting = new Map<number, { resolve: (solved: Solved) => void; reject: (error: Error) => void }>();
  const failAll = (error: Error) => {
    for (const { reject } of waiting.values()) reject(error);
    waiting.clear();
  };
  worker.on('message', (message: unknown) => {
    const answer = answerSchema.parse(message);
    const asked = waiting.get(answer.id);
    waiting.delete(answer.id);
    if (waiting.size === 0) worker.unref();
    if (answer.fault === undefined) asked?.resolve(solvedOf(answer));
    else asked?.reject(new Error(`The solver could not read the model: ${answer.fault}`));
  });
  worker.on('error', failAll);
  worker.on('exit', () => failAll(new Error('The solver stopped before it had answered.')));
  worker.unref();
  let asked = 0;
  return {
    solve: (text, care = 'whole') =>
      new Promise((resolve, reject) => {
        asked += 1;
        waiting.set(asked, { resolve, reject });
        worker.ref();
        worker.postMessage({ id: asked, text, options: { ...OPTIONS, ...CARES[care] } });
      }),
    close: async () => {
      await worker.terminate();
    },
  };
}

/** How the solver ends, by its own numbers. */
const STATUS = { best: 7, impossible: 8 } as const;

function solvedOf({ status, isFeasible, values = {} }: Answer): Solved {
  if (status === STATUS.impossible) return { found: 'impossible' };
  if (isFeasible !== true) return { found: 'nothing' };
  return { found: status === STATUS.best ? 'best' : 'best found', values };
}
