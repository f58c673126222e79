/**
 * The season's record as lines.
 */
import { memberNames, Names } from '../../digest/record/names.ts';
import type { RecordRow } from '../../digest/record/row.ts';
import { plannedInWords, rowInWords, tellerInWords } from '../../digest/record/row-words.ts';
import type { BedSeason, PileSeason, RecordFile, SeasonSummary } from '../../digest/record/shape.ts';
import {
  coverInWords,
  cropInWords,
  freezesInWords,
  givenInWords,
  pileInWords,
  weatherInWords,
} from '../../digest/record/summary-words.ts';
import { fullDay, hoursText } from '../../digest/words.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { monthName } from '../../digest/yard-words.ts';
import type { Garden } from '../../garden/garden.ts';
import type { PracticeName } from '../../garden/practice-names.ts';
import { PRACTICE_WORDS } from '../../schedule/entry-text.ts';
import { columns } from './output.ts';

/** A record as text, season by season. */
export function recordLines(record: RecordFile, garden: Garden): string[] {
  return record.seasons.flatMap((season, at) => [
    ...(at === 0 ? [] : ['']),
    ...seasonLines(
      season,
      record.rows.filter((row) => row.season === season.season),
      garden,
    ),
  ]);
}

function seasonLines(season: SeasonSummary, rows: readonly RecordRow[], garden: Garden): string[] {
  const { units } = garden.place;
  const own = (about: RecordRow['about'], id?: string): string[] =>
    rows
      .filter((row) => row.about === about && (id === undefined || row.aboutId === id))
      .flatMap((row) => rowLines(row, garden));
  const fromFile = rows.some(({ origin }) => origin === 'garden-file');
  const blocks = [
    ...season.beds.map((bed) => [bedHeading(bed), ...bedLines(bed, garden), ...own('bed', bed.id)]),
    ...season.piles.map((pile) => [pileHeading(pile, garden), ...pileLines(pile, garden), ...own('pile', pile.id)]),
    headed('The garden', own('garden')),
    headed(
      'Weather, as it was logged',
      [...weatherInWords(season, units), ...freezesInWords(season, units)].flatMap(laid),
    ),
    headed('Work done', workLines(season.work)),
  ].filter((block) => block.length > 0);
  return [
    `Record of ${season.name}, ${garden.name}`,
    `${fullDay(season.from, units)} to ${fullDay(season.to, units)}`,
    ...(blocks.length === 0 ? ['', 'Nothing is on record of this season.'] : []),
    ...(fromFile ? ['† told by the garden file'] : []),
    ...blocks.flatMap((block) => ['', ...block]),
  ];
}

function headed(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [heading, ...lines];
}

function laid(text: string): string[] {
  return wrapped(text, '  ', '    ');
}

function bedHeading({ name, gone }: BedSeason): string {
  return gone ? `${name} (in the garden file no longer)` : name;
}

function bedLines(bed: BedSeason, { place: { units } }: Garden): string[] {
  const given = givenInWords(bed, units);
  return [
    ...bed.crops.map((crop) => `Grew: ${cropInWords(crop, units)}`),
    ...bed.covers.map((cover) => `Cover: ${coverInWords(cover, units)}`),
    ...(given === undefined ? [] : [`Given: ${given}`]),
  ].flatMap(laid);
}

function pileHeading({ name, built, gone }: PileSeason, { place: { units } }: Garden): string {
  if (gone) return `${name} (in the garden file no longer)`;
  return built === undefined ? name : `${name}, pile of ${fullDay(built, units)}`;
}

function pileLines(pile: PileSeason, { place: { units } }: Garden): string[] {
  return laid(pileInWords(pile, units).join(' '));
}

function rowLines(row: RecordRow, garden: Garden): string[] {
  const { units } = garden.place;
  const names = new Names(garden);
  const words = rowInWords(row, units, (id) => names.pile(id).aboutName);
  const besides = [plannedInWords(row, units), tellerInWords(row, units, memberNames(garden))].filter(
    (part) => part !== undefined,
  );
  const after = besides.length === 0 ? '' : ` (${besides.join('; ')})`;
  return laid(`${fullDay(row.on, units)}: ${words}${row.origin === 'garden-file' ? ' †' : ''}${after}`);
}

function workLines({ minutes, byPractice, byMonth, byMember }: SeasonSummary['work']): string[] {
  if (minutes === 0) return [];
  return [
    ...laid(`${hoursText(minutes)} in all, by what each task is reckoned to take.`),
    ...columns(
      [
        ...byPractice.map((row) => [PRACTICE_WORDS[row.of as PracticeName] ?? row.of, hoursText(row.minutes)]),
        ...byMonth.map((row) => [monthName(`${row.of}-01`), hoursText(row.minutes)]),
        ...byMember.map((row) => [row.of, hoursText(row.minutes)]),
      ],
      '  ',
    ),
  ];
}
