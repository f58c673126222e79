import { readFileSync } from 'node:fs';
import { Readable } from 'node:stream';
import type { Command } from 'commander';
import { expect, test } from 'vitest';
import { secretInlet } from '../../src/cli/command-line/secret-inlet.ts';
import { program } from '../../src/cli/program.ts';
import { NOW } from './loamtide.ts';

const page = readFileSync(new URL('../../docs/commands.md', import.meta.url), 'utf8');

const whole = program({
  stdout: { write: () => undefined },
  stderr: { write: () => undefined },
  secrets: secretInlet(Readable.from([]), { write: () => undefined }),
  env: {},
  cwd: '.',
  now: () => NOW,
  untilStopped: () => Promise.resolve(),
});

/** Every command that does something, with its name in full: "garden check". */
function commandsOf(command: Command, group = ''): [string, Command][] {
  return command.commands.flatMap((each) => {
    const name = `${group}${each.name()}`;
    return each.commands.length > 0 ? commandsOf(each, `${name} `) : [[name, each] as [string, Command]];
  });
}

test('the page has forty-five commands to tell of', () => {
  expect(commandsOf(whole)).toHaveLength(45);
});

test.each(commandsOf(whole))('docs/commands.md tells of %s and of every option it takes', (name, command) => {
  expect(page).toContain(`\`${name}`);
  for (const { long } of command.options) expect(page).toContain(`${long}`);
});

test('docs/commands.md names no option that no command takes', () => {
  const known = commandsOf(whole).flatMap(([, command]) => command.options.map(({ long }) => long));
  const named = page.match(/--[a-z][a-z-]*/g) ?? [];
  expect(named.filter((option) => option !== '--help' && !known.includes(option))).toEqual([]);
});
