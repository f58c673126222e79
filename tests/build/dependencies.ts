/**
 * The packages the program runs on, as docs/dependencies.md tells of them: from package.json, the lock file and, for what
 * neither says, a table here.
 */

/** What is read of package.json. */
export interface Manifest {
  dependencies: Readonly<Record<string, string>>;
}

/** A package in the lock file. */
interface Locked {
  version: string;
  license?: string;
  integrity?: string;
  resolved?: string;
  dev?: boolean;
  dependencies?: Readonly<Record<string, string>>;
}

/** What is read of package-lock.json. */
export interface LockFile {
  packages: Readonly<Record<string, Locked>>;
}

/** Why each package is here. One without a line here is not to be added. */
export const WHY: Readonly<Record<string, string>> = {
  '@hono/node-server': "answers requests over Node's own HTTP server",
  '@photostructure/tz-lookup': 'the time zone of a place, for setting up a garden without the network',
  'better-sqlite3': 'the database, SQLite, inside the program',
  commander: 'reads command lines',
  croner: 'the rounds that begin on the minute, and the hours lists are due at, across changes of the clock',
  'csv-parse': 'reads weather records, line by line',
  highs: 'solves the rotation plan, a mixed-integer problem',
  hono: 'routes, headers, and pages written as JSX',
  'ical-generator': 'writes calendar feeds (RFC 5545)',
  'ical.js': 'writes task feeds, which ical-generator does not',
  kysely: 'SQL with its types checked',
  luxon: 'moments in the zone of a garden',
  marked: 'shows docs/ as the handbook on the pages',
  nodemailer: 'hands weekly lists in at a mail server (RFC 5321), with its line made secret',
  suncalc: 'sunrise and sunset',
  yaml: 'reads and writes garden files, comments kept',
  zod: 'reads what comes from outside: files, forms, settings, rows',
};

/** Licences that let anybody run, change and pass on the program, and what is asked of those who do. */
export const ALLOWED_LICENCES: readonly string[] = [
  'MIT',
  'MIT-0',
  'ISC',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'CC0-1.0',
  'MPL-2.0',
];

/** Licences of packages whose own manifest names none, from the file of the licence in the package. */
const LICENCE_FILES: Readonly<Record<string, string>> = { suncalc: 'BSD-2-Clause' };

/** A package the program runs on. */
export interface RunsOn {
  name: string;
  version: string;
  licence: string;
  /** Absent for what another package brings along. */
  why: string | undefined;
  /** Every package it brings along, directly or not, by name. */
  brings: string[];
}

/** Every package the program itself names, by name, and then all they bring along. */
export function packagesRunOn({ dependencies }: Manifest, { packages }: LockFile): RunsOn[] {
  const told = (name: string): RunsOn => {
    const locked = packages[`node_modules/${name}`];
    if (locked === undefined) throw new Error(`${name} is not in package-lock.json: run npm install.`);
    const licence = locked.license ?? LICENCE_FILES[name] ?? 'none named';
    return { name, version: locked.version, licence, why: WHY[name], brings: broughtBy(name, packages) };
  };
  const named = Object.keys(dependencies).sort().map(told);
  const brought = new Set(named.flatMap(({ brings }) => brings));
  for (const { name } of named) brought.delete(name);
  return [...named, ...[...brought].sort().map(told)];
}

/** Names of all that a package brings along. Two versions of one package side by side are told as one. */
function broughtBy(name: string, packages: LockFile['packages']): string[] {
  const found = new Set<string>();
  const next = [name];
  for (let at = next.pop(); at !== undefined; at = next.pop()) {
    for (const other of Object.keys(packages[`node_modules/${at}`]?.dependencies ?? {})) {
      if (found.has(other) || packages[`node_modules/${other}`] === undefined) continue;
      found.add(other);
      next.push(other);
    }
  }
  return [...found].sort();
}

/** Whether every part of a licence expression such as "(MIT OR WTFPL)" that may be chosen is allowed: one is enough of "OR". */
export function isAllowed(licence: string): boolean {
  const choices = licence.replace(/[()]/g, '').split(' OR ');
  return choices.some((choice) => choice.split(' AND ').every((part) => ALLOWED_LICENCES.includes(part)));
}

/** Table of packages below the words of the page. */
export const TABLE_BEGINS = '## What the program names';

/** The tables of the page. */
export function dependencyTables(found: readonly RunsOn[]): string {
  const named = found.filter(({ why }) => why !== undefined);
  const brought = found.filter(({ why }) => why === undefined);
  return [
    TABLE_BEGINS,
    '',
    '| package | version | licence | why it is here | what it brings along |',
    '|---|---|---|---|---|',
    ...named.map(
      (each) => `| \`${each.name}\` | ${each.version} | ${each.licence} | ${each.why} | ${bringsText(each)} |`,
    ),
    '',
    '## What these bring along',
    '',
    '| package | version | licence |',
    '|---|---|---|',
    ...brought.map(({ name, version, licence }) => `| \`${name}\` | ${version} | ${licence} |`),
    '',
  ].join('\n');
}

/** Few are named, many are counted. */
function bringsText({ brings }: RunsOn): string {
  if (brings.length === 0) return 'nothing';
  return brings.length <= 3 ? brings.map((name) => `\`${name}\``).join(', ') : `${brings.length} packages`;
}
