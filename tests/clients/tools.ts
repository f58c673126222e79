import { spawnSync } from 'node:child_process';

/** Debian's own Python: another one that comes first in the path has none of Debian's libraries. */
export const PYTHON = '/usr/bin/python3';

/** Every tool by its Debian package, with a line that works where it is there. */
const TOOLS: readonly (readonly [string, string, readonly string[]])[] = [
  ['vdirsyncer', 'vdirsyncer', ['--version']],
  ['khal', 'khal', ['--version']],
  ['python3-icalendar', PYTHON, ['-c', 'import icalendar']],
  [
    'gir1.2-ical-3.0',
    PYTHON,
    ['-c', 'import gi; gi.require_version("ICalGLib", "3.0"); from gi.repository import ICalGLib'],
  ],
];

/** The Debian packages that are not there. */
export function missingTools(): string[] {
  return TOOLS.filter(([, program, line]) => spawnSync(program, line).status !== 0).map(([name]) => name);
}

/** What to say where some are missing. */
export function missingWords(missing: readonly string[]): string {
  return `Calendar programs are missing: ${missing.join(', ')}. On Debian install them with tests/clients/install-debian.sh.`;
}
