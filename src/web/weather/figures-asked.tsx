/**
 * The fields of a day's weather.
 */
import type { UnitSystem } from '../../measures/units.ts';
import { LOGGED_FIELDS, unitOf, type WeatherEntered } from '../fields/logged-fields.ts';

/** One field a measurement, each in the unit it is read in at home. */
export const FiguresAsked = ({ units, entered }: { units: UnitSystem; entered: WeatherEntered }) => (
  <div class="figures-asked">
    {LOGGED_FIELDS.map(({ measured, name, label }) => (
      <label>
        {label}, {unitOf(measured, units).name}{' '}
        <input type="text" name={name} value={entered[name] ?? ''} inputmode="text" autocomplete="off" class="short" />
      </label>
    ))}
  </div>
);
