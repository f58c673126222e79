/**
 * The season's record: what was done when, per bed and pile, and what it adds up to.
 */
import type { PracticeInput } from '../../practices/practice.ts';
import { seasonName } from '../../practices/seasons.ts';
import { type RecordInput, recordRows } from './rows.ts';
import { RECORD_FORMAT, RECORD_VERSION, type RecordFile } from './shape.ts';
import { recordedSeasons, summaryOf } from './summary.ts';

/** What a record is made from. */
export type RecordFrom = RecordInput & Pick<PracticeInput, 'climate'>;

/** Which part of a record is wanted; all of it where nothing is said. */
export interface RecordAsked {
  /** By the calendar year it begins in. */
  season?: number;
  /** One bed or pile, by id: its lines and sums alone, without the garden's weather and work. */
  about?: { type: 'bed' | 'pile'; id: string };
}

/** The record, the newest season first and its lines by day. */
export function seasonRecord(from: RecordFrom, { season, about }: RecordAsked = {}): RecordFile {
  const { garden, today } = from;
  const input = { ...from, rows: recordRows(from) };
  const seasons = season === undefined ? recordedSeasons(input) : [season];
  const isAsked = (row: { about: string; aboutId: string }): boolean =>
    about === undefined || (row.about === about.type && row.aboutId === about.id);
  const rows = input.rows.filter((row) => isAsked(row) && seasons.includes(row.season));
  return {
    ...{ format: RECORD_FORMAT, version: RECORD_VERSION },
    garden: { id: garden.id, name: garden.name, timeZone: garden.place.timeZone },
    madeOn: today,
    seasons: seasons.map((each) => only(summaryOf(input, each), about)),
    rows,
  };
}

/** A season with one bed or pile left in it. */
function only(summary: RecordFile['seasons'][number], about: RecordAsked['about']): RecordFile['seasons'][number] {
  if (about === undefined) return summary;
  const { weather: _weather, freezes: _freezes, ...rest } = summary;
  return {
    ...rest,
    beds: about.type === 'bed' ? summary.beds.filter(({ id }) => id === about.id) : [],
    piles: about.type === 'pile' ? summary.piles.filter(({ id }) => id === about.id) : [],
  };
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
