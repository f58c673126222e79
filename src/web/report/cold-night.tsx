/**
 * The form that reports how cold a night will be, or was.
 */
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { Day } from '../../measures/days.ts';
import { reportPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';

/** The form's fields as they are shown. */
export interface ColdNightEntered {
  evening: string;
  low: string;
  how: string;
}

interface ColdNightPageProps {
  garden: Garden;
  today: Day;
  /** What was entered and what was wrong with it, when the form comes back. */
  entered?: ColdNightEntered;
  problems?: readonly Problem[];
}

/** The page that takes in a cold night. */
export function coldNightPage({ garden, today, entered, problems = [] }: ColdNightPageProps) {
  const { evening, low, how } = entered ?? { evening: today, low: '', how: 'expected' };
  const unit = garden.place.units === 'us' ? '°F' : '°C';
  return page(
    { title: 'A cold night', garden, here: 'report', docs: 'frost-watch' },
    <article class="report">
      <h1>A cold night</h1>
      <p>
        Loamtide asks no weather service. Type the low that a forecast for your area names, and it says what to cover
        and what to pick before sunset; or the low your own thermometer showed, and it says what to look at.
      </p>
      <Problems problems={problems} />
      <form method="post" action={reportPath(garden.id, 'cold-night')} class="report-form">
        <label>
          The evening it begins on <input type="date" name="evening" value={evening} required />
        </label>
        <label>
          The low of the night, {unit}{' '}
          <input type="text" name="low" value={low} inputmode="text" autocomplete="off" required />
        </label>
        <fieldset>
          <legend>Is it expected or measured?</legend>
          <label class="choice">
            <input type="radio" name="how" value="expected" checked={how !== 'measured'} /> Expected: a forecast names
            it
          </label>
          <label class="choice">
            <input type="radio" name="how" value="measured" checked={how === 'measured'} /> Measured: a thermometer in
            the garden showed it
          </label>
        </fieldset>
        <button type="submit">Report it</button>
      </form>
      <p class="small">
        A later report for the same evening takes the place of an earlier one, and a measured low that of an expected
        one.
      </p>
    </article>,
  );
}
