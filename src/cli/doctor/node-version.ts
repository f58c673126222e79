/**
 * The Node.js the program runs on.
 */
import type { Day } from '../../measures/days.ts';
import { type Finding, note, trouble, well } from './finding.ts';

/** Least version the program runs on: that of "engines" in package.json. */
export const LEAST_MAJOR = 20;

/**
 * Last days on which the lines for long use are mended. Source: https://github.com/nodejs/Release, README, "Release schedule"
 * (end-of-life), read from memory.
 */
const MENDED_UNTIL: ReadonlyMap<number, Day> = new Map([
  [20, '2026-04-30'],
  [22, '2027-04-30'],
  [24, '2028-04-30'],
]);

/** What is found about a version such as "22.11.0". */
export function nodeFindings(version: string, today: Day): Finding[] {
  const about = 'Node.js';
  const major = Number(version.split('.')[0]);
  if (!(major >= LEAST_MAJOR)) {
    return [
      trouble(
        about,
        `${version} is older than ${LEAST_MAJOR}, the least this program runs on.`,
        'Install a newer Node.js.',
      ),
    ];
  }
  const until = MENDED_UNTIL.get(major);
  if (until !== undefined && today > until) {
    return [
      note(about, `${version} works, but has got no security fixes since ${until}: move to a newer line for long use.`),
    ];
  }
  if (until === undefined)
    return [note(about, `${version}: not a line for long use known to this program; 22 and 24 are.`)];
  return [well(about, `${version}, mended until ${until}.`)];
}
