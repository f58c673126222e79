/**
 * The weather log: the form for one day, what was seen these weeks and is expected, and the season drawn from it.
 */
import { gapNotes } from '../../climate/logged.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import { addDays, type Day, eachDay } from '../../measures/days.ts';
import { formatDay, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/steward.ts';
import { gardenPath, historyPath, longRecordPath, weatherPath } from '../addresses.ts';
import { Problems, page } from '../layout.tsx';
import { cellOf, LOGGED_FIELDS, unitOf } from '../logged-fields.ts';
import { SeasonDrawings } from './season-drawings.tsx';

/** Days back that the page shows: three weeks. */
const SHOWN_DAYS = 21;

/** The form's fields as they are shown. */
export type WeatherEntered = Readonly<Record<string, string>>;

interface WeatherPageProps {
  view: GardenView;
  /** What was entered and what was wrong with it, when the form comes back. */
  entered?: WeatherEntered;
  problems?: readonly Problem[];
}

/** The page of the weather log. */
export function weatherPage({ view, entered = {}, problems = [] }: WeatherPageProps) {
  const { garden, climate } = view;
  const { units } = garden.place;
  const { today } = view.plan;
  return page(
    { title: 'Weather log', garden, here: 'weather' },
    <article class="weather">
      <h1>Weather log</h1>
      <p>
        What you log here moves the dates of this season, and so do a late snow, a cold snap, a soaking rain. First you
        see what it would move; nothing is kept until you say so. <a href="#season">The season drawn</a>
      </p>
      <Problems problems={problems} />
      <DayForm gardenId={garden.id} units={units} today={today} entered={entered} />
      <Log garden={garden} today={today} />
      {gapNotes(climate, today).map((note) => (
        <p class="gap">{readableIn(units, note)}</p>
      ))}
      <p class="small">
        What is logged of a day again takes the place of what was logged before, figure by figure. What was seen goes
        before what had been expected. Anything told here can be taken back in{' '}
        <a href={historyPath(garden.id)}>History</a>; many days at once come in with{' '}
        <code>loamtide weather log FILE</code>. Cold nights that were told stand on the page of{' '}
        <a href={`${gardenPath(garden.id)}#days`}>the garden</a>.
      </p>
      <section>
        <h2>What the climate stands on</h2>
        <p>{readableIn(units, climate.origin)}</p>
        <p>
          <a href={longRecordPath(garden.id)}>
            The long record: what it holds, where its gaps are, and bringing one in
          </a>
        </p>
      </section>
      <SeasonDrawings climate={climate} garden={garden} today={today} />
    </article>,
  );
}

interface DayFormProps {
  gardenId: string;
  units: UnitSystem;
  today: Day;
  entered: WeatherEntered;
}

const DayForm = ({ gardenId, units, today, entered }: DayFormProps) => (
  <form method="get" action={weatherPath(gardenId)} class="report-form weather-form">
    <label>
      The day <input type="date" name="day" value={entered.day ?? today} required />
    </label>
    <fieldset>
      <legend>Was it seen, or is it expected?</legend>
      <label class="choice">
        <input type="radio" name="kind" value="observed" checked={entered.kind !== 'expected'} /> Seen in the garden
      </label>
      <label class="choice">
        <input type="radio" name="kind" value="expected" checked={entered.kind === 'expected'} /> Expected: a forecast
        names it, up to ten days ahead
      </label>
    </fieldset>
    <div class="figures-asked">
      {LOGGED_FIELDS.map(({ measured, name, label }) => (
        <label>
          {label}, {unitOf(measured, units).name}{' '}
          <input
            type="text"
            name={name}
            value={entered[name] ?? ''}
            inputmode="text"
            autocomplete="off"
            class="short"
          />
        </label>
      ))}
    </div>
    <button type="submit">Show what it would move</button>
    <p class="small">Leave empty what was not measured. A nought is a measurement: no rain, no snow.</p>
  </form>
);

const Log = ({ garden, today }: { garden: Garden; today: Day }) => {
  const from = addDays(today, 1 - SHOWN_DAYS);
  const seen = new Map(garden.weather.filter(({ kind }) => kind === 'observed').map((row) => [row.day, row]));
  const expected = garden.weather.filter(({ kind, day }) => kind === 'expected' && day >= today);
  const days = eachDay(from, today).reverse();
  const nothing = expected.length === 0 && !days.some((day) => seen.has(day));
  if (nothing)
    return (
      <p>
        Nothing has been logged these three weeks: the season goes as those of past years. Log today’s low and rain in
        the form, and the dates of this season begin to follow your own garden.
      </p>
    );
  const { units } = garden.place;
  return (
    <>
      {expected.length > 0 && (
        <LogTable caption="Expected" rows={expected.map((row) => [row.day, row])} garden={garden} units={units} />
      )}
      <LogTable
        caption="Seen, the last three weeks"
        rows={days.map((day) => [day, seen.get(day)])}
        garden={garden}
        units={units}
      />
    </>
  );
};

interface LogTableProps {
  caption: string;
  rows: readonly (readonly [Day, LoggedDay | undefined])[];
  garden: Garden;
  units: UnitSystem;
}

const LogTable = ({ caption, rows, garden, units }: LogTableProps) => (
  <>
    <h2>{caption}</h2>
    <table class="figures weather-log">
      <thead>
        <tr>
          <th scope="col">Day</th>
          {LOGGED_FIELDS.map(({ measured, label }) => (
            <th scope="col">
              {label} <span class="unit">{unitOf(measured, units).name}</span>
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map(([day, row]) => (
          <tr class={row === undefined ? 'not-logged' : ''}>
            <th scope="row">
              <a href={weatherPath(garden.id, day)}>{formatDay(day, units)}</a>
            </th>
            {row === undefined ? (
              <td colspan={LOGGED_FIELDS.length}>not logged</td>
            ) : (
              LOGGED_FIELDS.map(({ measured }) => <td>{cellOf(row, measured, units)}</td>)
            )}
          </tr>
        ))}
      </tbody>
    </table>
  </>
);
