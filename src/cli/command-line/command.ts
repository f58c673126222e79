/**
 * A command as data: its words, its options with their kinds of value, and what it does.
 */
import { Command, type CommanderError, Option } from 'commander';
import { z } from 'zod';
import { InputRefused } from '../../garden/problem.ts';
import { commandLineProblem, valueProblems } from './refusal.ts';
import { readSettings, type Settings } from './settings.ts';
import type { Surroundings } from './surroundings.ts';

/** An option: how it is written, what it is for, and what its value must be. */
export interface CommandOption<Value extends z.ZodType> {
  flags: string;
  about: string;
  value: Value;
}

type Options = Readonly<Record<string, CommandOption<z.ZodType>>>;

/** The values of a command's options, each absent where it was not given. */
type Values<Wanted extends Options> = { [Name in keyof Wanted]: z.output<Wanted[Name]['value']> };

/** What a command is run with. */
export interface Call<Wanted extends Options> {
  at: Surroundings;
  settings: Settings;
  options: Values<Wanted>;
  /** The command's argument, where it takes one. */
  argument: string | undefined;
  /** All words of an argument that takes several; none where it takes one. */
  words: readonly string[];
}

export interface CommandPlan<Wanted extends Options> {
  name: string;
  about: string;
  /** The one argument, "<file>", "[label]" where it may be left out, or "<materials...>" where it takes several. */
  argument?: { flags: string; about: string };
  options: Wanted;
  run(call: Call<Wanted>): Promise<void>;
}

/** How a command is put into the program: it is built anew for each run. */
export type CommandMaker = (at: Surroundings) => Command;

/** An option that is given or not, without a value. */
export function switchOption(flags: string, about: string) {
  return { flags, about, value: z.literal(true).optional() };
}

/** Makes a command out of its plan. */
export function command<Wanted extends Options>(plan: CommandPlan<Wanted>): CommandMaker {
  return (at) => {
    const made = bare(at, plan.name, plan.about);
    if (plan.argument) made.argument(plan.argument.flags, plan.argument.about);
    for (const { flags, about } of Object.values(plan.options)) made.addOption(new Option(flags, about));
    return made.action(async (...given: unknown[]) => {
      const argument = plan.argument ? given[0] : undefined;
      const { settings, options } = read(at, plan.options, made.opts());
      const words = Array.isArray(argument) ? argument.filter((word) => typeof word === 'string') : [];
      await plan.run({ at, settings, options, argument: typeof argument === 'string' ? argument : undefined, words });
    });
  };
}

/** Makes a command that only holds others. */
export function commandGroup(name: string, about: string, makers: readonly CommandMaker[]): CommandMaker {
  return (at) => {
    const group = bare(at, name, about);
    for (const maker of makers) group.addCommand(maker(at));
    return group;
  };
}

/** A command without options that complains in our way and writes where it is told to. */
function bare(at: Surroundings, name: string, about: string): Command {
  const made = new Command(name).description(about).helpCommand(false);
  made.configureOutput({
    writeOut: (text) => at.stdout.write(text),
    writeErr: (text) => at.stderr.write(text),
    outputError: () => undefined,
  });
  return made.exitOverride((error: CommanderError) => {
    if (error.exitCode === 0 || error.code === 'commander.help') throw error;
    throw new InputRefused('The command was not understood.', [commandLineProblem(error, made)]);
  });
}

/** Settings and option values, or everything that is wrong with either. */
function read<Wanted extends Options>(at: Surroundings, wanted: Wanted, given: Readonly<Record<string, unknown>>) {
  const settings = readSettings(at.env);
  const shape = Object.fromEntries(Object.entries(wanted).map(([name, { value }]) => [name, value]));
  const parsed = z.object(shape).safeParse(given);
  const problems = [
    ...(Array.isArray(settings) ? settings : []),
    ...(parsed.success ? [] : valueProblems(parsed.error, given, (name) => longFlag(wanted, name))),
  ];
  if (Array.isArray(settings) || !parsed.success) throw new InputRefused('Nothing was done.', problems);
  return { settings, options: parsed.data as Values<Wanted> };
}

function longFlag(wanted: Options, name: string): string {
  return wanted[name]?.flags.split(' ')[0] ?? name;
}
