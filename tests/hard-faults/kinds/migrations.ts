import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import SqliteFile from 'better-sqlite3';
import { expect } from 'vitest';
import { migrations as steps } from '../../../migrations/index.ts';
import { addDays } from '../../../src/measures/days.ts';
import { connect } from '../../../src/store/connection.ts';
import { migrate } from '../../../src/store/migrate.ts';
import { openStore } from '../../../src/store/store.ts';
import { NOON } from '../../store/entries.ts';
import { struck } from '../strike.ts';
import { expectSound, type Kind } from './kind.ts';

/** Longest wait before the first kill, ms: about as long as a migration takes. */
const SPAN_MS = 120;
/** A machine that is through before the kill gets a shorter wait next time, one that is not a longer: half and half is sought. */
const SHORTER = 0.7;
const LONGER = 1.3;
const ROWS = 400;

/** A database as the first program laid it, with rows in every table it had; brought on to a version in between. */
async function oldDatabase(file: string, version: number): Promise<void> {
  const connection = connect(file);
  await migrate(connection, steps.slice(0, 1), NOON);
  const { sqlite } = connection;
  const add = (table: string, row: readonly (string | number | null)[]): void => {
    sqlite.prepare(`insert into ${table} values (${row.map(() => '?').join(', ')})`).run(...row);
  };
  sqlite.exec('begin');
  add('gardens', ['plot', 'Hollow Lane', NOON, ROWS]);
  for (let row = 1; row <= ROWS; row += 1) {
    const fact = { kind: 'tasks-skipped', on: '2027-04-18', tasks: [{ key: `task-${row}`, title: 'Turn the pile' }] };
    add('ledger', ['plot', row, NOON, '2027-04-18', 'ada', fact.kind, JSON.stringify(fact)]);
    add('record_weather', ['plot', addDays('2020-01-01', row), row % 10, 20, 1, 0, 0]);
  }
  add('records', ['plot', 'An invented record', '[]']);
  add('feeds', ['plot', 'feed-1', 'Phone', 'a-token-of-old', NOON, null]);
  sqlite.exec('commit');
  await migrate({ ...connection, existed: false }, steps.slice(0, version), NOON);
  connection.close();
}

/** Every row of every table, but for when a migration was run. */
function allRows(file: string): Record<string, unknown[]> {
  const sqlite = new SqliteFile(file, { readonly: true });
  const tables = sqlite.prepare("select name from sqlite_master where type = 'table' order by name").pluck().all();
  const rows = Object.fromEntries(
    tables.map((table) => [String(table), sqlite.prepare(`select * from ${table} order by 1, 2`).all()]),
  );
  sqlite.close();
  return rows;
}

/** An old database opened by the present program. */
export const migrations: Kind = {
  name: 'migrations',
  async lay({ folder, chance, programs }) {
    let round = 0;
    let spanMs = SPAN_MS;
    return async () => {
      round += 1;
      const version = 1 + Math.floor(chance() * (steps.length - 1));
      const [killed, whole] = ['killed', 'whole'].map((name) => join(folder, `${round}-${name}`)) as [string, string];
      for (const each of [killed, whole]) {
        mkdirSync(each);
        await oldDatabase(join(each, 'loamtide.db'), version);
      }
      const file = join(killed, 'loamtide.db');
      const victim = { program: programs.victim, argv: ['migration', killed] };
      const { wasKilled, complaints } = await struck(victim, { turns: 0, afterMs: chance() * spanMs });
      spanMs *= wasKilled ? LONGER : SHORTER;
      expect(complaints).toBe('');
      expectSound(file);
      const standing = new SqliteFile(file, { readonly: true });
      const reached = Number(standing.prepare('select max(version) from migrations').pluck().get());
      standing.close();
      expect(reached).toBeGreaterThanOrEqual(version);
      // No step is taken before there is a copy of what was.
      const copies = readdirSync(killed).filter((name) => /\.copy$/.test(name));
      if (reached > version) expect(copies).toHaveLength(1);
      for (const copy of copies) expectSound(join(killed, copy));
      for (const each of [file, join(whole, 'loamtide.db')]) await (await openStore({ file: each, now: NOON })).close();
      expect(allRows(file)).toEqual(allRows(join(whole, 'loamtide.db')));
      for (const each of [killed, whole]) rmSync(each, { recursive: true });
      return { promised: reached - version, wasKilled };
    };
  },
};
