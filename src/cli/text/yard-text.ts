/**
 * The compost yard as lines and as data.
 */
import { wrapped } from '../../digest/wrapped.ts';
import type { YardMonth, YardSheet } from '../../digest/yard-sheet.ts';
import { heapNames, monthName } from '../../digest/yard-words.ts';
import type { Garden } from '../../garden/garden.ts';
import { formatDay, formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { BedDemand } from '../../practices/compost-balance.ts';
import { columns } from './output.ts';

/** The yard as lines of text. */
export function yardLines(sheet: YardSheet, garden: Garden): string[] {
  const { units } = garden.place;
  const day = (of: string): string => formatDay(of, units, sheet.today);
  const litres = (value: number): string => (value === 0 ? '–' : formatQuantity({ value, unit: 'L' }, units));
  const names = heapNames(garden);
  return [
    `Compost yard of ${garden.name}`,
    ...block('There and to come', [
      ...columns(
        sheet.heaps.map((heap) => [
          readableIn(units, names(heap), sheet.today),
          litres(heap.litres),
          `${heap.proven ? 'ready' : 'counted on from'} ${day(heap.ready)}`,
        ]),
        '  ',
      ),
      ...(sheet.heaps.length === 0 ? ['  Nothing.'] : []),
    ]),
    ...block('What the beds want', bedRows(sheet.beds, units, { day, litres })),
    ...block('By month', monthTable(sheet.months, litres)),
    ...sheet.spared.flatMap((line) => wrapped(line)),
    ...[...sheet.fills, ...sheet.thinned].flatMap((line) => ['', ...wrapped(readableIn(units, line, sheet.today))]),
    ...sheet.shortfalls.flatMap(({ heading, lines }) =>
      block(
        readableIn(units, heading, sheet.today),
        lines.flatMap((line) => wrapped(readableIn(units, line, sheet.today), '  ', '    ')),
      ),
    ),
    ...(sheet.shortfalls.length === 0 ? ['', 'Nothing is short in the coming year.'] : []),
  ];
}

interface Written {
  day: (of: string) => string;
  litres: (value: number) => string;
}

function block(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ['', heading, ...lines];
}

function bedRows(beds: readonly BedDemand[], units: UnitSystem, { day, litres }: Written): string[] {
  return columns(
    beds.map(({ bedName, layer, litres: wanted, given, window, fill }) => [
      fill ? `${bedName}, to be filled` : bedName,
      formatQuantity({ value: layer.depthMm, unit: 'mm' }, units),
      litres(wanted),
      `${day(window.earliest)} to ${day(window.latest)}`,
      given < wanted ? `short of ${litres(wanted - given)}` : '',
    ]),
    '  ',
  );
}

function monthTable(months: readonly YardMonth[], litres: Written['litres']): string[] {
  return columns(
    [
      ['', 'ready', 'wanted', 'short', 'left'],
      ...months.map(({ from, ready, wanted, short, left }) => [
        monthName(from),
        ...[ready, wanted, short, left].map(litres),
      ]),
    ],
    '  ',
  );
}

/** The yard as data, litres and millimetres. */
export function yardJson(sheet: YardSheet, garden: Garden): object {
  return {
    garden: garden.id,
    today: sheet.today,
    heaps: sheet.heaps,
    beds: sheet.beds.map(({ key, bedId, season, window, areaM2, layer, litres, given }) => ({
      task: key,
      bed: bedId,
      season,
      window,
      areaM2,
      depthMm: layer.depthMm,
      litres,
      given: Math.floor(given),
    })),
    months: sheet.months.map((month) => ({
      ...month,
      ...Object.fromEntries(
        (['ready', 'wanted', 'given', 'left', 'short'] as const).map((of) => [of, Math.round(month[of])]),
      ),
    })),
    shortfalls: sheet.shortfalls,
    spared: sheet.spared,
    thinned: sheet.beds.flatMap(({ bedId, thinner }) => (thinner === undefined ? [] : [{ bed: bedId, ...thinner }])),
  };
}
