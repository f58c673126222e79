/**
 * A day of the weather log: its figures to change, and the question before it is taken out.
 */
import { fullDay } from '../../digest/words.ts';
import type { Problem } from '../../garden/problem.ts';
import type { LoggedDay } from '../../garden/weather.ts';
import type { GardenView, MendPreview } from '../../steward/doings/steward.ts';
import { loggedDayPath, weatherPath } from '../addresses/addresses.ts';
import { PreviewSections } from '../changes/change-preview.tsx';
import { KeepOrLook } from '../fields/edit-controls.tsx';
import { figuresInWords, otherUnitsHint, type WeatherEntered } from '../fields/logged-fields.ts';
import { Problems, page } from '../frame/layout.tsx';
import { FiguresAsked } from './figures-asked.tsx';

interface LoggedDayProps {
  view: GardenView;
  /** The day as it is logged. */
  row: LoggedDay;
  entered: WeatherEntered;
  /** What the change would do, where that was asked. */
  preview?: MendPreview | undefined;
  problems?: readonly Problem[];
  /** What was logged of it when the form was opened, where that is something else by now. */
  meanwhile?: { was: LoggedDay | undefined };
}

const SEEN = { observed: 'seen', expected: 'expected' } as const;

/** The page that changes a logged day. */
export function loggedDayPage({ view: { garden }, row, entered, preview, problems = [], meanwhile }: LoggedDayProps) {
  const { units } = garden.place;
  const { day, kind } = row;
  const title = `${fullDay(day, units)}, ${SEEN[kind]}`;
  return page(
    { title, garden, here: 'weather' },
    <article class="weather">
      <h1>{title}</h1>
      {meanwhile && (
        <section class="problems" role="alert">
          <h2>It was changed meanwhile</h2>
          <p>
            {meanwhile.was !== undefined &&
              `When this form was opened, ${figuresInWords(meanwhile.was, units)} was logged. `}
            Nothing was kept yet. What you typed stands below; what you left alone shows how it is now.
          </p>
        </section>
      )}
      <p>Logged of it: {figuresInWords(row, units)}. What stands below takes the place of all of that.</p>
      <Problems problems={problems} />
      <form method="post" action={loggedDayPath(garden.id)} class="report-form weather-form">
        <input type="hidden" name="day" value={day} />
        <input type="hidden" name="kind" value={kind} />
        <input type="hidden" name="_units" value={units} />
        <input type="hidden" name="_row" value={JSON.stringify(row)} />
        <FiguresAsked units={units} entered={entered} />
        <KeepOrLook />
        <p class="small">
          Leave empty what was not measured. A nought is a measurement: no rain, no snow. {otherUnitsHint(units)}
        </p>
      </form>
      {preview && (
        <section>
          <h2>What keeping it would do</h2>
          <PreviewSections plans={preview} garden={garden} />
        </section>
      )}
      <p>
        <a href={loggedDayPath(garden.id, { day, kind }, 'gone')}>Take this day out of the log</a>
      </p>
      <p>
        <a href={weatherPath(garden.id)}>Leave it as it is</a>
      </p>
    </article>,
  );
}

interface DayGoneProps {
  view: GardenView;
  row: LoggedDay;
  preview: MendPreview;
  changed: boolean;
}

/** Asks before a day is taken out. */
export function dayGonePage({ view: { garden }, row, preview, changed }: DayGoneProps) {
  const { units } = garden.place;
  const { day, kind } = row;
  return page(
    { title: 'Take a day out of the log', garden, here: 'weather' },
    <article class="weather undo">
      <h1>
        Take {fullDay(day, units)}, {SEEN[kind]}, out of the log?
      </h1>
      {changed && <p role="alert">It was changed meanwhile: what would go is looked at anew below.</p>}
      <p>What goes: {figuresInWords(row, units)}. It stands in History then, and can be taken back.</p>
      <PreviewSections plans={preview} garden={garden} />
      <form method="post" action={loggedDayPath(garden.id, undefined, 'gone')}>
        <input type="hidden" name="day" value={day} />
        <input type="hidden" name="kind" value={kind} />
        <input type="hidden" name="_row" value={JSON.stringify(row)} />
        <button type="submit">Take it out</button>
      </form>
      <p>
        <a href={weatherPath(garden.id)}>Leave it in</a>
      </p>
    </article>,
  );
}
