/**
 * The lines of a garden's record: what the garden holds, each with who told it, and what was done besides.
 */
import type { Climate } from '../../climate/climate.ts';
import { seasonOf } from '../../climate/season.ts';
import type { Garden } from '../../garden/garden.ts';
import type { LedgerEntry } from '../../garden/ledger.ts';
import { laidOver } from '../../garden/project.ts';
import type { Day } from '../../measures/days.ts';
import { dated } from '../../measures/quantity.ts';
import { happenedIn } from './happened.ts';
import { Names } from './names.ts';
import type { Happening, RecordRow } from './row.ts';
import { type Told, toldLines } from './told-lines.ts';
import { withoutNoise } from './without-noise.ts';

/** What a record is made from. */
export interface RecordInput {
  garden: Garden;
  climate: Pick<Climate, 'seasonTurn'>;
  ledger: readonly LedgerEntry[];
  today: Day;
}

/** A thing that happened, with the entry that told it, where one did. */
interface Line {
  happening: Happening;
  entry?: LedgerEntry;
}

/**
 * Every line up to today, oldest first. What the garden holds and a fact tells is one line, with the garden's amounts and the
 * fact's day. What only the garden holds is the garden file's; what only a fact tells is about something that has gone from
 * the file since, or makes nothing that the garden keeps. What was taken back is in neither, and
 * what was changed is in both as it was changed.
 */
export function recordRows({ garden, climate, ledger, today }: RecordInput): RecordRow[] {
  const laid = laidOver(ledger);
  if (laid === undefined) return [];
  const { told, filed } = toldLines(laid, new Names(garden));
  const held = [...happenedIn(garden, filed.beds), ...skipsHeld(garden, told)];
  const seasonIn = (on: Day): number => seasonOf(climate.seasonTurn, on);
  const lines = matched(held, told)
    .filter(({ happening: { on } }) => on <= today)
    .sort(byDay);
  return startedOnce(lines).map(({ happening, entry }) => rowOf(happening, entry, seasonIn));
}

/** Skips that the garden still holds, as they were told. */
function skipsHeld({ skipped }: Garden, told: readonly Told[]): Happening[] {
  return told
    .map(({ happening }) => happening)
    .filter(({ doing, task, on }) => doing === 'skipped' && task !== undefined && skipped[task] === on);
}

/** Things held, each with the fact that told it, where one did; then what was told and is not held. */
function matched(held: readonly Happening[], told: readonly Told[]): Line[] {
  const waiting = new Map<string, Told[]>();
  for (const each of told) waiting.set(each.happening.claim, [...(waiting.get(each.happening.claim) ?? []), each]);
  const lines = held.map((happening) => {
    const teller = waiting.get(happening.claim)?.shift();
    return teller === undefined
      ? { happening }
      : { happening: together(happening, teller.happening), entry: teller.entry };
  });
  const over = [...waiting.values()].flat().filter(({ happening }) => happening.onlyIfHeld === undefined);
  return [...lines, ...over];
}

/**
 * Lines whose minutes are those of the work done together: what is spent once for a job on a day stands in the line that has
 * most of it, as a week of the plan counts it.
 */
function startedOnce(lines: readonly Line[]): Line[] {
  const most = new Map<string, Line>();
  const jobOf = ({ on, once }: Happening): string => `${on} ${once?.jobId}`;
  for (const line of lines) {
    const known = most.get(jobOf(line.happening))?.happening.once?.minutes ?? 0;
    if ((line.happening.once?.minutes ?? 0) > known) most.set(jobOf(line.happening), line);
  }
  return lines.map((line) => {
    const { once, minutes } = line.happening;
    if (once === undefined || minutes === undefined || most.get(jobOf(line.happening)) === line) return line;
    return { ...line, happening: { ...line.happening, minutes: minutes - once.minutes } };
  });
}

/** A thing as the garden holds it, on the day it was told of. A crop cleared some time after its last harvest says so. */
function together(held: Happening, told: Happening): Happening {
  if (told.doing !== 'cleared') return { ...told, ...held, on: told.on };
  const { note: _note, ...cleared } = { ...told, ...held, on: told.on, doing: told.doing };
  return held.on === told.on ? cleared : { ...cleared, note: `last harvest ${dated(held.on)}` };
}

function rowOf(
  { claim: _claim, onlyIfHeld: _only, once: _once, litres, grams, ...rest }: Happening,
  entry: LedgerEntry | undefined,
  seasonIn: (on: Day) => number,
): RecordRow {
  const season = seasonIn(rest.on);
  const line = {
    ...rest,
    ...(litres === undefined ? {} : { litres: withoutNoise(litres) }),
    ...(grams === undefined ? {} : { grams: withoutNoise(grams) }),
  };
  if (entry === undefined) return { season, ...line, origin: 'garden-file' };
  return { season, ...line, by: entry.by, toldOn: entry.recordedOn, entry: entry.entry, origin: 'told' };
}

/** By day; on one day as they were told, what the file tells first. */
function byDay({ happening: a, entry: inA }: Line, { happening: b, entry: inB }: Line): number {
  return a.on === b.on ? (inA?.entry ?? 0) - (inB?.entry ?? 0) : a.on < b.on ? -1 : 1;
}
