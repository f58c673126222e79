/**
 * Asks a server of this computer for one address over and over, from a process of its own: what it costs to ask must not
 * be counted with what it costs to answer. It speaks just enough HTTP to count whole answers of a stated length, since a
 * full client costs more than the servers measured.
 */
import { connect } from 'node:net';
import { performance } from 'node:perf_hooks';

/** What to ask for, how often and how many at once. */
export interface Load {
  port: number;
  path: string;
  headers: Readonly<Record<string, string>>;
  readers: number;
  /** Requests of each reader, one after the other. */
  each: number;
}

/** What came back. */
export interface LoadResult {
  seconds: number;
  /** From asking to the last octet of each answer, shortest first. */
  latenciesMs: number[];
  /** The status of the answers, or of those that differ. */
  statuses: number[];
  octets: number;
}

process.on('message', async (load: Load) => process.send?.(await loaded(load)));

async function loaded(load: Load): Promise<LoadResult> {
  const result: LoadResult = { seconds: 0, latenciesMs: [], statuses: [], octets: 0 };
  const from = performance.now();
  await Promise.all(Array.from({ length: load.readers }, () => reader(load, result)));
  result.seconds = (performance.now() - from) / 1000;
  result.latenciesMs.sort((a, b) => a - b);
  return result;
}

function reader({ port, path, headers, each }: Load, result: LoadResult): Promise<void> {
  const lines = [`GET ${path} HTTP/1.1`, ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`)];
  const request = `${lines.join('\r\n')}\r\n\r\n`;
  return new Promise((resolve, reject) => {
    let [left, askedAt, awaited] = [each, 0, 0];
    const socket = connect(port, '127.0.0.1', ask);
    socket.setNoDelay(true);
    socket.on('error', reject);
    socket.on('data', (part) => {
      result.octets += part.length;
      awaited = (awaited === 0 ? answerOctets(part, result) : awaited) - part.length;
      if (awaited > 0) return;
      result.latenciesMs.push(performance.now() - askedAt);
      left -= 1;
      if (left > 0) return ask();
      socket.end();
      resolve();
    });
    function ask(): void {
      askedAt = performance.now();
      socket.write(request);
    }
  });
}

/** Octets of a whole answer, by its first part, which must hold all of its head. */
function answerOctets(part: Buffer, { statuses }: LoadResult): number {
  const blank = part.indexOf('\r\n\r\n');
  if (blank < 0) throw new Error('An answer came without its whole head in its first part.');
  const headEnds = blank + 4;
  const head = part.toString('latin1', 0, headEnds);
  const status = Number(head.slice(9, 12));
  if (!statuses.includes(status)) statuses.push(status);
  return headEnds + Number(/^content-length: (\d+)/im.exec(head)?.[1] ?? 0);
}
