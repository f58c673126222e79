/**
 * The second step: what the garden's frost dates are taken from.
 */

import type { DraftClimate } from '../../garden/set-up-draft.ts';
import type { Day } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { handbookPath } from '../addresses/addresses.ts';
import { FreezeSpread, type SpreadRow } from '../charts/freeze-spread.tsx';
import { type ClimateChoices, climateChoices, datesIn, FAR_KM } from '../climate/climate-choices.ts';
import { distanceWords, nameOf, optionDetail, optionWords } from '../climate/climate-words.ts';
import { Whence } from '../frame/why.tsx';
import type { Form } from '../requests/form.ts';
import { ClimateAside } from './asides.tsx';
import { Fields, OnAndBack, StepForm } from './parts.tsx';
import { inPlainPlaces } from './plain-places.ts';
import {
  type AskedFields,
  fieldProblem,
  readFields,
  type Step,
  type StepRead,
  type StepRoom,
  type StepShown,
} from './step.ts';

export const climate: Step = {
  name: 'climate',
  short: 'Frost',
  title: 'When does it freeze there?',
  content: (room, shown) => <Choosing room={room} shown={shown} />,
  aside: (room) => <ClimateAside room={room} />,
  read: readClimate,
};

const LAST = 'frostDates.lastSpring';
const FIRST = 'frostDates.firstAutumn';

function asked({ draft }: StepRoom): AskedFields {
  return {
    of: 'climate',
    row: draft.climate,
    fields: [
      { name: LAST, label: 'Last freeze of spring, in an ordinary year', as: 'month-day', required: false },
      { name: FIRST, label: 'First freeze of autumn, in an ordinary year', as: 'month-day', required: false },
    ],
  };
}

async function readClimate(form: Form, room: StepRoom): Promise<StepRead> {
  const chosen = form.text('from');
  const { place } = room.draft;
  const option = place && optionsAt(room).options.find(({ value }) => value === chosen);
  if (option !== undefined) return tried(room, option.climate);
  if (chosen !== 'own') {
    const mend = 'Choose one of the list, or your own dates.';
    return { problems: [fieldProblem('from', 'Frost dates', 'Nothing of the list is chosen.', mend)] };
  }
  const { read, problems } = readFields(form, asked(room), room.units);
  const [lastSpring, firstAutumn] = [read[LAST], read[FIRST]];
  const missing = asked(room).fields.flatMap(({ name, label }) =>
    read[name] === undefined && problems.every(({ field }) => field !== name)
      ? [fieldProblem(name, label, 'It is empty.', 'Choose a month and a day.')]
      : [],
  );
  if (typeof lastSpring !== 'string' || typeof firstAutumn !== 'string') return { problems: [...problems, ...missing] };
  return tried(room, { frostDates: { lastSpring, firstAutumn } });
}

/** A choice is kept only where a climate can be worked out from it. */
async function tried({ draft, units, outlookOf }: StepRoom, climate: DraftClimate): Promise<StepRead> {
  const next = { ...draft, climate };
  const outlook = await outlookOf(next);
  if (outlook.climate !== undefined) return { change: (now) => ({ ...now, climate }), leads: 'on' };
  const wrong = inPlainPlaces(outlook.problems, next, { units, outlook });
  return { problems: wrong.map((each) => ({ ...each, where: 'Frost dates' })) };
}

function optionsAt({ stations, draft: { place }, outlook: { today } }: StepRoom): ClimateChoices {
  return place === undefined ? { options: [] } : climateChoices(stations, place, today);
}

const Choosing = ({ room, shown }: { room: StepRoom; shown: StepShown }) => {
  const { draft, units } = room;
  const choices = optionsAt(room);
  const far = choices.nearestKm === undefined || choices.nearestKm > FAR_KM || choices.options.length === 0;
  const chosen = shown.sent?.text('from') ?? chosenIn(draft.climate) ?? (far ? 'own' : firstChoice(choices));
  const rows = spreadRows(room, choices);
  return (
    <>
      {far && <FarWords choices={choices} units={units} />}
      <StepForm room={room} step="climate">
        <fieldset>
          <legend>Take the dates from</legend>
          {choices.options.map((option) => (
            <label class="choice">
              <input type="radio" name="from" value={option.value} checked={chosen === option.value} />
              <span>
                {optionWords(option)}
                <span class="under">{optionDetail(option, units)}</span>
              </span>
            </label>
          ))}
          <label class="choice">
            <input type="radio" name="from" value="own" checked={chosen === 'own'} />
            <span>
              My own dates
              <span class="under">The best of all, where you have written frosts down for some years.</span>
            </span>
          </label>
          <Whence to={handbookPath('climate', 'freezes')}>How freezes are counted</Whence>
        </fieldset>
        <Fields room={room} shown={shown} asked={asked(room)} />
        <OnAndBack step="climate" />
      </StepForm>
      {rows.length > 0 && (
        <section class="frost-spread">
          <h2>How the dates scatter</h2>
          <FreezeSpread rows={rows} units={units} />
          <details>
            <summary>The same in figures</summary>
            <SpreadTable rows={rows} units={units} />
            <Whence to={handbookPath('climate', 'freezes')}>How freezes are counted</Whence>
          </details>
        </section>
      )}
    </>
  );
};

/** The mean of several is nearer the truth than one of them, as measured; where there is none, the nearest. */
function firstChoice({ options }: ClimateChoices): string {
  return options.some(({ value }) => value === 'nearest') ? 'nearest' : (options[0]?.value ?? 'own');
}

function chosenIn(climate: DraftClimate | undefined): string | undefined {
  if (climate === undefined) return undefined;
  if ('station' in climate) return `station:${climate.station}`;
  return 'nearest' in climate ? 'nearest' : 'own';
}

const FarWords = ({ choices: { nearestKm, options }, units }: { choices: ClimateChoices; units: UnitSystem }) => (
  <p>
    The built-in stations are those of the United States.{' '}
    {nearestKm !== undefined && `The nearest is ${distanceWords(nearestKm, units)} away. `}
    {options.length === 0 ? 'None says anything of this garden: ' : 'So far off they say little of this garden: '}
    your own dates are better. Ask a neighbour who has gardened there for years, or the weather service of the country,
    for the usual last and first night of frost.
  </p>
);

function spreadRows(room: StepRoom, { options }: ClimateChoices): SpreadRow[] {
  const rows = options.flatMap((option): SpreadRow[] => {
    const { near, dates } = option;
    if (dates?.spring.median === undefined || dates.autumn.median === undefined) return [];
    return [{ words: near === undefined ? 'The six nearest together' : nameOf(near), ...dates }];
  });
  const { draft, outlook } = room;
  if (outlook.climate === undefined || chosenIn(draft.climate) !== 'own') return rows;
  return [...rows, { words: 'Your own dates', ...datesIn(outlook.climate, outlook.today) }];
}

const SpreadTable = ({ rows, units }: { rows: readonly SpreadRow[]; units: UnitSystem }) => {
  const told = (day: Day | undefined) => (day === undefined ? '–' : formatDay(day, units));
  return (
    <table class="figures">
      <caption>
        Spring: no freeze comes on or after the day in one, five and nine years of ten. Autumn: the first has come by
        it.
      </caption>
      <thead>
        <tr>
          <th scope="col">Freeze</th>
          <th scope="col">1 of 10</th>
          <th scope="col">5 of 10</th>
          <th scope="col">9 of 10</th>
        </tr>
      </thead>
      {rows.map(({ words, spring, autumn }) => (
        <tbody>
          <tr>
            <th scope="rowgroup" colspan={4} class="bed-head">
              {words}
            </th>
          </tr>
          {[
            { name: 'last of spring', odds: spring },
            { name: 'first of autumn', odds: autumn },
          ].map(({ name, odds }) => (
            <tr>
              <th scope="row">{name}</th>
              <td>{told(odds.early)}</td>
              <td>{told(odds.median)}</td>
              <td>{told(odds.late)}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
};
