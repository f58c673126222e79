/**
 * A weather file that was sent, read piece by piece.
 */
import type { Problem } from '../../garden/problem.ts';
import { weatherFilePieces } from '../../garden/weather-file.ts';
import type { WeatherFile, WeatherUse } from '../../garden/weather-rows.ts';
import type { Say } from '../../steward/long-work/say.ts';

/** Problems told one by one; of a file in the wrong units every line is one. House default. */
const MOST_TOLD = 50;

/** Reads a file, and says how far it is. Its share of the whole work is what `upTo` says. */
export async function readPieces(text: string, use: WeatherUse, say: Say, upTo: number): Promise<WeatherFile> {
  const pieces = weatherFilePieces(text, use);
  for (;;) {
    const piece = pieces.next();
    if (piece.done === true) return piece.value;
    const { lines, of } = piece.value;
    await say(`Reading the file: ${lines} of ${of} lines`, (upTo * lines) / Math.max(of, 1));
  }
}

/** Problems as they are told; of very many the first ones. */
export function told(problems: readonly Problem[], moreProblems = 0): Problem[] {
  const more = problems.length + moreProblems - MOST_TOLD;
  if (more <= 0) return [...problems];
  const rest = { where: 'The file', what: `There are ${more} more problems.`, mend: 'Mend these first.' };
  return [...problems.slice(0, MOST_TOLD), rest];
}
