/**
 * The season's record: what was done when, per bed and pile, and what it adds up to.
 */
import type { PracticeInput } from '../../practices/practice.ts';
import { seasonName } from '../../practices/seasons.ts';
import { Names } from './names.ts';
import type { RecordRow } from './row.ts';
import { type RecordInput, recordRows } from './rows.ts';
import { RECORD_FORMAT, RECORD_VERSION, type RecordFile, type SeasonSummary } from './shape.ts';
import { recordedSeasons, summaryOf } from './summary.ts';
import { workDone } from './work-done.ts';

/** What a record is made from. */
export type RecordFrom = RecordInput & Pick<PracticeInput, 'climate'>;

/** Which part of a record is wanted; all of it where nothing is said. */
export interface RecordAsked {
  /** By the calendar year it begins in. */
  season?: number;
  /** A bed or piles, by id: their lines and sums alone, without the garden's weather. */
  about?: { type: 'bed' | 'pile'; ids: readonly string[] };
}

/** The record, the newest season first and its lines by day. */
export function seasonRecord(from: RecordFrom, { season, about }: RecordAsked = {}): RecordFile {
  const { garden, today } = from;
  const input = { ...from, rows: recordRows(from) };
  const seasons = season === undefined ? recordedSeasons(input) : [season];
  const isAsked = (row: { about: string; aboutId: string }): boolean =>
    about === undefined || (row.about === about.type && about.ids.includes(row.aboutId));
  const rows = input.rows.filter((row) => isAsked(row) && seasons.includes(row.season));
  return {
    ...{ format: RECORD_FORMAT, version: RECORD_VERSION },
    garden: { id: garden.id, name: garden.name, timeZone: garden.place.timeZone },
    madeOn: today,
    seasons: seasons.map((each) => only(summaryOf(input, each), { garden, rows, about })),
    rows,
  };
}

interface Only extends Pick<RecordFrom, 'garden'> {
  rows: readonly RecordRow[];
  about: RecordAsked['about'];
}

/** A season with what was asked about left in it, and the work done there. */
function only(summary: SeasonSummary, { garden, rows, about }: Only): SeasonSummary {
  if (about === undefined) return summary;
  const { weather: _weather, freezes: _freezes, ...rest } = summary;
  const isAsked = ({ id }: { id: string }): boolean => about.ids.includes(id);
  return {
    ...rest,
    beds: about.type === 'bed' ? summary.beds.filter(isAsked) : [],
    piles: about.type === 'pile' ? summary.piles.filter(isAsked) : [],
    work: workDone(
      garden,
      rows.filter(({ season }) => season === summary.season),
    ),
  };
}

/** Beds or piles that are on record or in the garden, by id and name. */
export function recordedAbout(from: RecordFrom, type: 'bed' | 'pile'): { id: string; name: string }[] {
  const { garden } = from;
  const names = new Names(garden);
  const here =
    type === 'bed' ? garden.beds.map(({ id }) => names.bed(id)) : garden.piles.map(({ id }) => names.pile(id));
  const all = [...recordRows(from).filter(({ about }) => about === type), ...here];
  return [...new Map(all.map(({ aboutId: id, aboutName: name }) => [id, { id, name }])).values()];
}

/** Seasons a garden has a record of, the newest first. */
export function seasonsOnRecord(from: RecordFrom): number[] {
  return recordedSeasons({ ...from, rows: recordRows(from) });
}

/** The season a word names, by the year it begins in or as it is called: "2026", "2026/27". */
export function seasonNamed(
  { climate }: Pick<RecordFrom, 'climate'>,
  word: string,
  known: readonly number[],
): number | undefined {
  return known.find((season) => String(season) === word || seasonName(climate, season) === word);
}
