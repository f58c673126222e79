/**
 * One run of the program: a command line in, an exit code out.
 */
import { CommanderError } from 'commander';
import { InputRefused } from '../garden/problem.ts';
import { StoreFault } from '../store/fault.ts';
import { Exit } from './command-line/exit.ts';
import type { Surroundings } from './command-line/surroundings.ts';
import { program } from './program.ts';

/** All went well; something failed, inside or where the data is kept; what was given cannot be used. */
const OK = 0;
const FAILED = 1;
const REFUSED = 2;

/**
 * Runs a command.
 *
 * @param argv the words after the program's name
 * @returns the exit code: 0 done, 2 bad input, 1 a failure inside or of the place the data is kept in, or something found to
 *   mend where that was asked
 */
export async function run(argv: readonly string[], at: Surroundings): Promise<number> {
  try {
    await program(at).parseAsync([...argv], { from: 'user' });
    return OK;
  } catch (error) {
    if (error instanceof Exit) return error.code;
    if (error instanceof CommanderError) return error.exitCode === 0 ? OK : REFUSED;
    if (error instanceof InputRefused || error instanceof StoreFault) {
      at.stderr.write(`${error.message}\n`);
      return error instanceof InputRefused ? REFUSED : FAILED;
    }
    const told = error instanceof Error ? (error.stack ?? error.message) : String(error);
    at.stderr.write(`Something inside Loamtide failed. Please report it with these lines:\n${told}\n`);
    return FAILED;
  }
}
