/**
 * What a new bed is filled with, as lines and as data.
 */
import type { FillSheet } from '../../digest/fill-sheet.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { columns } from './output.ts';

/** A fill as lines of text. */
export function fillLines(sheet: FillSheet, units: UnitSystem): string[] {
  const list = (heading: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', heading, ...lines.flatMap((line) => wrapped(readableIn(units, line), '  ', '    '))];
  return [
    ...columns(
      sheet.parts.map(({ what, litres, barrows }) => [
        what,
        formatQuantity({ value: litres, unit: 'L' }, units),
        barrows,
      ]),
    ),
    ...list('How that is reckoned', sheet.sum),
    ...list('Ask the seller', sheet.ask),
    ...list('Filling it', [...sheet.steps, sheet.effort]),
    ...list('Take care', sheet.cautions),
  ];
}

/** A fill as data, SI. */
export function fillJson({ fill, minutes, cautions }: FillSheet): object {
  return {
    areaM2: hundredth(fill.areaM2),
    volumeLitres: fill.volumeL,
    pathsM2: hundredth(fill.paths.areaM2),
    pathsMeasured: fill.paths.measured,
    topsoilLitres: fill.topsoilL,
    topsoilMostLitres: fill.topsoilMostL,
    looseLitres: fill.looseL,
    compostMostLitres: fill.compostMostL,
    compostLimit: fill.compostBy,
    compostLitres: fill.compostL,
    bedMixLitres: fill.mixL,
    bedMixKg: fill.mixKg,
    movedLitres: fill.movedL,
    minutes,
    cautions,
  };
}

function hundredth(value: number): number {
  return Math.round(value * 100) / 100;
}
