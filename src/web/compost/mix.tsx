/**
 * A compost mix worked out: a form that asks what goes in, and what comes of it.
 */
import type { MixSheet } from '../../digest/mix-sheet.ts';
import type { Problem } from '../../garden/problem.ts';
import { feedstockNamed, feedstockWord } from '../../handbook/feedstock-names.ts';
import { feedstocks } from '../../handbook/feedstocks.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { GardenView } from '../../steward/doings/steward.ts';
import { compostPath, handbookPath, mixPath } from '../addresses/addresses.ts';
import { Problems, page } from '../frame/layout.tsx';
import { Whence } from '../frame/why.tsx';

/** What the form was sent with. */
export interface MixAsked {
  rows: readonly { material: string; amount: string }[];
  have: readonly { material: string; amount: string }[];
  bin: string;
}

interface MixPageProps {
  view: GardenView;
  asked: MixAsked;
  sheet?: MixSheet | undefined;
  problems: readonly Problem[];
}

/** Rows offered for what goes in, and for what is there to add. */
const ROWS = 5;
const HAVE_ROWS = 3;

/** The page of a mix. */
export function mixPage({ view: { garden }, asked, sheet, problems }: MixPageProps) {
  const { units } = garden.place;
  return page(
    { title: 'A compost mix', garden, here: 'compost' },
    <article class="report">
      <h1>A compost mix</h1>
      <p>
        How rich and how wet a pile begins, what it still wants, and how to lay it. Nothing is kept.{' '}
        <a href={compostPath(garden.id)}>Back to the yard</a>
      </p>
      {problems.length > 0 && <Problems problems={problems} heading="It cannot be worked out yet" />}
      {sheet && <Answer sheet={sheet} units={units} />}
      <form method="get" action={mixPath(garden.id)} class="report-form">
        <h2>What goes in</h2>
        <p class="small">
          By volume as it is piled ({units === 'us' ? '3 cu ft, 5 gal' : '200 L'}) or by weight (
          {units === 'us' ? '30 lb' : '12 kg'}), each with its unit.
        </p>
        <Rows
          names={['material', 'amount']}
          rows={asked.rows}
          count={ROWS}
          hint={units === 'us' ? '7 cu ft' : '200 L'}
        />
        <h2>What is there to add</h2>
        <p class="small">Left empty: more of the same. The amount may be left empty where there is plenty.</p>
        <Rows names={['have', 'most']} rows={asked.have} count={HAVE_ROWS} hint="plenty" />
        {garden.bins.length > 0 && (
          <label>
            Laid in{' '}
            <select name="bin">
              <option value="">no bin</option>
              {garden.bins.map(({ id, name, volumeL }) => (
                <option value={id} selected={id === asked.bin}>
                  {name}, {formatQuantity({ value: volumeL, unit: 'L' }, units)}
                </option>
              ))}
            </select>
          </label>
        )}
        <button type="submit">Work it out</button>
      </form>
      <p class="small">
        Kept out of every pile: meat, fish, bones, dairy and fat; dung of meat eaters; diseased plants; weeds in seed or
        with running roots; clippings treated with weedkiller; treated wood; coal ash; glossy paper. Sticks no thicker
        than half an inch; wood ash only as a dusting.
      </p>
    </article>,
  );
}

interface RowsProps {
  names: readonly [string, string];
  rows: MixAsked['rows'];
  count: number;
  hint: string;
}

const Rows = ({ names: [material, amount], rows, count, hint }: RowsProps) => (
  <>
    {Array.from({ length: Math.max(count, rows.length) }, (_, at) => (
      <div class="mix-row">
        <select name={material} aria-label={`Material ${at + 1}`}>
          <option value="">–</option>
          {(['brown', 'green', 'other'] as const).map((kind) => (
            <optgroup label={KIND_WORDS[kind]}>
              {feedstocks
                .filter((row) => row.class === kind)
                .map((row) => (
                  <option value={feedstockWord(row)} selected={feedstockNamed(rows[at]?.material ?? '')?.id === row.id}>
                    {row.name}
                  </option>
                ))}
            </optgroup>
          ))}
        </select>
        <input
          type="text"
          name={amount}
          value={rows[at]?.amount ?? ''}
          placeholder={at === 0 ? hint : ''}
          aria-label={`Amount ${at + 1}`}
          maxlength={40}
        />
      </div>
    ))}
  </>
);

const KIND_WORDS = { brown: 'Browns: dry and slow', green: 'Greens: wet and fast', other: 'Neither' } as const;

const Answer = ({ sheet, units }: { sheet: MixSheet; units: UnitSystem }) => {
  const written = (text: string): string => readableIn(units, text);
  return (
    <section class="mixed">
      <table class="figures">
        <tbody>
          {sheet.parts.map(({ name, kind, litres, kg }) => (
            <tr>
              <th scope="row">{name}</th>
              <td>{litres === undefined ? '' : formatQuantity({ value: litres, unit: 'L' }, units)}</td>
              <td>{kg === undefined ? '' : formatQuantity({ value: kg, unit: 'kg' }, units)}</td>
              <td>{kind}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {[...sheet.inWords, sheet.byVolume].map((text) => (
        <p>{written(text)}</p>
      ))}
      <h2>To add</h2>
      {sheet.toAdd.map((text) => (
        <p>{written(text)}</p>
      ))}
      {sheet.layerLines.length > 0 && <h2>Layers</h2>}
      {sheet.layerLines.map((text) => (
        <p>{written(text)}</p>
      ))}
      <h2>Take care</h2>
      <ul class="marked plain">
        {sheet.cautions.map((text) => (
          <li>{written(text)}</li>
        ))}
      </ul>
      <Whence to={handbookPath('composting', 'the-mix')}>How a mix is worked out, each figure with its source</Whence>
    </section>
  );
};
