/**
 * A kind of work that is killed in the middle, and what must be true afterwards.
 */
import SqliteFile from 'better-sqlite3';
import { expect } from 'vitest';
import { unsound } from '../../../src/store/sound.ts';

/** What a kind works with. */
export interface Ground {
  /** An empty folder of its own. */
  folder: string;
  /** A number from 0 to 1. */
  chance: () => number;
  /** Programs in one file each. */
  programs: { victim: string; main: string; posting: string };
}

/** Kills once and checks; returns what was promised by then, and whether it was really killed. */
export type Round = () => Promise<{ promised: number; wasKilled: boolean }>;

export interface Kind {
  name: string;
  /** Lays what is worked on. */
  lay(ground: Ground): Promise<Round>;
}

/** Nothing is wrong with a database: neither its pages nor what belongs together. */
export function expectSound(file: string): void {
  const sqlite = new SqliteFile(file);
  try {
    expect(unsound(sqlite, { thorough: true }), file).toEqual([]);
  } finally {
    sqlite.close();
  }
}

/** The last number a victim said. */
export function lastSaid(said: readonly string[], before: number): number {
  const numbers = said.filter((line) => /^\d+$/.test(line)).map(Number);
  return numbers.at(-1) ?? before;
}
