/**
 * The form for a look at a pile.
 */
import type { Garden, Pile } from '../../garden/garden.ts';
import type { Problem } from '../../garden/problem.ts';
import { formatDay, formatQuantity } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { editPath, reportPath } from '../addresses/addresses.ts';
import { FEELS, SMELLS } from '../edit/kinds/pile-look-words.ts';
import { Problems, page } from '../frame/layout.tsx';
import { AskedDates } from '../frame/why.tsx';

/** The form's fields as they are shown. */
export type PileEntered = Readonly<
  Record<'pile' | 'on' | 'at' | 'temp' | 'moisture' | 'smell' | 'pests' | 'slumped', string>
>;

interface PileReadingProps {
  garden: Garden;
  today: string;
  entered: PileEntered;
  problems?: readonly Problem[];
}

/** Newest readings listed under the form. House default. */
const LISTED = 5;

/** What is offered, as the choices of a form, after the words for nothing. */
function offered(nothing: string, looks: readonly { value: string; words: string }[]): [string, string][] {
  return [['', nothing], ...looks.map(({ value, words }): [string, string] => [value, words])];
}

/** The page that takes in a look at a pile. */
export function pileReadingPage({ garden, today, entered, problems = [] }: PileReadingProps) {
  const piles = garden.piles.filter(({ built, finishedOn }) => built.happened && finishedOn === undefined);
  return page(
    { title: 'A look at a pile', garden, here: 'report', docs: 'composting' },
    <article class="report">
      <h1>A look at a pile</h1>
      <p>
        Whatever you saw, felt or smelt; leave out what you did not look at. The next turn is worked out from it at
        once. Steam and dust carry spores: wet a dusty pile first, and keep your face out of it.
      </p>
      <Problems problems={problems} />
      {piles.length === 0 ? (
        <p>
          No pile is working now. A planned one begins when its building is marked done;{' '}
          {garden.bins.length === 0 ? (
            <a href={editPath(garden.id, 'bins')}>add a bin</a>
          ) : (
            <a href={editPath(garden.id, 'piles')}>add a pile</a>
          )}{' '}
          that is there already.
        </p>
      ) : (
        <LookForm garden={garden} piles={piles} today={today} entered={entered} />
      )}
      <Newest garden={garden} piles={piles} today={today} />
    </article>,
  );
}

type LookFormProps = Omit<PileReadingProps, 'problems'> & { piles: readonly Pile[] };

const LookForm = ({ garden, piles, today, entered }: LookFormProps) => {
  const { units } = garden.place;
  return (
    <form method="post" action={reportPath(garden.id, 'pile')} class="report-form">
      <Choice
        label="The pile"
        name="pile"
        chosen={entered.pile}
        options={piles.map((pile) => [pile.id, pileInWords(garden, pile, units, today)])}
      />
      <label>
        The day <input type="date" name="on" value={entered.on} max={today} required />
      </label>
      <label>
        The hour, if you read it more than once a day <input type="time" name="at" value={entered.at} />
      </label>
      <label>
        In the middle, {units === 'us' ? '°F' : '°C'}{' '}
        <input type="text" name="temp" value={entered.temp} inputmode="decimal" autocomplete="off" />
      </label>
      <Choice
        label="A squeezed handful is"
        name="moisture"
        chosen={entered.moisture}
        options={offered('not felt', FEELS)}
      />
      <Choice label="It smells" name="smell" chosen={entered.smell} options={offered('not smelt', SMELLS)} />
      <label class="choice">
        <input type="checkbox" name="pests" value="yes" checked={entered.pests !== ''} /> Flies, rats or mice are at it
      </label>
      <label class="choice">
        <input type="checkbox" name="slumped" value="yes" checked={entered.slumped !== ''} /> It has sunk together
      </label>
      <button type="submit">Keep it</button>
    </form>
  );
};

interface ChoiceProps {
  label: string;
  name: string;
  chosen: string;
  options: readonly (readonly [string, string])[];
}

const Choice = ({ label, name, chosen, options }: ChoiceProps) => (
  <label>
    {label}{' '}
    <select name={name}>
      {options.map(([value, words]) => (
        <option value={value} selected={value === chosen}>
          {words}
        </option>
      ))}
    </select>
  </label>
);

function binName({ bins }: Garden, { binId }: Pile): string {
  return bins.find(({ id }) => id === binId)?.name ?? binId;
}

function pileInWords(garden: Garden, pile: Pile, units: UnitSystem, today: string): string {
  return `${binName(garden, pile)}, built ${formatDay(pile.built.day, units, today)}`;
}

const Newest = ({ garden, piles, today }: { garden: Garden; piles: readonly Pile[]; today: string }) => {
  const { units } = garden.place;
  const readings = piles
    .flatMap((pile) => pile.readings.map((reading) => ({ pile, reading })))
    .sort((a, b) => (a.reading.on < b.reading.on ? 1 : -1))
    .slice(0, LISTED);
  if (readings.length === 0) return null;
  return (
    <>
      <h2>Last looks</h2>
      <table class="figures">
        <tbody>
          {readings.map(({ pile, reading: { on, tempC, moisture, smell, pests, slumped } }) => (
            <tr>
              <th scope="row">
                <AskedDates text={formatDay(on, units, today)} to={editPath(garden.id, 'piles', pile.id)} />
              </th>
              <td>{binName(garden, pile)}</td>
              <td>
                {[
                  tempC === undefined ? undefined : formatQuantity({ value: tempC, unit: 'tempC' }, units),
                  moisture,
                  smell,
                  pests ? 'pests' : undefined,
                  slumped ? 'slumped' : undefined,
                ]
                  .filter((part) => part !== undefined)
                  .join(', ')}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
};
