/**
 * What may be logged of a day, as the gardener types and reads it: each in the unit it is measured in at home.
 */
import type { LoggedDay } from '../../garden/weather.ts';
import { isPossible, MEASURED_WORDS, type Measured, WEATHER_LIMITS } from '../../garden/weather-limits.ts';
import { type Day, isDay } from '../../measures/days.ts';
import { type DepthUnit, readDepthMm } from '../../measures/typed-amount.ts';
import { readDegrees } from '../../measures/typed-temperature.ts';
import { MM_PER_INCH, type UnitSystem } from '../../measures/units.ts';
import { type DrawnUnit, plain, temperatureUnit } from '../charts/amounts-drawn.ts';
import type { Form } from '../requests/form.ts';

/** One measurement of a day. */
export interface LoggedField {
  measured: Measured;
  /** Its name in the form, and its heading. */
  name: string;
  label: string;
  example: Readonly<Record<UnitSystem, string>>;
}

/** Everything that may be logged, in the order it is asked and shown. */
export const LOGGED_FIELDS: readonly LoggedField[] = [
  { measured: 'tminC', name: 'low', label: 'Low', example: { us: '28', metric: '-2' } },
  { measured: 'tmaxC', name: 'high', label: 'High', example: { us: '50', metric: '10' } },
  { measured: 'rainMm', name: 'rain', label: 'Rain', example: { us: '0.5', metric: '12' } },
  { measured: 'newSnowMm', name: 'new-snow', label: 'New snow', example: { us: '3', metric: '8' } },
  { measured: 'snowDepthMm', name: 'snow-lying', label: 'Snow lying', example: { us: '6', metric: '15' } },
  { measured: 'wateringMm', name: 'watering', label: 'Watering', example: { us: '0.5', metric: '12' } },
];

/** The unit a measurement is typed and read in. Snow is deep where rain is not: centimetres beside millimetres. */
export function unitOf(measured: Measured, units: UnitSystem): DrawnUnit {
  if (measured === 'tminC' || measured === 'tmaxC') return temperatureUnit(units);
  const snow = measured === 'newSnowMm' || measured === 'snowDepthMm';
  if (units === 'us') return { name: 'in', of: (mm) => mm / MM_PER_INCH, digits: snow ? 1 : 2 };
  return snow ? { name: 'cm', of: (mm) => mm / 10, digits: 1 } : { name: 'mm', of: (mm) => mm, digits: 1 };
}

/** A measurement as a figure of its column; empty where there is none. */
export function cellOf(row: LoggedDay | undefined, measured: Measured, units: UnitSystem): string {
  const value = row?.[measured];
  const { of, digits } = unitOf(measured, units);
  return value === undefined ? '' : plain(of(value), digits);
}

/** A form's fields as they are shown. */
export type WeatherEntered = Readonly<Record<string, string>>;

/** The fields that a form was sent with. */
export function enteredIn(form: Form): WeatherEntered {
  const names = ['day', 'kind', ...LOGGED_FIELDS.map(({ name }) => name)];
  return Object.fromEntries(names.map((name) => [name, form.text(name)]));
}

/** The fields of a day as it is logged. */
export function enteredOf(row: LoggedDay, units: UnitSystem): WeatherEntered {
  const figures = LOGGED_FIELDS.map(({ name, measured }) => [name, cellOf(row, measured, units)]);
  return { day: row.day, kind: row.kind, ...Object.fromEntries(figures) };
}

/** A day's row as its form carries it along; nothing for what is no such row. */
export function carriedRow(form: Form): LoggedDay | undefined {
  const [day, kind] = [form.text('day'), form.text('kind')];
  if (!isDay(day) || (kind !== 'observed' && kind !== 'expected')) return undefined;
  const said = objectIn(form.text('_row'));
  if (said === undefined) return undefined;
  const row: LoggedDay = { day, kind };
  for (const { measured } of LOGGED_FIELDS) {
    const value: unknown = Reflect.get(said, measured);
    if (typeof value === 'number') row[measured] = value;
  }
  return row;
}

function objectIn(text: string): object | undefined {
  try {
    const said: unknown = JSON.parse(text);
    return typeof said === 'object' && said !== null ? said : undefined;
  } catch {
    return undefined;
  }
}

/** Whether two rows of a day say the same. */
export function sameFigures(one: LoggedDay | undefined, other: LoggedDay): boolean {
  return one !== undefined && LOGGED_FIELDS.every(({ measured }) => one[measured] === other[measured]);
}

/** The fields of a form whose day changed while it stood open: as typed, or as it is now where nobody touched it. */
export function enteredOver(form: Form, was: LoggedDay | undefined, now: LoggedDay, units: UnitSystem): WeatherEntered {
  const typed = Object.entries(enteredIn(form));
  if (was === undefined) return Object.fromEntries(typed);
  const [shown, current] = [enteredOf(was, units), enteredOf(now, units)];
  return Object.fromEntries(typed.map(([name, text]) => [name, (text === shown[name] ? current[name] : text) ?? '']));
}

/** The figures of a day in a row: "low 28 °F, rain 0.5 in". */
export function figuresInWords(row: LoggedDay, units: UnitSystem): string {
  return LOGGED_FIELDS.filter(({ measured }) => row[measured] !== undefined)
    .map(
      ({ measured }) => `${MEASURED_WORDS[measured]} ${cellOf(row, measured, units)} ${unitOf(measured, units).name}`,
    )
    .join(', ');
}

/** The row a form tells of; nothing when a field cannot be used, which the form then says. */
export function rowIn(form: Form, units: UnitSystem, today: Day): LoggedDay | undefined {
  const day = form.day('day', 'The day', today);
  const kind = form.text('kind');
  if (kind !== 'observed' && kind !== 'expected') {
    form.refuse({ where: 'Seen or expected', what: 'Neither is chosen.', mend: 'Choose one of the two.' });
    return undefined;
  }
  const row: LoggedDay = { day: day ?? today, kind };
  for (const field of LOGGED_FIELDS) {
    const value = valueIn(form, field, units);
    if (value !== undefined) row[field.measured] = value;
  }
  return form.problems.length > 0 ? undefined : row;
}

function valueIn(form: Form, field: LoggedField, units: UnitSystem): number | undefined {
  const text = form.text(field.name);
  if (text === '') return undefined;
  const { measured, label, example } = field;
  const unit = unitOf(measured, units);
  const isTemperature = measured === 'tminC' || measured === 'tmaxC';
  const value = isTemperature
    ? readDegrees(text, units === 'us' ? 'F' : 'C')
    : readDepthMm(text, unit.name as DepthUnit);
  if (value !== undefined && isPossible(measured, value)) return value;
  const { least, most } = WEATHER_LIMITS[measured];
  const [from, to] = [least, most].map((limit) => plain(unit.of(limit), 0));
  form.refuse({
    where: `${label}, ${unit.name}`,
    what: value === undefined ? `"${text.slice(0, 60)}" is no figure.` : `"${text.slice(0, 60)}" cannot be.`,
    mend: `Give a figure from ${from} to ${to}, such as ${example[units]}, or leave it empty.`,
  });
  return undefined;
}

/** That a figure may be typed in other units than those asked for. */
export function otherUnitsHint(units: UnitSystem): string {
  return `Another unit is typed with its figure, such as ${units === 'us' ? '12 mm or -1 C' : '0.5 in or 30 F'}.`;
}
