/**
 * A bed's nitrogen in a season: its band, the lines it comes of, and what could be strewn.
 */
import { BAND_WORDS, type LedgerTold } from '../../digest/fertility-sheet.ts';
import { GRAMS_A_CUP_OF_MEAL } from '../../handbook/fertilisers.ts';
import { formatQuantity, readableIn } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import type { Band } from '../../practices/fertility/ledger.ts';
import { bedPath, handbookPath } from '../addresses/addresses.ts';
import { AskedDates, SourceLink, Whence } from '../frame/why.tsx';

/** A disc that is full, half full or empty says the band again. */
const SIGNS: Readonly<Record<Band, string>> = { enough: '●', low: '◐', short: '○' };

/** The band in a word, with its sign. */
export const BandWord = ({ band }: { band: Band }) => (
  <span class={`band is-${band}`}>
    <span aria-hidden="true">{SIGNS[band]}</span> {BAND_WORDS[band]}
  </span>
);

interface LedgerProps {
  told: LedgerTold;
  gardenId: string;
  season: string;
  units: UnitSystem;
}

/** One season, folded to its band. */
export const LedgerView = ({ told, gardenId, season, units }: LedgerProps) => {
  const read = (text: string): string => readableIn(units, text, '');
  return (
    <details class="nitrogen">
      <summary>
        <strong>{season}</strong>: {told.crops} <BandWord band={told.band} />
      </summary>
      <p>{read(told.outcome)}</p>
      <table class="figures ledger-lines">
        <caption class="small">Nitrogen over the season, by the ground it stands on</caption>
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">Nitrogen, and how it is reckoned</th>
          </tr>
        </thead>
        <tbody>
          {told.lines.map(({ side, of, figure, how, source }) => (
            <tr>
              <th scope="row">
                <AskedDates text={of} to={`${bedPath(gardenId, told.bedId)}#told`} />
                <span class="under">{side === 'want' ? 'wants' : 'gives'}</span>
              </th>
              <td>
                <strong>{read(figure)}</strong>
                <span class="under">
                  <AskedDates text={read(how)} to={`${bedPath(gardenId, told.bedId)}#told`} />
                </span>
                <span class="under">
                  <SourceLink source={source} gardenId={gardenId} />
                </span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {told.notes.map((note) => (
        <p>
          <AskedDates text={read(note)} to={`${bedPath(gardenId, told.bedId)}#told`} />
        </p>
      ))}
      <Ways told={told} units={units} />
      <Whence to={handbookPath('fertility', 'the-ledger')}>How this is reckoned</Whence>
    </details>
  );
};

const Ways = ({ told: { ways }, units }: Pick<LedgerProps, 'told' | 'units'>) =>
  ways.length === 0 ? null : (
    <>
      <p>Any one of these would bring what is short. The amounts come from the analysis on the bag:</p>
      <table class="figures">
        <thead>
          <tr>
            <th scope="col">What</th>
            <th scope="col">For this bed</th>
            <th scope="col">How soon</th>
            <th scope="col">Source of the analysis</th>
          </tr>
        </thead>
        <tbody>
          {ways.map(({ fertiliser: { name, analysis, speed, source }, grams }) => (
            <tr>
              <th scope="row">
                {name}
                <span class="under">{analysis}</span>
              </th>
              <td>{formatQuantity({ value: grams, unit: 'g' }, units)}</td>
              <td>{speed}</td>
              <td>
                <SourceLink source={source} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">
        A dry cup of 8 fl oz of a meal weighs about {formatQuantity({ value: GRAMS_A_CUP_OF_MEAL, unit: 'g' }, units)}.
        Meals are dusty: strew low in still air and wear a mask, keep bags shut from dogs and rats, and follow the label
        and local rules. Poultry manure that was not composted hot counts as raw: 120 days before a harvest that touches
        soil.
      </p>
    </>
  );
