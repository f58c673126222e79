/**
 * The recipes of docs/kept-running.md, held to what the program is.
 */
import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { describe, expect, onTestFinished, test } from 'vitest';
import { secretInlet } from '../../src/cli/command-line/secret-inlet.ts';
import { readSettings } from '../../src/cli/command-line/settings.ts';
import { program } from '../../src/cli/program.ts';
import { NOW } from '../cli/loamtide.ts';

const text = (path: string) => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const page = text('docs/kept-running.md');
const manifest = JSON.parse(text('package.json'));

/** The block of code that begins with some words. */
function block(begins: string): string {
  const found = page.split('```').find((part) => part.startsWith(begins));
  if (found === undefined) throw new Error(`docs/kept-running.md has no block that begins with ${begins}`);
  return found.slice(found.indexOf('\n') + 1);
}

const unit = block('ini');
const container = block('dockerfile');

test('every setting the recipes name is known, and its value is taken', () => {
  const env = Object.fromEntries(
    [...(unit + container).matchAll(/\b(LOAMTIDE_[A-Z_]+)=(\S+)/g)].map(([, name, value]) => [name, value]),
  );
  expect(Object.keys(env).sort()).toEqual(['LOAMTIDE_DATA', 'LOAMTIDE_LOG']);
  expect(readSettings(env)).not.toBeInstanceOf(Array);
});

test('what they start is the program, by a command it has', () => {
  const outlet = { write: () => undefined };
  const names = program({
    stdout: outlet,
    stderr: outlet,
    secrets: secretInlet(Readable.from([]), outlet),
    env: {},
    cwd: '.',
    now: () => NOW,
    untilStopped: () => Promise.resolve(),
  }).commands.map((each) => each.name());
  const main: string = manifest.bin.loamtide;
  const run = [...page.matchAll(/(\S*main\.js)"?,? "?([a-z-]+)/g)];
  expect(run.length).toBeGreaterThanOrEqual(5);
  for (const [, path, name] of run) {
    expect(path?.endsWith(main)).toBe(true);
    expect(name === '--help' || names.includes(name ?? '')).toBe(true);
  }
});

test('every script of npm they run is there', () => {
  const scripts = [...page.matchAll(/npm run ([a-z:-]+)/g)].map(([, name]) => name);
  expect(scripts.length).toBeGreaterThan(1);
  for (const name of scripts) expect(manifest.scripts).toHaveProperty([name ?? '']);
});

test('what the container carries over is what the build makes and the program needs', () => {
  const carried = [...container.matchAll(/--from=build \/src\/(\S+)/g)].map(([, path]) => path);
  expect(carried).toEqual(['package.json', 'node_modules', 'dist']);
  expect(manifest.bin.loamtide).toMatch(/^dist\//);
});

describe('the unit of systemd', () => {
  test('is hardened: the program writes nowhere but in its own folder', () => {
    for (const line of [
      'NoNewPrivileges=yes',
      'ProtectSystem=strict',
      'ProtectHome=yes',
      'StateDirectoryMode=0700',
      'CapabilityBoundingSet=',
    ]) {
      expect(unit.split('\n')).toContain(line);
    }
    expect(unit).toContain('Environment=LOAMTIDE_DATA=/var/lib/loamtide\n');
    expect(unit).toContain('StateDirectory=loamtide\n');
  });

  test.skipIf(!existsSync('/usr/bin/systemd-analyze'))('is understood by systemd, where the machine has it', () => {
    const folder = mkdtempSync(join(tmpdir(), 'loamtide-unit-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const file = join(folder, 'loamtide.service');
    // What the recipe installs first is not there where it is tried; every other line is read as it stands.
    writeFileSync(file, unit.replace(/^(ExecStart=)\S+ \S+/m, `$1${process.execPath} ${process.execPath}`));
    expect(() => execFileSync('systemd-analyze', ['verify', file], { stdio: 'pipe' })).not.toThrow();
  });
});
