/**
 * Amounts of a season as its drawings write them: in the gardener's units, without fractions of a ruler.
 */
import { CM_PER_INCH, fahrenheit, LITRES_PER_CUBIC_FOOT, MM_PER_INCH, type UnitSystem } from '../../measures/units.ts';

/** A kind of amount: turned into the gardener's unit, and written. */
export interface DrawnUnit {
  name: string;
  of: (amount: number) => number;
  digits: number;
}

/** Temperatures, given in °C. */
export function temperatureUnit(units: UnitSystem): DrawnUnit {
  return units === 'us' ? { name: '°F', of: fahrenheit, digits: 0 } : { name: '°C', of: same, digits: 1 };
}

/** Depth of lying snow, given in cm. */
export function snowUnit(units: UnitSystem): DrawnUnit {
  return units === 'us' ? { name: 'in', of: (cm) => cm / CM_PER_INCH, digits: 1 } : { name: 'cm', of: same, digits: 0 };
}

/** Water in the soil, given in mm. */
export function waterUnit(units: UnitSystem): DrawnUnit {
  return units === 'us' ? { name: 'in', of: (mm) => mm / MM_PER_INCH, digits: 2 } : { name: 'mm', of: same, digits: 0 };
}

/** Compost by volume, given in litres. */
export function volumeUnit(units: UnitSystem): DrawnUnit {
  return units === 'us'
    ? { name: 'cu ft', of: (litres) => litres / LITRES_PER_CUBIC_FOOT, digits: 1 }
    : { name: 'L', of: same, digits: 0 };
}

function same(amount: number): number {
  return amount;
}

/** An amount as a figure without its unit; a dash where it is not known. */
export function figure(amount: number | undefined, { of, digits }: DrawnUnit): string {
  return amount === undefined ? '–' : plain(of(amount), digits);
}

/** A number with at most so many digits behind the point, and a true minus sign. */
export function plain(value: number, digits: number): string {
  const written = String(Number(value.toFixed(digits)));
  return written === '-0' ? '0' : written.replace('-', '−');
}
