/**
 * The weather log: the form for one day, what was seen these weeks and is expected, and the season drawn from it.
 */
import { gapNotes } from '../../climate/logged.ts';
import type { Garden } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import { addDays, type Day, eachDay } from '../../measures/days.ts';
import { readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { gardenPath, historyPath, loggedDaysPath, longRecordPath, weatherPath } from '../addresses/addresses.ts';
import { otherUnitsHint, type WeatherEntered } from '../fields/logged-fields.ts';
import { Problems, page } from '../frame/layout.tsx';
import { FiguresAsked } from './figures-asked.tsx';
import { LogTable } from './log-table.tsx';
import { SeasonDrawings } from './season-drawings.tsx';

/** Days back that the page shows: three weeks. */
const SHOWN_DAYS = 21;

interface WeatherPageProps {
  view: GardenView;
  /** What was entered and what was wrong with it, when the form comes back. */
  entered?: WeatherEntered;
  problems?: readonly Problem[];
  /** What was pasted of many days, when it comes back. */
  many?: { rows: string; kind: LoggedDay['kind'] };
}

/** The page of the weather log. */
export function weatherPage({ view, entered = {}, problems = [], many }: WeatherPageProps) {
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
      <ManyDays gardenId={garden.id} many={many} />
      <p class="small">
        What is logged of a day again takes the place of what was logged before, figure by figure. What was seen goes
        before what had been expected. Anything told here can be taken back in{' '}
        <a href={historyPath(garden.id)}>History</a>. Cold nights that were told stand on the page of{' '}
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
    <FiguresAsked units={units} entered={entered} />
    <button type="submit">Show what it would move</button>
    <p class="small">
      Leave empty what was not measured. A nought is a measurement: no rain, no snow. {otherUnitsHint(units)}
    </p>
  </form>
);

const Log = ({ garden, today }: { garden: Garden; today: Day }) => {
  const from = addDays(today, 1 - SHOWN_DAYS);
  const observed = garden.weather.filter(({ kind }) => kind === 'observed');
  const seen = new Map(observed.map((row) => [row.day, row]));
  const expected = garden.weather.filter(({ kind, day }) => kind === 'expected' && day >= today);
  const earlier = observed.filter(({ day }) => day < from).reverse();
  const days = eachDay(from, today).reverse();
  const nothing = expected.length === 0 && !days.some((day) => seen.has(day));
  return (
    <>
      {nothing ? (
        <p>
          Nothing has been logged these three weeks: the season goes as those of past years. Log today’s low and rain in
          the form, and the dates of this season begin to follow your own garden.
        </p>
      ) : (
        <p class="small">Press a day to change what is logged of it, or to take it out.</p>
      )}
      {expected.length > 0 && (
        <LogTable caption="Expected" rows={expected.map((row) => [row.day, row])} garden={garden} />
      )}
      {!nothing && (
        <LogTable caption="Seen, the last three weeks" rows={days.map((day) => [day, seen.get(day)])} garden={garden} />
      )}
      {earlier.length > 0 && (
        <details>
          <summary>Earlier: {earlier.length === 1 ? 'one logged day' : `${earlier.length} logged days`}</summary>
          <LogTable caption="Seen earlier" rows={earlier.map((row) => [row.day, row])} garden={garden} dated />
        </details>
      )}
    </>
  );
};

interface ManyDaysProps {
  gardenId: string;
  many: WeatherPageProps['many'];
}

const ManyDays = ({ gardenId, many }: ManyDaysProps) => (
  <details open={many !== undefined}>
    <summary>Many days at once</summary>
    <form method="post" action={loggedDaysPath(gardenId)} enctype="multipart/form-data" class="many-days">
      <label>
        Rows, with their header{' '}
        <textarea name="rows" rows={6} spellcheck={false}>
          {many?.rows ?? ''}
        </textarea>
      </label>
      <label>
        or a file <input type="file" name="file" />
      </label>
      <fieldset>
        <legend>Were they seen, or are they expected?</legend>
        <label class="choice">
          <input type="radio" name="kind" value="observed" checked={many?.kind !== 'expected'} /> Seen in the garden
        </label>
        <label class="choice">
          <input type="radio" name="kind" value="expected" checked={many?.kind === 'expected'} /> Expected, up to ten
          days ahead
        </label>
      </fieldset>
      <button type="submit">Show what they would move</button>
      <p class="small">
        The header names what was measured: <code>date</code> and any of <code>tmin_c</code>, <code>tmax_c</code>,{' '}
        <code>prcp_mm</code>, <code>snow_mm</code>, <code>snwd_mm</code>, <code>watering_mm</code>, in degrees Celsius
        and millimetres; then comes a row a day, such as <code>2027-04-16,-2.2,9.4,4.6</code>. GHCN-Daily is read too,
        plain or packed as <code>.gz</code>.
      </p>
    </form>
  </details>
);
