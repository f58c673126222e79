/**
 * A report taken in, with the way to the page that says so.
 */
import type { Problem } from '../../garden/problem.ts';
import type { Report, Steward } from '../../steward/doings/steward.ts';
import { BY } from '../requests/garden-view.ts';
import { refusalsOf } from '../requests/refusals.ts';
import { keptChange } from './kept-change.ts';

/**
 * Takes a report in: the path of a page with its line above it, or what speaks against it; neither where the form could not
 * be read.
 */
export async function keptReport(
  steward: Steward,
  gardenId: string,
  report: Report | undefined,
  path: string,
): Promise<{ leadsTo?: string; problems: readonly Problem[] }> {
  if (report === undefined) return { problems: [] };
  let leadsTo = path;
  const problems = await refusalsOf(async () => {
    leadsTo = await keptChange(steward, gardenId, path, () => steward.report(gardenId, report, BY));
  });
  return problems.length > 0 ? { problems } : { leadsTo, problems };
}
