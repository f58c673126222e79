/**
 * Asks for many feeds, one every so often, from a process of its own, until it is told to end: what a reader waits, however
 * busy the server is.
 */
import { get } from 'node:http';
import { performance } from 'node:perf_hooks';

/** What to ask for. */
export interface Walk {
  port: number;
  host: string;
  paths: readonly string[];
  everyMs: number;
}

/** What each answer took, shortest first, and the statuses that differ. */
export interface Walked {
  latenciesMs: number[];
  statuses: number[];
}

let timer: NodeJS.Timeout | undefined;
let going: Promise<void>[] = [];
const walked: Walked = { latenciesMs: [], statuses: [] };

process.on('message', async (message: Walk | 'end') => {
  if (message !== 'end') return begin(message);
  clearInterval(timer);
  await Promise.all(going);
  walked.latenciesMs.sort((a, b) => a - b);
  process.send?.(walked);
  going = [];
  walked.latenciesMs = [];
  walked.statuses = [];
});

function begin({ port, host, paths, everyMs }: Walk): void {
  let at = 0;
  timer = setInterval(() => {
    // Steps that share no factor with the count come by every feed.
    at = (at + 7) % paths.length;
    going.push(asked(port, host, paths[at] ?? ''));
  }, everyMs);
}

function asked(port: number, host: string, path: string): Promise<void> {
  const from = performance.now();
  return new Promise((resolve, reject) => {
    const request = get(
      { host: '127.0.0.1', port, path, headers: { Host: host, Accept: 'text/calendar' } },
      (answer) => {
        answer.resume();
        answer.on('end', () => {
          walked.latenciesMs.push(performance.now() - from);
          const { statusCode = 0 } = answer;
          if (!walked.statuses.includes(statusCode)) walked.statuses.push(statusCode);
          resolve();
        });
      },
    );
    request.on('error', reject);
  });
}
