import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';
import { onTestFinished } from 'vitest';
import { z } from 'zod';
import { PYTHON } from './tools.ts';

const run = promisify(execFile);

/** An entry as a reader of the feed sees it: its day, or its moment where it has an hour. */
const seenSchema = z.strictObject({ uid: z.string(), start: z.string(), title: z.string(), sequence: z.number() });

export type Seen = z.output<typeof seenSchema>;

/** What a Python program of this folder reads at an address. */
export async function readWith(program: string, address: string): Promise<Seen[]> {
  const path = fileURLToPath(new URL(program, import.meta.url));
  const { stdout } = await run(PYTHON, [path, address]);
  return lines(stdout).map((line) => seenSchema.parse(JSON.parse(line)));
}

/** A household's vdirsyncer and khal, subscribed to one address and keeping what they read between two looks. */
export function vdirsyncerAndKhal(address: string, timeZone: string) {
  const home = mkdtempSync(join(tmpdir(), 'loamtide-clients-'));
  onTestFinished(() => rmSync(home, { recursive: true, force: true }));
  const kept = join(home, 'garden');
  mkdirSync(kept);
  writeFileSync(join(home, 'vdirsyncer'), vdirsyncerConfig(home, kept, address));
  writeFileSync(join(home, 'khal'), khalConfig(home, kept, timeZone));
  const env = { ...process.env, HOME: home, LC_ALL: 'C.UTF-8', TZ: timeZone };
  const vdirsyncer = (...line: string[]) => run('vdirsyncer', ['-c', join(home, 'vdirsyncer'), ...line], { env });
  let known = false;
  return {
    async sync(): Promise<void> {
      if (!known) await vdirsyncer('discover', 'pair');
      known = true;
      await vdirsyncer('sync', 'pair');
    },
    /** Day and title of everything khal lists on so many days from one on. */
    async list(from: string, days: number): Promise<string[]> {
      const asked = ['list', '--day-format', '', '--format', '{start-date} {title}', from, `${days}d`];
      const { stdout } = await run('khal', ['-c', join(home, 'khal'), ...asked], { env });
      return lines(stdout);
    },
  };
}

function lines(text: string): string[] {
  return text.split('\n').filter((line) => line.trim() !== '');
}

function vdirsyncerConfig(home: string, kept: string, address: string): string {
  return `[general]
status_path = "${join(home, 'status')}"
[pair pair]
a = "feed"
b = "kept"
collections = null
[storage feed]
type = "http"
url = "${address}"
[storage kept]
type = "filesystem"
path = "${kept}"
fileext = ".ics"
`;
}

function khalConfig(home: string, kept: string, timeZone: string): string {
  return `[calendars]
[[garden]]
path = ${kept}
readonly = True
[locale]
local_timezone = ${timeZone}
default_timezone = ${timeZone}
timeformat = %H:%M
dateformat = %Y-%m-%d
longdateformat = %Y-%m-%d
datetimeformat = %Y-%m-%d %H:%M
longdatetimeformat = %Y-%m-%d %H:%M
[sqlite]
path = ${join(home, 'khal.db')}
`;
}
