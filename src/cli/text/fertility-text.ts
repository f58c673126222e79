/**
 * The nitrogen ledgers as lines and as data.
 */
import { BAND_WORDS, figureOf, type LedgerTold } from '../../digest/fertility-sheet.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import { seasonName } from '../../practices/seasons.ts';
import { sourceLine } from '../../schedule/explain.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { columns } from './output.ts';

/** A line a bed and season; of one bed, with the arithmetic of each line below. */
export function fertilityLines({ garden, climate }: GardenView, told: readonly LedgerTold[], whole: boolean): string[] {
  const { units } = garden.place;
  const read = (text: string): string => readableIn(units, text, '');
  const rows = told.map(({ bedName, season, crops, band, wants, gives }) => [
    bedName,
    seasonName(climate, season),
    BAND_WORDS[band],
    `${formatQuantity({ value: wants, unit: 'gPerM2' }, units)} wanted`,
    `${read(figureOf(gives))} given`,
    crops,
  ]);
  return [
    `Nitrogen in the beds of ${garden.name}`,
    '',
    ...(told.length === 0 ? ['No crop is known for this season or the next.'] : columns(rows, '  ')),
    ...(whole ? told.flatMap((each) => ledgerLines(each, seasonName(climate, each.season), read)) : []),
    ...(whole || told.length === 0 ? [] : ['', ...wrapped('With --bed a bed stands with its arithmetic.')]),
  ].map((line) => line.trimEnd());

  function ledgerLines(each: LedgerTold, season: string, say: (text: string) => string): string[] {
    return [
      '',
      `${season}: ${each.crops}`,
      ...each.lines.flatMap(({ side, of, figure, how, source }) => [
        `  ${of} ${side === 'want' ? 'wants' : 'gives'} ${say(figure)}`,
        ...wrapped(`${say(how)} [${sourceLine(source)}]`, '    ', '    '),
      ]),
      ...wrapped(say(each.outcome), '  ', '  '),
      ...each.notes.flatMap((note) => wrapped(say(note), '  ', '  ')),
      ...(each.ways.length === 0 ? [] : ['  Any one of these brings what is short:']),
      ...each.ways.map(
        ({ fertiliser: { name, analysis, speed }, grams }) =>
          `    ${formatQuantity({ value: grams, unit: 'g' }, units)} of ${name} (${analysis}), ${speed}`,
      ),
    ];
  }
}

/** The ledgers as data, grams a square metre. */
export function fertilityJson(told: readonly LedgerTold[]): object {
  return {
    beds: told.map(({ bedId, season, band, wants, gives, lines, notes, ways }) => ({
      bed: bedId,
      season,
      band,
      wantsGPerM2: wants,
      givesGPerM2: gives,
      lines: lines.map(({ side, of, gPerM2, how, source }) => ({ side, of, gPerM2, how, source })),
      notes,
      ways: ways.map(({ fertiliser: { name, analysis, speed }, grams }) => ({ name, analysis, speed, grams })),
    })),
  };
}
