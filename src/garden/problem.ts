/**
 * What is wrong, where, and how to put it right: the one shape every complaint about input takes.
 */
export interface Problem {
  /** Path inside the file or field of the request: "beds[2].lengthM", "line 14", "--today". */
  where: string;
  /** What is wrong, with the value shown. */
  what: string;
  /** How to put it right, with an example of a right value. */
  mend: string;
}

/** Input that cannot be used, with every problem found in it at once. */
export class InputRefused extends Error {
  override readonly name = 'InputRefused';
  readonly problems: readonly Problem[];
  constructor(about: string, problems: readonly Problem[]) {
    super(`${about}\n${problems.map(problemLine).join('\n')}`);
    this.problems = problems;
  }
}

/** A problem on one line. */
export function problemLine(problem: Problem): string {
  return `  ${problem.where}: ${problem.what} ${problem.mend}`;
}
