/**
 * Complaints of the argument and value parsers, turned into what is wrong, where, and the mend.
 */
import type { Command, CommanderError } from 'commander';
import type { z } from 'zod';
import { suggestion } from '../../garden/nearest-name.ts';
import { InputRefused, type Problem } from '../../garden/problem.ts';

/** One refusal of one thing. */
export function refusal(about: string, where: string, what: string, mend: string): InputRefused {
  return new InputRefused(about, [{ where, what, mend }]);
}

/**
 * The problems of values that were given by name.
 *
 * @param given the values as they came
 * @param nameOf how a key is written by the one who gave it: "--from", "LOAMTIDE_PORT"
 */
export function valueProblems(
  error: z.ZodError,
  given: Readonly<Record<string, unknown>>,
  nameOf: (key: string) => string,
): Problem[] {
  return error.issues.map(({ path: [key], message }) => {
    const value = given[String(key)];
    const what = value === undefined ? 'is missing.' : `"${value}" cannot be used.`;
    return { where: nameOf(String(key)), what, mend: message };
  });
}

/** What is wrong with a command line that the argument parser could not read. */
export function commandLineProblem(error: CommanderError, command: Command): Problem {
  const where = commandName(command);
  const quoted = /'(.+?)'/.exec(error.message)?.[1] ?? '';
  const help = `Run "${where} --help" to see what it takes.`;
  switch (error.code) {
    case 'commander.unknownOption':
      return {
        where,
        what: `"${quoted}" is not an option of this command.`,
        mend: suggestion(quoted, optionNames(command)),
      };
    case 'commander.unknownCommand':
      return { where, what: `"${quoted}" is not a command.`, mend: suggestion(quoted, commandNames(command)) };
    case 'commander.optionMissingArgument':
      return { where, what: `"${quoted}" stands without its value.`, mend: help };
    case 'commander.missingArgument':
      return { where, what: `${quoted.toUpperCase()} is missing.`, mend: help };
    case 'commander.excessArguments':
      return { where, what: 'There is more on the line than it takes.', mend: help };
    default:
      return { where, what: error.message, mend: help };
  }
}

function commandName(command: Command): string {
  const parents = command.parent === null ? '' : `${commandName(command.parent)} `;
  return `${parents}${command.name()}`;
}

function optionNames(command: Command): string[] {
  return [...command.options.flatMap(({ long }) => long ?? []), '--help'];
}

function commandNames(command: Command): string[] {
  return command.commands.map((each) => each.name());
}
