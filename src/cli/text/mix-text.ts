/**
 * A compost mix as lines and as data.
 */
import type { MixFigure, MixSheet } from '../../digest/mix-sheet.ts';
import { wrapped } from '../../digest/wrapped.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import { tenth } from '../../measures/tenth.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Portion } from '../../practices/composting/mix/portion.ts';
import type { Reached } from '../../practices/composting/mix/what-to-add.ts';
import { columns } from './output.ts';

/** A mix as lines of text. */
export function mixLines(sheet: MixSheet, units: UnitSystem): string[] {
  const paragraph = (text: string): string[] => wrapped(readableIn(units, text));
  const list = (heading: string, lines: readonly string[]): string[] =>
    lines.length === 0 ? [] : ['', heading, ...lines.flatMap((line) => wrapped(readableIn(units, line), '  ', '    '))];
  return [
    ...columns(sheet.parts.map((part) => partRow(part, units))),
    '',
    ...sheet.inWords.flatMap(paragraph),
    ...paragraph(sheet.byVolume),
    ...list('To add', sheet.toAdd),
    ...list('Layers', sheet.layerLines),
    ...list('Take care', sheet.cautions),
  ];
}

function partRow({ name, kind, litres, kg }: MixSheet['parts'][number], units: UnitSystem): string[] {
  return [
    name,
    litres === undefined ? '' : formatQuantity({ value: litres, unit: 'L' }, units),
    kg === undefined ? '' : formatQuantity({ value: kg, unit: 'kg' }, units),
    kind,
  ];
}

/** A mix as data, SI. */
export function mixJson(sheet: MixSheet): object {
  const { mix, answer, layers } = sheet;
  return {
    parts: sheet.parts.map((part) => ({ ...part, ...roundedAmounts(part) })),
    carbonToNitrogen: figureJson(sheet.carbonToNitrogen),
    moisturePercent: figureJson(sheet.moisture),
    brownsLitres: tenth(mix.brownsL),
    greensLitres: tenth(mix.greensL),
    leftOut: mix.leftOut.map(({ material }) => material.id),
    toAdd:
      answer.reach === 'not'
        ? { reach: 'not', hindrance: answer.hindrance, instead: answer.instead ? additionJson(answer.instead) : null }
        : additionJson(answer),
    layers: layers
      ? Object.fromEntries(Object.entries(layers).map(([name, value]) => [name, tenth(Number(value))]))
      : null,
    cautions: sheet.cautions,
  };
}

function roundedAmounts({ litres, kg }: MixSheet['parts'][number]): object {
  return {
    ...(litres === undefined ? {} : { litres: tenth(litres) }),
    ...(kg === undefined ? {} : { kg: tenth(kg) }),
  };
}

function figureJson({ band: { low, usual, high }, standing }: MixFigure): object {
  return { low: tenth(low), usual: tenth(usual), high: tenth(high), standing };
}

function additionJson({ reach, add, waterL, after }: Reached): object {
  return {
    reach,
    add: add.map(({ material, amount }: Portion) => ({
      material: material.id,
      litres: tenth('litres' in amount ? amount.litres : 0),
    })),
    waterLitres: tenth(waterL),
    makes: {
      carbonToNitrogen: tenth(after.carbonToNitrogen?.usual ?? 0),
      moisturePercent: tenth(after.moisturePct?.usual ?? 0),
    },
  };
}
