/**
 * What a row says, as the fields of a form show it.
 */
import { fullDay } from '../../digest/words.ts';
import { isDay } from '../../measures/days.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { type AnyField, entriesOf, entryName, type Field, isRows, type Option, saidOf } from './field.ts';
import { plainNumber, unitOfField } from './measures.ts';

/** The texts of a form by the names they are sent under. */
export type Texts = ReadonlyMap<string, readonly string[]>;

/** Everything a row says, as an untouched form sends it back. */
export function textsOf(
  fields: readonly AnyField[],
  row: object | undefined,
  units: UnitSystem,
): Map<string, string[]> {
  const texts = new Map<string, string[]>();
  for (const field of fields) {
    if (!isRows(field)) {
      texts.set(field.name, textsOfValue(field, saidOf(field, row), units));
      continue;
    }
    for (const [at, entry] of entriesOf(field, row).entries()) {
      for (const asked of field.fields(entry)) {
        texts.set(entryName(field, at, asked.name), textsOfValue(asked, saidOf(asked, entry), units));
      }
    }
  }
  return texts;
}

/** One value as its field shows it: several texts where several things are ticked, none where there is nothing. */
function textsOfValue(field: Field, value: unknown, units: UnitSystem): string[] {
  if (value === undefined || value === '') return [];
  if (field.as === 'check') return value === true ? ['yes'] : [];
  if (Array.isArray(value)) return value.map(String);
  if (typeof value !== 'number') return [String(value)];
  const unit = unitOfField(field, units);
  return [unit === undefined ? numberText(field, value) : plainNumber(unit.of(value))];
}

function numberText({ as }: Field, value: number): string {
  return as === 'number' ? String(Number(value.toPrecision(9))) : String(value);
}

/** One value in words for a reader; nothing where there is none. */
export function wordsOfValue(field: Field, value: unknown, units: UnitSystem): string | undefined {
  if (field.as === 'check') return value === true ? 'yes' : 'no';
  return wordsOfTexts(field, textsOfValue(field, value, units), units);
}

/** The texts of a field as a reader is told them: an amount with its unit behind it; nothing where there is none. */
export function wordsOfTexts(field: Field, texts: readonly string[], units: UnitSystem): string | undefined {
  if (texts.length === 0) return undefined;
  const { label: unit } = unitOfField(field, units) ?? { label: '' };
  const words = texts.map((text) =>
    isDay(text) && field.as === 'day' ? fullDay(text, units) : optionWords(field, text),
  );
  return unit === '' || words.some((word) => /[a-z°²"']$/i.test(word))
    ? words.join(', ')
    : `${words.join(', ')} ${unit}`;
}

function optionWords({ options = [] }: Field, value: string): string {
  return options.find((option: Option) => option.value === value)?.words ?? value;
}
