/**
 * Areas of beds as forms ask for them: a number alone is in the gardener's unit, and may say another.
 */
import { readNumber } from '../../measures/typed-number.ts';
import { M2_PER_SQUARE_FOOT, type UnitSystem } from '../../measures/units.ts';
import { type Form, SHOWN_CHARACTERS } from '../requests/form.ts';

/** The unit areas are asked for in. */
export function areaUnit(units: UnitSystem): { label: string; m2: number } {
  return units === 'us' ? { label: 'sq ft', m2: M2_PER_SQUARE_FOOT } : { label: 'm²', m2: 1 };
}

const UNITS: Readonly<Record<string, number>> = {
  m2: 1,
  'm²': 1,
  'sq m': 1,
  'sq ft': M2_PER_SQUARE_FOOT,
  ft2: M2_PER_SQUARE_FOOT,
};

/** Largest area a field may hold, m²: as in a garden file. */
const MOST_M2 = 10_000;

/** An area field; empty is nothing. What is no area is a problem under the field's own label. */
export function areaIn(form: Form, name: string, label: string, units: UnitSystem): number | undefined {
  const text = form.text(name);
  if (text === '') return undefined;
  const found = /^(\d+(?:[.,]\d+)?)\s*(.*)$/.exec(text);
  const unit = found?.[2] === '' ? areaUnit(units).m2 : UNITS[found?.[2]?.toLowerCase() ?? ''];
  const areaM2 = (readNumber(found?.[1] ?? '') ?? Number.NaN) * (unit ?? Number.NaN);
  if (areaM2 >= 0.01 && areaM2 <= MOST_M2) return Math.round(areaM2 * 1000) / 1000;
  const shown = text.slice(0, SHOWN_CHARACTERS);
  form.refuse({
    where: label,
    what: `"${shown}" is not an area.`,
    mend: `Give a number of ${areaUnit(units).label}, such as 3, or with its unit, such as 1.5 m2.`,
  });
  return undefined;
}
