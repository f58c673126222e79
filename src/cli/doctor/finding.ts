/**
 * What a look at one side of the program's surroundings found.
 */
import type { Problem } from '../../garden/problem.ts';

/** One thing that was looked at: well, worth knowing, or in need of a mend. */
export interface Finding {
  about: string;
  state: 'well' | 'note' | 'trouble';
  said: string;
  mend?: string;
}

/** All is well with something, and how it stands. */
export function well(about: string, said: string): Finding {
  return { about, state: 'well', said };
}

/** Something worth knowing that needs no mend, or that cannot be told from here. */
export function note(about: string, said: string): Finding {
  return { about, state: 'note', said };
}

/** Something to mend. */
export function trouble(about: string, said: string, mend: string): Finding {
  return { about, state: 'trouble', said, mend };
}

/** Problems told by another part of the program. */
export function troubles(about: string, problems: readonly Problem[]): Finding[] {
  return problems.map(({ where, what, mend }) => trouble(about, `${where}: ${what}`, mend));
}

/** The findings as lines of text, what is to be mended with its mend below. */
export function findingLines(findings: readonly Finding[]): string[] {
  const widest = Math.max(...findings.map(({ about }) => about.length));
  const lines = findings.flatMap(({ about, state, said, mend }) => [
    `${about.padEnd(widest)}  ${state.padEnd(7)}  ${said}`,
    ...(mend === undefined ? [] : [`${' '.repeat(widest)}  mend:    ${mend}`]),
  ]);
  const count = findings.filter(({ state }) => state === 'trouble').length;
  return [...lines, count === 0 ? 'Nothing is to be mended.' : `To be mended: ${count}.`];
}
