/**
 * The stations a climate is taken from: how far, how much higher, what they publish.
 */
import { inYear, type MonthDay } from '../../measures/days.ts';
import { formatDay } from '../../measures/quantity.ts';
import type { UnitSystem } from '../../measures/units.ts';
import { SourceLink } from '../frame/why.tsx';
import { distanceWords, heightWords } from './climate-words.ts';
import type { StationTold } from './stations-told.ts';

/** A table of them; nothing where the climate rests on something else. */
export const StationsSection = ({ stations, units }: { stations: readonly StationTold[]; units: UnitSystem }) =>
  stations.length === 0 ? null : (
    <section id="stations">
      <h2>{stations.length === 1 ? 'The station' : 'The stations'}</h2>
      <table class="figures wide">
        <thead>
          <tr>
            {['Station', 'Away', 'Height', 'Share', 'Last freeze', 'First freeze'].map((head) => (
              <th scope="col">{head}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {stations.map(({ near: { station, distanceKm, heightDifferenceM }, share }) => (
            <tr>
              <th scope="row">
                {station.name}, {station.state}
              </th>
              <td>{distanceWords(distanceKm, units)}</td>
              <td>
                {apartWords(heightDifferenceM, units) ?? `${heightWords(station.elevationM, units)} above the sea`}
              </td>
              <td>{Math.round(100 * share)} %</td>
              <td>{published(station.lastSpringP50, units)}</td>
              <td>{published(station.firstFallP50, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="small">
        Dates as published for half of the years at 32 °F (0 °C), before they are brought to the height of the garden.{' '}
        <SourceLink source="climate:NCEI-8110" />
      </p>
    </section>
  );

function apartWords(differenceM: number | undefined, units: UnitSystem): string | undefined {
  if (differenceM === undefined) return undefined;
  if (Math.round(differenceM) === 0) return 'as high as the garden';
  return `${heightWords(Math.abs(differenceM), units)} ${differenceM > 0 ? 'above' : 'below'} the garden`;
}

/** A leap year, so that every published day is in it. */
const ANY_YEAR = 2024;

function published(monthDay: MonthDay | undefined, units: UnitSystem): string {
  return monthDay === undefined ? 'none published' : formatDay(inYear(monthDay, ANY_YEAR), units);
}
